#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <memory>
#include <numeric>

#include "core/assign/cheapest_program.h"
#include "core/planner/exact/oven_cost.h"
#include "core/planner/exact/sequence_costs.h"
#include "core/planner/exact/sure_stays.h"
#include "core/planner/exact/widened_claim.h"
#include "tests/core/assign/small_ovens.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {

namespace {

using engine::Bound;
using engine::Engine;
using engine::Literal;
using exact::HeldStay;
using exact::PossibleStay;
using exact::StartDifferences;
using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 1'000'000;
constexpr std::int64_t dear = 2'000; // more than what is in costs
constexpr std::int64_t effort = 200'000;

Oven anyOven(Random& random)
{
    Oven oven = test::coldOven(random, 3, 120, {});
    oven.heatMilliCPerMin = 500 * random.between(10, 30);
    oven.coolMilliCPerMin = 500 * random.between(6, 16);
    return oven;
}

/// Up to three stays, each with a start of its own that may be anywhere.
struct Case
{
    Engine engine;
    std::vector<engine::Variable> starts;
    std::vector<HeldStay> held;
    StartDifferences differences;
};

constexpr Bound earliest = 60;
constexpr Bound latest = 160;

void fill(Case& made, Random& random)
{
    const Bound lastStart = random.oneIn(2) ? latest : earliest + 25; // then they overlap
    for (std::int64_t i = random.between(1, 3); i > 0; --i) {
        const engine::Variable start = made.engine.newVariable(earliest, latest);
        const std::int64_t length = random.between(4, 20);
        HeldStay one;
        one.from = {start, 0};
        one.to = {start, static_cast<Bound>(length)};
        const std::int64_t at = random.between(earliest, lastStart);
        one.stay.during = interval(at, at + length);
        one.stay.acceptLow = static_cast<int>(random.between(7, 9)) * 10;
        one.stay.acceptHigh = one.stay.acceptLow + 15;
        if (random.oneIn(2)) {
            one.stay.prefer = one.stay.acceptLow + 8;
        }
        made.starts.push_back(start);
        made.held.push_back(one);
    }
    made.differences = StartDifferences(made.engine, made.starts);
    ASSERT_TRUE(made.engine.propagate());
}

/// Whether a literal on a difference (or a start) holds with these starts.
bool holdsWith(const Case& made, const std::vector<Bound>& starts, const Literal& literal)
{
    Bound value = 0;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        value = literal.variable() == made.starts[i] ? starts[i] : value;
    }
    for (const StartDifferences::Difference& difference : made.differences.all()) {
        if (literal.variable() == difference.variable) {
            const auto at = [&](engine::Variable variable) {
                return starts[static_cast<std::size_t>(std::ranges::find(made.starts, variable) -
                                                       made.starts.begin())];
            };
            value = at(difference.to) - at(difference.from);
        }
    }
    return ((literal.view & 1U) == 0 ? value : -value) <= literal.bound;
}

std::vector<OvenStay> staysAt(const Case& made, const std::vector<Bound>& starts)
{
    std::vector<OvenStay> stays;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        stays.push_back(made.held[i].stay);
        const std::int64_t length = stays.back().during.length().count();
        stays.back().during = interval(starts[i], starts[i] + length);
    }
    return stays;
}

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.onMinute = 1;
    style.change = random.between(0, 8);
    style.preferC = random.between(0, 2);
    if (random.oneIn(2)) {
        style.switchOn = random.between(1, 12);
        style.switchOnWithin = random.oneIn(2) ? random.between(0, 12) : 0;
    }
    return style;
}

/// As the stays lie.
std::vector<Bound> ownStarts(const Case& made)
{
    std::vector<Bound> own;
    for (const HeldStay& one : made.held) {
        own.push_back(static_cast<Bound>(minuteOf(one.stay.during.start)));
    }
    return own;
}

struct Claim
{
    engine::Literals because;
    std::vector<std::size_t> stays;
    std::int64_t least = 0;
};

std::vector<Bound> nearBy(const std::vector<Bound>& own, Random& random)
{
    std::vector<Bound> starts = own;
    const auto shift = static_cast<Bound>(random.between(-10, 10));
    for (Bound& start : starts) {
        const auto more = static_cast<Bound>(random.between(-6, 6));
        start = std::clamp(start + shift + (random.oneIn(2) ? more : 0), earliest, latest);
    }
    return starts;
}

/// Looks at other starts of which the claim speaks, too; how many there were.
int checkAround(const Oven& oven, const OvenProgramStyle& style, const Case& made,
                const Claim& claim, Random& random)
{
    const std::vector<Bound> own = ownStarts(made);
    const auto holds = [&](const std::vector<Bound>& starts) {
        return std::ranges::all_of(claim.because, [&](const Literal& literal) {
            return holdsWith(made, starts, literal);
        });
    };
    EXPECT_TRUE(holds(own));
    int others = 0;
    for (int tries = 0; tries < 40; ++tries) {
        const std::vector<Bound> starts = nearBy(own, random);
        if (!holds(starts)) {
            continue;
        }
        others += starts != own ? 1 : 0;
        std::vector<OvenStay> stays; // those of which it speaks cost so much by themselves
        for (const std::size_t i : claim.stays) {
            stays.push_back(staysAt(made, starts)[i]);
        }
        const CheapestProgram there = cheapestProgram(oven, stays, style, dear, effort);
        if (there.program) {
            EXPECT_GE(there.cost, claim.least);
        }
    }
    return others;
}

TEST(WidenedClaim, HoldsWhereverItSaysSo)
{
    int claims = 0;
    int others = 0;
    int fewer = 0;
    forEachSeed(400, [&](Random& random) {
        const Oven oven = anyOven(random);
        Case made;
        fill(made, random);
        const OvenProgramStyle style = anyStyle(random);
        const CheapestProgram best =
            cheapestProgram(oven, staysAt(made, ownStarts(made)), style, dear, effort);
        if (!best.program) {
            return;
        }
        exact::BoxCosts costs(oven, style);
        const auto claim =
            exact::widenedClaim(costs, made.held, made.differences, made.engine.trail(), best.cost);
        if (!claim.because) {
            return;
        }
        ++claims;
        fewer += claim.stays.size() < made.held.size() ? 1 : 0;
        others += checkAround(oven, style, made, {*claim.because, claim.stays, best.cost}, random);
    });
    EXPECT_GT(claims, 50);
    EXPECT_GT(others, 200);
    EXPECT_GT(fewer, 5);
}

/// Decides that starts are about as far apart as they are. False: they cannot be.
bool holdTogether(Case& made, Random& random)
{
    const std::vector<Bound> own = ownStarts(made);
    for (std::size_t i = 0; i + 1 < own.size(); ++i) {
        const engine::Term from{made.starts[i], 0};
        const engine::Term to{made.starts[i + 1], 0};
        const Bound apart = own[i + 1] - own[i];
        engine::Literals literals;
        made.differences.sayAtLeast(from, to, apart - random.between(0, 3), literals);
        made.differences.sayAtMost(from, to, apart + random.between(0, 3), literals);
        for (const Literal& literal : literals) {
            if (!made.engine.trail().holds(literal)) {
                made.engine.decide(literal);
                if (!made.engine.propagate()) {
                    return false;
                }
            }
        }
    }
    return true;
}

std::vector<PossibleStay> possibleStays(const Case& made)
{
    std::vector<PossibleStay> stays;
    for (const HeldStay& one : made.held) {
        const std::int64_t length = one.stay.during.length().count();
        stays.push_back({one.from, one.to, {}, one.stay, 1, length, {}});
    }
    return stays;
}

/// Goes back to where nothing is decided, to other times near those before.
void moveOn(Case& made, Random& random)
{
    made.engine.backTo(0);
    const std::vector<Bound> starts = nearBy(ownStarts(made), random);
    for (std::size_t i = 0; i < made.held.size(); ++i) {
        OvenStay& stay = made.held[i].stay;
        stay.during = interval(starts[i], starts[i] + stay.during.length().count());
    }
    ASSERT_TRUE(holdTogether(made, random));
}

TEST(SequenceReader, SaysTheSameAsIfReadForTheFirstTime)
{
    std::array<int, 4> changes{};
    forEachSeed(300, [&](Random& random) {
        const std::int64_t forgets = random.between(5, 60);
        Case made;
        fill(made, random);
        exact::SequenceReader again(made.held, forgets);
        for (int turn = 0; turn < 8; ++turn) {
            if (turn == 0 || !random.oneIn(3)) {
                moveOn(made, random);
            }
            const auto& trail = made.engine.trail();
            exact::SequenceReader anew(made.held, forgets);
            const auto change = again.read(made.differences, trail);
            ++changes[static_cast<std::size_t>(change)];
            if (anew.read(made.differences, trail) != exact::SequenceReader::Change::Unsure) {
                ASSERT_NE(change, exact::SequenceReader::Change::Unsure);
                const OvenBox& box = again.sequence().box;
                EXPECT_EQ(box.stretches, anew.sequence().box.stretches);
                EXPECT_EQ(box.spans.size(), anew.sequence().box.spans.size());
            }
        }
    });
    EXPECT_GT(*std::ranges::min_element(changes), 50);
}

TEST(SequenceCosts, HoldWhereverTheySaySo)
{
    int claims = 0;
    int others = 0;
    int fewer = 0;
    int anew = 0;
    forEachSeed(100, [&](Random& random) {
        const Oven oven = anyOven(random);
        Case made;
        fill(made, random);
        const OvenProgramStyle style = anyStyle(random);
        const auto costs = std::make_shared<exact::BoxCosts>(oven, style);
        std::vector<std::size_t> all(made.held.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        exact::SequenceCosts sequences(costs, possibleStays(made));
        std::int64_t below = 0;
        for (int turn = 0; turn < 5; ++turn) { // what is remembered must go for where it is now
            if (turn == 0 || !random.oneIn(3)) {
                moveOn(made, random);
            }
            const CheapestProgram best =
                cheapestProgram(oven, staysAt(made, ownStarts(made)), style, dear, effort);
            if (!best.program) {
                continue;
            }
            below = turn == 0 || random.oneIn(2) ? best.cost - random.between(0, 5) : below;
            const auto* found =
                sequences.least(all, made.differences, made.engine.trail(), below, 1'000'000);
            if (found == nullptr) {
                continue;
            }
            for (const Literal& literal : found->because) {
                EXPECT_TRUE(made.engine.trail().holds(literal));
            }
            EXPECT_LE(found->least, best.cost);
            claims += found->least < below ? 0 : 1;
            fewer += found->inside.size() < all.size() ? 1 : 0;
            anew += found->isNew ? 1 : 0;
            if (found->least >= below || random.oneIn(6)) {
                others += checkAround(oven, style, made,
                                      {found->because, found->inside, found->least}, random);
            }
            const auto* again =
                sequences.least(all, made.differences, made.engine.trail(), below, 1'000'000);
            ASSERT_NE(again, nullptr);
            EXPECT_FALSE(again->isNew);
        }
    });
    EXPECT_GT(anew, 20);
    EXPECT_GT(claims, anew); // some are shown again
    EXPECT_GT(others, 200);
    EXPECT_GT(fewer, 10);
}

/// Whether one of the literals holds with these starts, these stays in, and so much that it costs.
bool holdsWith(const Case& made, const std::vector<Bound>& starts,
               const std::vector<PossibleStay>& stays, const std::vector<bool>& inside,
               std::int64_t cost, const engine::Literals& clause)
{
    return std::ranges::any_of(clause, [&](const Literal& literal) {
        for (std::size_t i = 0; i < stays.size(); ++i) {
            if (literal.variable() == stays[i].inside.variable()) {
                return (literal == stays[i].inside) == inside[i];
            }
        }
        const bool isOfTimes =
            std::ranges::count(made.starts, literal.variable()) > 0 ||
            std::ranges::any_of(made.differences.all(), [&](const auto& difference) {
                return difference.variable == literal.variable();
            });
        return isOfTimes ? holdsWith(made, starts, literal) : -cost <= literal.bound;
    });
}

/// Looks at some of the stays at other times; how often it says that they cost something.
int checkClause(const Oven& oven, const OvenProgramStyle& style, const Case& made,
                const std::vector<PossibleStay>& stays, const engine::Literals& clause,
                Random& random)
{
    int atStake = 0;
    for (int tries = 0; tries < 40; ++tries) {
        const std::vector<Bound> starts = nearBy(ownStarts(made), random);
        std::vector<bool> inside;
        std::vector<OvenStay> held;
        for (const OvenStay& stay : staysAt(made, starts)) {
            inside.push_back(!random.oneIn(4));
            if (inside.back()) {
                held.push_back(stay);
            }
        }
        const CheapestProgram there = cheapestProgram(oven, held, style, dear, effort);
        if (there.program || held.empty()) {
            const std::int64_t cost = held.empty() ? 0 : there.cost;
            EXPECT_TRUE(holdsWith(made, starts, stays, inside, cost, clause));
            atStake += holdsWith(made, starts, stays, inside, 0, clause) ? 0 : 1;
        }
    }
    return atStake;
}

TEST(OvenCostPropagator, NotesWhatGoesForAnyStaysAtAnyTimes)
{
    int noted = 0;
    int atStake = 0;
    forEachSeed(600, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        Case made;
        fill(made, random);
        std::vector<PossibleStay> stays = possibleStays(made);
        for (PossibleStay& stay : stays) {
            stay.inside = engine::isTrue(made.engine.newBoolean());
        }
        const engine::Variable least = made.engine.newVariable(0, 1'000);
        exact::OvenCostPropagator::post(made.engine, {oven}, style, stays,
                                        std::make_shared<const StartDifferences>(made.differences),
                                        std::make_shared<exact::BoxCosts>(oven, style), least,
                                        10'000);
        const CheapestProgram best =
            cheapestProgram(oven, staysAt(made, ownStarts(made)), style, dear, effort);
        if (!best.program) {
            return;
        }
        for (const PossibleStay& stay : stays) {
            made.engine.decide(stay.inside);
            ASSERT_TRUE(made.engine.propagate());
        }
        made.engine.decide(engine::atMost(least, static_cast<Bound>(best.cost - 1)));
        const bool isPossible = made.engine.propagate() && holdTogether(made, random);
        for (const engine::Literals& clause : made.engine.takeNoted()) {
            ++noted;
            EXPECT_FALSE(isPossible);
            atStake += checkClause(oven, style, made, stays, clause, random);
        }
    });
    EXPECT_GT(noted, 25);
    EXPECT_GT(atStake, 200);
}

TEST(BoxCosts, AreRememberedAsFarAsTheyGo)
{
    test::Random random(3);
    const Oven oven = anyOven(random);
    OvenProgramStyle style;
    style.onMinute = 1;
    exact::BoxCosts costs(oven, style);
    const auto box = [](std::int64_t least, std::int64_t most) {
        return OvenBox{{{80'000, 90'000, false, {}, least, most}}, {}};
    };
    const std::int64_t cost = costs.least(box(20, 30), plenty, BoxLook::Brief);
    ASSERT_GT(cost, 0);
    EXPECT_EQ(costs.known(box(20, 30), plenty), cost);
    EXPECT_EQ(costs.known(box(20, 30), cost - 1), cost - 1);
    EXPECT_FALSE(costs.known(box(20, 31), plenty));
    const std::int64_t work = costs.work();
    EXPECT_EQ(costs.least(box(20, 30), plenty, BoxLook::Brief), cost);
    EXPECT_EQ(costs.work(), work);
    const std::int64_t closely = costs.least(box(20, 30), plenty, BoxLook::Close);
    EXPECT_GE(closely, cost);
    EXPECT_EQ(costs.known(box(20, 30), plenty), closely);
}

TEST(StartDifferences, SayHowFarApart)
{
    Engine engine;
    const engine::Variable a = engine.newVariable(0, 100);
    const engine::Variable b = engine.newVariable(10, 50);
    const StartDifferences differences(engine, {b, a, b});
    ASSERT_TRUE(engine.propagate());
    const engine::Term from{a, 5};
    const engine::Term to{b, 20};
    ASSERT_TRUE(differences.knows(from, to));
    EXPECT_EQ(differences.least(engine.trail(), from, to), 10 + 20 - 100 - 5);
    EXPECT_EQ(differences.most(engine.trail(), from, to), 50 + 20 - 0 - 5);
    EXPECT_EQ(differences.least(engine.trail(), to, from), -65);
    engine::Literals literals;
    differences.sayAtLeast(from, to, 40, literals);
    differences.sayAtMost(to, from, 7, literals); // the same turned round
    ASSERT_EQ(literals.size(), 2U);
    engine.decide(literals[0]);
    ASSERT_TRUE(engine.propagate());
    EXPECT_EQ(differences.least(engine.trail(), from, to), 40);
    EXPECT_EQ(differences.leastAlways(engine.trail(), from, to), 10 + 20 - 100 - 5);
    EXPECT_EQ(differences.mostAlways(engine.trail(), to, from), -(10 + 20 - 100 - 5));
    EXPECT_TRUE(engine.trail().holds(literals[1]));
    EXPECT_EQ(engine.trail().most(a), 50 + 20 - 5 - 40);
    literals.clear();
    differences.sayAtLeast(from, {a, 9}, 4, literals); // a constant
    EXPECT_TRUE(literals.empty());
}

TEST(SureStays, AreTheSameToEachOtherWheneverTheyCome)
{
    Engine engine;
    std::vector<PossibleStay> stays;
    std::vector<engine::Variable> starts;
    for (int i = 0; i < 2; ++i) {
        PossibleStay stay;
        starts.push_back(engine.newVariable(0, 1000));
        stay.from = {starts.back(), 0};
        stay.to = {starts.back(), 30};
        stay.length = 30;
        stays.push_back(stay);
    }
    const StartDifferences differences(engine, starts);
    ASSERT_TRUE(engine.propagate());
    engine::Literals literals;
    differences.sayAtLeast(stays[0].from, stays[1].from, 10, literals);
    differences.sayAtMost(stays[0].from, stays[1].from, 16, literals);
    for (const Literal& literal : literals) {
        engine.decide(literal);
        ASSERT_TRUE(engine.propagate());
    }
    const auto clock = exact::sureByTheClock(stays, {0, 1}, engine.trail());
    EXPECT_TRUE(clock.stays.empty());
    const auto sure = exact::sureToEachOther(stays, {0, 1}, differences, 100, engine.trail());
    ASSERT_EQ(sure.stays.size(), 2U);
    EXPECT_FALSE(sure.allFixed);
    EXPECT_EQ(sure.minutes, 30 + 30 - 6);
    EXPECT_EQ(sure.stays[1].during.start - sure.stays[0].during.start, Minutes{16});
    EXPECT_EQ(sure.stays[1].during.end - sure.stays[0].during.start, Minutes{40});
    for (const Literal& literal : sure.times) {
        EXPECT_TRUE(engine.trail().holds(literal));
    }
}

} // namespace

} // namespace suppertide
