// TemperaturePage: “Temperatures”: a food of the plan or an oven is chosen, and its temperature is
// shown through the whole plan against the limits of the occasion's rule book, as a chart and as a
// table, with the rules that are broken in sentences.
#pragma once

#include <QWidget>

#include <memory>

#include "ui/models/temperature_curves.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QPlainTextEdit;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace suppertide::ui {

class TemperatureChart;
class TemperatureTable;

class TemperaturePage : public QWidget
{
    Q_OBJECT

public:
    explicit TemperaturePage(const Theme& theme, QWidget* parent = nullptr);

    void show(const PlanPtr& plan, const PlanInput& input, const ReadingStyle& style = {});
    /// No plan, and why.
    void showNothing(const QString& why);
    /// Chooses a food or an oven, at once or as soon as a plan has it; empty: what was chosen.
    void choose(const std::string& subject);
    void setTheme(const Theme& theme);
    [[nodiscard]] const TemperatureChart& chart() const { return *chart_; }

Q_SIGNALS:
    /// The page is to fill the window, or no longer.
    void fillRequested(bool fills);

protected:
    void hideEvent(QHideEvent* event) override;

private:
    static void keepRoomForLines(QPlainTextEdit& box);
    void build();
    void addChartMenu();
    void listSubjects();
    void showSubject();
    void setShown(bool hasSubject);

    Theme theme_;
    std::unique_ptr<const TemperatureCurves> curves_;
    std::vector<TemperatureSubject> listed_;
    std::string chosen_; // key
    QLabel* heading_;
    QLabel* note_;
    QComboBox* subjects_;
    QPushButton* asTable_;
    QPushButton* fill_;
    QStackedWidget* views_;
    TemperatureChart* chart_;
    TemperatureTable* stays_;
    QTableView* table_;
    QPlainTextEdit* sentences_;
};

} // namespace suppertide::ui
