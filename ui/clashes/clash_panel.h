// ClashPanel: the list of clashes at the foot. A click or Enter goes there on the timeline; the row
// under the pointer or with the focus is pointed at. Without clashes it says so. Beside it are the
// ways out of the clash that was gone to.
#pragma once

#include <QPersistentModelIndex>
#include <QWidget>

#include <optional>
#include <vector>

#include "ui/models/clash_items.h"
#include "ui/theme/theme.h"

class QLabel;
class QListView;

namespace suppertide::ui {

class ClashDelegate;
class WaysPanel;

class ClashPanel : public QWidget
{
    Q_OBJECT

public:
    explicit ClashPanel(const Theme& theme, QWidget* parent = nullptr);

    /// `quiet` is said when there are no rows: nothing collides, or why there is no plan.
    void setRows(std::vector<ClashRow> rows, const QString& quiet);
    void setTheme(const Theme& theme);
    void showClash(int number);
    /// Beside the list; hidden until it has something to show.
    [[nodiscard]] WaysPanel& ways() { return *ways_; }
    [[nodiscard]] const std::vector<ClashRow>& rows() const { return items_->rows(); }

Q_SIGNALS:
    void clashActivated(int number);
    /// The key of a food or an oven (ui/models/temperature_curves).
    void temperaturesRequested(const QString& subject);
    /// 0: none.
    void clashPointedAt(int number);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void popUp(const QPoint& at);
    bool takesDoubleClick();
    [[nodiscard]] int numberAt(const QModelIndex& index) const;

    ClashItems* items_;
    ClashDelegate* delegate_;
    QLabel* heading_;
    QLabel* summary_;
    QLabel* quiet_;
    QListView* view_;
    WaysPanel* ways_;
    QPersistentModelIndex pressed_; // with the first click of two
};

} // namespace suppertide::ui
