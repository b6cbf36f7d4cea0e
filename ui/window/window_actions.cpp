#include "ui/window/window_actions.h"

#include <QAction>
#include <QActionGroup>
#include <QCoreApplication>
#include <QMenu>
#include <QMenuBar>
#include <QUndoStack>
#include <QWidget>

#include "ui/window/preference_menu.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("WindowActions", text);
}

QAction* add(QMenu* menu, const QString& text, const QString& tip,
             const QKeySequence& shortcut = {})
{
    QAction* action = menu->addAction(text);
    action->setStatusTip(tip);
    action->setShortcut(shortcut);
    return action;
}

QAction* addToggle(QMenu* menu, const QString& text, const QString& tip,
                   const QKeySequence& shortcut = {})
{
    QAction* action = add(menu, text, tip, shortcut);
    action->setCheckable(true);
    action->setChecked(true);
    return action;
}

} // namespace

void WindowActions::addMeasures(QMenu& view, QObject* parent)
{
    QMenu* menu = view.addMenu(tr("Amou&nts in"));
    const QString tip = tr("On screen and on paper; what the recipes have stays as it is");
    readAsWritten = add(menu, tr("The &recipes' own units"), tip);
    readMetric = add(menu, tr("&Metric"), tip);
    readUsCustomary = add(menu, tr("&US customary"), tip);
    readImperial = add(menu, tr("&Imperial"), tip);
    auto* measures = new QActionGroup(parent);
    for (QAction* each : {readAsWritten, readMetric, readUsCustomary, readImperial}) {
        each->setCheckable(true);
        measures->addAction(each);
    }
}

void WindowActions::addLetGo(QMenu& plan, QObject* parent)
{
    QMenu* menu = plan.addMenu(tr("When a step is let &go and collides"));
    auto* choices = new QActionGroup(parent);
    letGoOffer = add(menu, tr("&Offer to plan the rest again"),
                     tr("Changing as little as can be; nothing moves before you take it"));
    letGoTake = add(menu, tr("Plan the rest again at &once"),
                    tr("One Undo takes back the move and what followed from it"));
    letGoNothing = add(menu, tr("&Change nothing"), tr("The clashes show; you go on by hand"));
    for (QAction* choice : {letGoOffer, letGoTake, letGoNothing}) {
        choice->setCheckable(true);
        choices->addAction(choice);
    }
    letGoOffer->setObjectName(u"letGoOffer"_s);
    letGoTake->setObjectName(u"letGoTake"_s);
    letGoNothing->setObjectName(u"letGoNothing"_s);
    letGoOffer->setChecked(true);
}

WindowActions::WindowActions(QMenuBar& bar, QUndoStack& undo, QWidget* parent)
{
    QMenu* menu = bar.addMenu(tr("&Occasion"));
    newOccasion = add(menu, tr("&New…"), tr("Begin an occasion"), QKeySequence::New);
    openOccasion = menu->addMenu(tr("&Open"));
    copyOccasion = add(menu, tr("&Copy"), tr("Copy the open occasion with its menu and guests"));
    moveOccasion = add(menu, tr("Move to another &day…"), tr("All its times move by whole days"));
    deleteOccasion = add(menu, tr("De&lete…"), tr("Delete the open occasion"));
    menu->addSeparator();
    import = add(menu, tr("&Import…"), tr("Take recipes, kitchens and occasions from a file"),
                 QKeySequence(u"Ctrl+I"_s));
    exportOccasion = add(menu, tr("&Export…"), tr("Write the open occasion to a file"),
                         QKeySequence(u"Ctrl+E"_s));
    exportLibrary = add(menu, tr("Export the whole li&brary…"), tr("Write everything to a file"));
    menu->addSeparator();
    quit = add(menu, tr("&Quit"), tr("Close the window; all is saved"), QKeySequence::Quit);

    menu = bar.addMenu(tr("&Edit"));
    QAction* undoAction = undo.createUndoAction(parent, tr("Undo"));
    undoAction->setShortcut(QKeySequence::Undo);
    QAction* redoAction = undo.createRedoAction(parent, tr("Redo"));
    redoAction->setShortcuts(QKeySequence::keyBindings(QKeySequence::Redo));
    menu->addAction(undoAction);
    menu->addAction(redoAction);
    menu->addSeparator();
    find =
        add(menu, tr("&Search the repertoire"), tr("Go to the search field"), QKeySequence::Find);
    pin = add(menu, tr("&Pin or let go"), tr("The chosen step stays where it is when planning"),
              QKeySequence(u"Ctrl+Shift+P"_s));
    removeDish = add(menu, tr("&Take the dish off the menu"), tr("The dish of the chosen step"));

    menu = bar.addMenu(tr("&Menu"));
    showMenu = add(menu, tr("&Menu and guests"), tr("Courses, dishes, guests, house jobs"),
                   QKeySequence(u"Ctrl+1"_s));
    showKitchen = add(menu, tr("&Kitchen"), tr("Ovens, burners, vessels, cooks and their hours"),
                      QKeySequence(u"Ctrl+2"_s));
    addCourse = add(menu, tr("Add a &course"), tr("After the last one"));
    menu->addSeparator();
    newRecipe =
        add(menu, tr("New &recipe"), tr("Enter a recipe of your own"), QKeySequence(u"Ctrl+R"_s));
    showRecipe =
        add(menu, tr("&Open the chosen recipe"), tr("Its lines, steps, waits and variants"));

    menu = bar.addMenu(tr("&Plan"));
    makePlan = add(menu, tr("&Make plan"), tr("Look for the best plan that this kitchen allows"),
                   QKeySequence(u"Ctrl+M"_s));
    stopPlanning = add(menu, tr("&Stop planning"), tr("The best plan so far stays offered"));
    takeOffer =
        add(menu, tr("&Take what is offered"), tr("Undo takes it back"), QKeySequence(u"Ctrl+T"_s));
    giveUp = add(menu, tr("Lea&ve it as it is"),
                 tr("End the search, or leave what is offered; nothing is changed"),
                 QKeySequence(Qt::Key_Escape));
    giveUp->setEnabled(false);
    menu->addSeparator();
    preferences = new PreferenceMenu(parent);
    menu->addMenu(preferences);
    addLetGo(*menu, parent);
    menu->addSeparator();
    layOutAnew = add(menu, tr("&Lay out anew"),
                     tr("All that is not pinned starts as late as it can, whatever clashes"));
    nextClash = add(menu, tr("&Next clash"), tr("Go to the next clash, and look for ways out"),
                    QKeySequence(u"F8"_s));
    whyHere = add(menu, tr("&Why here?"),
                  tr("What keeps the chosen step from being earlier, and from being later"),
                  QKeySequence(u"F9"_s));
    showNight = add(menu, tr("&On the night"), tr("What each cook does now and next"),
                    QKeySequence(u"Ctrl+4"_s));
    showTemperatures = add(menu, tr("T&emperatures"),
                           tr("How warm each food that is followed is, and each oven, when"),
                           QKeySequence(u"Ctrl+5"_s));
    showShopping = add(menu, tr("S&hopping"), tr("What to buy on which trip, and what it costs"),
                       QKeySequence(u"Ctrl+6"_s));
    showMenus = add(menu, tr("&Compare menus"),
                    tr("Which of the menus that the alternatives make can be cooked here, and what "
                       "each would do to the evening"),
                    QKeySequence(u"Ctrl+0"_s));
    showPlaces = add(menu, tr("&At table"), tr("Who gets what, and place cards"),
                     QKeySequence(u"Ctrl+Shift+T"_s));

    menu = bar.addMenu(tr("&View"));
    zoomIn = add(menu, tr("Look &closer"), tr("More room for each hour"), QKeySequence::ZoomIn);
    zoomOut =
        add(menu, tr("Look from &further"), tr("Less room for each hour"), QKeySequence::ZoomOut);
    zoomDay = add(menu, tr("&Day"), tr("A whole day at a glance"), QKeySequence(u"Ctrl+7"_s));
    zoomHours = add(menu, tr("&Hours"), tr("Hours to read by"), QKeySequence(u"Ctrl+8"_s));
    zoomQuarters =
        add(menu, tr("&Quarter hours"), tr("Minutes to work by"), QKeySequence(u"Ctrl+9"_s));
    menu->addSeparator();
    showRepertoire =
        addToggle(menu, tr("&Repertoire"), tr("At the left edge"), QKeySequence(u"F2"_s));
    showPages = addToggle(menu, tr("&Pages"), tr("At the right edge"), QKeySequence(u"F3"_s));
    showClashes = addToggle(menu, tr("C&lashes"), tr("At the foot"), QKeySequence(u"F4"_s));
    menu->addSeparator();
    auto* looks = new QActionGroup(parent);
    lookSystem = add(menu, tr("Light or dark as the &system"), tr("Follow the system"));
    lookLight = add(menu, tr("L&ight"), tr("Always light"));
    lookDark = add(menu, tr("D&ark"), tr("Always dark"));
    for (QAction* look : {lookSystem, lookLight, lookDark}) {
        look->setCheckable(true);
        looks->addAction(look);
    }
    menu->addSeparator();
    auto* scales = new QActionGroup(parent);
    readCelsius = add(menu, tr("T&emperatures in °C"), tr("On screen and on paper"));
    readFahrenheit = add(menu, tr("Te&mperatures in °F"), tr("On screen and on paper"));
    for (QAction* scale : {readCelsius, readFahrenheit}) {
        scale->setCheckable(true);
        scales->addAction(scale);
    }
    addMeasures(*menu, parent);

    menu = bar.addMenu(tr("P&rint"));
    showPerHour =
        add(menu, tr("Per-&hour plan"), tr("What each cook does when"), QKeySequence(u"Ctrl+3"_s));
    printPreview = add(menu, tr("Print pre&view"), tr("See the pages first"));
    print = add(menu, tr("&Print…"), tr("Print the per-hour plan"), QKeySequence::Print);
    savePdf = add(menu, tr("&Save as PDF…"), tr("The per-hour plan as a file"));

    menu = bar.addMenu(tr("&Help"));
    tour = add(menu, tr("&Five minutes with Suppertide"), tr("How to begin"),
               QKeySequence::HelpContents);
    cautions = add(menu, tr("&Cautions"), tr("What the program cannot know"));
    about = add(menu, tr("&About"), tr("Version and licence"));
    quit->setMenuRole(QAction::QuitRole);
    about->setMenuRole(QAction::AboutRole);
}

} // namespace suppertide::ui
