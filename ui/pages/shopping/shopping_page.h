// ShoppingPage: “Shopping”: what to buy, by trip and section, ticked as it is bought; what each
// thing is for; what is at home and what things cost; and the lists of equipment and of what to
// measure out. On paper and as a file.
#pragma once

#include <QWidget>

#include "core/plan/plan.h"
#include "ui/document/document.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QModelIndex;
class QPrinter;
class QPushButton;
class QStackedWidget;
class QTextBrowser;
class QTreeView;

namespace suppertide::ui {

struct Edit;
class CurrentLists;
class OutlinePage;
class ShoppingItems;

class ShoppingPage : public QWidget
{
    Q_OBJECT

public:
    /// `document` and `prompts` must outlive this.
    ShoppingPage(Document& document, Prompts& prompts, const Theme& theme,
                 QWidget* parent = nullptr);

    void setTheme(const Theme& theme);
    /// After a change of the document or of the plan, which may be null. What takes long is worked
    /// out beside; the lists before stay until then, and the page says so.
    void show(const PlanPtr& plan);
    /// The same while a plan is being made for what has changed.
    void awaitPlan();
    /// What is shown is not yet of the document as it is now.
    [[nodiscard]] bool isWorking() const;
    [[nodiscard]] const ShoppingItems& items() const { return *items_; }

Q_SIGNALS:
    void said(const QString& words);

private:
    enum View
    {
        List,
        Larder,
        Equipment,
        Measuring
    };

    void build();
    QWidget* head();
    QWidget* listView();
    QWidget* buttons();
    void showLine();
    void tick(const QString& key, bool isBought);
    void goToLarder(const Edit& edit, const std::string& field);
    void take(const Edit& edit);
    void saveText();
    void savePdf();
    void print();
    [[nodiscard]] QString html() const;
    void showLists();
    void showSummary();
    void showPlanList();
    void spanHeadings(const QModelIndex& parent);

    Document& document_;
    Prompts& prompts_;
    CurrentLists* lists_;
    ShoppingItems* items_;
    OutlinePage* larder_;
    QLabel* heading_;
    QLabel* working_;
    QLabel* summary_;
    QComboBox* views_;
    QStackedWidget* stack_;
    QTreeView* tree_;
    QTextBrowser* details_;
    QTextBrowser* equipment_;
    QTextBrowser* measuring_;
    QPushButton* atHome_;
    QPushButton* price_;
    QComboBox* paper_;
};

} // namespace suppertide::ui
