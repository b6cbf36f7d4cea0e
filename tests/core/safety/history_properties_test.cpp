#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/safety/judge_history.h"
#include "core/safety/live_histories.h"
#include "core/safety/time_temperature.h"
#include "tests/core/safety/any_history.h"
#include "tests/core/safety/history_builder.h"

namespace suppertide::safety {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;
using test::anyHistory;
using test::anyJudging;

std::vector<Finding> judged(const FoodHistory& history, const Judging& judging)
{
    return judgeHistory(history, judging).value();
}

TEST(HistoryProperties, FindingsAreFiniteNameARuleAndLieWithinTheHistory)
{
    std::size_t seen = 0;
    forEachSeed(400, [&](Random& random) {
        const FoodHistory history = anyHistory(random);
        const auto from = static_cast<double>(minuteOf(history.pieces.front().from));
        const auto to = static_cast<double>(minuteOf(history.pieces.back().to));
        for (const Finding& finding : judged(history, anyJudging(random))) {
            ++seen;
            EXPECT_FALSE(sourceOf(finding).says.empty()) << finding.rule;
            EXPECT_FALSE(sourceOf(finding).source.empty()) << finding.rule;
            EXPECT_TRUE(std::isfinite(finding.measured)) << finding.rule;
            EXPECT_FALSE(finding.remedies.empty()) << finding.rule;
            double last = from;
            for (const MinuteSpan& span : finding.counts) {
                EXPECT_GE(span.from, last - 1e-6) << finding.rule;
                EXPECT_GE(span.to, span.from) << finding.rule;
                last = span.to;
            }
            EXPECT_LE(last, to + 1e-6) << finding.rule;
        }
    });
    EXPECT_GT(seen, 400U);
}

/// Kinds of findings, in order, without their minutes.
std::vector<std::string> namesOf(const std::vector<Finding>& findings)
{
    auto rules = test::rulesOf(findings);
    std::ranges::sort(rules);
    return rules;
}

TEST(HistoryProperties, CuttingAStayInTwoChangesNothing)
{
    forEachSeed(300, [](Random& random) {
        const FoodHistory whole = anyHistory(random);
        const Judging judging = anyJudging(random);
        FoodHistory cut = whole;
        const auto at = static_cast<std::size_t>(random.between(0, std::ssize(cut.pieces) - 1));
        HistoryPiece& first = cut.pieces[at];
        // A stay of thawing in water is one act; what follows it is judged as the next.
        if (first.place == Place::ThawWater || first.curve.empty()) {
            return;
        }
        const std::int64_t minute = random.between(minuteOf(first.from), minuteOf(first.to));
        HistoryPiece second = first;
        first.to = planTime(minute);
        second.from = planTime(minute);
        const auto cutAt = static_cast<double>(minute);
        // The value on the cut, between the samples around it.
        TemperatureSample level = first.curve.front();
        for (std::size_t i = 0; i < second.curve.size(); ++i) {
            const TemperatureSample& b = second.curve[i];
            if (b.minute <= cutAt) {
                level = b;
                continue;
            }
            if (i > 0) {
                const TemperatureSample& a = second.curve[i - 1];
                const double part = (cutAt - a.minute) / (b.minute - a.minute);
                level = {cutAt, a.core + part * (b.core - a.core),
                         a.surface + part * (b.surface - a.surface)};
            }
            break;
        }
        level.minute = cutAt;
        std::erase_if(first.curve, [&](const auto& each) { return each.minute > cutAt; });
        std::erase_if(second.curve, [&](const auto& each) { return each.minute <= cutAt; });
        first.curve.push_back(level);
        second.curve.insert(second.curve.begin(), level);
        // Thawing is said of the stay that begins with it.
        std::erase_if(cut.events, [](const HistoryEvent& event) {
            return std::holds_alternative<Thawed>(event);
        });
        FoodHistory same = whole;
        same.events = cut.events;
        cut.pieces.insert(cut.pieces.begin() + static_cast<std::ptrdiff_t>(at) + 1, second);
        const auto before = judged(same, judging);
        const auto after = judged(cut, judging);
        ASSERT_EQ(namesOf(before), namesOf(after));
        for (const Finding& finding : before) {
            if (finding.measure != Measure::None) {
                EXPECT_TRUE(std::ranges::any_of(after, [&](const Finding& other) {
                    return other.rule == finding.rule &&
                           std::abs(other.measured - finding.measured) < 1e-5;
                })) << finding.rule;
            }
        }
    });
}

TEST(HistoryProperties, ShiftingByWholeDaysShiftsTheFindings)
{
    forEachSeed(200, [](Random& random) {
        const FoodHistory history = anyHistory(random);
        const Judging judging = anyJudging(random);
        const Minutes by{1440 * random.between(-20, 20)};
        const auto shift = static_cast<double>(by.count());
        FoodHistory moved = history;
        for (HistoryPiece& piece : moved.pieces) {
            piece.from += by;
            piece.to += by;
            for (TemperatureSample& sample : piece.curve) {
                sample.minute += shift;
            }
        }
        for (HistoryEvent& event : moved.events) {
            std::visit([&](auto& each) { each.at += by; }, event);
        }
        const auto before = judged(history, judging);
        const auto after = judged(moved, judging);
        ASSERT_EQ(test::rulesOf(before), test::rulesOf(after));
        for (std::size_t i = 0; i < before.size(); ++i) {
            EXPECT_NEAR(before[i].measured, after[i].measured, 1e-6);
            ASSERT_EQ(before[i].counts.size(), after[i].counts.size());
            for (std::size_t j = 0; j < before[i].counts.size(); ++j) {
                EXPECT_NEAR(before[i].counts[j].from + shift, after[i].counts[j].from, 1e-6);
            }
        }
    });
}

TEST(HistoryProperties, StandingLongerHelpsNoRuleOfTime)
{
    forEachSeed(200, [](Random& random) {
        FoodHistory history = anyHistory(random);
        const Judging judging = anyJudging(random);
        const auto before = judged(history, judging);
        HistoryPiece more;
        more.from = history.pieces.back().to;
        more.to = more.from + Minutes{random.between(0, 300)};
        more.place = Place::Counter;
        history.pieces.push_back(more);
        const auto after = judged(history, judging);
        for (const char* rule : {"us_home_danger_zone", "us_trade_time_alone", "uk_hot_period",
                                 "us_cooling_first", "us_cooling_total"}) {
            const Finding* was = test::find(before, rule);
            if (was != nullptr) {
                const Finding* is = test::find(after, rule);
                ASSERT_NE(is, nullptr) << rule;
                EXPECT_GE(is->measured, was->measured - 1e-6) << rule;
            }
        }
    });
}

/// The danger zone minute by minute, in steps of a hundredth: written anew from the rule's words.
double standingMinutes(const FoodHistory& history)
{
    double minutes = 0;
    for (const HistoryPiece& piece : history.pieces) {
        const bool isOut = piece.place == Place::Counter || piece.place == Place::AtTable ||
                           piece.place == Place::WarmHold;
        const bool isTurnedOff =
            (piece.place == Place::Oven || piece.place == Place::Hob ||
             piece.place == Place::WaterBath || piece.place == Place::Microwave) &&
            piece.surroundings && *piece.surroundings * 1.8 + 32 < 140;
        if ((!isOut && !isTurnedOff) || piece.curve.empty()) {
            continue;
        }
        constexpr double step = 0.01;
        for (double at = static_cast<double>(minuteOf(piece.from)) + step / 2;
             at < static_cast<double>(minuteOf(piece.to)); at += step) {
            TemperatureSample now = piece.curve.front();
            for (std::size_t i = 0; i < piece.curve.size(); ++i) {
                const TemperatureSample& b = piece.curve[i];
                if (b.minute > at) {
                    if (i > 0) {
                        const TemperatureSample& a = piece.curve[i - 1];
                        const double part = (at - a.minute) / (b.minute - a.minute);
                        now.core = a.core + part * (b.core - a.core);
                        now.surface = a.surface + part * (b.surface - a.surface);
                    }
                    break;
                }
                now = b;
            }
            const double warm = std::max(now.core, now.surface) * 1.8 + 32;
            const double cold = std::min(now.core, now.surface) * 1.8 + 32;
            minutes += warm > 40 && cold < 140 ? step : 0;
        }
    }
    return minutes;
}

TEST(HistoryProperties, MinutesInTheDangerZoneAreThoseOfASimulation)
{
    std::size_t compared = 0;
    forEachSeed(60, [&](Random& random) {
        FoodHistory history = anyHistory(random);
        history.kind.food = FoodClass::CookedDish;
        history.events.clear();
        for (HistoryPiece& piece : history.pieces) {
            if (piece.curve.empty()) {
                piece.curve.push_back({static_cast<double>(minuteOf(piece.from)), 30, 30});
            }
        }
        const double simulated = standingMinutes(history);
        const Finding* found = nullptr;
        const auto findings = judged(history, Judging{});
        found = test::find(findings, "us_home_danger_zone");
        // Each piece may be off by a step at each crossing.
        const double off = 0.02 * 6 * static_cast<double>(history.pieces.size());
        if (found != nullptr) {
            ++compared;
            EXPECT_NEAR(found->measured, simulated, off);
        } else {
            EXPECT_LE(simulated, 120 + off);
        }
    });
    EXPECT_GT(compared, 10U);
}

/// The warmest part at a time, of a piece with a curve.
double warmestAt(const HistoryPiece& piece, double at)
{
    TemperatureSample now = piece.curve.front();
    for (std::size_t i = 0; i < piece.curve.size(); ++i) {
        const TemperatureSample& b = piece.curve[i];
        if (b.minute > at) {
            if (i > 0) {
                const TemperatureSample& a = piece.curve[i - 1];
                const double part = (at - a.minute) / (b.minute - a.minute);
                now.core = a.core + part * (b.core - a.core);
                now.surface = a.surface + part * (b.surface - a.surface);
            }
            break;
        }
        now = b;
    }
    return std::max(now.core, now.surface);
}

/// Minutes of each cooling that goes into the cold, to 70 and to 41 °F, in small steps: written
/// anew from the rule's words.
struct SimulatedCooling
{
    double first = 0;
    double total = 0;
    bool isCold = false;
};

std::vector<SimulatedCooling> simulatedCoolings(const FoodHistory& history, double step)
{
    std::vector<SimulatedCooling> coolings;
    bool wasHot = false;
    bool isRunning = false;
    bool isAt70 = false;
    bool isAt41 = false;
    for (const HistoryPiece& piece : history.pieces) {
        for (double at = static_cast<double>(minuteOf(piece.from)) + step / 2;
             at < static_cast<double>(minuteOf(piece.to)); at += step) {
            const double degrees = warmestAt(piece, at) * 1.8 + 32;
            if (degrees >= 135) {
                wasHot = true;
                isRunning = false;
                continue;
            }
            if (wasHot) {
                coolings.emplace_back();
                isRunning = true;
                isAt70 = false;
                isAt41 = false;
                wasHot = false;
            }
            if (isRunning) {
                isAt70 = isAt70 || degrees <= 70;
                isAt41 = isAt41 || degrees <= 41;
                SimulatedCooling& now = coolings.back();
                now.first += isAt70 ? 0 : step;
                now.total += isAt41 ? 0 : step;
                now.isCold = now.isCold || piece.place == Place::Fridge ||
                             piece.place == Place::Freezer || piece.place == Place::IceBath;
            }
        }
    }
    return coolings;
}

TEST(HistoryProperties, CoolingTimesAreThoseOfASimulation)
{
    std::size_t compared = 0;
    constexpr double step = 0.02;
    forEachSeed(150, [&](Random& random) {
        FoodHistory history = anyHistory(random);
        history.kind.food = FoodClass::CookedDish;
        history.events.clear();
        for (HistoryPiece& piece : history.pieces) {
            if (piece.curve.empty()) {
                piece.curve.push_back({static_cast<double>(minuteOf(piece.from)), 30, 30});
            }
        }
        std::vector<Finding> findings = judged(history, Judging{});
        for (const SimulatedCooling& cooling : simulatedCoolings(history, step)) {
            for (const auto& [rule, minutes, limit] :
                 {std::tuple{"us_cooling_first", cooling.first, 120.0},
                  std::tuple{"us_cooling_total", cooling.total, 360.0}}) {
                // Steps may begin and end one late each.
                const double off = 2 * step;
                if (!cooling.isCold || minutes <= limit + off) {
                    continue;
                }
                const auto found = std::ranges::find_if(
                    findings, [&, rule = rule, minutes = minutes](const Finding& each) {
                        return each.rule == rule && std::abs(each.measured - minutes) <= off;
                    });
                ASSERT_NE(found, findings.end()) << rule << ' ' << minutes;
                findings.erase(found);
                ++compared;
            }
        }
        for (const Finding& left : findings) {
            if (left.rule == "us_cooling_first" || left.rule == "us_cooling_total") {
                EXPECT_LE(left.measured, left.limit + 2 * step) << left.rule;
            }
        }
    });
    EXPECT_GT(compared, 20U);
}

TEST(HistoryProperties, DryGoodsBreakNoRuleOfTemperature)
{
    forEachSeed(100, [](Random& random) {
        FoodHistory history = anyHistory(random);
        history.kind = {FoodClass::DryGoods, {}};
        history.events.clear();
        EXPECT_EQ(test::rulesOf(judged(history, anyJudging(random))), std::vector<std::string>{});
    });
}

TEST(HistoryProperties, EquivalentTimesFallAsTheCoreRisesAndSharesAddUp)
{
    forEachSeed(200, [](Random& random) {
        const auto& tables = allTimeTemperatureTables();
        const auto& table =
            tables[static_cast<std::size_t>(random.between(0, std::ssize(tables) - 1))];
        const double low = static_cast<double>(random.between(500, 800)) / 10;
        const double high = low + static_cast<double>(random.between(0, 100)) / 10;
        const auto atLow = table.minutesAt(low);
        const auto atHigh = table.minutesAt(high);
        if (atLow) {
            ASSERT_TRUE(atHigh);
            EXPECT_LE(*atHigh, *atLow + 1e-12);
        }
        // Half a run and the other half are the whole run.
        const double minutes = static_cast<double>(random.between(1, 200));
        const CoreReading whole[] = {{0, low}, {minutes, high}};
        const CoreReading halves[] = {{0, low}, {minutes / 2, (low + high) / 2}, {minutes, high}};
        const double share = shareGathered(table, whole);
        EXPECT_TRUE(std::isfinite(share));
        // A row of zero time counts once, however it is cut: compared is whether it is enough.
        EXPECT_NEAR(std::min(1.0, shareGathered(table, halves)), std::min(1.0, share), 1e-6);
        // A core that never is below a temperature gathers at least as much as one that stays
        // there.
        if (atLow && *atLow > 0) {
            EXPECT_GE(share, std::min(1.0, minutes / *atLow) * (1 - 1e-6));
        }
    });
}

TEST(HistoryProperties, WhatIsKeptUpToDateIsWhatIsJudgedAnew)
{
    forEachSeed(60, [](Random& random) {
        LiveHistories live;
        std::vector<LiveHistories::Food> foods;
        for (int i = 0; i < 6; ++i) {
            foods.push_back({"food " + std::to_string(i), anyHistory(random), anyJudging(random)});
        }
        live.update(foods);
        EXPECT_EQ(live.judgedLast(), 6U);
        for (int round = 0; round < 4; ++round) {
            const auto which = static_cast<std::size_t>(random.between(0, std::ssize(foods) - 1));
            foods[which].history = anyHistory(random);
            live.update(foods);
            EXPECT_LE(live.judgedLast(), 1U);
            for (const auto& food : foods) {
                ASSERT_NE(live.findingsOf(food.key), nullptr);
                EXPECT_EQ(live.findingsOf(food.key)->value(), judged(food.history, food.judging));
            }
        }
        foods.pop_back();
        live.update(foods);
        EXPECT_EQ(live.size(), 5U);
        EXPECT_EQ(live.findingsOf("food 5"), nullptr);
    });
}

} // namespace
} // namespace suppertide::safety
