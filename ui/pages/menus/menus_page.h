// MenusPage: “Menus”: every menu that the alternatives of the open occasion make, compared: a chart
// of two figures, a table of all of them, what there is to say of the chosen one, and a button
// that takes it. Shows and asks; what is compared and what is changed is others' business.
#pragma once

#include <QWidget>

#include "ui/models/menu_comparison.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QPlainTextEdit;
class QProgressBar;
class QPushButton;
class QTableView;

namespace suppertide::ui {

class MenuChart;
class MenuTableModel;

class MenusPage : public QWidget
{
    Q_OBJECT

public:
    explicit MenusPage(const Theme& theme, QWidget* parent = nullptr);

    /// Other menus than before, or none (null); it must outlive this or the next call.
    void show(MenuComparison* comparison, std::optional<std::size_t> now);
    /// More is known of them.
    void refresh(std::optional<std::size_t> now);
    /// Another menu is cooked now.
    void setNow(std::optional<std::size_t> now);
    /// What the page says of itself: nothing compared yet, out of date, how many.
    void setNote(const QString& note);
    /// Whether there is an occasion with menus to compare.
    void setPossible(bool isPossible);
    void setRunning(bool isRunning, int done = 0, int toDo = 0);
    /// Whether the chosen menu may be taken.
    void setStale(bool isStale);
    void setTheme(const Theme& theme);
    [[nodiscard]] const MenuChart& chart() const { return *chart_; }

Q_SIGNALS:
    void compareRequested();
    void stopRequested();
    void taken(int menu);
    /// The page is to fill the window, or no longer.
    void fillRequested(bool fills);

protected:
    void hideEvent(QHideEvent* event) override;

private:
    void build();
    void connectParts();
    void listFigures();
    void choose(std::optional<std::size_t> menu);
    void showChart();
    void showDetail();
    void setShown(bool hasMenus);

    Theme theme_;
    MenuComparison* comparison_ = nullptr;
    std::optional<std::size_t> now_;
    std::optional<std::size_t> chosen_;
    bool isStale_ = false;
    bool isChoosing_ = false;
    QLabel* heading_;
    QLabel* note_;
    QPushButton* compare_;
    QPushButton* stop_;
    QPushButton* fill_;
    QProgressBar* progress_;
    QLabel* acrossLabel_;
    QLabel* upLabel_;
    QComboBox* across_;
    QComboBox* up_;
    MenuChart* chart_;
    MenuTableModel* model_;
    QTableView* table_;
    QPlainTextEdit* detail_;
    QPushButton* take_;
};

} // namespace suppertide::ui
