// Random food histories for property tests: stays of whole minutes at any place, with curves of a
// few straight pieces.
#pragma once

#include "core/safety/judge_history.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::safety::test {

[[nodiscard]] inline double anyTemperature(suppertide::test::Random& random, Place place)
{
    const auto tenths = [&](std::int64_t low, std::int64_t high) {
        return static_cast<double>(random.between(low * 10, high * 10)) / 10;
    };
    switch (place) {
    case Place::Freezer:
        return tenths(-40, 0);
    case Place::Fridge:
    case Place::IceBath:
        return tenths(0, 70);
    case Place::Counter:
    case Place::AtTable:
    case Place::ThawWater:
        return tenths(-5, 80);
    case Place::Oven:
    case Place::Hob:
    case Place::Microwave:
    case Place::WaterBath:
    case Place::WarmHold:
        return tenths(20, 100);
    }
    return 20;
}

[[nodiscard]] inline HistoryPiece anyPiece(suppertide::test::Random& random, std::int64_t from)
{
    HistoryPiece piece;
    piece.place = allPlaces[static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(allPlaces.size()) - 1))];
    const std::int64_t to = from + random.between(0, 400);
    piece.from = planTime(from);
    piece.to = planTime(to);
    if (random.oneIn(8)) {
        return piece; // not computed
    }
    std::int64_t minute = from;
    for (std::int64_t i = random.between(1, 6); i > 0; --i) {
        const double core = anyTemperature(random, piece.place);
        const double surface = random.oneIn(3) ? core : anyTemperature(random, piece.place);
        piece.curve.push_back({static_cast<double>(minute), core, surface});
        minute = random.between(minute, to);
    }
    if (random.oneIn(4)) {
        piece.surroundings = anyTemperature(random, piece.place);
    }
    return piece;
}

[[nodiscard]] inline FoodClass anyFood(suppertide::test::Random& random)
{
    return allFoodClasses[static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(allFoodClasses.size()) - 1))];
}

/// Its events lie at the borders of its pieces, as a plan's do.
[[nodiscard]] inline FoodHistory anyHistory(suppertide::test::Random& random)
{
    FoodHistory history;
    history.kind.food = anyFood(random);
    for (const RiskFact fact : allRiskFacts) {
        if (random.oneIn(6)) {
            history.kind.facts.push_back(fact);
        }
    }
    if (random.oneIn(2)) {
        history.kilograms = static_cast<double>(random.between(1, 90)) / 10;
    }
    std::int64_t minute = random.between(-2000, 2000);
    const auto pieces = random.between(1, 2 + static_cast<std::int64_t>(random.seed() % 12));
    for (std::int64_t i = 0; i < pieces; ++i) {
        history.pieces.push_back(anyPiece(random, minute));
        minute = minuteOf(history.pieces.back().to);
    }
    for (const HistoryPiece& piece : history.pieces) {
        if (random.oneIn(4)) {
            history.events.emplace_back(Became{piece.from, anyFood(random)});
        }
        if (random.oneIn(5)) {
            history.events.emplace_back(Reheated{piece.from, random.oneIn(2)});
        }
        if (random.oneIn(6)) {
            history.events.emplace_back(Made{piece.from});
        }
        if (random.oneIn(9)) {
            history.events.emplace_back(
                Thawed{piece.from, static_cast<ThawBy>(random.between(0, 5))});
        }
        if (random.oneIn(9)) {
            history.events.emplace_back(MixedIn{piece.from, Minutes{random.between(0, 9000)},
                                                static_cast<int>(random.between(0, 9))});
        }
    }
    return history;
}

[[nodiscard]] inline Judging anyJudging(suppertide::test::Random& random)
{
    Judging judging;
    judging.book = allRuleBooks[static_cast<std::size_t>(random.between(0, 2))];
    if (random.oneIn(2)) {
        judging.guests.push_back(allRiskGroups[static_cast<std::size_t>(random.between(0, 3))]);
    }
    return judging;
}

} // namespace suppertide::safety::test
