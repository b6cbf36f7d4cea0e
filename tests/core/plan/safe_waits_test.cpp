// Waits that the rules of food safety limit: by how much, by which rule, and where they do not.
#include <gmock/gmock.h>

#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

/// A pie, baked, that waits in one place to be served, or to be cut up first.
struct PieWait
{
    safety::RuleBook book = safety::RuleBook::UkEu;
    FoodClass food = FoodClass::CookedDish;
    Minutes least{0};
    std::optional<Minutes> most;
    std::vector<KeepOption> keep;
    std::string to; // a step; empty: the serving
};

FormulationPtr formulated(const PieWait& wait)
{
    std::vector<Step> steps{inOven("Bake", 60_min, 180_degC)};
    if (!wait.to.empty()) {
        steps.push_back(step(wait.to, 5_min));
    }
    Recipe pie = recipeInOrder("Pie", std::move(steps));
    Wait stands = waitBetween("stands", "Bake", wait.to, wait.least, wait.most);
    stands.keep = wait.keep;
    pie.common.waits = {stands};
    FollowedFood food;
    food.id = FollowedFoodId{"pie"};
    food.name = "pie";
    food.kind.food = wait.food;
    food.steps = {{StepId{"bake"}, Treatment::Heat, {}, 100, false, false, false, {}}};
    pie.common.foods = {food};
    Supper supper;
    supper.occasion.preferences.rules = wait.book;
    supper.serve(pie);
    return supper.formulated();
}

std::optional<Minutes> mostOf(const Formulation& formulation, const std::string& to)
{
    return formulation.problem.lags[lagIndex(formulation, "pie/*/bake.out:end", to)].max;
}

const LagSource& lagSourceOf(const Formulation& formulation, const std::string& to)
{
    return formulation.lags[lagIndex(formulation, "pie/*/bake.out:end", to)];
}

constexpr const char* cut = "pie/*/cut:start";

// The Food Safety and Hygiene (England) Regulations 2013, Schedule 4: two hours below 63 °C; 25
// minutes of them at table.
TEST(SafeWait, EndsWhenTheRuleEndsIt)
{
    const FormulationPtr cutUp = formulated({.to = "Cut"});
    EXPECT_EQ(mostOf(*cutUp, cut), 120_min);
    EXPECT_EQ(lagSourceOf(*cutUp, cut).limitedBy, "uk_hot_period");
    EXPECT_EQ(lagSourceOf(*cutUp, cut).most, std::nullopt); // the recipe does not say
}

TEST(SafeWait, CountsTheTimeAtTable)
{
    const FormulationPtr whole = formulated({});
    const std::string serving = whole->problem.tasks[whole->servings.begin()->second].id + ":start";
    EXPECT_EQ(mostOf(*whole, serving), 95_min);
}

TEST(SafeWait, IsAsTheRecipeSaysWhereThatIsLess)
{
    const FormulationPtr shorter = formulated({.most = 119_min, .to = "Cut"});
    EXPECT_EQ(mostOf(*shorter, cut), 119_min);
    EXPECT_EQ(lagSourceOf(*shorter, cut).limitedBy, "");
    const FormulationPtr longer = formulated({.most = 121_min, .to = "Cut"});
    EXPECT_EQ(mostOf(*longer, cut), 120_min);
    EXPECT_EQ(lagSourceOf(*longer, cut).limitedBy, "uk_hot_period");
}

TEST(SafeWait, IsNotTurnedIntoWhatCannotBe)
{
    const FormulationPtr long_ = formulated({.least = 121_min, .most = 200_min, .to = "Cut"});
    EXPECT_EQ(mostOf(*long_, cut), 200_min);
    EXPECT_EQ(lagSourceOf(*long_, cut).limitedBy, "");
}

// foodsafety.gov, Cold Food Storage Chart: set custards and creams 3–4 days.
TEST(SafeWait, InTheFridgeLastsAsLongAsItsFoodKeeps)
{
    const FormulationPtr kept =
        formulated({.food = FoodClass::GelatineCream, .keep = {inFridge(2_l)}, .to = "Cut"});
    EXPECT_EQ(mostOf(*kept, cut), Minutes{4 * 24 * 60});
    EXPECT_EQ(lagSourceOf(*kept, cut).limitedBy, "storage/set_cream");
}

TEST(SafeWait, HasNoLimitForWhatKeepsAtRoomTemperature)
{
    const FormulationPtr bread = formulated({.food = FoodClass::DryGoods, .to = "Cut"});
    EXPECT_EQ(mostOf(*bread, cut), std::nullopt);
}

/// 63 °C in the UK, 140 °F (60 °C) in US homes, 135 °F (57.2 °C) in US trade; and two degrees.
TEST(SafeWait, IsKeptWarmAboveTheBooksOwnLimit)
{
    const auto lowest = [](safety::RuleBook book) {
        const FormulationPtr warm = formulated({.book = book, .keep = {keptWarm()}, .to = "Cut"});
        return warm->problem.ovenDemands[ovenDemandIndex(*warm, "pie/*/stands:oven")].acceptLow;
    };
    EXPECT_EQ(lowest(safety::RuleBook::UkEu), 65);
    EXPECT_EQ(lowest(safety::RuleBook::UsHome), 62);
    EXPECT_EQ(lowest(safety::RuleBook::UsTrade), 60);
}

} // namespace

} // namespace suppertide::test
