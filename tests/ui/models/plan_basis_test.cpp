// A plan that was made from another evening than there is now says so, and what has changed.
#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/models/edit.h"
#include "ui/models/layout_edits.h"
#include "ui/models/plan_basis.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

class PlanBasis : public testing::Test
{
protected:
    PlanBasis()
        : planned_(takePlan(evening_.library, *evening_.plan, QStringLiteral("Make plan")).next)
    {}

    template <typename Change>
    [[nodiscard]] QStringList after(const Change& change) const
    {
        return changedSincePlanned(withOccasion(planned_, change));
    }

    LaidOut evening_{demoLibrary()};
    LibraryState planned_;
};

TEST_F(PlanBasis, OfAPlanJustTakenIsTheEveningAsItIs)
{
    EXPECT_EQ(changedSincePlanned(planned_), QStringList{});
}

TEST_F(PlanBasis, OfWhatWasLaidOutByHandIsNothing)
{
    const LibraryState byHand = layOutAnew(planned_).next;
    EXPECT_EQ(changedSincePlanned(
                  withOccasion(byHand, [](Occasion& occasion) { occasion.guests.pop_back(); })),
              QStringList{});
}

TEST_F(PlanBasis, TellsWhatHasChanged)
{
    EXPECT_EQ(after([](Occasion& occasion) { occasion.guests.pop_back(); }),
              QStringList{"the guests"});
    EXPECT_EQ(
        after([](Occasion& occasion) { occasion.preferences.caution = CautionLevel::Careful; }),
        QStringList{"the durations to plan with"});
    EXPECT_EQ(after([](Occasion& occasion) { occasion.preferences.calm = 0; }),
              QStringList{"your preferences"});
    EXPECT_EQ(after([](Occasion& occasion) {
                  occasion.courses[0].serving.clock = {19, 0};
              }),
              QStringList{"the course “" +
                          QString::fromStdString(evening_.occasion().courses[0].name) + "”"});
    EXPECT_EQ(after([](Occasion& occasion) { occasion.houseJobs.clear(); }),
              QStringList{"the house jobs and trips"});
    Kitchen kitchen = *openKitchen(planned_);
    kitchen.ovens.front().name += " (new)";
    EXPECT_EQ(changedSincePlanned(withKitchen(planned_, kitchen)), QStringList{"the kitchen"});
}

TEST_F(PlanBasis, DoesNotHangOnNotesAndNamesOfTheEvening)
{
    EXPECT_EQ(after([](Occasion& occasion) {
                  occasion.note = "Candles";
                  occasion.name = "Supper";
              }),
              QStringList{});
}

TEST_F(PlanBasis, DoesNotHangOnWhereStepsWereMoved)
{
    const LaidOut planned(planned_);
    const TaskIndex task = planned.plan->formulation->taskById.begin()->second;
    const Edit edit = togglePin(planned_, *planned.plan, task);
    EXPECT_EQ(changedSincePlanned(edit.next), QStringList{});
}

TEST_F(PlanBasis, IsSaidInOneSentence)
{
    EXPECT_EQ(staleText({}), QString());
    EXPECT_EQ(staleText({"the guests"}), "Out of date: planned before the guests changed.");
    EXPECT_EQ(staleText({"the guests", "the kitchen"}),
              "Out of date: planned before the guests and the kitchen changed.");
    EXPECT_EQ(staleText({"the guests", "the kitchen", "your preferences"}),
              "Out of date: planned before the guests, the kitchen and more changed.");
}

} // namespace
} // namespace suppertide::ui
