// Problems as files and as values, from valid to broken with all that is odd in between: each is
// read or refused, what is read is planned within its limits, and what is planned keeps the
// problem.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <string>
#include <vector>

#include "core/check/check.h"
#include "core/exchange/problem_json.h"
#include "core/planner/planner.h"
#include "tests/support/broken/broken_json.h"
#include "tests/support/problem/random_evening.h"
#include "tests/support/problem/random_problem.h"
#include "tests/support/problem/tiny_problem.h"

namespace suppertide {

namespace {

using nlohmann::json;
using test::JsonSpot;
using test::Random;

constexpr std::chrono::seconds wallClock{5};
constexpr std::chrono::seconds aHang{60};

struct Tally
{
    int refused = 0;
    int planned = 0; // with a schedule
    int infeasible = 0;
    int unknown = 0;
    std::vector<std::string> faults;
};

template <typename T>
const T& anyOf(const std::vector<T>& all, Random& random)
{
    return all[static_cast<std::size_t>(
        random.between(0, static_cast<std::int64_t>(all.size()) - 1))];
}

Problem anyOfAnyKind(Random& random)
{
    switch (random.between(0, 2)) {
    case 0:
        return test::anyTinyProblem(random);
    case 1:
        return test::anyProblem(random);
    default:
        return test::anyEvening(random, random.between(3, 14));
    }
}

/// A number of the document becomes another that may be allowed there, and hardly ever occurs.
void makeOdd(json& document, Random& random)
{
    std::vector<JsonSpot> numbers = test::spotsOf(document);
    std::erase_if(numbers,
                  [&](const JsonSpot& spot) { return !document.at(spot.pointer).is_number(); });
    const std::int64_t horizon = document.value("horizon", std::int64_t{100});
    const std::vector<std::int64_t> odd{0,       1,        -1,   2,    100,           horizon - 1,
                                        horizon, -horizon, 2000, -273, 1'000'000'000, 64};
    document.at(anyOf(numbers, random).pointer) = anyOf(odd, random);
}

std::string spoiltText(Random& random)
{
    json document = json::parse(writeProblem(anyOfAnyKind(random)));
    for (std::int64_t i = random.between(1, 4); i > 0; --i) {
        if (random.oneIn(5)) {
            const std::vector<JsonSpot> spots = test::spotsOf(document);
            anyOf(test::spoilings(), random).apply(document, anyOf(spots, random).pointer);
        } else {
            makeOdd(document, random);
        }
        if (!document.is_object() || !document.value("horizon", json{}).is_number_integer()) {
            break;
        }
    }
    std::string text = document.dump();
    if (random.oneIn(20)) {
        const auto at =
            static_cast<std::size_t>(random.between(0, static_cast<std::int64_t>(text.size()) - 1));
        if (random.oneIn(2)) {
            text.resize(at);
        } else {
            text[at] = '\xff';
        }
    }
    return text;
}

std::string faultOf(const Problem& problem, const Schedule& schedule)
{
    if (!schedule.cost) {
        return "";
    }
    const std::vector<Broken> broken = check(problem, schedule);
    if (!broken.empty()) {
        return "breaks " + broken.front().name();
    }
    if (costOf(problem, schedule).total() != *schedule.cost) {
        return "costs something else";
    }
    const bool optimal = schedule.status == ScheduleStatus::Optimal;
    return schedule.bound.value_or(0) > *schedule.cost ||
                   optimal != (schedule.bound == schedule.cost)
               ? "the bound is wrong"
               : "";
}

void plan(const Problem& problem, Random& random, Tally& tally)
{
    PlannerLimits limits;
    limits.wallClock = wallClock;
    limits.steps = random.between(1, 1500);
    limits.seed = random.seed();
    const auto begun = std::chrono::steady_clock::now();
    const Schedule schedule = solve(problem, limits).schedule;
    if (std::chrono::steady_clock::now() - begun > aHang) {
        tally.faults.push_back(fmt::format("SUPPERTIDE_SEED={} hangs", random.seed()));
    }
    const std::string fault = faultOf(problem, schedule);
    if (!fault.empty()) {
        tally.faults.push_back(fmt::format("SUPPERTIDE_SEED={} {}", random.seed(), fault));
    }
    tally.planned += schedule.cost ? 1 : 0;
    tally.infeasible += schedule.status == ScheduleStatus::Infeasible ? 1 : 0;
    tally.unknown += schedule.status == ScheduleStatus::Unknown ? 1 : 0;
}

void readAndPlan(const std::string& text, Random& random, Tally& tally)
{
    const auto problem = readProblem(text);
    if (!problem) {
        ++tally.refused;
        if (problem.error().forCook.empty()) {
            tally.faults.push_back(fmt::format("SUPPERTIDE_SEED={} says nothing", random.seed()));
        }
        return;
    }
    const auto again = readProblem(writeProblem(*problem));
    if (!again || *again != *problem) {
        tally.faults.push_back(fmt::format("SUPPERTIDE_SEED={} is written wrongly", random.seed()));
    }
    plan(*problem, random, tally);
}

void tryOne(Random& random, Tally& tally)
{
    try {
        if (random.oneIn(3)) {
            plan(anyOfAnyKind(random), random, tally);
        } else {
            readAndPlan(spoiltText(random), random, tally);
        }
    } catch (const std::exception& error) {
        tally.faults.push_back(fmt::format("SUPPERTIDE_SEED={} {}", random.seed(), error.what()));
    }
}

} // namespace

// SUPPERTIDE_ODD_PROBLEMS=100000 tries more of them.
TEST(OddProblems, AreRefusedOrPlannedAndNothingElse)
{
    const char* wanted = std::getenv("SUPPERTIDE_ODD_PROBLEMS"); // NOLINT(concurrency-mt-unsafe)
    const int count = wanted == nullptr ? 3000 : std::atoi(wanted);
    Tally tally;
    test::forEachSeed(count, [&](Random& random) { tryOne(random, tally); });
    fmt::print("{} tried: {} refused, {} planned, {} infeasible, {} unknown\n", count,
               tally.refused, tally.planned, tally.infeasible, tally.unknown);
    EXPECT_THAT(tally.faults, testing::IsEmpty());
    EXPECT_GT(tally.refused, count / 20);
    EXPECT_GT(tally.planned, count / 10);
    EXPECT_GT(tally.infeasible, count / 20);
}

} // namespace suppertide
