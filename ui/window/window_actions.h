// WindowActions: every action of the menus, each with its shortcut and status tip. They are only
// made here; what they do is connected by the window.
#pragma once

#include <QObject>

class QAction;
class QMenu;
class QMenuBar;
class QUndoStack;
class QWidget;

namespace suppertide::ui {

class PreferenceMenu;

struct WindowActions
{
    WindowActions(QMenuBar& bar, QUndoStack& undo, QWidget* parent);

    // Occasion
    QAction* newOccasion;
    QMenu* openOccasion;
    QAction* copyOccasion;
    QAction* moveOccasion;
    QAction* deleteOccasion;
    QAction* import;
    QAction* exportOccasion;
    QAction* exportLibrary;
    QAction* quit;
    // Edit
    QAction* find;
    QAction* removeDish;
    QAction* pin;
    // Menu
    QAction* showMenu;
    QAction* addCourse;
    QAction* newRecipe;
    QAction* showRecipe;
    QAction* showKitchen;
    // Plan
    QAction* makePlan;
    QAction* stopPlanning;
    QAction* takeOffer;
    QAction* giveUp; // what is searched or offered
    PreferenceMenu* preferences;
    QAction* letGoOffer;
    QAction* letGoTake;
    QAction* letGoNothing;
    QAction* layOutAnew;
    QAction* nextClash;
    QAction* whyHere;
    QAction* showNight;
    QAction* showTemperatures;
    QAction* showShopping;
    QAction* showMenus;
    QAction* showPlaces;
    // View
    QAction* zoomIn;
    QAction* zoomOut;
    QAction* zoomDay;
    QAction* zoomHours;
    QAction* zoomQuarters;
    QAction* showRepertoire;
    QAction* showClashes;
    QAction* showPages;
    QAction* lookSystem;
    QAction* lookLight;
    QAction* lookDark;
    QAction* readCelsius;
    QAction* readFahrenheit;
    QAction* readAsWritten; // amounts, in the recipes' own units
    QAction* readMetric;
    QAction* readUsCustomary;
    QAction* readImperial;
    // Print
    QAction* showPerHour;
    QAction* printPreview;
    QAction* print;
    QAction* savePdf;
    // Help
    QAction* tour;
    QAction* cautions;
    QAction* about;

private:
    void addLetGo(QMenu& plan, QObject* parent);
    void addMeasures(QMenu& view, QObject* parent);
};

} // namespace suppertide::ui
