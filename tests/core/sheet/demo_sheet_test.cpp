// What holds of every sheet, on the demo's evenings: nothing to do is missing or stands twice, time
// goes forwards, knobs are turned in time, and the text fits its paper.
#include <gmock/gmock.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"
#include "core/sheet/per_hour_plan.h"
#include "tests/core/sheet/demo_evening.h"

namespace suppertide {
namespace {

using testing::HasSubstr;
using testing::Not;

class DemoSheet : public testing::TestWithParam<const char*>
{
protected:
    static const test::DemoEvening& evening(const std::string& name)
    {
        static std::map<std::string, test::DemoEvening> made;
        const auto known = made.find(name);
        if (known != made.end()) {
            return known->second;
        }
        const bool isByHand = name.ends_with(" by hand");
        const std::string occasion = isByHand ? name.substr(0, name.find(' ')) : name;
        return made.emplace(name, isByHand ? test::laidOut(occasion) : test::planned(occasion))
            .first->second;
    }

    void SetUp() override
    {
        plan = evening(GetParam()).plan;
        sheet = perHourPlan(plan, evening(GetParam()).input);
    }

    [[nodiscard]] std::vector<SheetHour> hours() const
    {
        std::vector<SheetHour> all;
        for (const SheetDay& day : sheet.days) {
            all.insert(all.end(), day.hours.begin(), day.hours.end());
        }
        return all;
    }

    [[nodiscard]] std::vector<SheetOvenTurn> turns() const
    {
        std::vector<SheetOvenTurn> all;
        for (const SheetHour& hour : hours()) {
            all.insert(all.end(), hour.ovenTurns.begin(), hour.ovenTurns.end());
        }
        return all;
    }

    /// Whether something starts at a minute, of that recipe if one is named.
    [[nodiscard]] bool isStartOf(PlanTime at, const std::optional<RecipeId>& recipe) const
    {
        for (const TaskIndex task : plan->formulation->tasks.indices()) {
            const auto when = plan->interval(task);
            if (when && when->start == at &&
                (!recipe || plan->formulation->tasks[task].recipe == recipe)) {
                return true;
            }
        }
        return false;
    }

    PlanPtr plan;
    PerHourPlan sheet;
};

std::vector<std::string> linesOf(const std::string& text)
{
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

std::size_t charactersIn(const std::string& text)
{
    return static_cast<std::size_t>(std::ranges::count_if(
        text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

/// A task told in another's line: the same pot, watched on by the same cook.
bool goesOnFromAnother(const Plan& plan, TaskIndex task)
{
    const Formulation& formulation = *plan.formulation;
    const TaskSource& source = formulation.tasks[task];
    const auto when = plan.interval(task);
    for (const TaskIndex other : formulation.tasks.indices()) {
        const TaskSource& before = formulation.tasks[other];
        const auto earlier = plan.interval(other);
        if (earlier && other != task && source.step && before.step == source.step &&
            before.dish == source.dish && before.recipe == source.recipe &&
            before.batch == source.batch && before.variants == source.variants &&
            before.role == TaskRole::Step && source.role == TaskRole::Step &&
            earlier->end == when->start &&
            plan.schedule.cooks[other] == plan.schedule.cooks[task]) {
            return true;
        }
    }
    return false;
}

TEST_P(DemoSheet, TellsEachTaskThatTakesHandsExactlyOnce)
{
    std::map<std::size_t, int> told;
    for (const SheetHour& hour : hours()) {
        for (const SheetStep& step : hour.steps) {
            ++told[step.task.value()];
        }
    }
    const Formulation& formulation = *plan->formulation;
    int withHands = 0;
    for (const TaskIndex task : formulation.tasks.indices()) {
        if (!plan->interval(task) || !formulation.problem.tasks[task].needsCooks()) {
            continue;
        }
        ++withHands;
        EXPECT_EQ(told[task.value()], goesOnFromAnother(*plan, task) ? 0 : 1)
            << formulation.problem.tasks[task].id;
    }
    EXPECT_GT(withHands, 30);
}

TEST_P(DemoSheet, SaysOfEachStepWhoDoesItWhenAsThePlanHasIt)
{
    for (const SheetHour& hour : hours()) {
        for (const SheetStep& step : hour.steps) {
            EXPECT_EQ(step.start, plan->interval(step.task)->start);
            EXPECT_GE(step.end, plan->interval(step.task)->end);
            std::vector<std::string> cooks;
            for (const CookIndex cook : plan->schedule.cooks[step.task]) {
                cooks.push_back(plan->formulation->cookNames[cook]);
            }
            EXPECT_EQ(step.cooks, cooks);
            EXPECT_FALSE(step.deed.empty());
        }
    }
}

TEST_P(DemoSheet, GoesForwardsInTime)
{
    std::optional<PlanTime> last;
    for (const SheetHour& hour : hours()) {
        if (last) {
            EXPECT_LT(*last, hour.start);
        }
        last = hour.start;
        EXPECT_EQ(hour.civil, plan->formulation->calendar.civil(hour.start));
        const auto isInHour = [&hour](PlanTime at) {
            return hour.start <= at && at < hour.start + 60_min;
        };
        for (const SheetStep& step : hour.steps) {
            EXPECT_TRUE(isInHour(step.start)) << step.deed;
        }
        for (const SheetFetch& fetch : hour.fetches) {
            EXPECT_TRUE(isInHour(fetch.at)) << fetch.text;
        }
        EXPECT_TRUE(std::ranges::is_sorted(hour.steps, {}, &SheetStep::start));
        EXPECT_TRUE(std::ranges::is_sorted(hour.fetches, {}, &SheetFetch::at));
        EXPECT_TRUE(std::ranges::is_sorted(hour.ovenTurns, {}, &SheetOvenTurn::at));
        EXPECT_TRUE(std::ranges::is_sorted(hour.notes, {}, &SheetNote::at));
    }
    for (const SheetDay& day : sheet.days) {
        EXPECT_FALSE(day.hours.empty());
        EXPECT_EQ(day.heading, dayText(day.date));
    }
}

TEST_P(DemoSheet, HasTheOvensOnWheneverAProgramHeatsThem)
{
    // The knob as the sheet has it, minute by minute, against the program.
    const std::vector<SheetOvenTurn> all = turns();
    ASSERT_FALSE(all.empty());
    const Formulation& formulation = *plan->formulation;
    for (const OvenIndex oven : formulation.problem.ovens.indices()) {
        const OvenCurve curve(formulation.problem.ovens[oven], plan->schedule.programs[oven]);
        std::optional<int> knob;
        auto turn = all.begin();
        for (PlanTime at{0_min}; at < formulation.problem.horizon; at += 1_min) {
            for (; turn != all.end() && turn->at <= at; ++turn) {
                knob = turn->oven == oven ? turn->setC : knob;
            }
            const auto wanted = curve.setting(at);
            if (wanted) {
                EXPECT_EQ(knob, wanted) << formulation.ovenNames[oven] << " at minute "
                                        << at.time_since_epoch().count();
            } else if (knob) {
                // Left on only where it is as hot or hotter again within minutes.
                const auto soon = curve.setting(at + 5_min);
                EXPECT_TRUE(soon && *soon >= *knob);
            }
        }
        EXPECT_FALSE(knob) << "nobody turned off " << formulation.ovenNames[oven];
    }
}

TEST_P(DemoSheet, TurnsAnOvenOnBeforeFoodWantsItHot)
{
    const Formulation& formulation = *plan->formulation;
    const Timetable timetable(formulation.problem, plan->schedule);
    const std::vector<SheetOvenTurn> all = turns();
    int hot = 0;
    for (const OvenDemandIndex index : formulation.problem.ovenDemands.indices()) {
        const OvenDemand& demand = formulation.problem.ovenDemands[index];
        const auto held = timetable.held(demand.from, demand.to);
        const auto oven = plan->schedule.ovens[index];
        if (!held || !oven || held->empty() || demand.mode == std::optional<std::string>(modeOff) ||
            formulation.ovenDemands[index].isKeep) {
            continue;
        }
        ++hot;
        const OvenCurve curve(formulation.problem.ovens[*oven], plan->schedule.programs[*oven]);
        const auto rises = curve.firstOn(*held);
        const bool isAnnounced = std::ranges::any_of(all, [&](const SheetOvenTurn& turn) {
            return turn.oven == *oven && turn.setC && turn.at <= rises.value_or(held->start);
        });
        EXPECT_TRUE(isAnnounced) << demand.id;
    }
    EXPECT_GT(hot, 1);
}

TEST_P(DemoSheet, TakesOutOfTheColdWhatWentIn)
{
    std::map<std::string, int> inside;
    int fetched = 0;
    for (const SheetHour& hour : hours()) {
        for (const SheetFetch& fetch : hour.fetches) {
            const std::size_t in = fetch.text.find(" into the ");
            const std::size_t out = fetch.text.find(" out of the ");
            ASSERT_NE(in == std::string::npos, out == std::string::npos) << fetch.text;
            ++fetched;
            if (fetch.text.starts_with("What was bought")) {
                EXPECT_NE(in, std::string::npos);
            } else if (in != std::string::npos) {
                inside[fetch.text.substr(0, in)] += 1;
                EXPECT_THAT(fetch.text, HasSubstr("; out "));
            } else {
                EXPECT_GT(inside[fetch.text.substr(0, out)], 0) << fetch.text;
            }
        }
    }
    EXPECT_GT(fetched, 5);
}

TEST_P(DemoSheet, ServesEachCourseWithItsHelpings)
{
    std::vector<SheetServing> servings;
    for (const SheetHour& hour : hours()) {
        servings.insert(servings.end(), hour.servings.begin(), hour.servings.end());
    }
    const Occasion& occasion = *evening(GetParam()).input.occasion;
    ASSERT_EQ(servings.size(), occasion.courses.size());
    for (std::size_t i = 0; i < servings.size(); ++i) {
        EXPECT_EQ(servings[i].course, occasion.courses[i].id);
        EXPECT_EQ(servings[i].number, static_cast<int>(i) + 1);
        std::size_t entries = 0;
        for (const Dish& dish : occasion.courses[i].dishes) {
            entries += static_cast<std::size_t>(std::ranges::count_if(
                dish.mix, [](const MixEntry& entry) { return entry.portions > Portions{0}; }));
        }
        EXPECT_EQ(servings[i].helpings.size(), entries);
    }
}

TEST_P(DemoSheet, WarnsEachCookOnEachDayOfTheDangersOfARecipeBeforeThem)
{
    std::vector<SheetNote> notes;
    for (const SheetHour& hour : hours()) {
        notes.insert(notes.end(), hour.notes.begin(), hour.notes.end());
    }
    const Formulation& formulation = *plan->formulation;
    const auto dayOf = [&](PlanTime at) { return formulation.calendar.civil(at).date; };
    int dangers = 0;
    for (const SheetHour& hour : hours()) {
        for (const SheetStep& step : hour.steps) {
            const TaskSource& source = formulation.tasks[step.task];
            for (const Caution caution : source.cautions) {
                ++dangers;
                const bool isTool = caution == Caution::SharpBlade || caution == Caution::Steam;
                const auto isAt = [&](PlanTime at) {
                    return isStartOf(at, isTool ? std::nullopt : source.recipe);
                };
                EXPECT_TRUE(std::ranges::any_of(notes,
                                                [&](const SheetNote& note) {
                                                    return note.text == cautionText(caution) &&
                                                           note.at <= step.start &&
                                                           dayOf(note.at) == dayOf(step.start) &&
                                                           note.cooks == step.cooks &&
                                                           isAt(note.at);
                                                }))
                    << step.deed << ": " << cautionText(caution);
            }
        }
    }
    EXPECT_GT(dangers, 5);
}

TEST_P(DemoSheet, NamesEveryGuestWhomACourseCouldHarmBeforeIt)
{
    const Occasion& occasion = *evening(GetParam()).input.occasion;
    std::map<RecipeId, const Recipe*> recipes;
    for (const auto& [id, recipe] : evening(GetParam()).input.recipes) {
        recipes.emplace(id, recipe.get());
    }
    int named = 0;
    for (const Course& course : occasion.courses) {
        const PlanTime serving = plan->interval(plan->formulation->servings.at(course.id))->start;
        std::string note;
        for (const SheetHour& hour : hours()) {
            for (const SheetNote& each : hour.notes) {
                if (each.kind == SheetNoteKind::Guests && each.at == serving - 15_min) {
                    note += each.text;
                }
            }
        }
        for (const Guest& guest : occasion.guests) {
            bool isConcerned = false;
            for (const Dish& dish : course.dishes) {
                for (const MixEntry& entry : dish.mix) {
                    const auto contents =
                        contentsOf(*recipes.at(dish.recipe), entry.variant, recipes);
                    for (const Substance avoided : avoidedBy(guest)) {
                        isConcerned =
                            isConcerned || (entry.portions > Portions{0} &&
                                            std::ranges::find(contents.contains, avoided) !=
                                                contents.contains.end());
                    }
                }
            }
            EXPECT_EQ(note.find(guest.name + " (") != std::string::npos, isConcerned)
                << guest.name << " before " << course.name;
            named += isConcerned ? 1 : 0;
        }
    }
    EXPECT_GT(named, 1);
}

TEST_P(DemoSheet, FitsEightyColumnsAndDefersToLocalCodes)
{
    const std::string text = toText(sheet);
    for (const std::string& line : linesOf(text)) {
        EXPECT_LE(charactersIn(line), 80U) << line;
        EXPECT_FALSE(line.ends_with(' ')) << line;
    }
    EXPECT_THAT(text, HasSubstr("Local food-safety codes"));
    EXPECT_THAT(text, HasSubstr("prevail over this sheet"));
    EXPECT_THAT(text, Not(HasSubstr("; ;")));
    EXPECT_EQ(text, toText(perHourPlan(plan, evening(GetParam()).input)));
}

TEST_P(DemoSheet, HasNoCelsiusForWhoReadsFahrenheit)
{
    const ReadingStyle american{true, true};
    const std::string text = toText(perHourPlan(plan, evening(GetParam()).input, american));
    EXPECT_THAT(text, Not(HasSubstr("°C")));
    EXPECT_THAT(text, HasSubstr("°F"));
    EXPECT_THAT(text, HasSubstr(" pm  "));
    EXPECT_THAT(toText(sheet), Not(HasSubstr("°F")));
}

INSTANTIATE_TEST_SUITE_P(Demo, DemoSheet,
                         testing::Values("sunday-lunch", "midsummer-supper",
                                         "midsummer-supper by hand"));

TEST(MidsummerSheet, ReadsAsACookWouldSayIt)
{
    const test::DemoEvening supper = test::laidOut("midsummer-supper");
    const std::string text = toText(perHourPlan(supper.plan, supper.input));
    std::string flat;
    for (const std::string& line : linesOf(text)) {
        const std::size_t first = line.find_first_not_of(' ');
        flat += first == std::string::npos ? "" : " " + line.substr(first);
    }
    EXPECT_THAT(flat, HasSubstr("6 × egg white"));
    EXPECT_THAT(flat, HasSubstr("zest of ¾ lemon, juice of ¾ lemon"));
    EXPECT_THAT(flat, HasSubstr("lamb bones kept for the lamb stock"));
    EXPECT_THAT(flat, HasSubstr("What was bought into the fridge"));
    EXPECT_THAT(flat, HasSubstr("Bea (coeliac) gets mushroom tartlets, gluten-free case."));
    EXPECT_THAT(flat, HasSubstr("Fay (no tree nuts) gets rhubarb pavlova, without nuts."));
    EXPECT_THAT(flat, HasSubstr("8 roast roots"));
    EXPECT_THAT(flat, Not(HasSubstr("egg, yolk")));
    EXPECT_THAT(flat, Not(HasSubstr("no tree nuts and no almond")));
    EXPECT_THAT(flat, Not(HasSubstr("bought on")));
}

} // namespace
} // namespace suppertide
