// PageTabs: the pages beside the timeline, with their tabs at the right edge. The recipe page has
// no tab of its own until a recipe is opened from its card.
#pragma once

#include <QTabWidget>

#include "core/base/clock.h"
#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/models/dish_looks.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/theme.h"

namespace suppertide::ui {

class NightDesk;
class MenusPage;
class NightPage;
class OutlinePage;
class PerHourPage;
class PlacesPage;
class ShoppingPage;
class TemperaturePage;

class PageTabs : public QTabWidget
{
    Q_OBJECT

public:
    /// `looks` and all others must outlive this.
    PageTabs(Document& document, OpenPlan& plan, const DishLooks& looks, Prompts& prompts,
             const Clock& clock, const Theme& theme, QWidget* parent);

    void setTheme(const Theme& theme);
    /// After a change of the document or of the plan.
    void refresh();
    /// After the user has chosen how to read temperatures.
    void readAnew();
    void showMenu();
    void showKitchen();
    void showPerHour();
    void showNight();
    void showMenus();
    void showPlaces();
    /// At that food or oven; as it was if the key is empty.
    void showTemperatures(const std::string& subject = {});
    /// While a step is dragged: how the temperatures would be. Null: the drag has ended.
    void preview(const PlanPtr& plan);
    void showShopping();
    void showRecipe(const QString& recipe);
    [[nodiscard]] PerHourPage& perHour() { return *perHour_; }
    [[nodiscard]] MenusPage& menus() { return *menus_; }
    [[nodiscard]] const NightDesk& nightDesk() const { return *nightDesk_; }

    /// Closed, only the tabs are seen. A click on a tab opens its page, one on the tab of the page
    /// that is open closes it.
    void setOpen(bool isOpen);
    [[nodiscard]] bool isOpen() const { return isOpen_; }

Q_SIGNALS:
    void said(const QString& words);
    void openChanged(bool isOpen);
    /// The page is to fill the window, or no longer.
    void fillRequested(bool fills);

private:
    void refreshSeen();
    void refreshPerHour();
    void refreshTemperatures();
    void refreshShopping();

    Document& document_;
    OpenPlan& plan_;
    const DishLooks& looks_;
    const Clock& clock_;
    Theme theme_;
    OutlinePage* menu_;
    OutlinePage* kitchen_;
    PerHourPage* perHour_;
    NightDesk* nightDesk_;
    NightPage* night_;
    TemperaturePage* temperatures_;
    ShoppingPage* shopping_;
    MenusPage* menus_;
    PlacesPage* places_;
    OutlinePage* recipe_ = nullptr;
    bool isOpen_ = true;
    PlanPtr shown_;   // on the per-hour page
    PlanPtr charted_; // on the page of temperatures
};

} // namespace suppertide::ui
