// The demo for twelve: amounts exactly, times by each step's own rule.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/plan/batch_room.h"
#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

const Portions twelve{12};

Amount scaledLine(std::string_view id, std::string_view line)
{
    const ResolvedRecipe whole = usual(id);
    const auto found = std::ranges::find_if(
        whole.part.lines, [line](const IngredientLine& each) { return each.id.text() == line; });
    return scaled(found->amount, twelve / recipe(id).portions);
}

TEST(ForTwelve, AmountsGrowByExactlyAHalf)
{
    EXPECT_EQ(scaledLine("chilled-beetroot-soup", "buttermilk"),
              (Amount{Rational{750}, Unit::Millilitre}));
    EXPECT_EQ(scaledLine("chilled-beetroot-soup", "salt"), (Amount{Rational{33, 2}, Unit::Gram}));
    EXPECT_EQ(scaledLine("potato-gratin", "potatoes"), (Amount{Rational{12, 5}, Unit::Kilogram}));
    EXPECT_EQ(scaledLine("rhubarb-pavlova", "whites"), (Amount{Rational{9}, Unit::Piece}));
    EXPECT_EQ(scaledLine("stuffed-squash", "squash"), (Amount{Rational{6}, Unit::Piece}));
}

TEST(ForTwelve, GoingThereAndBackChangesNothing)
{
    for (const Recipe& each : content().recipes) {
        for (const IngredientLine& line : each.common.lines) {
            const Rational factor = twelve / each.portions;
            EXPECT_EQ(scaled(scaled(line.amount, factor), Rational{1} / factor), line.amount)
                << each.id.text() << ": " << line.id.text();
        }
    }
}

TEST(ForTwelve, KnifeWorkGrowsAndOvenTimeDoesNot)
{
    const std::vector<Step> gratin = allSteps(usual("potato-gratin"));
    const Portions eight{8};
    EXPECT_EQ(scaledDuration(step(gratin, "slice"), eight, twelve),
              (DurationRange{Minutes{30}, Minutes{38}, Minutes{48}}));
    EXPECT_EQ(scaledDuration(step(gratin, "bake"), eight, twelve), step(gratin, "bake").duration);
}

TEST(ForTwelve, WhatDoesNotFitAtOnceBecomesBatches)
{
    const std::vector<Step> soup = allSteps(usual("chilled-beetroot-soup"));
    // A jug of 2 l to 66 % is 1.32 l; the soup is 1.4 l for eight.
    const BatchRoom room =
        roomForBatch(step(soup, "blend"), Portions{8}, twelve, kitchen("skerry-light"));
    EXPECT_EQ(inBatches(twelve, room.atOnce), (std::vector{Portions{6}, Portions{6}}));
    const std::vector<Step> cases = allSteps(usual("tartlet-cases"));
    EXPECT_EQ(batchesOf(step(cases, "bake"), twelve), (std::vector{Portions{6}, Portions{6}}));
    EXPECT_EQ(batchesOf(step(cases, "bake"), Portions{8}), (std::vector{Portions{8}}));
}

TEST(ForTwelve, TheSupperHasNoFaults)
{
    Occasion supper = occasion("midsummer-supper").occasion;
    for (Course& each : supper.courses) {
        for (Dish& dish : each.dishes) {
            for (MixEntry& entry : dish.mix) {
                entry.portions = entry.portions * Rational{3, 2};
            }
        }
    }
    EXPECT_TRUE(faultsOf(supper, kitchen(supper.kitchen.text()), recipes()).empty());
}

} // namespace
} // namespace suppertide::demo
