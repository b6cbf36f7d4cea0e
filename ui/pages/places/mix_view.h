// MixView: the mix of each course as a table of variants by guests, in which a guest's portion is
// dragged up and down between variants with the mouse, or moved with keys: Space gives it to the
// row of the cursor, Ctrl with Up or Down takes it a row further. While it is dragged the view
// tells what would follow; Escape leaves all as it is. Each move is one undoable command.
#pragma once

#include <QTableView>

#include <optional>

#include "ui/document/document.h"
#include "ui/theme/theme.h"

namespace suppertide::ui {

class MixDelegate;
class MixModel;

/// A portion on its way from one row to another of its guest's column.
struct PortionDrag
{
    int guest = 0;
    int from = 0;
    int over = -1; // row under the pointer; -1: none
    bool isAllowed = true;

    friend bool operator==(const PortionDrag&, const PortionDrag&) = default;
};

class MixView : public QTableView
{
    Q_OBJECT

public:
    /// `document` must outlive this.
    MixView(Document& document, const Theme& theme, QWidget* parent = nullptr);

    void refresh();
    void setTheme(const Theme& theme);
    [[nodiscard]] const std::optional<PortionDrag>& dragged() const { return drag_; }

Q_SIGNALS:
    /// What is happening to a portion, or happened to it.
    void said(const QString& words);

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void show(std::optional<PortionDrag> drag);
    void move(int guest, int from, int to);

    Document& document_;
    MixModel* model_;
    MixDelegate* delegate_;
    std::optional<PortionDrag> drag_;
};

} // namespace suppertide::ui
