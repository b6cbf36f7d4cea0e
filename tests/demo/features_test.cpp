// Everything that the program can say of a recipe is said somewhere in the demo.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <iterator>
#include <set>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

std::vector<Step> everyStep()
{
    std::vector<Step> steps;
    for (const Recipe& each : content().recipes) {
        for (const Variant& variant : each.variants) {
            std::ranges::move(allSteps(resolved(each.id.text(), variant.id.text())),
                              std::back_inserter(steps));
        }
    }
    return steps;
}

bool anyStep(const std::function<bool(const Step&)>& holds)
{
    return std::ranges::any_of(everyStep(), holds);
}

std::vector<KeepOption> everyKeep()
{
    std::vector<KeepOption> keeps;
    for (const Recipe& each : content().recipes) {
        for (const Wait& one : allWaits(usual(each.id.text()))) {
            std::ranges::copy(one.keep, std::back_inserter(keeps));
        }
    }
    return keeps;
}

TEST(DemoFeatures, AllCautionsOccur)
{
    std::set<Caution> seen;
    for (const Step& each : everyStep()) {
        seen.insert(each.cautions.begin(), each.cautions.end());
    }
    EXPECT_THAT(
        seen, testing::UnorderedElementsAre(Caution::HotOil, Caution::Caramel, Caution::OpenFlame,
                                            Caution::Steam, Caution::SharpBlade, Caution::RawMeat,
                                            Caution::RawEgg, Caution::Alcohol, Caution::Poisonous));
}

TEST(DemoFeatures, AllGradesOfAttentionAndOneBetweenOccur)
{
    std::set<int> seen;
    for (const Step& each : everyStep()) {
        seen.insert(each.attention.percent());
    }
    EXPECT_THAT(seen, testing::IsSupersetOf({0, 10, 80, 100}));
    EXPECT_GT(seen.size(), 4U);
}

TEST(DemoFeatures, StepsScaleInAllThreeWays)
{
    for (const Scaling scaling : {Scaling::Fixed, Scaling::PerPortion, Scaling::PerBatch}) {
        EXPECT_TRUE(anyStep([scaling](const Step& each) { return each.scaling == scaling; }));
    }
}

TEST(DemoFeatures, OvensAreUsedWithFanWithGrillAndSwitchedOff)
{
    for (const OvenMode mode : {OvenMode::Any, OvenMode::Fan, OvenMode::Grill, OvenMode::Off}) {
        EXPECT_TRUE(anyStep([mode](const Step& each) {
            return std::ranges::any_of(each.uses, [mode](const Use& use) {
                const auto* oven = std::get_if<OvenUse>(&use);
                return oven != nullptr && oven->mode == mode;
            });
        }));
    }
}

TEST(DemoFeatures, StepsAreMarkedFitAndUnfitForTheTable)
{
    EXPECT_TRUE(anyStep([](const Step& each) { return each.atTable == true; }));
    EXPECT_TRUE(anyStep([](const Step& each) { return each.atTable == false; }));
    EXPECT_TRUE(anyStep([](const Step& each) { return each.turnAfter.has_value(); }));
    EXPECT_TRUE(anyStep([](const Step& each) { return each.skill.has_value(); }));
    EXPECT_TRUE(anyStep([](const Step& each) { return each.portionsPerBatch.has_value(); }));
}

TEST(DemoFeatures, FoodIsKeptInAllPlacesAndByAllMeans)
{
    const std::vector<KeepOption> keeps = everyKeep();
    for (const KeepPlace place :
         {KeepPlace::Counter, KeepPlace::Fridge, KeepPlace::Freezer, KeepPlace::Warm}) {
        EXPECT_TRUE(std::ranges::find(keeps, place, &KeepOption::place) != keeps.end());
    }
    for (const WarmBy means : {WarmBy::Oven, WarmBy::Burner, WarmBy::Flask}) {
        EXPECT_TRUE(std::ranges::any_of(keeps, [means](const KeepOption& keep) {
            return keep.place == KeepPlace::Warm && keep.warmBy == means;
        }));
    }
}

TEST(DemoFeatures, VariantsAddReplaceAndDrop)
{
    bool adds = false;
    bool replaces = false;
    bool drops = false;
    for (const Recipe& each : content().recipes) {
        std::set<LineId> own;
        for (const IngredientLine& line : each.common.lines) {
            own.insert(line.id);
        }
        for (const Variant& variant : each.variants) {
            drops = drops || (!variant.dropSteps.empty() && !variant.dropLines.empty());
            for (const IngredientLine& line : variant.adds.lines) {
                (own.contains(line.id) ? replaces : adds) = true;
            }
        }
    }
    EXPECT_TRUE(adds);
    EXPECT_TRUE(replaces);
    EXPECT_TRUE(drops);
}

TEST(DemoFeatures, MethodsAreToBeChosen)
{
    std::set<std::string> withMethods;
    for (const Recipe& each : content().recipes) {
        for (const MethodChoice& choice : each.methods) {
            EXPECT_GE(choice.methods.size(), 2U);
            withMethods.insert(each.id.text());
        }
    }
    EXPECT_THAT(withMethods, testing::IsSupersetOf({"braised-shoulder", "roast-roots"}));
}

/// Portions of a recipe that the midsummer supper makes.
Rational portionsMade(std::string_view id)
{
    Rational sum;
    for (const Course& each : occasion("midsummer-supper").occasion.courses) {
        for (const Dish& dish : each.dishes) {
            if (dish.recipe.text() == id) {
                sum = sum + portionsOf(dish);
            }
        }
    }
    return sum;
}

TEST(DemoFeatures, OnePreparationServesSeveralDishesOfTheSupper)
{
    std::map<RecipeId, std::set<std::string>> users;
    for (const Course& each : occasion("midsummer-supper").occasion.courses) {
        for (const Dish& dish : each.dishes) {
            for (const MixEntry& entry : dish.mix) {
                for (const IngredientLine& line :
                     resolved(dish.recipe.text(), entry.variant.text()).part.lines) {
                    if (line.preparation) {
                        users[*line.preparation].insert(dish.id.text());
                    }
                }
            }
        }
    }
    EXPECT_EQ(users.at(RecipeId{"savoury-custard"}).size(), 2U);
    EXPECT_EQ(users.at(RecipeId{"tartlet-cases"}).size(), 2U);
    EXPECT_EQ(users.size(), 5U); // with gluten-free cases, stock and compote
}

TEST(DemoFeatures, WhatADishLeavesIsWantedElsewhere)
{
    std::set<std::string> left;
    for (const Step& each : everyStep()) {
        for (const ByProduct& one : each.leaves) {
            left.insert(one.name);
        }
    }
    std::set<std::string> wanted;
    for (const Recipe& each : content().recipes) {
        for (const IngredientLine& line : each.common.lines) {
            if (line.byProduct) {
                wanted.insert(*line.byProduct);
            }
        }
    }
    EXPECT_THAT(left, testing::IsSupersetOf(wanted));
    EXPECT_THAT(wanted, testing::IsSupersetOf({"egg yolks", "egg whites", "lamb bones"}));
}

/// How much of a preparation the supper needs, in the unit of the lines that take it.
Rational needed(const RecipeId& preparation)
{
    Rational sum;
    for (const Recipe& each : content().recipes) {
        for (const IngredientLine& line : each.common.lines) {
            if (line.preparation == preparation) {
                sum = sum + line.amount.value * portionsMade(each.id.text()) / each.portions;
            }
        }
    }
    return sum;
}

// 560 ml of custard are made of six yolks, a litre of stock of 600 g of bones.
TEST(DemoFeatures, TheSuppersByProductsAreEnough)
{
    const Rational yolksLeft = Rational{6} * portionsMade("rhubarb-pavlova") / Rational{8};
    const Rational yolksWanted = Rational{6} * needed(RecipeId{"savoury-custard"}) / Rational{560};
    EXPECT_GE(yolksLeft, yolksWanted);
    EXPECT_GT(yolksWanted, Rational{0});
    const Rational bonesLeft = Rational{600} * portionsMade("braised-shoulder") / Rational{8};
    const Rational bonesWanted = Rational{600} * needed(RecipeId{"lamb-stock"}) / Rational{1000};
    EXPECT_GE(bonesLeft, bonesWanted);
    EXPECT_GT(bonesWanted, Rational{0});
}

TEST(DemoFeatures, GlutenFreeCasesHaveATinOfTheirOwn)
{
    std::set<std::string> wheatTins;
    for (const Span& span : usual("tartlet-cases").part.spans) {
        wheatTins.insert(std::get<VesselUse>(span.use).kind);
    }
    for (const Span& span : usual("tartlet-cases-gluten-free").part.spans) {
        EXPECT_FALSE(wheatTins.contains(std::get<VesselUse>(span.use).kind));
    }
    EXPECT_FALSE(wheatTins.empty());
    EXPECT_FALSE(usual("tartlet-cases-gluten-free").part.spans.empty());
}

TEST(DemoFeatures, GlutenFreeCasesAreBakedBeforeThoseOfWheat)
{
    const auto keep = [](std::string_view id) { return wait(usual(id).part.waits, "keep"); };
    const Wait wheat = keep("tartlet-cases");
    ASSERT_TRUE(wheat.most.has_value());
    EXPECT_GT(keep("tartlet-cases-gluten-free").least, *wheat.most);
}

// The board goes from one dough to the other, so that gluten-free has to come first or the board
// be washed between.
TEST(DemoFeatures, BothDoughsAreRolledOnTheOneBoard)
{
    for (const std::string_view id : {"tartlet-cases", "tartlet-cases-gluten-free"}) {
        const Step line = step(allSteps(usual(id)), "line");
        EXPECT_TRUE(std::ranges::any_of(line.uses, [](const Use& use) {
            const auto* vessel = std::get_if<VesselUse>(&use);
            return vessel != nullptr && vessel->kind == "pastry board" &&
                   vessel->washing > Minutes{0};
        })) << id;
    }
}

TEST(DemoFeatures, TheBlenderIsSharedBySoupAndTartlets)
{
    for (const std::string_view id :
         {"chilled-beetroot-soup", "pea-and-mint-soup", "smoked-trout-tartlets"}) {
        EXPECT_TRUE(std::ranges::any_of(allSteps(usual(id)), [](const Step& each) {
            return std::ranges::any_of(each.uses, [](const Use& use) {
                const auto* appliance = std::get_if<ApplianceUse>(&use);
                return appliance != nullptr && appliance->kind == "blender" &&
                       appliance->washing > Minutes{0};
            });
        })) << id;
    }
    EXPECT_EQ(std::ranges::count(kitchen("skerry-light").appliances, "blender", &Appliance::kind),
              1);
}

TEST(SkerryLight, IsTheKitchenThatTheSupperIsCookedIn)
{
    const Kitchen& place = kitchen("skerry-light");
    ASSERT_EQ(place.ovens.size(), 2U);
    EXPECT_EQ(place.ovens[0].shelves, 2);
    EXPECT_EQ(place.ovens[1].shelves, 1);
    EXPECT_TRUE(place.ovens[1].hasGrill);
    std::multiset<Length> sizes;
    for (const Burner& burner : place.burners) {
        sizes.insert(burner.size);
    }
    EXPECT_EQ(sizes, (std::multiset{14_cm, 18_cm, 18_cm, 21_cm}));
    const auto fridge = std::ranges::find(place.coldPlaces, ColdKind::Fridge, &ColdPlace::kind);
    ASSERT_NE(fridge, place.coldPlaces.end());
    EXPECT_EQ(fridge->room, 40_l);
    ASSERT_EQ(place.cooks.size(), 2U);
    EXPECT_TRUE(place.cooks[0].isHost);
    EXPECT_FALSE(place.cooks[1].isHost);
}

TEST(MidsummerSupper, HasJobsTripsAndCooksHours)
{
    const Occasion& supper = occasion("midsummer-supper").occasion;
    EXPECT_GE(supper.houseJobs.size(), 4U);
    ASSERT_EQ(supper.trips.size(), 2U);
    EXPECT_LE(supper.trips[0].latest.date, (CivilDate{2027, 6, 17}));
    EXPECT_EQ(supper.trips[1].latest.date, (CivilDate{2027, 6, 18}));
    EXPECT_TRUE(supper.trips[1].freshness.has_value());
    EXPECT_EQ(supper.hours.at(CookId{"maren"}).size(), 4U);
    const auto& jory = supper.hours.at(CookId{"jory"});
    ASSERT_EQ(jory.size(), 1U);
    EXPECT_EQ(jory.front().hours.front().from, (ClockTime{16, 0}));
}

} // namespace
} // namespace suppertide::demo
