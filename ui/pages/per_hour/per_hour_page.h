// PerHourPage: the plan by the hour, as text that can be read aloud, with print preview, printer
// and PDF.
#pragma once

#include <QWidget>

#include "core/sheet/per_hour_plan.h"
#include "ui/print/per_hour_pages.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QTextBrowser;
class QPrinter;

namespace suppertide::ui {

class PerHourPage : public QWidget
{
    Q_OBJECT

public:
    /// `prompts` must outlive this.
    PerHourPage(Prompts& prompts, const Theme& theme, QWidget* parent = nullptr);

    /// Nothing: no plan, and why.
    void show(const PerHourPlan& sheet, const std::map<DishId, int>& looks);
    void showNothing(const QString& why);
    void setTheme(const Theme& theme);

public Q_SLOTS:
    void preview();
    void print();
    void savePdf();

Q_SIGNALS:
    void said(const QString& words);

private:
    [[nodiscard]] PageStyle style() const;
    void paintOn(QPrinter* printer) const;
    void setUp(QPrinter& printer) const;

    Prompts& prompts_;
    PerHourPlan sheet_;
    std::map<DishId, int> looks_;
    QLabel* title_;
    QWidget* buttons_;
    QComboBox* paper_;
    QComboBox* size_;
    QTextBrowser* text_;
    QString html_; // shown now
};

} // namespace suppertide::ui
