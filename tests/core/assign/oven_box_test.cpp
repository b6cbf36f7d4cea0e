#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/assign/box_widening.h"
#include "core/assign/cheapest_program.h"
#include "core/assign/oven_box.h"
#include "core/assign/reached_walk.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

constexpr std::int64_t plenty = 1'000'000;
constexpr std::int64_t below = 200;

Oven anyOven(Random& random)
{
    return test::coldOven(random, 2, 110, {4'000, 15'000, 2'000, 8'000});
}

OvenProgramStyle anyStyle(Random& random)
{
    OvenProgramStyle style;
    style.onMinute = random.between(1, 2);
    style.change = random.between(0, 10);
    style.preferC = random.between(0, 2);
    return style;
}

/// Stays one after another, with an empty stretch between each two.
struct Row
{
    std::vector<OvenStay> stays; // times to be filled in
    std::vector<OvenStretch> box;
};

Row anyRow(Random& random)
{
    Row row;
    const std::int64_t count = random.between(1, 3);
    for (std::int64_t i = 0; i < count; ++i) {
        OvenStay stay;
        stay.acceptLow = static_cast<int>(random.between(60, 95));
        stay.acceptHigh = stay.acceptLow + static_cast<int>(random.between(2, 15));
        if (random.oneIn(2)) {
            stay.prefer = static_cast<int>(random.between(stay.acceptLow, stay.acceptHigh));
        }
        OvenStretch in{stay.acceptLow * 1000, stay.acceptHigh * 1000, false, {}, 0, 0};
        in.least = random.between(1, 12);
        in.most = in.least + (random.oneIn(2) ? random.between(0, 6) : 0);
        if (stay.prefer) {
            in.preferred.push_back(*stay.prefer);
        }
        if (i > 0) {
            OvenStretch empty{-SettingLevels::unbounded, SettingLevels::unbounded, false, {}, 0, 0};
            empty.least = random.between(0, 15);
            empty.most = empty.least + random.between(0, 10);
            row.box.push_back(empty);
        }
        row.stays.push_back(stay);
        row.box.push_back(in);
    }
    return row;
}

/// Lengths within the box; the box of just these too.
std::vector<OvenStay> placed(const Row& row, std::int64_t from, Random& random,
                             std::vector<OvenStretch>& exact)
{
    std::vector<OvenStay> stays = row.stays;
    exact = row.box;
    std::int64_t at = from;
    for (std::size_t i = 0; i < exact.size(); ++i) {
        const std::int64_t length = random.between(exact[i].least, exact[i].most);
        exact[i].least = exact[i].most = length;
        if (i % 2 == 0) {
            stays[i / 2].during = interval(at, at + length);
        }
        at += length;
    }
    return stays;
}

TEST(OvenBox, CostsNoMoreThanAnythingInIt)
{
    int compared = 0;
    int met = 0;
    int same = 0;
    forEachSeed(120, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        const Row row = anyRow(random);
        const BoxCost least = leastCostInBox(oven, style, {row.box, {}}, below);
        for (int tries = 0; tries < 6; ++tries) {
            std::vector<OvenStretch> exact;
            const auto stays = placed(row, random.between(20, 120), random, exact);
            const CheapestProgram best = cheapestProgram(oven, stays, style, plenty, plenty);
            if (!best.program || best.cost >= below) {
                continue;
            }
            ++compared;
            EXPECT_LE(least.least, best.cost);
            const std::int64_t ofThese =
                leastCostInBox(oven, style, {exact, {}}, best.cost + 20).least;
            EXPECT_LE(least.least, ofThese);
            EXPECT_LE(ofThese, best.cost);
            met += ofThese == best.cost ? 1 : 0;
            // Asked for less, it looks less closely, and mostly finds the same.
            const std::int64_t justSo = leastCostInBox(oven, style, {exact, {}}, ofThese).least;
            EXPECT_LE(justSo, ofThese);
            same += justSo == ofThese ? 1 : 0;
        }
    });
    EXPECT_GT(compared, 300);
    EXPECT_GT(same, compared * 9 / 10);
    EXPECT_GT(met, compared * 8 / 10); // mostly it is exactly what the cheapest program costs
}

/// A stay of one length, another that begins in it and ends after it: however much they share, each
/// stretch may be short, but not all of them at once.
TEST(OvenBox, KnowsHowLongStaysAreThatOverlap)
{
    int compared = 0;
    int more = 0;
    int met = 0;
    forEachSeed(60, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        const std::int64_t firstLength = random.between(10, 25);
        const std::int64_t otherLength = random.between(10, 25);
        OvenStay first;
        first.acceptLow = static_cast<int>(random.between(70, 90));
        first.acceptHigh = first.acceptLow + 15;
        OvenStay other = first;
        other.acceptLow += 5;
        other.acceptHigh += 5;
        const std::int64_t low = first.acceptLow * 1000;
        const std::int64_t high = first.acceptHigh * 1000;
        const std::int64_t longest = std::max(firstLength, otherLength);
        const std::vector<OvenStretch> stretches{
            {low, high, false, {}, 1, longest},
            {low + 5'000, high, false, {}, 1, longest},
            {low + 5'000, high + 5'000, false, {}, 1, longest}};
        const OvenBox apart{stretches, {}};
        const OvenBox together{stretches, {{0, 1, firstLength}, {1, 2, otherLength}}};
        const std::int64_t ofStretches = leastCostInBox(oven, style, apart, below).least;
        const std::int64_t ofStays = leastCostInBox(oven, style, together, below).least;
        EXPECT_LE(ofStretches, ofStays);
        std::int64_t best = plenty;
        for (std::int64_t shared = 1; shared < std::min(firstLength, otherLength); ++shared) {
            first.during = interval(100, 100 + firstLength);
            other.during =
                interval(100 + firstLength - shared, 100 + firstLength - shared + otherLength);
            const CheapestProgram program =
                cheapestProgram(oven, {first, other}, style, plenty, plenty);
            best = program.program ? std::min(best, program.cost) : best;
        }
        if (best >= below) {
            return;
        }
        ++compared;
        EXPECT_LE(ofStays, best);
        more += ofStays > ofStretches ? 1 : 0;
        met += ofStays == best ? 1 : 0;
    });
    EXPECT_GT(compared, 40);
    EXPECT_GT(more, compared / 2);
    EXPECT_GT(met, compared * 8 / 10);
}

TEST(OvenBox, NothingFitsWhereLengthsContradict)
{
    test::Random random(1);
    const Oven oven = anyOven(random);
    const OvenStretch stretch{70'000, 90'000, false, {}, 1, 5};
    const OvenBox box{{stretch, stretch}, {{0, 1, 20}}};
    EXPECT_EQ(leastCostInBox(oven, anyStyle(random), box, below).least, below);
}

} // namespace

//     ├──── in ────┤ before that: an oven that takes hours to cool through all its range, and is
//                    looked at minute by minute
TEST(OvenBox, SaysNothingOfWhatTakesTooLongToLookAt)
{
    Random random(3);
    Oven oven = anyOven(random);
    oven.coolMilliCPerMin = 6;
    OvenStretch in{70'000, 80'000, false, {}, 600, 600};
    OvenStretch later{90'000, 95'000, false, {}, 600, 600};
    const BoxCost cost = leastCostInBox(oven, anyStyle(random), {{in, later}, {}}, below);
    EXPECT_GE(cost.least, 0);
    EXPECT_LE(cost.least, below);
}

//     |stay 14|empty 9|stay 20| costs 31; so it does with the empty time 6…25
TEST(BoxWidening, LeavesNothingInThatCostsLess)
{
    int looked = 0;
    int wider = 0;
    int further = 0;
    int ends = 0;
    forEachSeed(60, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        Row row = anyRow(random);
        OvenBox box;
        placed(row, 20, random, box.stretches);
        const std::int64_t cost = leastCostInBox(oven, style, box, below).least;
        const std::int64_t least = cost - random.between(0, 3);
        if (least <= 0) {
            return;
        }
        std::vector<StretchLengths> open;
        for (const OvenStretch& stretch : box.stretches) {
            open.push_back(
                {std::min<std::int64_t>(stretch.least, stretch.preferred.empty() ? 0 : 1),
                 stretch.most + 30});
        }
        row.box = widenedBox(oven, style, box, open, least).box.stretches;
        for (std::size_t i = 0; i < row.box.size(); ++i) {
            const OvenStretch& was = box.stretches[i];
            const OvenStretch& now = row.box[i];
            EXPECT_TRUE(open[i].least <= now.least && now.least <= was.least);
            EXPECT_TRUE(was.most <= now.most && now.most <= open[i].most);
            wider += now.least < was.least || now.most > was.most ? 1 : 0;
            // One more would cost less, wherever it ends.
            for (const bool longer : {false, true}) {
                OvenBox next{row.box, {}};
                std::int64_t& end = longer ? ++next.stretches[i].most : --next.stretches[i].least;
                if (end >= open[i].least && end <= open[i].most) {
                    ++ends;
                    further += leastCostInBox(oven, style, next, least).least >= least ? 1 : 0;
                }
            }
        }
        for (int tries = 0; tries < 8; ++tries) {
            std::vector<OvenStretch> exact;
            const auto stays = placed(row, 20, random, exact);
            const bool isSure = std::ranges::all_of(
                exact, [](const OvenStretch& stretch) { return stretch.least > 0; });
            const CheapestProgram cheaper = cheapestProgram(oven, stays, style, least, plenty);
            if (isSure) {
                looked += cheaper.bound >= least ? 1 : 0;
                EXPECT_FALSE(cheaper.program);
            }
        }
    });
    EXPECT_GT(looked, 200);
    EXPECT_GT(wider, 100);
    EXPECT_LT(further, ends / 3); // what is reached is looked at less closely
}

/// Two stays of known length, the second within the first for a while: only where it begins counts.
TEST(BoxWidening, KeepsToTheLengthsOfStays)
{
    int looked = 0;
    int wider = 0;
    forEachSeed(80, [&](Random& random) {
        const Oven oven = anyOven(random);
        const OvenProgramStyle style = anyStyle(random);
        const std::int64_t firstLength = random.between(10, 25);
        const std::int64_t otherLength = random.between(10, 25);
        const int low = static_cast<int>(random.between(70, 90));
        const auto stayOf = [](int from, std::int64_t at, std::int64_t length) {
            OvenStay stay;
            stay.acceptLow = from;
            stay.acceptHigh = from + 15;
            stay.prefer = from + 8;
            stay.during = interval(at, at + length);
            return stay;
        };
        const auto costOf = [&](std::int64_t alone) {
            const std::vector<OvenStay> stays{stayOf(low, 100, firstLength),
                                              stayOf(low + 5, 100 + alone, otherLength)};
            const auto found = cheapestProgram(oven, stays, style, plenty, plenty);
            return found.program ? found.cost : plenty;
        };
        const std::int64_t from = std::max<std::int64_t>(1, firstLength - otherLength + 1);
        const std::int64_t alone = random.between(from, firstLength - 1);
        const std::int64_t low1000 = std::int64_t{low} * 1000;
        const auto stretch = [&](std::int64_t above, std::int64_t below, std::vector<int> preferred,
                                 std::int64_t length) {
            return OvenStretch{low1000 + above * 1000,
                               low1000 + (15 + below) * 1000,
                               false,
                               std::move(preferred),
                               length,
                               length};
        };
        const std::int64_t shared = firstLength - alone;
        const OvenBox box{{stretch(0, 0, {low + 8}, alone), stretch(5, 0, {low + 13}, shared),
                           stretch(5, 5, {}, otherLength - shared)},
                          {{0, 1, firstLength}, {1, 2, otherLength}}};
        const std::int64_t cost = leastCostInBox(oven, style, box, below).least;
        const std::int64_t least = cost - random.between(0, 6);
        if (least <= 0 || cost >= below) {
            return;
        }
        const std::vector<StretchLengths> open(3, {1, 40});
        const auto now = widenedBox(oven, style, box, open, least).box.stretches;
        for (std::int64_t one = from; one < firstLength; ++one) {
            const std::int64_t both = firstLength - one;
            const std::int64_t other = otherLength - both;
            const std::array<std::int64_t, 3> lengths{one, both, other};
            bool isIn = true;
            for (std::size_t i = 0; i < lengths.size(); ++i) {
                isIn = isIn && now[i].least <= lengths[i] && lengths[i] <= now[i].most;
            }
            if (isIn) {
                ++looked;
                wider += one != alone ? 1 : 0;
                EXPECT_GE(costOf(one), least);
            }
        }
    });
    EXPECT_GT(looked, 200);
    EXPECT_GT(wider, 100);
}

TEST(BoxWidening, LeavesABoxThatCostsLessAsItIs)
{
    Random random(2);
    const Oven oven = anyOven(random);
    const OvenBox box{{{70'000, 80'000, false, {}, 10, 10}}, {}};
    const OvenProgramStyle style = anyStyle(random);
    const std::int64_t cost = leastCostInBox(oven, style, box, below).least;
    ASSERT_LT(cost, below);
    const WidenedBox found = widenedBox(oven, style, box, {{1, 30}}, cost + 1);
    EXPECT_EQ(found.box.stretches, box.stretches);
}

/// So many degrees off, and each so dear, that there would be too many costs to tell apart.
TEST(ReachedWalk, SaysNothingOfTooManyCosts)
{
    Random random(2);
    const Oven oven = anyOven(random);
    const OvenBox box{{{60'000, 95'000, false, {95}, 1, 1}}, {}};
    const std::vector<StretchLengths> lengths = lengthsOf(box.stretches);
    const auto isDone = [&](std::int64_t preferC) {
        const OvenProgramStyle style{.onMinute = 1, .preferC = preferC};
        const SettingLevels levels(oven, {}, style, plenty, 0);
        const ReachedLevels reached(oven, style, levels);
        const SpanPlaces places({}, lengths);
        return ReachedWalk(oven, reached, places, box, lengths, plenty).isDone();
    };
    EXPECT_TRUE(isDone(1));
    EXPECT_FALSE(isDone(100));
}

} // namespace suppertide
