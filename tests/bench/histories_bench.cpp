// How long it takes to judge all food histories of a plan of 100 steps, and one food that moves.
#include <benchmark/benchmark.h>

#include <cmath>

#include "core/safety/live_histories.h"

namespace suppertide::safety {

namespace {

/// Forty foods: raw in the fridge, cooked, cooled, kept a day, heated again, kept warm, at table:
/// seven stays each, every curve with a sample each minute for six hours at most.
std::vector<LiveHistories::Food> foodsOfPlan()
{
    constexpr std::int64_t lengths[] = {600, 90, 180, 1440, 60, 45, 30};
    constexpr Place places[] = {Place::Fridge, Place::Oven,     Place::IceBath, Place::Fridge,
                                Place::Oven,   Place::WarmHold, Place::AtTable};
    constexpr double levels[] = {4, 85, 3, 4, 80, 66, 55};
    std::vector<LiveHistories::Food> foods;
    for (int i = 0; i < 40; ++i) {
        LiveHistories::Food food;
        food.key = "food " + std::to_string(i);
        food.history.kind.food = FoodClass::RawMeat;
        std::int64_t now = i * 7;
        double celsius = 4;
        for (std::size_t stay = 0; stay < std::size(lengths); ++stay) {
            HistoryPiece piece{
                planTime(now), planTime(now + lengths[stay]), places[stay], {}, {}, false, false};
            for (std::int64_t minute = 0; minute <= std::min<std::int64_t>(lengths[stay], 360);
                 ++minute) {
                celsius += (levels[stay] - celsius) / 20;
                piece.curve.push_back({static_cast<double>(now + minute), celsius,
                                       celsius + (levels[stay] - celsius) / 2});
            }
            now += lengths[stay];
            food.history.pieces.push_back(std::move(piece));
        }
        food.history.events = {Became{food.history.pieces[2].from, FoodClass::CookedMeat},
                               Made{food.history.pieces[2].from},
                               Reheated{food.history.pieces[4].from, true}};
        food.judging.calendar = PlanCalendar{};
        foods.push_back(std::move(food));
    }
    return foods;
}

void judgeAll(benchmark::State& state)
{
    const auto foods = foodsOfPlan();
    for (auto _ : state) {
        for (const auto& food : foods) {
            benchmark::DoNotOptimize(judgeHistory(food.history, food.judging));
        }
    }
}

void judgeOneThatMoves(benchmark::State& state)
{
    auto foods = foodsOfPlan();
    LiveHistories live;
    live.update(foods);
    for (auto _ : state) {
        state.PauseTiming();
        foods[3].history.pieces.back().to += Minutes{1};
        auto next = foods;
        state.ResumeTiming();
        live.update(std::move(next));
    }
}

BENCHMARK(judgeAll)->Unit(benchmark::kMillisecond);
BENCHMARK(judgeOneThatMoves)->Unit(benchmark::kMillisecond);

} // namespace

} // namespace suppertide::safety

BENCHMARK_MAIN();
