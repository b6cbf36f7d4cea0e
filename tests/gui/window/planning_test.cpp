// Planning beside the user: the rest again after a step is let go, what is offered, taken and left,
// a plan that is out of date, and preferences by keyboard.
#include <QAction>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QSlider>

#include "core/plan/live_plan.h"
#include "tests/gui/window/open_window.h"
#include "ui/document/open_plan.h"
#include "ui/models/drag_scene.h"
#include "ui/models/layout_edits.h"
#include "ui/models/occasion_edits.h"
#include "ui/window/plan_strip.h"

namespace suppertide::ui {
namespace {

using test::OpenWindow;

constexpr int longEnough = 20'000; // ms, on a slow machine

class PlanningInWindow : public OpenWindow
{
protected:
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {})
    {
        QTest::keyClick(window_->windowHandle(), key, modifiers);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] PlanStrip& strip() const { return part<PlanStrip>(QStringLiteral("planStrip")); }
    [[nodiscard]] QPushButton& button(const char* name) const
    {
        return part<QPushButton>(QString::fromLatin1(name));
    }
    /// In the status bar.
    [[nodiscard]] QString said() const { return part<QLabel>(QStringLiteral("said")).text(); }
    [[nodiscard]] bool waitForOffer() const
    {
        return QTest::qWaitFor([&] { return button("takeOffer").isVisible(); }, longEnough);
    }
    void click(QPushButton& button)
    {
        QTest::mouseClick(window_->windowHandle(), Qt::LeftButton, {},
                          button.mapTo(window_.get(), button.rect().center()));
    }
    /// With the roots on the menu too, and a plan for both.
    void planBoth()
    {
        auto drop = variantDrop(document_->library(), {QStringLiteral("roots"), thyme()}, 1);
        ASSERT_TRUE(drop);
        document_->apply(std::move(drop->next), drop->text);
        ASSERT_FALSE(clashes().isEmpty());
        key(Qt::Key_M, Qt::ControlModifier);
        ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }, longEnough));
        key(Qt::Key_Escape); // no better one is wanted
        key(Qt::Key_Escape);
        ASSERT_EQ(strip().content().state, StripState::Plain);
    }
    [[nodiscard]] QString thyme() const
    {
        const auto& recipe = *document_->library().recipes.at(RecipeId{"roots"});
        return QString::fromStdString(recipe.variants.front().id.text());
    }
    /// As late as it can be without colliding.
    void putOff(const char* step)
    {
        const auto input = planInputOf(document_->library());
        const PlanPtr now = laidOutPlan(*input, 0).value();
        const TaskIndex task = *findTask(*now, step);
        LivePlan live(now, *input);
        PlanTime start = now->interval(task)->start;
        while (live.move(task, start + 1_min).empty()) {
            start += 1_min;
        }
        Edit edit = moveStep(document_->library(), *now, task, start);
        document_->apply(std::move(edit.next), edit.text);
    }
    /// Both as late as can be, the gratin right before the roots.
    void putOffBoth()
    {
        putOff("roots/*/roast");
        putOff("gratin/*/bake");
        ASSERT_TRUE(clashes().isEmpty());
    }
    /// Moves the roots a little earlier, so that the gratin is in their way.
    void moveRootsOntoGratin()
    {
        timeline().setFocus();
        timeline().showTask(QStringLiteral("roots/*/roast"));
        key(Qt::Key_Left, Qt::AltModifier);
    }
    [[nodiscard]] Instant startOf(const char* step) const
    {
        return openOccasion(document_->library())->layout.starts.at(step);
    }
};

TEST_F(PlanningInWindow, ShowsAsManyFiguresAsThereIsRoomFor)
{
    planBoth();
    const auto shown = [&] {
        const auto texts = strip().findChildren<QLabel*>();
        return std::ranges::count_if(texts, [&](const QLabel* text) {
            return text->objectName().isEmpty() && text->isVisible() && !text->text().isEmpty();
        });
    };
    const auto all = static_cast<std::ptrdiff_t>(2 * strip().content().cells.size());
    ASSERT_GT(all, 0);
    strip().resize(1600, strip().height());
    EXPECT_EQ(shown(), all);
    strip().resize(420, strip().height());
    EXPECT_GT(shown(), 0);
    EXPECT_LT(shown(), all);
    strip().resize(1600, strip().height());
    EXPECT_EQ(shown(), all);
    StripContent content = strip().content();
    for (FigureCell& cell : content.cells) {
        cell.offered = cell.now;
    }
    strip().show(content);
    strip().resize(2400, strip().height()); // each figure is there twice
    EXPECT_EQ(shown(), all) << "what an offer changes is shown beside what there is";
}

TEST_F(PlanningInWindow, OffersToPlanTheRestAgainWhenAStepLetGoCollides)
{
    planBoth();
    putOffBoth();
    moveRootsOntoGratin();
    ASSERT_FALSE(clashes().isEmpty());
    const LibraryState dropped = document_->library();
    const int changes = document_->undoStack().count();
    ASSERT_TRUE(waitForOffer());
    // Offered, not done.
    EXPECT_EQ(document_->library(), dropped);
    EXPECT_EQ(document_->undoStack().count(), changes);
    EXPECT_TRUE(strip().sentence().contains(QStringLiteral("nothing collides any more")))
        << strip().sentence().toStdString();
    const Instant roast = startOf("roots/*/roast");

    key(Qt::Key_T, Qt::ControlModifier);
    EXPECT_EQ(clashes(), QStringList{});
    EXPECT_EQ(document_->undoStack().undoText(), QStringLiteral("Plan the rest again"));
    EXPECT_FALSE(button("takeOffer").isVisible());
    EXPECT_EQ(startOf("roots/*/roast"), roast);
    EXPECT_TRUE(openOccasion(document_->library())->layout.pinned.empty());

    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(document_->library(), dropped);
    EXPECT_FALSE(clashes().isEmpty());
    EXPECT_EQ(strip().content().state, StripState::Plain); // Undo does not ask to be undone
}

TEST_F(PlanningInWindow, TakesAnOfferByEnterOnItsButton)
{
    planBoth();
    putOffBoth();
    moveRootsOntoGratin();
    ASSERT_TRUE(waitForOffer());
    button("takeOffer").setFocus(Qt::TabFocusReason);
    key(Qt::Key_Return);
    EXPECT_EQ(clashes(), QStringList{});
}

TEST_F(PlanningInWindow, LeavesAnOfferByEscape)
{
    planBoth();
    putOffBoth();
    moveRootsOntoGratin();
    const LibraryState dropped = document_->library();
    ASSERT_TRUE(waitForOffer());
    key(Qt::Key_Escape);
    key(Qt::Key_Escape); // the first one ends a search that still goes on
    EXPECT_FALSE(button("takeOffer").isVisible());
    EXPECT_TRUE(said().startsWith(QStringLiteral("Left as it is."))) << said().toStdString();
    EXPECT_EQ(document_->library(), dropped);
}

TEST_F(PlanningInWindow, MovesNothingWhenNothingCollides)
{
    planBoth();
    const QPoint bake = onBlock("gratin/*/bake");
    drag(bake, bake - QPoint{pixels(Minutes{20}), 0});
    ASSERT_TRUE(clashes().isEmpty());
    EXPECT_FALSE(button("stopSearch").isVisible());
    EXPECT_EQ(strip().content().state, StripState::Plain);
}

TEST_F(PlanningInWindow, TakesTheRestAtOnceAsOneChangeIfAskedTo)
{
    planBoth();
    putOffBoth();
    part<QAction>(QStringLiteral("letGoTake")).trigger();
    const LibraryState before = document_->library();
    const int changes = document_->undoStack().count();
    moveRootsOntoGratin();
    ASSERT_FALSE(clashes().isEmpty());
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }, longEnough));
    EXPECT_EQ(document_->undoStack().undoText(),
              QStringLiteral("Move: roast roast roots, and the rest"));
    // One Undo takes back both.
    EXPECT_EQ(document_->undoStack().count(), changes + 1);
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(document_->library(), before);
}

TEST_F(PlanningInWindow, EndsASearchByEscape)
{
    auto drop = variantDrop(document_->library(), {QStringLiteral("roots"), thyme()}, 1);
    ASSERT_TRUE(drop);
    document_->apply(std::move(drop->next), drop->text);
    key(Qt::Key_M, Qt::ControlModifier);
    EXPECT_EQ(button("makePlan").text(), QStringLiteral("Stop planning"));
    key(Qt::Key_Escape);
    const LibraryState before = document_->library();
    EXPECT_EQ(button("makePlan").text(), QStringLiteral("Make plan"));
    EXPECT_TRUE(said().startsWith(QStringLiteral("Planning has ended."))) << said().toStdString();
    QTest::qWait(50); // what the stopped search still says is not heard
    EXPECT_EQ(document_->library(), before);
}

TEST_F(PlanningInWindow, SaysThatAPlanIsOutOfDate)
{
    planBoth();
    document_->apply(withOccasion(document_->library(),
                                  [](Occasion& occasion) {
                                      occasion.preferences.caution = CautionLevel::VeryCareful;
                                  }),
                     QStringLiteral("Change the durations"));
    EXPECT_EQ(strip().content().state, StripState::Stale);
    EXPECT_TRUE(strip().sentence().contains(QStringLiteral("durations")));
    EXPECT_TRUE(button("planAnew").isVisible());

    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(strip().content().state, StripState::Plain);
    EXPECT_FALSE(button("planAnew").isVisible());

    key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_EQ(strip().content().state, StripState::Stale);
    // It is known after a restart too.
    close();
    open();
    ASSERT_EQ(strip().content().state, StripState::Stale);
    click(button("planAnew"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return clashes().isEmpty(); }, longEnough));
    key(Qt::Key_Escape);
    key(Qt::Key_Escape);
    EXPECT_EQ(strip().content().state, StripState::Plain);
}

TEST_F(PlanningInWindow, GoesToTheNamedPlacesByKeyboard)
{
    auto& slider = part<QSlider>(QStringLiteral("calm"));
    const auto calm = [&] {
        return document_->library().occasions.at(OccasionId{"supper"})->occasion.preferences.calm;
    };
    const int before = calm();
    slider.setFocus(Qt::TabFocusReason);
    key(Qt::Key_PageUp);
    EXPECT_EQ(calm(), 90);
    EXPECT_EQ(document_->undoStack().undoText(), QStringLiteral("Prefer sitting with the guests"));
    EXPECT_EQ(button("preferences").text(), QStringLiteral("sitting with the guests"));
    key(Qt::Key_PageDown);
    EXPECT_EQ(calm(), 50);
    key(Qt::Key_PageDown);
    EXPECT_EQ(calm(), 10);
    for (int i = 0; i < 3; ++i) {
        key(Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(calm(), before);
}

TEST_F(PlanningInWindow, KeepsWhatIsWishedForWithTheEvening)
{
    const auto choose = [&](const char* menu, int grade) {
        part<QMenu>(QString::fromLatin1(menu)).actions().at(grade)->trigger();
    };
    choose("fewOvenChanges", 2);
    choose("stayClose", 0);
    const LibraryState left = document_->library();
    const Preferences& wished = left.occasions.at(OccasionId{"supper"})->occasion.preferences;
    EXPECT_EQ(wished.fewOvenChanges, Wish::Much);
    EXPECT_EQ(wished.stayClose, Wish::None);
    close();
    open();
    EXPECT_EQ(differenceOf(left, document_->library(), {}).parts.size(), 0U);
    EXPECT_TRUE(part<QMenu>(QStringLiteral("fewOvenChanges")).actions().at(2)->isChecked());
}

} // namespace
} // namespace suppertide::ui
