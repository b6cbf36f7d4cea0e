#include "ui/window/page_tabs.h"

#include <QStackedWidget>
#include <QTabBar>

#include "core/sheet/per_hour_plan.h"
#include "ui/models/kitchen_outline.h"
#include "ui/models/menu_outline.h"
#include "ui/models/reading_choice.h"
#include "ui/models/recipe_outline.h"
#include "ui/pages/menus/menus_page.h"
#include "ui/pages/night/night_page.h"
#include "ui/pages/outline/outline_page.h"
#include "ui/pages/per_hour/per_hour_page.h"
#include "ui/pages/places/places_page.h"
#include "ui/pages/shopping/shopping_page.h"
#include "ui/pages/temperatures/temperature_page.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

PageTabs::PageTabs(Document& document, OpenPlan& plan, const DishLooks& looks, Prompts& prompts,
                   const Clock& clock, const Theme& theme, QWidget* parent)
    : QTabWidget(parent), document_(document), plan_(plan), looks_(looks), clock_(clock),
      theme_(theme),
      menu_(new OutlinePage(tr("Menu and guests"), std::make_unique<MenuOutline>(looks, clock),
                            document, theme, this)),
      kitchen_(new OutlinePage(tr("Kitchen"), std::make_unique<KitchenOutline>(), document, theme,
                               this)),
      perHour_(new PerHourPage(prompts, theme, this)),
      nightDesk_(new NightDesk(document, clock, this)),
      night_(new NightPage(*nightDesk_, prompts, theme, this)),
      temperatures_(new TemperaturePage(theme, this)),
      shopping_(new ShoppingPage(document, prompts, theme, this)),
      menus_(new MenusPage(theme, this)), places_(new PlacesPage(document, prompts, theme, this))
{
    setObjectName(u"pages"_s);
    setTabPosition(QTabWidget::East);
    menu_->setObjectName(u"menuPage"_s);
    menu_->setEmptyText(tr("No occasion is open. Begin one under Occasion, New."));
    kitchen_->setObjectName(u"kitchenPage"_s);
    kitchen_->setEmptyText(
        tr("Tell what your kitchen has: begin an occasion, and a kitchen is made "
           "for it."));
    perHour_->setObjectName(u"perHourPage"_s);
    addTab(menu_, tr("Menu and guests"));
    addTab(kitchen_, tr("Kitchen"));
    addTab(perHour_, tr("Per-hour plan"));
    night_->setObjectName(u"nightPage"_s);
    addTab(night_, tr("On the night"));
    temperatures_->setObjectName(u"temperaturePage"_s);
    addTab(temperatures_, tr("Temperatures"));
    shopping_->setObjectName(u"shoppingPage"_s);
    addTab(shopping_, tr("Shopping"));
    connect(shopping_, &ShoppingPage::said, this, &PageTabs::said);
    menus_->setObjectName(u"menusPage"_s);
    addTab(menus_, tr("Menus"));
    connect(menus_, &MenusPage::fillRequested, this, &PageTabs::fillRequested);
    places_->setObjectName(u"placesPage"_s);
    addTab(places_, tr("At table"));
    connect(places_, &PlacesPage::fillRequested, this, &PageTabs::fillRequested);
    connect(places_, &PlacesPage::said, this, &PageTabs::said);
    connect(temperatures_, &TemperaturePage::fillRequested, this, &PageTabs::fillRequested);
    connect(night_, &NightPage::said, this, &PageTabs::said);
    connect(night_, &NightPage::fillRequested, this, &PageTabs::fillRequested);
    connect(perHour_, &PerHourPage::said, this, &PageTabs::said);
    // A page that is not seen need not be worked out.
    connect(this, &QTabWidget::currentChanged, this, [this] { refreshSeen(); });
    // Said before the tab becomes the current one.
    connect(this, &QTabWidget::tabBarClicked, this, [this](int tab) {
        if (tab >= 0) {
            setOpen(!isOpen_ || tab != currentIndex());
        }
    });
}

void PageTabs::setOpen(bool isOpen)
{
    if (isOpen == isOpen_) {
        return;
    }
    isOpen_ = isOpen;
    findChild<QStackedWidget*>()->setVisible(isOpen);
    setMaximumWidth(isOpen ? QWIDGETSIZE_MAX : tabBar()->sizeHint().width());
    refreshSeen();
    Q_EMIT openChanged(isOpen);
}

void PageTabs::setTheme(const Theme& theme)
{
    theme_ = theme;
    menu_->setTheme(theme);
    kitchen_->setTheme(theme);
    perHour_->setTheme(theme);
    night_->setTheme(theme);
    temperatures_->setTheme(theme);
    shopping_->setTheme(theme);
    menus_->setTheme(theme);
    places_->setTheme(theme);
    if (recipe_ != nullptr) {
        recipe_->setTheme(theme);
    }
}

void PageTabs::refresh()
{
    menu_->refresh();
    kitchen_->refresh();
    if (recipe_ != nullptr) {
        recipe_->refresh();
    }
    refreshSeen();
}

void PageTabs::readAnew()
{
    shown_ = nullptr;
    charted_ = nullptr;
    nightDesk_->readAnew();
    refresh();
}

void PageTabs::refreshSeen()
{
    if (currentWidget() == places_ && isOpen_) {
        places_->refresh();
    }
    refreshPerHour();
    refreshTemperatures();
    refreshShopping();
}

void PageTabs::refreshTemperatures()
{
    if (currentWidget() != temperatures_ || !isOpen_) {
        return;
    }
    const auto input = planInputOf(document_.library());
    if (!plan_.plan() || !input) {
        charted_ = nullptr;
        temperatures_->showNothing(plan_.faults());
    } else if (charted_ != plan_.plan()) {
        charted_ = plan_.plan();
        temperatures_->show(charted_, *input, readingStyle(document_));
    }
}

void PageTabs::refreshShopping()
{
    if (currentWidget() != shopping_ || !isOpen_) {
        return;
    }
    if (plan_.isCurrent()) {
        shopping_->show(plan_.plan());
    } else {
        shopping_->awaitPlan();
    }
}

void PageTabs::preview(const PlanPtr& plan)
{
    if (!plan) {
        refreshTemperatures();
        return;
    }
    const auto input = planInputOf(document_.library());
    if (currentWidget() == temperatures_ && isOpen_ && input && charted_ != plan) {
        charted_ = plan;
        temperatures_->show(plan, *input, readingStyle(document_));
    }
}

void PageTabs::refreshPerHour()
{
    if (currentWidget() != perHour_ || !isOpen_) {
        return;
    }
    const auto input = planInputOf(document_.library());
    if (!plan_.plan() || !input) {
        shown_ = nullptr;
        perHour_->showNothing(plan_.faults());
        return;
    }
    if (shown_ == plan_.plan()) {
        return;
    }
    shown_ = plan_.plan();
    std::map<DishId, int> looks;
    for (const Course& course : input->occasion->courses) {
        for (const Dish& dish : course.dishes) {
            if (const auto look = looks_.find(dish.id)) {
                looks[dish.id] = *look;
            }
        }
    }
    perHour_->show(perHourPlan(shown_, *input, readingStyle(document_)), looks);
}

void PageTabs::showMenu()
{
    setCurrentWidget(menu_);
    menu_->setFocus();
}

void PageTabs::showKitchen()
{
    setCurrentWidget(kitchen_);
    kitchen_->setFocus();
}

void PageTabs::showPerHour()
{
    setCurrentWidget(perHour_);
    refreshPerHour();
}

void PageTabs::showNight()
{
    setCurrentWidget(night_);
    night_->setFocus();
}

void PageTabs::showMenus()
{
    setCurrentWidget(menus_);
    menus_->setFocus();
}

void PageTabs::showPlaces()
{
    setCurrentWidget(places_);
    places_->setFocus();
}

void PageTabs::showTemperatures(const std::string& subject)
{
    setCurrentWidget(temperatures_);
    refreshTemperatures();
    temperatures_->choose(subject);
}

void PageTabs::showShopping()
{
    setCurrentWidget(shopping_);
    refreshShopping();
    shopping_->setFocus();
}

void PageTabs::showRecipe(const QString& recipe)
{
    if (recipe_ != nullptr) {
        removeTab(indexOf(recipe_));
        recipe_->deleteLater();
    }
    recipe_ = new OutlinePage(tr("Recipe"),
                              std::make_unique<RecipeOutline>(RecipeId{recipe.toStdString()}),
                              document_, theme_, this);
    recipe_->setObjectName(u"recipePage"_s);
    recipe_->setEmptyText(tr("This recipe is not in the library any more."));
    addTab(recipe_, tr("Recipe"));
    recipe_->refresh();
    setCurrentWidget(recipe_);
}

} // namespace suppertide::ui
