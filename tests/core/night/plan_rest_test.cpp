// What is left of an evening, planned anew on the night: on the demo, with reports of all kinds.
#include <gmock/gmock.h>

#include "core/check/check.h"
#include "core/wording/night_words.h"
#include "tests/core/night/demo_night.h"
#include "tests/support/supper/supper.h"

namespace suppertide {
namespace {

using test::demoNight;
using test::forEachSeed;
using test::Night;
using test::Random;
using testing::HasSubstr;
using testing::IsEmpty;

std::string brokenIn(const Plan& plan)
{
    std::string names;
    for (const Broken& broken : check(plan.formulation->problem, plan.schedule)) {
        names += broken.name() + " ";
    }
    return names;
}

const RestPlan& found(const RestOutcome& outcome)
{
    if (const auto* none = std::get_if<NoRest>(&outcome)) {
        throw std::runtime_error("no plan of the rest: " + brokenIn(*none->plan));
    }
    return std::get<RestPlan>(outcome);
}

/// Every 97 minutes: at any hour of the days, in the middle of steps and between them.
TEST(PlanRest, MovesNothingWhileNothingIsLate)
{
    const Night night = demoNight();
    ASSERT_TRUE(night.plan->holds());
    const PlanCalendar& calendar = night.plan->formulation->calendar;
    for (PlanTime at = planTime(0); at < night.plan->formulation->problem.horizon;
         at += Minutes{97}) {
        Night then = night;
        then.goTo(calendar.instant(at));
        const RestOutcome outcome = then.carriedOn();
        const auto* on = std::get_if<RestPlan>(&outcome);
        ASSERT_NE(on, nullptr) << toIso(then.now) << " breaks "
                               << brokenIn(*std::get<NoRest>(outcome).plan);
        EXPECT_THAT(movesOf(on->rest, on->plan->schedule), IsEmpty()) << toIso(then.now);
        EXPECT_TRUE(on->rest.passed.empty()) << passedText(on->rest);
    }
}

TEST(PlanRest, FindsAPlanThatHoldsWhateverIsReported)
{
    forEachSeed(40, [&](Random& random) {
        Night night = demoNight();
        night.now = night.at(12) + Minutes{random.between(0, 600)};
        reportAtRandom(night, random);
        const RestOutcome outcome = night.planned();
        if (const auto* none = std::get_if<NoRest>(&outcome)) {
            // Only where it is proven that hands or windows do not suffice, whatever gives way.
            EXPECT_THAT(none->conflict, testing::Not(IsEmpty())) << brokenIn(*none->plan);
            return;
        }
        EXPECT_EQ(brokenIn(*found(outcome).plan), "") << toIso(night.now);
    });
}

TEST(PlanRest, NeverMovesWhatIsDoneOrUnderWay)
{
    forEachSeed(30, [&](Random& random) {
        Night night = demoNight();
        night.now = night.at(14) + Minutes{random.between(0, 400)};
        reportAtRandom(night, random);
        const RestOutcome outcome = night.planned();
        const auto* plan = std::get_if<RestPlan>(&outcome);
        if (plan == nullptr) {
            return;
        }
        const RestOfEvening& rest = plan->rest;
        const Layout next = layoutWith(rest, plan->plan->schedule);
        for (const auto& [id, report] : night.progress.steps) {
            const TaskIndex task = rest.whole->taskById.at(id);
            if (report.started && rest.facts.steps[task].isBegun()) {
                EXPECT_EQ(next.starts.at(id), *report.started) << id;
            }
            const auto left = rest.inRest[task];
            EXPECT_EQ(rest.facts.steps[task].state == StepState::Done && left, false) << id;
            if (!left || rest.facts.steps[task].state != StepState::UnderWay) {
                continue;
            }
            EXPECT_EQ(plan->plan->schedule.starts[*left], planTime(0)) << id;
        }
    });
}

TEST(PlanRest, KeepsTheCooksTheUnitsAndTheOvenOfAStepUnderWay)
{
    const Night before = demoNight();
    int kept = 0;
    for (int minute = 0; minute < 360; minute += 7) {
        Night night = before;
        night.goTo(night.at(14) + Minutes{minute});
        // Late by a good deal, so that all is planned anew.
        const Progress asPlanned = night.progress;
        for (const auto& [id, report] : asPlanned.steps) {
            if (report.started && !report.done) {
                night.progress = withLate(std::move(night.progress), *night.plan, night.task(id),
                                          Minutes{18}, night.now);
            }
        }
        const RestOutcome outcome = night.planned();
        const auto* plan = std::get_if<RestPlan>(&outcome);
        if (plan == nullptr) {
            continue;
        }
        const Formulation& rest = *plan->plan->formulation;
        const Schedule& schedule = plan->plan->schedule;
        for (const auto& [id, report] : night.progress.steps) {
            const auto task = rest.taskById.find(id);
            if (!report.started || report.done || task == rest.taskById.end()) {
                continue;
            }
            std::vector<std::string> cooks;
            for (const CookIndex cook : schedule.cooks[task->second]) {
                cooks.push_back(rest.problem.cooks[cook].id);
            }
            std::vector<std::string> wanted = report.cooks;
            std::ranges::sort(cooks);
            std::ranges::sort(wanted);
            EXPECT_EQ(cooks, wanted) << id;
            kept += cooks.empty() ? 0 : 1;
            for (const DemandIndex demand : rest.problem.demands.indices()) {
                const auto unit = report.units.find(rest.problem.demands[demand].id);
                if (unit != report.units.end() && schedule.units[demand]) {
                    EXPECT_EQ(rest.problem.pools[*rest.problem.demands[demand].pool]
                                  .units[*schedule.units[demand]]
                                  .id,
                              unit->second);
                }
            }
            for (const OvenDemandIndex demand : rest.problem.ovenDemands.indices()) {
                const auto oven = report.ovens.find(rest.problem.ovenDemands[demand].id);
                if (oven != report.ovens.end() && schedule.ovens[demand]) {
                    EXPECT_EQ(rest.problem.ovens[*schedule.ovens[demand]].id, oven->second);
                }
            }
        }
    }
    EXPECT_GT(kept, 10) << "the evening has too little under way to show anything";
}

TEST(PlanRest, MovesOnlyWhatTwelveMinutesPush)
{
    Night night = demoNight();
    const std::string slicing = "gratin/*/slice";
    night.goTo(night.planned(slicing) + Minutes{1});
    night.progress = withLate(std::move(night.progress), *night.plan, night.task(slicing),
                              Minutes{12}, night.now);
    const RestOutcome outcome = night.planned();
    const RestPlan& plan = found(outcome);
    EXPECT_TRUE(plan.givingWay.isNone());
    const auto moves = movesOf(plan.rest, plan.plan->schedule);
    EXPECT_LE(moves.size(), 5U);
    const std::string words = changesText(plan.rest, *plan.plan);
    EXPECT_THAT(words, HasSubstr("later"));
    EXPECT_THAT(words, HasSubstr("Serving stays 19:30, 19:55, 20:30 and 21:20."));
}

/// Steps that somebody else does now.
std::vector<std::string> handedOver(const RestPlan& plan, const Plan& before)
{
    const Formulation& rest = *plan.plan->formulation;
    std::vector<std::string> result;
    for (const auto& [id, task] : rest.taskById) {
        const auto was = before.formulation->taskById.find(id);
        if (was != before.formulation->taskById.end() &&
            plan.plan->schedule.cooks[task] != before.schedule.cooks[was->second]) {
            result.push_back(id);
        }
    }
    return result;
}

TEST(PlanRest, HandsOverOnlyWhatItsCookCannotDoAndSaysSo)
{
    // Maren's shower takes longer and longer, until what she was to do then is too late for her.
    const std::string shower = "job/shower";
    for (Minutes late{12}; late <= Minutes{60}; late += Minutes{4}) {
        Night night = demoNight();
        night.goTo(night.planned(shower) + Minutes{5});
        night.progress = withCooks(std::move(night.progress), *night.plan);
        night.progress =
            withLate(std::move(night.progress), *night.plan, night.task(shower), late, night.now);
        const RestOutcome outcome = night.planned();
        const RestPlan& plan = found(outcome);
        const auto others = handedOver(plan, *night.plan);
        if (!others.empty()) {
            EXPECT_EQ(others.size(), 1U) << "one is enough, " << late.count() << " min late";
            EXPECT_THAT(changesText(plan.rest, *plan.plan), HasSubstr("is for Jory now."));
            return;
        }
    }
    ADD_FAILURE() << "an hour changes nothing";
}

TEST(PlanRest, MissesTheHoursOfAHouseJobRatherThanFindNothing)
{
    // Sweeping goes on until 18:32; laying the table was to be from 18:20 to 18:40, by the one
    // cook.
    test::Supper supper;
    supper.serve(test::recipeInOrder("Salad", {test::step("Toss", Minutes{5})}));
    const CivilDate day = supper.occasion.courses.front().serving.date;
    for (const auto& [name, from] : {std::pair{"sweep", 0}, std::pair{"lay", 20}}) {
        HouseJob job;
        job.id = HouseJobId{name};
        job.name = name;
        job.duration = Minutes{20};
        job.attention = undivided;
        job.earliest = {day, {18, from}};
        job.latest = {day, {18, from + 20}};
        supper.occasion.houseJobs.push_back(job);
    }
    const PlanPtr before = supper.laidOut();
    const TaskIndex sweep = test::taskIndex(*before->formulation, "job/sweep");
    RestRequest request;
    request.input = supper.input();
    request.now = supper.instant(18, 5);
    request.progress = withStarted({}, *before, sweep, supper.instant(18, 0));
    request.progress =
        withLate(std::move(request.progress), *before, sweep, Minutes{12}, request.now);
    request.limits.steps = 20'000;
    const auto outcome = planRest(request);
    ASSERT_TRUE(outcome) << outcome.error().forCook;
    const RestPlan& plan = found(*outcome);
    EXPECT_THAT(plan.givingWay.givenUp, testing::ElementsAre("window:job/lay"));
    const Formulation& rest = *plan.plan->formulation;
    EXPECT_EQ(rest.calendar.instant(*plan.plan->schedule.starts[rest.taskById.at("job/lay")]),
              supper.instant(18, 32));
}

// Walnuts and leaves for somebody who must not have any: each has a bowl of its own, but the cook
// took the other one. What was reported may not make the rest impossible.
TEST(PlanRest, TakesAnyBowlWhereItsOwnIsInUse)
{
    test::Supper supper;
    supper.addCook("Jory");
    supper.kitchen.vessels = {
        {KitchenItemId{"bowl"}, "Bowl", "bowl", decilitres(30), centimetres(20), 2}};
    const GuestId max = supper.addGuest("Max").id;
    const GuestId fay = supper.addGuest("Fay", {Substance::Walnut}).id;
    for (const auto& [name, deed, substance, guest] :
         {std::tuple{"Brittle", "Crush", Substance::Walnut, max},
          std::tuple{"Salad", "Dress", Substance::Mustard, fay}}) {
        Recipe recipe =
            test::recipe(name, {test::with(test::step(deed, Minutes{60}),
                                           VesselUse{"bowl", decilitres(30), 1, Minutes{0}})});
        recipe.common.lines = {test::ingredient("what is in it", {substance})};
        supper.serve(recipe, 1).mix.front().guests = {guest};
    }
    supper.put("brittle/*/crush", 18, 0);
    supper.put("salad/*/dress", 18, 20);
    const PlanPtr before = supper.laidOut();
    const Formulation& whole = *before->formulation;
    const DemandIndex own = test::demandIndex(whole, "salad/*/dress:bowl");
    ASSERT_TRUE(whole.problem.demands[own].units);
    const UnitIndex salads = whole.problem.demands[own].units->front();
    RestRequest request;
    request.input = supper.input();
    request.now = supper.instant(18, 5);
    request.progress =
        withStarted({}, *before, test::taskIndex(whole, "brittle/*/crush"), supper.instant(18, 0));
    request.progress.steps.at("brittle/*/crush").units["brittle/*/crush:bowl"] =
        whole.problem.pools[*whole.problem.demands[own].pool].units[salads].id;
    request.limits.steps = 20'000;
    const auto outcome = planRest(request);
    ASSERT_TRUE(outcome) << outcome.error().forCook;
    const Plan& plan = *found(*outcome).plan;
    EXPECT_EQ(brokenIn(plan), "");
    const DemandIndex left = test::demandIndex(*plan.formulation, "salad/*/dress:bowl");
    EXPECT_NE(plan.schedule.units[left], salads);
}

TEST(PlanRest, ServesLaterRatherThanNotAtAll)
{
    // The gratin takes longer and longer, until it cannot be ready when the main course is set.
    const std::string gratin = "gratin/*/bake";
    for (Minutes late{2}; late <= Minutes{60}; late += Minutes{2}) {
        Night night = demoNight();
        night.goTo(night.planned(gratin) + Minutes{20});
        night.progress =
            withLate(std::move(night.progress), *night.plan, night.task(gratin), late, night.now);
        const RestOutcome outcome = night.planned();
        const RestPlan& plan = found(outcome);
        if (!plan.givingWay.isNone()) {
            EXPECT_GT(plan.givingWay.servingLater, Minutes{0}) << late.count() << " min late";
            EXPECT_THAT(plan.givingWay.givenUp, IsEmpty());
            EXPECT_THAT(givingWayText(*plan.rest.whole, plan.givingWay),
                        HasSubstr("served later than set"));
            EXPECT_THAT(changesText(plan.rest, *plan.plan), HasSubstr(": served at"));
            return;
        }
    }
    ADD_FAILURE() << "an hour changes nothing";
}

TEST(PlanRest, StopsWhenAsked)
{
    Night night = demoNight();
    night.goTo(night.at(17));
    night.progress = withLate(std::move(night.progress), *night.plan, night.task("roots/*/peel"),
                              Minutes{12}, night.now);
    std::stop_source source;
    source.request_stop();
    const auto outcome = planRest(night.request(), source.get_token());
    ASSERT_TRUE(outcome);
    EXPECT_FALSE(std::holds_alternative<NoRest>(*outcome));
}

} // namespace
} // namespace suppertide
