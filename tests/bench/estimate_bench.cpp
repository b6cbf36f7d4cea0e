// How long one estimate of each kind takes, and a course of temperatures through a day.
#include <benchmark/benchmark.h>

#include "core/science/boiling.h"
#include "core/science/chilling.h"
#include "core/science/core_temperature.h"
#include "core/science/freezing.h"
#include "core/science/fridge_warming.h"
#include "core/science/pasteurisation.h"
#include "core/science/reduction.h"
#include "core/science/resting.h"
#include "core/science/temperature_curve.h"

namespace suppertide::science {

namespace {

CoreQuestion roast()
{
    return {.food = findDinnerFood("beef_lean").value().composition,
            .shape = roastOf(2.0, 1050.0).value(),
            .start = 8.0,
            .target = 54.0,
            .surroundings = 180.0,
            .coefficient = surroundingsOf(Place::StillOven).coefficient,
            .wetness = bareSurface};
}

template <typename Ask>
void measure(benchmark::State& state, const Ask& ask)
{
    for (auto round : state) {
        benchmark::DoNotOptimize(ask().has_value());
    }
}

void joint(benchmark::State& state)
{
    measure(state, [question = roast()] { return timeToCore(question); });
}

void block(benchmark::State& state)
{
    CoreQuestion question = roast();
    question.shape = loafOf(1.0, 1050.0).value();
    measure(state, [question] { return timeToCore(question); });
}

void rest(benchmark::State& state)
{
    measure(state, [question = roast()] { return carryOver(question, 20.0); });
}

void chill(benchmark::State& state)
{
    measure(state,
            [question = ChillQuestion{.food = roast().food}] { return timeToChill(question); });
}

void thaw(benchmark::State& state)
{
    measure(state, [question = roast()] {
        return thawingTime(question.food, -1.7, question.shape, -18.0, Place::Fridge);
    });
}

void pasteurise(benchmark::State& state)
{
    measure(state, [] { return timeToPasteurise(PasteurisedFood::Meat, 50.0, 5.0, 57.0); });
}

void boil(benchmark::State& state)
{
    measure(state, [] { return timeToBoil({.efficiency = efficiencyOf(Hob::Gas)}); });
}

void reduce(benchmark::State& state)
{
    measure(state, [] { return timeToReduce({}); });
}

void fridge(benchmark::State& state)
{
    measure(state, [] { return warmingOfFridge({}); });
}

/// Oven, counter, fridge for a day, a point each minute at first.
void courseOfADay(benchmark::State& state)
{
    const HeatedBody raw = bodyFor(roast(), 40.0).value();
    const std::vector<Stay> stays{
        {{100.0, 40.0}, 100.0}, {{20.0, 10.0}, 30.0}, {{4.0, 8.0}, 1310.0}};
    measure(state, [&] {
        HeatedBody body = raw;
        return temperatureCurve(body, stays, 1.0);
    });
}

BENCHMARK(joint)->Unit(benchmark::kMicrosecond);
BENCHMARK(block)->Unit(benchmark::kMicrosecond);
BENCHMARK(rest)->Unit(benchmark::kMicrosecond);
BENCHMARK(chill)->Unit(benchmark::kMicrosecond);
BENCHMARK(thaw)->Unit(benchmark::kMicrosecond);
BENCHMARK(pasteurise)->Unit(benchmark::kMicrosecond);
BENCHMARK(boil)->Unit(benchmark::kMicrosecond);
BENCHMARK(reduce)->Unit(benchmark::kMicrosecond);
BENCHMARK(fridge)->Unit(benchmark::kMicrosecond);
BENCHMARK(courseOfADay)->Unit(benchmark::kMicrosecond);

} // namespace

} // namespace suppertide::science

BENCHMARK_MAIN();
