// WindowActions: every action of the menus, each with its shortcut and status tip. They are only
// made here; what they do is connected by the window.
#pragma once

#include <QObject>

class QAction;
class QMenu;
class QMenuBar;
class QUndoStack;

namespace suppertide::ui {

struct WindowActions
{
    WindowActions(QMenuBar& bar, QUndoStack& undo, QObject* parent);

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
    QAction* layOutAnew;
    QAction* nextClash;
    QAction* whyHere;
    QAction* showNight;
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
    // Print
    QAction* showPerHour;
    QAction* printPreview;
    QAction* print;
    QAction* savePdf;
    // Help
    QAction* tour;
    QAction* cautions;
    QAction* about;
};

} // namespace suppertide::ui
