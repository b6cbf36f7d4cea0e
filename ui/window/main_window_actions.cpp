// What the main window's actions and pop-up menus do.
#include <QAction>
#include <QApplication>
#include <QMenu>
#include <QPointer>
#include <QSplitter>

#include <algorithm>

#include "ui/clashes/clash_panel.h"
#include "ui/models/layout_edits.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/reading_choice.h"
#include "ui/models/recipe_outline.h"
#include "ui/pages/per_hour/per_hour_page.h"
#include "ui/repertoire/repertoire_panel.h"
#include "ui/timeline/timeline_view.h"
#include "ui/window/help_texts.h"
#include "ui/window/main_window_parts.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr const char* lookSetting = "window.look";

// In less than this (px) the timeline shares the window with one panel at a time.
constexpr QSize roomForAll{900, 560};

AppearanceChoice choiceFrom(const QString& text)
{
    return text == u"light"_s  ? AppearanceChoice::Light
           : text == u"dark"_s ? AppearanceChoice::Dark
                               : AppearanceChoice::System;
}

} // namespace

void MainWindow::connectActions()
{
    WindowActions& actions = parts_->actions;
    OccasionDesk* desk = parts_->desk;
    connect(actions.newOccasion, &QAction::triggered, desk, &OccasionDesk::begin);
    connect(actions.openOccasion, &QMenu::aboutToShow, this,
            [this] { parts_->desk->fillOpenMenu(*parts_->actions.openOccasion); });
    connect(actions.copyOccasion, &QAction::triggered, desk, &OccasionDesk::copy);
    connect(actions.moveOccasion, &QAction::triggered, desk, &OccasionDesk::moveToDay);
    connect(actions.deleteOccasion, &QAction::triggered, desk, &OccasionDesk::remove);
    connect(actions.import, &QAction::triggered, desk, &OccasionDesk::import);
    connect(actions.exportOccasion, &QAction::triggered, desk, &OccasionDesk::exportOccasion);
    connect(actions.exportLibrary, &QAction::triggered, desk, &OccasionDesk::exportLibrary);
    connect(actions.quit, &QAction::triggered, this, &QWidget::close);
    connect(actions.find, &QAction::triggered, this, [this] {
        parts_->actions.showRepertoire->setChecked(true);
        parts_->repertoire->focusSearch();
    });
    connect(actions.pin, &QAction::triggered, this,
            [this] { parts_->presenter->pin(parts_->timeline->selected()); });
    connect(actions.whyHere, &QAction::triggered, this,
            [this] { askWhy(parts_->timeline->selected()); });
    connect(actions.removeDish, &QAction::triggered, this,
            [this] { parts_->presenter->removeDishOf(parts_->timeline->selected()); });
    connect(actions.addCourse, &QAction::triggered, this, [this] {
        const CivilDate today = TimeZone::utc().civil(clock_.now()).date;
        document_.apply(withOccasion(document_.library(),
                                     [&today](Occasion& occasion) {
                                         const CivilDate day = dateOf(occasion).value_or(today);
                                         occasion =
                                             withCourseAdded(std::move(occasion), "Course", day);
                                     }),
                        tr("Add a course"));
    });
    connect(actions.newRecipe, &QAction::triggered, this, &MainWindow::newRecipe);
    connect(actions.showRecipe, &QAction::triggered, this, [this] {
        const QString recipe = parts_->repertoire->chosenRecipe();
        if (!recipe.isEmpty()) {
            openRecipe(recipe);
        }
    });
    connect(actions.makePlan, &QAction::triggered, parts_->planning, &Planning::start);
    connect(actions.stopPlanning, &QAction::triggered, parts_->planning, &Planning::stop);
    connect(actions.takeOffer, &QAction::triggered, parts_->planning, &Planning::take);
    connect(actions.giveUp, &QAction::triggered, parts_->planning, &Planning::giveUp);
    connect(actions.layOutAnew, &QAction::triggered, this, [this] {
        Edit edit = layOutAnew(document_.library());
        document_.apply(std::move(edit.next), edit.text);
    });
    connect(actions.nextClash, &QAction::triggered, this, [this, number = 0]() mutable {
        const int count = static_cast<int>(parts_->clashes->rows().size());
        if (count > 0) {
            number = number % count + 1;
            parts_->clashes->showClash(number);
            goToClash(number);
            parts_->advising->lookFor(number);
        }
    });
}

void MainWindow::connectViewActions()
{
    WindowActions& actions = parts_->actions;
    TimelineView* view = parts_->timeline;
    connect(actions.zoomIn, &QAction::triggered, view, [view] { view->zoomBy(1); });
    connect(actions.zoomOut, &QAction::triggered, view, [view] { view->zoomBy(-1); });
    connect(actions.zoomDay, &QAction::triggered, view, [view] { view->zoomTo(ZoomStop::Day); });
    connect(actions.zoomHours, &QAction::triggered, view,
            [view] { view->zoomTo(ZoomStop::Hours); });
    connect(actions.zoomQuarters, &QAction::triggered, view,
            [view] { view->zoomTo(ZoomStop::QuarterHours); });
    connect(actions.showRepertoire, &QAction::toggled, parts_->repertoire, &QWidget::setVisible);
    connect(actions.showClashes, &QAction::toggled, parts_->clashes, &QWidget::setVisible);
    connect(actions.showPages, &QAction::toggled, parts_->pages, &PageTabs::setOpen);
    connect(parts_->pages, &PageTabs::openChanged, this, [this](bool isOpen) {
        parts_->actions.showPages->setChecked(isOpen);
        makeRoomForPages(isOpen);
    });
    for (QAction* shown : {actions.showRepertoire, actions.showClashes, actions.showPages}) {
        connect(shown, &QAction::toggled, this, [this, shown](bool isShown) {
            if (isShown && parts_->isSmall) {
                showOnly(shown);
            }
        });
    }
    const auto opener = [this](auto page) {
        return [this, page] {
            parts_->actions.showPages->setChecked(true);
            (parts_->pages->*page)();
        };
    };
    connect(actions.showMenu, &QAction::triggered, this, opener(&PageTabs::showMenu));
    connect(actions.showKitchen, &QAction::triggered, this, opener(&PageTabs::showKitchen));
    connect(actions.showPerHour, &QAction::triggered, this, opener(&PageTabs::showPerHour));
    connect(actions.showNight, &QAction::triggered, this, opener(&PageTabs::showNight));
    connect(actions.showShopping, &QAction::triggered, this, opener(&PageTabs::showShopping));
    connect(actions.showMenus, &QAction::triggered, this, opener(&PageTabs::showMenus));
    connect(actions.showPlaces, &QAction::triggered, this, opener(&PageTabs::showPlaces));
    connect(actions.showTemperatures, &QAction::triggered, this, [this] { showTemperatures({}); });
    connect(parts_->pages, &PageTabs::fillRequested, this, [this](bool fills) {
        parts_->down->setVisible(!fills);
        parts_->repertoire->setVisible(!fills && parts_->actions.showRepertoire->isChecked());
    });
    const auto printing = [this](auto print) {
        return [this, print] {
            parts_->actions.showPages->setChecked(true);
            parts_->pages->showPerHour();
            (parts_->pages->perHour().*print)();
        };
    };
    connect(actions.printPreview, &QAction::triggered, this, printing(&PerHourPage::preview));
    connect(actions.print, &QAction::triggered, this, printing(&PerHourPage::print));
    connect(actions.savePdf, &QAction::triggered, this, printing(&PerHourPage::savePdf));

    const QString look = document_.setting(QString::fromLatin1(lookSetting));
    theme_.setChoice(choiceFrom(look));
    (look == u"light"_s  ? actions.lookLight
     : look == u"dark"_s ? actions.lookDark
                         : actions.lookSystem)
        ->setChecked(true);
    const auto choose = [this](const QString& choice) {
        return [this, choice] {
            theme_.setChoice(choiceFrom(choice));
            document_.keepSetting(QString::fromLatin1(lookSetting), choice);
        };
    };
    connect(actions.lookSystem, &QAction::triggered, this, choose(u"system"_s));
    connect(actions.lookLight, &QAction::triggered, this, choose(u"light"_s));
    connect(actions.lookDark, &QAction::triggered, this, choose(u"dark"_s));
    connectReading();
}

void MainWindow::connectReading()
{
    WindowActions& actions = parts_->actions;
    (readingStyle(document_).fahrenheit ? actions.readFahrenheit : actions.readCelsius)
        ->setChecked(true);
    for (QAction* scale : {actions.readCelsius, actions.readFahrenheit}) {
        connect(scale, &QAction::triggered, this, [this, scale] {
            ReadingStyle style = readingStyle(document_);
            style.fahrenheit = scale == parts_->actions.readFahrenheit;
            read(style);
        });
    }
    const std::initializer_list<std::pair<QAction*, std::optional<MeasureSystem>>> measures{
        {actions.readAsWritten, std::nullopt},
        {actions.readMetric, MeasureSystem::Metric},
        {actions.readUsCustomary, MeasureSystem::UsCustomary},
        {actions.readImperial, MeasureSystem::Imperial}};
    for (const auto& [action, system] : measures) {
        action->setChecked(readingStyle(document_).measures == system);
        connect(action, &QAction::triggered, this, [this, chosen = system] {
            ReadingStyle style = readingStyle(document_);
            style.measures = chosen;
            read(style);
        });
    }
}

void MainWindow::read(const ReadingStyle& style)
{
    keepReadingStyle(document_, style);
    parts_->presenter->refresh();
    parts_->pages->readAnew();
    showClashes(parts_->plan.plan());
}

void MainWindow::makeRoomForPages(bool isOpen)
{
    QList<int> widths = parts_->across->sizes();
    int& pages = widths.last();
    int& timeline = widths[widths.size() - 2];
    const int both = pages + timeline;
    if (!isOpen) {
        parts_->pagesWidth = pages;
    }
    pages = isOpen ? std::min(parts_->pagesWidth, both * 2 / 3) : parts_->pages->maximumWidth();
    timeline = both - pages;
    parts_->across->setSizes(widths);
}

void MainWindow::makeRoomForWays()
{
    // Two or three ways out at a glance, as long as most of the height stays the timeline's.
    constexpr int forTwo = 220; // px
    QList<int> heights = parts_->down->sizes();
    const int both = heights.first() + heights.last();
    const int wanted = std::min(forTwo, both / 3);
    if (heights.last() < wanted) {
        parts_->down->setSizes({both - wanted, wanted});
    }
}

void MainWindow::showOnly(QAction* shown)
{
    for (QAction* each :
         {parts_->actions.showRepertoire, parts_->actions.showClashes, parts_->actions.showPages}) {
        if (each != shown) {
            each->setChecked(false);
        }
    }
}

void MainWindow::giveWay()
{
    const bool isSmall = width() < roomForAll.width() || height() < roomForAll.height();
    if (isSmall == parts_->isSmall) {
        return;
    }
    parts_->isSmall = isSmall;
    WindowActions& actions = parts_->actions;
    if (isSmall) {
        parts_->wasRepertoireShown = actions.showRepertoire->isChecked();
        parts_->werePagesShown = actions.showPages->isChecked();
        showOnly(actions.showClashes);
    } else {
        actions.showRepertoire->setChecked(parts_->wasRepertoireShown);
        actions.showPages->setChecked(parts_->werePagesShown);
    }
}

void MainWindow::showTemperatures(const std::string& subject)
{
    parts_->actions.showPages->setChecked(true);
    parts_->pages->showTemperatures(subject);
}

void MainWindow::connectHelp()
{
    connect(parts_->actions.tour, &QAction::triggered, this,
            [this] { parts_->prompts.tell(tr("Five minutes with Suppertide"), tourText()); });
    connect(parts_->actions.cautions, &QAction::triggered, this,
            [this] { parts_->prompts.tell(tr("Cautions"), cautionsText()); });
    connect(parts_->actions.about, &QAction::triggered, this,
            [this] { parts_->prompts.tell(tr("About Suppertide"), aboutText()); });
}

void MainWindow::popUpForTarget(const Target& target, const QPoint& global)
{
    QMenu menu(this);
    if (const auto* block = std::get_if<BlockTarget>(&target)) {
        const QString id = QString::fromStdString(block->id);
        const PlanPtr plan = parts_->plan.plan();
        const auto task = plan ? findTask(*plan, block->id) : std::nullopt;
        const OccasionPtr record = openOccasion(document_.library());
        const bool isPinned = record && record->layout.pinned.contains(block->id);
        const bool isWashing = task && isDecidedWashing(*plan, *task);
        menu.addAction(isWashing  ? tr("Do not wash it first")
                       : isPinned ? tr("Let go")
                                  : tr("Pin here"),
                       this, [this, id] { parts_->presenter->pin(id); });
        menu.addAction(tr("Why here?"), this, [this, id] { askWhy(id); });
        if (task && plan->formulation->tasks[*task].recipe) {
            const QString recipe =
                QString::fromStdString(plan->formulation->tasks[*task].recipe->text());
            menu.addAction(tr("Open the recipe"), this, [this, recipe] { openRecipe(recipe); });
        }
        if (task && plan->formulation->tasks[*task].dish) {
            menu.addSeparator();
            menu.addAction(tr("Take the dish off the menu"), this,
                           [this, id] { parts_->presenter->removeDishOf(id); });
        }
    } else {
        menu.addAction(parts_->actions.makePlan);
        menu.addAction(parts_->actions.layOutAnew);
        menu.addSeparator();
        menu.addAction(parts_->actions.zoomDay);
        menu.addAction(parts_->actions.zoomHours);
        menu.addAction(parts_->actions.zoomQuarters);
    }
    menu.exec(global);
}

void MainWindow::askWhy(const QString& taskId)
{
    if (taskId.isEmpty()) {
        say(tr("Choose a step on the timeline first."));
        return;
    }
    parts_->why->ask(taskId, parts_->timeline->besideTask(taskId));
}

void MainWindow::popUpForRecipe(const DraggedVariant& variant, const QPoint& global)
{
    QMenu menu(this);
    menu.addAction(tr("Put it on the menu…"), this, [this, variant] { putIntoCourse(variant); });
    menu.addAction(tr("Open the recipe"), this, [this, variant] { openRecipe(variant.recipe); });
    menu.addSeparator();
    menu.addAction(tr("Copy the recipe"), this, [this, variant] { copyRecipe(variant.recipe); });
    menu.addAction(tr("Delete the recipe…"), this,
                   [this, variant] { deleteRecipe(variant.recipe); });
    menu.exec(global);
}

void MainWindow::copyRecipe(const QString& recipe)
{
    const auto found = document_.library().recipes.find(RecipeId{recipe.toStdString()});
    if (found != document_.library().recipes.end()) {
        Recipe copy = copyOfRecipe(document_.library(), *found->second);
        const QString id = QString::fromStdString(copy.id.text());
        document_.apply(withRecipe(document_.library(), std::move(copy)),
                        tr("Copy %1").arg(QString::fromStdString(found->second->name)));
        openRecipe(id);
    }
}

void MainWindow::deleteRecipe(const QString& recipe)
{
    const RecipeId id{recipe.toStdString()};
    const auto found = document_.library().recipes.find(id);
    if (found == document_.library().recipes.end()) {
        return;
    }
    const QString name = QString::fromStdString(found->second->name);
    const QString users = usersOfRecipe(document_.library(), id);
    if (!users.isEmpty()) {
        parts_->prompts.tell(tr("“%1” is in use").arg(name), users);
        return;
    }
    if (parts_->prompts.confirm(
            tr("Delete the recipe"),
            tr("“%1” goes with all its variants. Undo brings it back.").arg(name), tr("Delete"))) {
        LibraryState next = document_.library();
        next.recipes.erase(id);
        document_.apply(std::move(next), tr("Delete %1").arg(name));
    }
}

} // namespace suppertide::ui
