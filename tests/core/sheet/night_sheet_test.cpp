// What each cook reads on the night, on the demo's evening.
#include <gmock/gmock.h>

#include "core/sheet/night_sheet.h"
#include "tests/core/sheet/demo_evening.h"

namespace suppertide {
namespace {

using testing::Contains;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class NightSheetTest : public testing::Test
{
protected:
    NightSheetTest()
    {
        static const test::DemoEvening evening = test::planned("midsummer-supper");
        plan_ = evening.plan;
        input_ = evening.input;
        input_.layout = std::make_shared<const Layout>(
            layoutOf(*plan_->formulation, plan_->schedule, *evening.input.layout));
    }

    [[nodiscard]] TaskIndex task(const std::string& id) const
    {
        return plan_->formulation->taskById.at(id);
    }
    [[nodiscard]] Instant planned(const std::string& id) const
    {
        return plan_->formulation->calendar.instant(plan_->interval(task(id))->start);
    }
    void goTo(Instant now)
    {
        now_ = now;
        progress_ = asPlannedUntil(std::move(progress_), *plan_, now);
    }
    [[nodiscard]] NightSheet sheet() const
    {
        const auto rest = restOfEvening(input_, progress_, now_);
        EXPECT_TRUE(rest) << rest.error().forCook;
        const PlanPtr plan = judgePlan(rest->formulation, input_, carriedOn(*rest));
        return nightSheet(*rest, plan, input_);
    }
    /// The line of that task, wherever it stands.
    [[nodiscard]] static std::optional<NightLine> lineOf(const NightSheet& sheet,
                                                         const std::string& task)
    {
        std::vector<NightLine> all = sheet.byThemselves;
        for (const NightCook& cook : sheet.cooks) {
            all.insert(all.end(), cook.now.begin(), cook.now.end());
            all.insert(all.end(), cook.next.begin(), cook.next.end());
        }
        const auto found = std::ranges::find(all, task, &NightLine::task);
        return found == all.end() ? std::nullopt : std::optional(*found);
    }

    PlanPtr plan_;
    PlanInput input_;
    Progress progress_;
    Instant now_;
};

TEST_F(NightSheetTest, SaysWhatEachCookDoesNowAndNext)
{
    const std::string slicing = "gratin/*/slice";
    goTo(planned(slicing) + Minutes{5});
    const NightSheet night = sheet();
    ASSERT_EQ(night.cooks.size(), 2U);
    const auto line = lineOf(night, slicing);
    ASSERT_TRUE(line);
    EXPECT_EQ(line->state, LineState::UnderWay);
    EXPECT_THAT(line->when, HasSubstr("until "));
    EXPECT_THAT(line->amounts, Not(IsEmpty()));
    EXPECT_EQ(line->late, "");
    for (const NightCook& cook : night.cooks) {
        EXPECT_LE(cook.next.size(), 3U);
    }
}

TEST_F(NightSheetTest, SaysHowLateWhatNobodyHasBegunIs)
{
    const std::string slicing = "gratin/*/slice";
    goTo(planned(slicing) - Minutes{1});
    now_ += Minutes{8};
    const auto line = lineOf(sheet(), slicing);
    ASSERT_TRUE(line);
    EXPECT_EQ(line->state, LineState::Due);
    EXPECT_EQ(line->late, "7 min late");
    EXPECT_THAT(sheet().mostLate, HasSubstr("late"));
}

TEST_F(NightSheetTest, ShowsWhatIsInTheOvenAndUntilWhen)
{
    goTo(planned("gratin/*/bake") + Minutes{30});
    const auto line = lineOf(sheet(), "gratin/*/bake");
    ASSERT_TRUE(line);
    EXPECT_EQ(line->state, LineState::UnderWay);
    EXPECT_THAT(line->when, HasSubstr("until "));
}

TEST_F(NightSheetTest, SaysTheDangersOfAStepWithIt)
{
    for (const TaskIndex task : plan_->formulation->tasks.indices()) {
        const TaskSource& source = plan_->formulation->tasks[task];
        if (source.cautions.empty() || !plan_->interval(task) ||
            !plan_->formulation->problem.tasks[task].needsCooks()) {
            continue;
        }
        const std::string& id = plan_->formulation->problem.tasks[task].id;
        progress_ = {};
        goTo(planned(id));
        const auto line = lineOf(sheet(), id);
        ASSERT_TRUE(line) << id;
        EXPECT_THAT(line->cautions, Contains(std::string(cautionText(source.cautions.front()))))
            << id;
    }
}

TEST_F(NightSheetTest, MindsTheGuestsWhenTheirPlatesAreNext)
{
    const Instant tartlets = planned("serve/tartlets");
    goTo(tartlets - Minutes{40});
    EXPECT_THAT(sheet().notes, Not(Contains(HasSubstr("Bea"))));
    goTo(tartlets - Minutes{10});
    EXPECT_THAT(sheet().notes, Contains(HasSubstr("Bea")));
}

TEST_F(NightSheetTest, CanBeReadAloud)
{
    goTo(planned("gratin/*/slice") + Minutes{5});
    const std::string text = toText(sheet());
    EXPECT_THAT(text, HasSubstr("Maren. Now: "));
    EXPECT_THAT(text, HasSubstr("Next: "));
    EXPECT_THAT(text, HasSubstr("Serve the soup, at 19:30, in "));
}

} // namespace
} // namespace suppertide
