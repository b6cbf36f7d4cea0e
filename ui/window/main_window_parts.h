// The parts of the main window, and the menus that pop up over them. For ui/window only.
#pragma once

#include <QStringList>

#include "ui/document/open_plan.h"
#include "ui/timeline/hit_test.h"
#include "ui/window/advising.h"
#include "ui/window/comparing.h"
#include "ui/window/head_bar.h"
#include "ui/window/main_window.h"
#include "ui/window/occasion_desk.h"
#include "ui/window/page_tabs.h"
#include "ui/window/plan_strip.h"
#include "ui/window/planning.h"
#include "ui/window/timeline_presenter.h"
#include "ui/window/why_asking.h"
#include "ui/window/window_actions.h"

class QLabel;
class QSplitter;

namespace suppertide::ui {

class ClashPanel;
class RepertoirePanel;
class TimelineView;

struct MainWindow::Parts
{
    Parts(MainWindow& window, Document& document, ApplicationTheme& theme, const Clock& clock,
          Prompts& asks);

    Prompts& prompts;
    OpenPlan plan;
    WindowActions actions;
    HeadBar* head;
    QSplitter* across;
    QSplitter* down;
    RepertoirePanel* repertoire;
    TimelineView* timeline;
    ClashPanel* clashes;
    TimelinePresenter* presenter;
    PageTabs* pages;
    Planning* planning;
    PlanStrip* strip;
    Advising* advising;
    Comparing* comparing;
    WhyAsking* why;
    OccasionDesk* desk;
    QLabel* said;
    QLabel* saved;

    QStringList changedSincePlanned; // in words; what makes the plan out of date

    bool isSmall = false; // the window has room for one panel at a time
    bool wasRepertoireShown = true;
    bool werePagesShown = true;
    int pagesWidth = 300; // px, when they are open
};

} // namespace suppertide::ui
