// How long the temperatures and the judging of all followed foods of a plan of 100 steps take, and
// how long at a move of the mouse that drags one of them.
#include <benchmark/benchmark.h>

#include "core/plan/food_safety.h"
#include "tests/support/supper/supper.h"

namespace suppertide {

namespace {

using namespace test;

/// Five steps: worked on, baked, cooled in ice, kept in the fridge, heated again, kept warm,
/// served.
Recipe dishOfFiveSteps(int number)
{
    const std::string name = "Dish " + std::to_string(number);
    Recipe dish = recipeInOrder(name, {step("Prepare", 10_min), inOven("Bake", 60_min, 180_degC),
                                       step("Cool", 40_min, unattended),
                                       inOven("Heat", 30_min, 180_degC), step("Plate", 5_min)});
    Wait keeps = waitBetween("keeps", "Cool", "Heat", 60_min, 900_min);
    keeps.keep = {inFridge(1_l)};
    Wait warm = waitBetween("is kept warm", "Heat", "Plate", 5_min, 60_min);
    warm.keep = {keptWarm()};
    dish.common.waits = {keeps, warm};
    FollowedFood food;
    food.id = FollowedFoodId{"food"};
    food.name = "food";
    food.kind.food = FoodClass::CookedDish;
    food.material = "potato_gratin";
    food.shape = number % 2 == 0 ? FoodShape::Flat : FoodShape::Stirred;
    food.thickness = 4_cm;
    food.mass = 1500_g;
    const auto does = [&food](const char* id, Treatment treatment) -> FoodTreatment& {
        FoodTreatment step;
        step.step = StepId{id};
        step.treatment = treatment;
        return food.steps.emplace_back(std::move(step));
    };
    does("prepare", Treatment::Stand);
    does("bake", Treatment::Heat);
    does("cool", Treatment::IceBath);
    does("heat", Treatment::Heat).isReheating = true;
    does("plate", Treatment::Stand);
    dish.common.foods = {food};
    return dish;
}

struct Case
{
    Case()
    {
        constexpr int dishes = 20; // of five steps each
        for (int number = 0; number < dishes; ++number) {
            supper.serve(dishOfFiveSteps(number));
        }
        input = supper.input();
        formulation = supper.formulated();
        schedule = supper.laidOut()->schedule;
    }

    Supper supper;
    PlanInput input;
    FormulationPtr formulation;
    Schedule schedule;
};

void wholePlan(benchmark::State& state, const Case& made)
{
    for ([[maybe_unused]] const auto tick : state) {
        FoodSafety safety(*made.formulation, made.input);
        benchmark::DoNotOptimize(safety.update(made.schedule));
    }
}

/// To and fro over half an hour; what the dish has been through before stays as it was.
void oneThatMoves(benchmark::State& state, const Case& made)
{
    FoodSafety safety(*made.formulation, made.input);
    Schedule schedule = made.schedule;
    safety.update(schedule);
    const TaskIndex dragged = taskIndex(*made.formulation, "dish-7/*/prepare");
    const PlanTime start = *schedule.starts[dragged];
    std::int64_t move = 0;
    for ([[maybe_unused]] const auto tick : state) {
        constexpr std::int64_t span = 30;
        schedule.starts[dragged] = start - Minutes{++move % span};
        benchmark::DoNotOptimize(safety.update(schedule));
    }
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    const suppertide::Case made;
    benchmark::RegisterBenchmark("whole plan of 100 steps", suppertide::wholePlan, made)
        ->Unit(benchmark::kMillisecond);
    benchmark::RegisterBenchmark("one food that moves", suppertide::oneThatMoves, made)
        ->Unit(benchmark::kMillisecond);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
