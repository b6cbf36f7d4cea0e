#include <gtest/gtest.h>

#include <algorithm>

#include "core/safety/kitchen_hygiene.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::safety {
namespace {

ToolUse raw(std::string tool, std::int64_t minute)
{
    return {std::move(tool), planTime(minute), FoodClass::RawPoultry, false, {}, {}, false};
}

ToolUse ready(std::string tool, std::int64_t minute, bool isWashed = false)
{
    return {std::move(tool), planTime(minute), FoodClass::CutProduce, true, {}, {}, isWashed};
}

TEST(KitchenHygiene, OneBoardForRawAndThenReadyIsFoundUnlessItIsWashed)
{
    const std::vector uses{raw("board", 10), ready("board", 20)};
    const auto findings = judgeToolUses(uses);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].rule, "board_order");
    EXPECT_EQ(findings[0].earlier, 0U);
    EXPECT_EQ(findings[0].later, 1U);
    EXPECT_EQ(findings[0].weight, Weight::Unsafe);
    EXPECT_TRUE(judgeToolUses(std::vector{raw("board", 10), ready("board", 20, true)}).empty());
    EXPECT_TRUE(judgeToolUses(std::vector{raw("board", 20), ready("board", 10)}).empty());
    EXPECT_TRUE(judgeToolUses(std::vector{raw("board", 10), ready("other board", 20)}).empty());
}

TEST(KitchenHygiene, RawUpToNowStaysOnTheBoardThroughOtherUses)
{
    ToolUse roots{"board", planTime(15), FoodClass::CookedVegetable, false, {}, {}, false};
    const auto findings = judgeToolUses(std::vector{raw("board", 10), roots, ready("board", 20)});
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].later, 2U);
}

TEST(KitchenHygiene, PortionsFreeOfSomethingAreMadeFirst)
{
    const ToolUse nuts{
        "bowl", planTime(10), FoodClass::DryGoods, false, {Substance::Hazelnut, Substance::Milk},
        {},     false};
    ToolUse free{"bowl", planTime(20), FoodClass::DryGoods,
                 false,  {},           {Substance::Hazelnut, Substance::Egg},
                 false};
    const auto findings = judgeToolUses(std::vector{nuts, free});
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].rule, "allergen_order");
    EXPECT_EQ(findings[0].substances, std::vector{Substance::Hazelnut});
    EXPECT_EQ(findings[0].remedies.front(), Remedy::ReadyFirst);
    free.isWashedBefore = true;
    EXPECT_TRUE(judgeToolUses(std::vector{nuts, free}).empty());
    free.isWashedBefore = false;
    free.at = planTime(5);
    EXPECT_TRUE(judgeToolUses(std::vector{nuts, free}).empty());
}

FridgeStay stay(std::optional<int> shelf, FoodClass food, bool isReady, Interval when)
{
    return {"fridge", when, shelf, food, isReady, false};
}

TEST(KitchenHygiene, RawStandsBelowWhatIsEatenAsItIs)
{
    const auto judge = [](std::optional<int> rawShelf, std::optional<int> readyShelf,
                          Interval then = interval(0, 100)) {
        return judgeFridgeOrder(
            std::vector{stay(rawShelf, FoodClass::RawPoultry, false, interval(0, 100)),
                        stay(readyShelf, FoodClass::GelatineCream, true, then)});
    };
    ASSERT_EQ(judge(2, 1).size(), 1U);
    EXPECT_EQ(judge(2, 1)[0].rule, "fridge_order");
    EXPECT_EQ(judge(2, 1)[0].weight, Weight::Unsafe);
    EXPECT_EQ(judge(1, 1).size(), 1U);
    EXPECT_TRUE(judge(0, 1).empty());
    EXPECT_TRUE(judge(2, 1, interval(100, 200)).empty()); // one goes out as the other comes in
    ASSERT_EQ(judge(std::nullopt, 1).size(), 1U);
    EXPECT_EQ(judge(std::nullopt, 1)[0].weight, Weight::Caution);
    auto sealed = stay(2, FoodClass::RawPoultry, false, interval(0, 100));
    sealed.isSealed = true;
    EXPECT_TRUE(judgeFridgeOrder(
                    std::vector{sealed, stay(1, FoodClass::GelatineCream, true, interval(0, 100))})
                    .empty());
}

TEST(KitchenHygiene, FreeFirstKeepsTheOrderWhereItCan)
{
    using enum Substance;
    const std::vector<PortionMade> portions{{{Hazelnut}, {}}, {{}, {Milk}}, {{Milk}, {Hazelnut}}};
    // Nuts last, milk after the portion free of it.
    EXPECT_EQ(freeFirst(portions), (std::vector<std::size_t>{1, 2, 0}));
    EXPECT_EQ(freeFirst(std::vector<PortionMade>{{{Milk}, {Egg}}, {{Egg}, {Milk}}}),
              (std::vector<std::size_t>{0, 1}));
}

TEST(KitchenHygiene, FreeFirstIsAnOrderWithoutFindingsWhereThereIsOne)
{
    suppertide::test::forEachSeed(100, [](suppertide::test::Random& random) {
        // Substances of a rank: a portion contains those above its rank and is free of those below
        // or at it, so that an order exists.
        std::vector<PortionMade> portions;
        const auto size = random.between(1, 7);
        for (std::int64_t i = 0; i < size; ++i) {
            const auto rank = random.between(0, 4);
            PortionMade portion;
            for (std::int64_t s = 0; s < 5; ++s) {
                const Substance substance = allSubstances[static_cast<std::size_t>(s)];
                (s < rank ? portion.contains : portion.mustBeFree).push_back(substance);
            }
            portions.push_back(std::move(portion));
        }
        std::vector<ToolUse> uses;
        std::int64_t minute = 0;
        auto order = freeFirst(portions);
        for (const std::size_t i : order) {
            uses.push_back({"bowl", planTime(++minute), FoodClass::DryGoods, true,
                            portions[i].contains, portions[i].mustBeFree, false});
        }
        EXPECT_TRUE(judgeToolUses(uses).empty());
        std::ranges::sort(order);
        for (std::size_t i = 0; i < order.size(); ++i) {
            EXPECT_EQ(order[i], i);
        }
    });
}

} // namespace
} // namespace suppertide::safety
