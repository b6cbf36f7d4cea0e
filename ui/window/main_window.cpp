#include "ui/window/main_window.h"

#include <QCloseEvent>
#include <QCursor>
#include <QLabel>
#include <QMenuBar>
#include <QScreen>
#include <QSplitter>
#include <QStatusBar>
#include <QVBoxLayout>

#include "ui/clashes/clash_panel.h"
#include "ui/models/head_words.h"
#include "ui/models/layout_edits.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/plan_basis.h"
#include "ui/models/reading_choice.h"
#include "ui/models/recipe_outline.h"
#include "ui/pages/night/night_desk.h"
#include "ui/repertoire/repertoire_panel.h"
#include "ui/timeline/timeline_view.h"
#include "ui/window/main_window_parts.h"
#include "ui/window/preference_menu.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

MainWindow::Parts::Parts(MainWindow& window, Document& document, ApplicationTheme& theme,
                         const Clock& clock, Prompts& asks)
    : prompts(asks), plan(document), actions(*window.menuBar(), document.undoStack(), &window),
      head(new HeadBar(document.undoStack(), *actions.preferences, theme.theme(), &window)),
      across(new QSplitter(Qt::Horizontal, &window)), down(new QSplitter(Qt::Vertical)),
      repertoire(new RepertoirePanel(theme.theme())), timeline(new TimelineView(theme.theme())),
      clashes(new ClashPanel(theme.theme())),
      presenter(new TimelinePresenter(document, plan, *timeline, clock, &window)),
      pages(new PageTabs(document, plan, presenter->looks(), asks, clock, theme.theme(), nullptr)),
      planning(new Planning(document, plan, &window)), strip(new PlanStrip(theme.theme())),
      advising(new Advising(document, plan, clashes->ways(), &window)),
      comparing(new Comparing(document, pages->menus(), &window)),
      why(new WhyAsking(document, plan, theme, window)),
      desk(new OccasionDesk(document, asks, clock, &window)), said(new QLabel(&window)),
      saved(new QLabel(&window))
{
    auto* middle = new QWidget;
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(timeline, 1);
    column->addWidget(strip);
    down->addWidget(middle);
    down->addWidget(clashes);
    down->setStretchFactor(0, 1);
    across->addWidget(repertoire);
    across->addWidget(down);
    across->addWidget(pages);
    across->setStretchFactor(1, 1);
    across->setObjectName(u"across"_s);
    down->setObjectName(u"down"_s);
    timeline->setObjectName(u"timeline"_s);
    said->setObjectName(u"said"_s);
    said->setTextFormat(Qt::PlainText);
    saved->setObjectName(u"saved"_s);
}

MainWindow::MainWindow(Document& document, ApplicationTheme& theme, const Clock& clock,
                       Prompts* prompts)
    : document_(document), theme_(theme), clock_(clock),
      ownPrompts_(prompts == nullptr ? std::make_unique<WidgetPrompts>(*this) : nullptr),
      parts_(std::make_unique<Parts>(*this, document, theme, clock,
                                     prompts == nullptr ? *ownPrompts_ : *prompts))
{
    setObjectName(u"mainWindow"_s);
    auto* central = new QWidget(this);
    auto* column = new QVBoxLayout(central);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(parts_->head);
    column->addWidget(parts_->across, 1);
    setCentralWidget(central);
    statusBar()->addWidget(parts_->said, 1);
    statusBar()->addPermanentWidget(parts_->saved);
    // All of it fits a screen of 1280 × 800 at 200 %.
    setMinimumSize(640, 380);

    connectDocument();
    connectTimeline();
    connectPlanning();
    connectPanels();
    connectActions();
    connectViewActions();
    connectHelp();
    restoreSizes();
    showHead();
    parts_->presenter->refresh();
    parts_->repertoire->show(document_.library(), parts_->presenter->looks());
    parts_->pages->refresh();
    showClashes(parts_->plan.plan());
    parts_->changedSincePlanned = changedSincePlanned(document_.library());
    showPlan();
    showSaveState();
}

MainWindow::~MainWindow() = default;

void MainWindow::say(const QString& words)
{
    parts_->said->setText(words);
}

void MainWindow::connectDocument()
{
    connect(&document_, &Document::changed, this, [this] {
        parts_->changedSincePlanned = changedSincePlanned(document_.library());
        showHead();
        parts_->pages->refresh();
        parts_->repertoire->show(document_.library(), parts_->presenter->looks());
        // Without a plan there is no signal of one: the empty kitchen is shown from here.
        if (!parts_->plan.plan()) {
            parts_->presenter->refresh();
            showClashes(nullptr);
        }
        showPlan();
    });
    connect(&document_, &Document::saveStateChanged, this, [this] { showSaveState(); });
    connect(&document_, &Document::refused, this, [this](const QString& reason) {
        parts_->prompts.tell(tr("This library can only be looked at"), reason);
    });
    connect(&parts_->plan, &OpenPlan::changed, this, [this] {
        showClashes(parts_->plan.plan());
        showPlan();
        parts_->pages->refresh();
        parts_->repertoire->show(document_.library(), parts_->presenter->looks());
    });
}

void MainWindow::connectTimeline()
{
    TimelineView& view = *parts_->timeline;
    connect(parts_->presenter, &TimelinePresenter::said, this, &MainWindow::say);
    connect(parts_->presenter, &TimelinePresenter::previewed, this, [this](const PlanPtr& plan) {
        showClashes(plan ? plan : parts_->plan.plan());
        showPlan(plan);
        parts_->pages->preview(plan);
    });
    connect(&view, &TimelineView::clashActivated, this,
            [this](int number) { parts_->clashes->showClash(number); });
    connect(&view, &TimelineView::whyRequested, this, &MainWindow::askWhy);
    connect(&view, &TimelineView::emptyNoteTriggered, this, [this] {
        if (openOccasion(document_.library())) {
            parts_->pages->showMenu();
        } else if (document_.library().occasions.empty()) {
            parts_->desk->begin();
        } else {
            parts_->actions.openOccasion->popup(QCursor::pos());
        }
    });
    connect(&view, &TimelineView::activated, this, [this](const QString& taskId) {
        const PlanPtr& plan = parts_->plan.plan();
        const auto task = plan ? findTask(*plan, taskId.toStdString()) : std::nullopt;
        if (task && plan->formulation->tasks[*task].recipe) {
            openRecipe(QString::fromStdString(plan->formulation->tasks[*task].recipe->text()));
        }
    });
    connect(&view, &TimelineView::zoomChanged, this,
            [this](double pixelsPerHour) { parts_->head->showZoom(stopOf(pixelsPerHour)); });
    connect(&view, &TimelineView::menuRequested, this,
            [this](const Target& target, PlanTime /*time*/, const QPoint& global) {
                popUpForTarget(target, global);
            });
}

void MainWindow::connectPanels()
{
    connect(parts_->clashes, &ClashPanel::clashActivated, this, [this](int number) {
        goToClash(number);
        parts_->advising->lookFor(number);
    });
    connect(parts_->clashes, &ClashPanel::temperaturesRequested, this,
            [this](const QString& subject) { showTemperatures(subject.toStdString()); });
    connect(parts_->advising, &Advising::opened, this, &MainWindow::makeRoomForWays);
    connect(parts_->advising, &Advising::said, this, &MainWindow::say);
    connect(parts_->comparing, &Comparing::said, this, &MainWindow::say);
    connect(parts_->clashes, &ClashPanel::clashPointedAt, this, [this](int number) {
        parts_->timeline->pointAtClash(number == 0 ? std::nullopt : std::optional(number));
    });
    connect(parts_->repertoire, &RepertoirePanel::variantActivated, this,
            &MainWindow::putIntoCourse);
    connect(parts_->repertoire, &RepertoirePanel::recipeActivated, this, &MainWindow::openRecipe);
    connect(parts_->repertoire, &RepertoirePanel::newRecipeRequested, this, &MainWindow::newRecipe);
    connect(parts_->repertoire, &RepertoirePanel::menuRequested, this,
            [this](const QString& recipe, const QString& variant, const QPoint& global) {
                popUpForRecipe({recipe, variant}, global);
            });
    connect(parts_->pages, &PageTabs::said, this, &MainWindow::say);
    connect(&parts_->pages->nightDesk(), &NightDesk::minutePassed, parts_->presenter,
            &TimelinePresenter::refresh);
    connect(parts_->desk, &OccasionDesk::said, this, &MainWindow::say);
    connect(&theme_, &ApplicationTheme::changed, this, [this](const Theme& theme) {
        parts_->head->setTheme(theme);
        parts_->repertoire->setTheme(theme);
        parts_->timeline->setTheme(theme);
        parts_->clashes->setTheme(theme);
        parts_->strip->setTheme(theme);
        parts_->pages->setTheme(theme);
    });
}

void MainWindow::showHead()
{
    const OccasionPtr record = openOccasion(document_.library());
    const bool canPlan = record && planInputOf(document_.library()).has_value();
    if (record) {
        const CivilDate today = TimeZone::utc().civil(clock_.now()).date;
        QString line = dateLine(record->occasion, today);
        if (isPast(record->occasion, clock_.now())) {
            line += tr(" · in the past");
        }
        parts_->head->show(QString::fromStdString(record->occasion.name), line);
        parts_->head->showPreferences(record->occasion.preferences);
        parts_->actions.preferences->show(record->occasion.preferences);
        setWindowTitle(tr("%1 – Suppertide").arg(QString::fromStdString(record->occasion.name)));
    } else {
        parts_->head->show(tr("No occasion"), {});
        setWindowTitle(tr("Suppertide"));
    }
    const bool isRunning = parts_->planning->isRunning();
    parts_->head->setPlanning(canPlan, isRunning);
    parts_->actions.makePlan->setEnabled(canPlan && !isRunning);
    parts_->actions.stopPlanning->setEnabled(isRunning);
    parts_->actions.preferences->setEnabled(canPlan);
    for (QAction* action : {parts_->actions.copyOccasion, parts_->actions.moveOccasion,
                            parts_->actions.deleteOccasion, parts_->actions.exportOccasion,
                            parts_->actions.addCourse, parts_->actions.layOutAnew}) {
        action->setEnabled(record != nullptr);
    }
}

void MainWindow::showClashes(const PlanPtr& plan)
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!plan || !record) {
        parts_->clashes->setRows({}, parts_->plan.faults().isEmpty()
                                         ? tr("There is nothing to judge yet.")
                                         : parts_->plan.faults());
        return;
    }
    parts_->clashes->setRows(clashRows(*plan, record->occasion, readingStyle(document_)),
                             tr("Nothing collides."));
}

void MainWindow::showSaveState()
{
    switch (document_.saveState()) {
    case SaveState::Saved:
        parts_->saved->setText(tr("saved"));
        break;
    case SaveState::Saving:
        parts_->saved->setText(tr("saving…"));
        break;
    case SaveState::Failed:
        parts_->saved->setText(tr("not saved"));
        parts_->prompts.tell(tr("The last change is not saved"), document_.saveReason());
        break;
    case SaveState::ReadOnly:
        parts_->saved->setText(tr("to look at only"));
        parts_->saved->setToolTip(document_.saveReason());
        say(document_.saveReason());
        break;
    }
}

void MainWindow::goToClash(int number)
{
    const PlanPtr& plan = parts_->plan.plan();
    if (plan && number >= 1 && static_cast<std::size_t>(number) <= plan->clashes.size()) {
        parts_->presenter->showClash(plan->clashes[static_cast<std::size_t>(number) - 1]);
    }
}

void MainWindow::putIntoCourse(const DraggedVariant& variant)
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!record || record->occasion.courses.empty()) {
        parts_->prompts.tell(tr("No course to put it in"),
                             tr("Begin an occasion, and give it a course with a serving time."));
        return;
    }
    QStringList names;
    for (const Course& course : record->occasion.courses) {
        names.push_back(QString::fromStdString(course.name));
    }
    const auto chosen =
        names.size() == 1
            ? std::optional(0)
            : parts_->prompts.choose(tr("Put it on the menu"), tr("In which course?"), names, 0);
    if (!chosen) {
        return;
    }
    if (auto drop = variantDrop(document_.library(), variant, *chosen + 1)) {
        document_.apply(std::move(drop->next), drop->text);
    }
}

void MainWindow::openRecipe(const QString& recipe)
{
    parts_->actions.showPages->setChecked(true);
    parts_->pages->showRecipe(recipe);
}

void MainWindow::newRecipe()
{
    const auto name = parts_->prompts.askText(tr("New recipe"), tr("What is it called?"), {});
    if (!name || name->trimmed().isEmpty()) {
        return;
    }
    Recipe recipe = emptyRecipe(document_.library(), name->trimmed().toStdString());
    const QString id = QString::fromStdString(recipe.id.text());
    document_.apply(withRecipe(document_.library(), std::move(recipe)),
                    tr("New recipe %1").arg(name->trimmed()));
    openRecipe(id);
}

void MainWindow::restoreSizes()
{
    const auto bytes = [this](const char* name) {
        return QByteArray::fromBase64(document_.setting(QString::fromLatin1(name)).toLatin1());
    };
    if (!restoreGeometry(bytes("window.geometry"))) {
        // Nine tenths of the screen, and no more than can be read at a glance.
        constexpr QSize most{1920, 1080};
        resize((screen()->availableSize() * 0.9).boundedTo(most).expandedTo(minimumSize()));
    }
    if (!parts_->across->restoreState(bytes("window.across"))) {
        parts_->across->setSizes({215, 800, 300});
    }
    if (!parts_->down->restoreState(bytes("window.down"))) {
        parts_->down->setSizes({560, 130});
    }
    const QString page = document_.setting(u"window.page"_s);
    if (!page.isEmpty()) {
        parts_->pages->setCurrentIndex(page.toInt());
    }
    const QString hidden = document_.setting(u"window.hidden"_s);
    parts_->actions.showRepertoire->setChecked(!hidden.contains(u"repertoire"_s));
    parts_->actions.showPages->setChecked(!hidden.contains(u"pages"_s));
    parts_->actions.showClashes->setChecked(!hidden.contains(u"clashes"_s));
}

void MainWindow::keepSizes()
{
    const auto keep = [this](const char* name, const QByteArray& bytes) {
        document_.keepSetting(QString::fromLatin1(name), QString::fromLatin1(bytes.toBase64()));
    };
    keep("window.geometry", saveGeometry());
    if (!parts_->isSmall) {
        keep("window.across", parts_->across->saveState());
        keep("window.down", parts_->down->saveState());
        QStringList hidden;
        const auto note = [&hidden](const QAction* shown, const QString& name) {
            if (!shown->isChecked()) {
                hidden.push_back(name);
            }
        };
        note(parts_->actions.showRepertoire, u"repertoire"_s);
        note(parts_->actions.showPages, u"pages"_s);
        note(parts_->actions.showClashes, u"clashes"_s);
        document_.keepSetting(u"window.hidden"_s, hidden.join(u' '));
    }
    document_.keepSetting(u"window.page"_s, QString::number(parts_->pages->currentIndex()));
}

void MainWindow::resizeEvent(QResizeEvent* event)
{
    QMainWindow::resizeEvent(event);
    giveWay();
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    keepSizes();
    if (!document_.finishSaving() &&
        !parts_->prompts.confirm(tr("The last change is not saved"), document_.saveReason(),
                                 tr("Close all the same"))) {
        event->ignore();
        return;
    }
    event->accept();
}

} // namespace suppertide::ui
