// WaysPanel: beside the list of clashes: why it cannot be, and the ways out as they are found.
// Enter or the button takes the one that is chosen; Escape ends the search, and once it has ended
// puts the panel away.
#pragma once

#include <QWidget>

#include "ui/models/way_items.h"
#include "ui/theme/theme.h"

class QLabel;
class QListView;
class QPushButton;

namespace suppertide::ui {

class WayDelegate;

class WaysPanel : public QWidget
{
    Q_OBJECT

public:
    explicit WaysPanel(const Theme& theme, QWidget* parent = nullptr);

    /// Empties it and says what is being looked for.
    void begin(const QString& heading);
    void setReasons(const QStringList& reasons);
    void add(WayRow row);
    void setProgress(const QString& words, bool isSearching);
    void setTheme(const Theme& theme);
    [[nodiscard]] const std::vector<WayRow>& rows() const { return items_->rows(); }
    [[nodiscard]] bool isSearching() const { return isSearching_; }

Q_SIGNALS:
    /// `way`: how many ways stand above it.
    void taken(int way);
    void stopRequested();
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void takeCurrent();
    void showTake();

    WayItems* items_;
    WayDelegate* delegate_;
    QLabel* heading_;
    QLabel* progress_;
    QPushButton* stop_;
    QPushButton* take_;
    QListView* view_;
    bool isSearching_ = false;
};

} // namespace suppertide::ui
