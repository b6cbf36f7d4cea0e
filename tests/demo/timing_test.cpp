// What must not be hurried, and what must not wait. Times are common practice unless a source
// stands beside them.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

const Wait& waitOf(std::string_view id, std::string_view name)
{
    static std::map<std::string, std::vector<Wait>, std::less<>> read;
    const auto at = read.try_emplace(std::string(id), allWaits(usual(id))).first;
    return wait(at->second, name);
}

Step stepOf(std::string_view id, std::string_view name)
{
    return step(allSteps(usual(id)), name);
}

std::optional<OvenUse> ovenOf(const Step& one)
{
    for (const Use& use : one.uses) {
        if (const auto* oven = std::get_if<OvenUse>(&use)) {
            return *oven;
        }
    }
    return std::nullopt;
}

bool warns(const Step& one, Caution caution)
{
    return std::ranges::find(one.cautions, caution) != one.cautions.end();
}

constexpr Minutes hour{60};
constexpr Minutes day{24 * 60};

TEST(BakedCustard, ChillsFourHoursAndKeepsThreeDays)
{
    const Wait& chill = waitOf("burnt-top-custard", "chill");
    EXPECT_GE(chill.least, 4 * hour);
    EXPECT_EQ(chill.most, 3 * day); // 3 to 4 days: foodsafety.gov, cold food storage chart
    ASSERT_EQ(chill.keep.size(), 1U);
    EXPECT_EQ(chill.keep.front().place, KeepPlace::Fridge);
}

TEST(BakedCustard, KeepsItsCrustOfCaramelHalfAnHour)
{
    const Wait& crust = waitOf("burnt-top-custard", "crust");
    ASSERT_TRUE(crust.most.has_value());
    EXPECT_LE(*crust.most, Minutes{30});
    const Step burn = stepOf("burnt-top-custard", "burn");
    EXPECT_TRUE(warns(burn, Caution::Caramel));
    EXPECT_TRUE(warns(burn, Caution::OpenFlame));
    EXPECT_EQ(burn.attention, undivided);
}

TEST(RoastChicken, RestsTenToTwentyMinutes)
{
    const Wait& rest = waitOf("roast-chicken", "rest");
    EXPECT_EQ(rest.least, Minutes{10});
    EXPECT_EQ(rest.most, Minutes{20});
}

// Done at 74 °C (165 °F): USDA, safe minimum internal temperatures; 82.5 min at 175 °C for 1.6 kg.
TEST(RoastChicken, IsDoneWhenItsThighIs)
{
    const Step roast = stepOf("roast-chicken", "roast");
    EXPECT_NE(roast.detail.find("74 °C"), std::string::npos);
    EXPECT_GE(roast.duration.least, Minutes{70});
    EXPECT_LE(roast.duration.most, Minutes{100});
}

TEST(Meringue, DriesOvernightInTheOvenSwitchedOff)
{
    const auto baking = ovenOf(stepOf("rhubarb-pavlova", "bake"));
    const Step dry = stepOf("rhubarb-pavlova", "dry");
    const auto drying = ovenOf(dry);
    ASSERT_TRUE(baking && drying);
    EXPECT_EQ(drying->mode, OvenMode::Off);
    EXPECT_GE(dry.duration.least, 6 * hour);
    EXPECT_LE(baking->high, Celsius::degrees(130)); // else it browns
    EXPECT_GE(drying->high, baking->high);          // it stays while the oven cools
    EXPECT_LE(drying->low, kitchen("skerry-light").roomTemperature);
    EXPECT_EQ(waitOf("rhubarb-pavlova", "shut").most, Minutes{0});
}

TEST(Pavlova, IsToppedAtTheLastMoment)
{
    EXPECT_LE(waitOf("rhubarb-pavlova", "softens").most, Minutes{20});
}

TEST(SetCream, SetsSixHoursKeepsTwoDaysAndIsTurnedOutShortlyBefore)
{
    const Wait& sets = waitOf("buttermilk-set-cream", "sets");
    EXPECT_EQ(sets.least, 6 * hour); // full strength at 5 °C in 5 to 8 h: makers' data sheets
    EXPECT_EQ(sets.most, 2 * day);
    EXPECT_EQ(sets.keep.front().place, KeepPlace::Fridge);
    EXPECT_LE(waitOf("buttermilk-set-cream", "stands").most, Minutes{15});
}

TEST(Shoulder, BraisesForHoursAndRestsInItsPot)
{
    const Step braise = stepOf("braised-shoulder", "braise");
    EXPECT_GE(braise.duration.least, 3 * hour);
    EXPECT_LE(braise.duration.most, 5 * hour);
    const auto oven = ovenOf(braise);
    ASSERT_TRUE(oven.has_value());
    EXPECT_GE(oven->low, Celsius::degrees(130));
    EXPECT_LE(oven->high, Celsius::degrees(170));
    const Wait& rest = waitOf("braised-shoulder", "rest");
    EXPECT_EQ(rest.least, Minutes{20});
    EXPECT_EQ(rest.most, Minutes{70});
    EXPECT_LE(waitOf("braised-shoulder", "cure").most, 3 * day); // raw roasts 3 to 5 days
}

TEST(Salmon, ReadsSixtyThreeDegrees) // 145 °F: USDA, safe minimum internal temperatures
{
    EXPECT_NE(stepOf("slow-salmon", "roast").detail.find("63 °C"), std::string::npos);
}

TEST(TroutCream, StandsOutTwoHoursAtMost) // USDA: out of the fridge at most 2 h
{
    const Wait& keeps = waitOf("smoked-trout-tartlets", "cream-keeps");
    const auto counter = std::ranges::find(keeps.keep, KeepPlace::Counter, &KeepOption::place);
    ASSERT_NE(counter, keeps.keep.end());
    EXPECT_LE(counter->most, 2 * hour);
}

TEST(GratinAndRoots, WantTemperaturesThatDoNotMeet)
{
    const auto gratin = ovenOf(stepOf("potato-gratin", "bake"));
    const auto roots = ovenOf(stepOf("roast-roots", "roast"));
    ASSERT_TRUE(gratin && roots);
    EXPECT_EQ(gratin->prefer, Celsius::degrees(150));
    EXPECT_EQ(roots->prefer, Celsius::degrees(220));
    EXPECT_LT(gratin->high, roots->low);
    EXPECT_EQ(stepOf("potato-gratin", "bake").duration.likely, Minutes{90});
}

// What stands on the counter with meat, fish, egg or milk in it, cooked or not, and is eaten
// later: USDA, 2 h out of the fridge. Baked pastry, bread and meringue keep by being dry.
TEST(DemoRecipes, LeaveNoMilkFishMeatOrEggOutForLong)
{
    for (const std::string_view id :
         {"smoked-trout-tartlets", "mushroom-tartlets", "savoury-custard", "vanilla-custard",
          "lamb-stock", "slow-salmon", "burnt-top-custard", "buttermilk-set-cream",
          "stuffed-squash", "roast-chicken", "herb-frittata", "chilled-beetroot-soup",
          "baked-onion-tartlets", "potato-gratin", "braised-shoulder", "celeriac-slaw"}) {
        for (const Wait& each : allWaits(usual(id))) {
            for (const KeepOption& keep : each.keep) {
                if (keep.place != KeepPlace::Counter) {
                    continue;
                }
                const Minutes most =
                    std::min(keep.most.value_or(7 * day), each.most.value_or(7 * day));
                EXPECT_LE(most, 2 * hour) << id << ": " << each.text;
            }
        }
    }
}

TEST(Rhubarb, IsStalksOnlyAndSaysWhy)
{
    for (const Recipe& each : content().recipes) {
        for (const IngredientLine& line : each.common.lines) {
            if (line.ingredient != "rhubarb") {
                continue;
            }
            EXPECT_EQ(line.part, IngredientPart::Stalks);
            EXPECT_NE(each.note.find("poisonous"), std::string::npos);
            const auto& steps = each.common.steps;
            EXPECT_TRUE(std::ranges::any_of(steps, [&line](const Step& one) {
                return std::ranges::find(one.lines, line.id) != one.lines.end() &&
                       warns(one, Caution::Poisonous);
            }));
        }
    }
}

TEST(DemoRecipes, BoundEveryWaitThatKeepsFoodSomewhere)
{
    for (const Recipe& each : content().recipes) {
        for (const Wait& one : allWaits(usual(each.id.text()))) {
            EXPECT_TRUE(one.most.has_value()) << each.id.text() << ": " << one.text;
        }
    }
}

} // namespace
} // namespace suppertide::demo
