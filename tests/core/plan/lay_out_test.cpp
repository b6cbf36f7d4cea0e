// Laying out by hand: backwards from the serving line, dragging, what moves along and what stays.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::IsEmpty;

/// Roasted for an hour, rested 10 to 20 minutes, carved in ten, served at 19:30.
Supper roast()
{
    Supper supper;
    Recipe joint = recipeInOrder("Joint", {inOven("Roast the joint", 58_min, 180_degC),
                                           step("Carve the joint", 10_min, undivided)});
    joint.common.waits = {
        waitBetween("rests", "Roast the joint", "Carve the joint", 10_min, 20_min)};
    supper.serve(joint);
    return supper;
}

constexpr const char* in = "joint/*/roast-the-joint.in";
constexpr const char* roasts = "joint/*/roast-the-joint";
constexpr const char* out = "joint/*/roast-the-joint.out";
constexpr const char* carve = "joint/*/carve-the-joint";

/// A plan that is laid out and can be dragged about.
struct Dragged
{
    explicit Dragged(Supper evening) : supper(std::move(evening)), plan(supper.laidOut()) {}

    [[nodiscard]] PlanTime at(int hour, int minute) const
    {
        return plan->formulation->calendar.planTime(supper.instant(hour, minute));
    }
    [[nodiscard]] Interval from(int hour, int minute, int toHour, int toMinute) const
    {
        return {at(hour, minute), at(toHour, toMinute)};
    }
    [[nodiscard]] DragRange range(const char* task) const
    {
        return dragRange(*plan->formulation, plan->schedule, taskIndex(*plan->formulation, task));
    }
    [[nodiscard]] Interval slack(const char* task) const
    {
        return slackOf(*plan->formulation, supper.layout, plan->schedule,
                       taskIndex(*plan->formulation, task));
    }
    void move(const char* task, int hour, int minute)
    {
        Schedule moved = moveTask(*plan->formulation, supper.layout, plan->schedule,
                                  taskIndex(*plan->formulation, task), at(hour, minute));
        plan = judgePlan(plan->formulation, supper.input(), std::move(moved));
    }
    [[nodiscard]] std::string starts(const char* task) const { return startText(*plan, task); }

    Supper supper;
    PlanPtr plan;
};

TEST(LayOut, GoesBackwardsFromTheServingLineAsLateAsTiesAllow)
{
    const PlanPtr plan = roast().laidOut();
    EXPECT_EQ(startText(*plan, carve), "19:20");
    EXPECT_EQ(startText(*plan, out), "19:09");
    EXPECT_EQ(startText(*plan, roasts), "18:11");
    EXPECT_EQ(startText(*plan, in), "18:10");
    EXPECT_THAT(plan->clashes, IsEmpty());
}

TEST(LayOut, KeepsWhatTheLayoutSaysAndFillsInTheRest)
{
    Supper supper = roast();
    supper.put(roasts, 18, 6);
    const PlanPtr plan = supper.laidOut();
    EXPECT_EQ(startText(*plan, in), "18:05");
    EXPECT_EQ(startText(*plan, out), "19:04");
    EXPECT_EQ(startText(*plan, carve), "19:20");
    EXPECT_THAT(plan->clashes, IsEmpty());
}

TEST(LayOut, TakesTheMethodThatTheLayoutSays)
{
    Supper supper;
    Recipe roots = recipe("Roots", {});
    MethodChoice how{MethodChoiceId{"how"}, "how", {}};
    for (const auto& [name, minutes] : {std::pair{"oven", 40_min}, std::pair{"pan", 20_min}}) {
        Method method;
        method.id = MethodId{name};
        method.name = name;
        method.part.steps = {step("Cook the roots", minutes)};
        how.methods.push_back(method);
    }
    roots.methods = {how};
    supper.serve(roots);
    EXPECT_EQ(startText(*supper.laidOut(), "roots/oven/cook-the-roots"), "18:50");
    EXPECT_EQ(startText(*supper.laidOut(), "roots/pan/cook-the-roots"), "-");
    supper.layout.options["roots/how"] = "pan";
    EXPECT_EQ(startText(*supper.laidOut(), "roots/oven/cook-the-roots"), "-");
    EXPECT_EQ(startText(*supper.laidOut(), "roots/pan/cook-the-roots"), "19:10");
}

TEST(LayOut, ComesBackFromItsOwnLayout)
{
    const PlanPtr plan = roast().laidOut();
    Supper again = roast();
    again.layout = layoutOf(*plan->formulation, plan->schedule, again.layout);
    const PlanPtr second = again.laidOut();
    EXPECT_EQ(second->schedule.starts, plan->schedule.starts);
    EXPECT_EQ(second->schedule.programs, plan->schedule.programs);
    EXPECT_THAT(second->clashes, IsEmpty());
}

TEST(DragRange, IsHowFarAStepMovesAloneAndWithWhatIsTiedToIt)
{
    const Dragged joint(roast());
    // Alone: carved at 19:20, out 10 to 20 minutes before.
    EXPECT_EQ(joint.range(in).startsAlone, joint.from(18, 0, 18, 10));
    EXPECT_EQ(joint.range(out).startsAlone, joint.from(18, 59, 19, 9));
    EXPECT_EQ(joint.range(carve).startsAlone, joint.from(19, 20, 19, 20));
    // With all the rest moving along, back to the plan's beginning.
    EXPECT_EQ(joint.range(carve).starts.end, joint.at(19, 20));
    EXPECT_EQ(joint.range(in).starts, (Interval{planTime(0), joint.at(18, 10)}));
}

TEST(Slack, EndsWhereAClashBegins)
{
    Supper supper = roast();
    supper.serve(recipe("Salad", {step("Wash the leaves", 10_min)}));
    supper.serve(recipe("Sauce", {step("Whisk the sauce", 10_min)}));
    supper.put("salad/*/wash-the-leaves", 18, 30);
    supper.put("sauce/*/whisk-the-sauce", 18, 45);
    const Dragged dragged(supper);
    // Between the salad and the taking out at 19:09.
    EXPECT_EQ(dragged.slack("sauce/*/whisk-the-sauce"), dragged.from(18, 40, 18, 59));
    EXPECT_EQ(dragged.slack("salad/*/wash-the-leaves"), dragged.from(18, 11, 18, 35));
}

TEST(MoveTask, StretchesAWaitWithinLeastAndMost)
{
    Dragged joint(roast());
    joint.move(in, 18, 3);
    EXPECT_EQ(joint.starts(out), "19:02");
    EXPECT_EQ(joint.starts(carve), "19:20"); // seventeen minutes of rest
    EXPECT_THAT(joint.plan->clashes, IsEmpty());
}

TEST(MoveTask, TakesAlongWhatIsTiedJustSoFarAsNeeded)
{
    Dragged joint(roast());
    joint.move(in, 17, 0);
    EXPECT_EQ(joint.starts(out), "17:59");
    EXPECT_EQ(joint.starts(carve), "18:20"); // the twenty minutes that it may rest
    EXPECT_THAT(joint.plan->clashes, IsEmpty());
    joint.move(carve, 18, 0);
    EXPECT_EQ(joint.starts(carve), "18:00");
    EXPECT_EQ(joint.starts(out), "17:49");
    EXPECT_THAT(joint.plan->clashes, IsEmpty());
}

TEST(MoveTask, MovesInAndOutWithTheOvenTimeBetween)
{
    Dragged joint(roast());
    joint.move(roasts, 18, 5);
    EXPECT_EQ(joint.starts(in), "18:04");
    EXPECT_EQ(joint.starts(out), "19:03");
}

TEST(MoveTask, LeavesWhatIsPinnedAndShowsTheClash)
{
    Supper supper = roast();
    supper.pin(carve, 19, 20);
    Dragged joint(supper);
    joint.move(in, 17, 30);
    EXPECT_EQ(joint.starts(carve), "19:20");
    EXPECT_THAT(sentencesOf(*joint.plan, supper.occasion),
                testing::ElementsAre("The joint has 50 min for “rests”, from 18:30 to 19:20; it "
                                     "should be 20 min at most."));
}

TEST(MoveTask, BeyondTheServingLineShowsThatItIsLate)
{
    Dragged joint(roast());
    joint.move(carve, 19, 25);
    EXPECT_THAT(sentencesOf(*joint.plan, joint.supper.occasion),
                testing::Contains("The main is to be served at 19:30 and is 5 min late: “Carve the "
                                  "joint”."));
}

TEST(MoveTask, DerivesTheOvensProgramAnew)
{
    Dragged joint(roast());
    const auto firstOn = [&] {
        const OvenProgram& program = joint.plan->schedule.programs[OvenIndex{0}];
        return program.empty() ? PlanTime{} : program.front().at;
    };
    // From 20 °C to 180 °C at 10 °C a minute: on sixteen minutes before.
    EXPECT_EQ(firstOn(), joint.at(17, 54));
    joint.move(in, 18, 0);
    EXPECT_EQ(firstOn(), joint.at(17, 44));
}

} // namespace

} // namespace suppertide::test
