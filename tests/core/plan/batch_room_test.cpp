// Batches follow what the kitchen's vessels and appliances hold.
#include <gmock/gmock.h>

#include <algorithm>

#include "core/plan/batch_room.h"
#include "tests/support/for_each_seed.h"
#include "tests/support/supper/supper.h"

namespace suppertide::test {

namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Vessel vessel(const std::string& id, Litres volume, int count = 1)
{
    return {KitchenItemId{id}, id, "tart tin", volume, 20_cm, count};
}

Appliance blender(const std::string& id, std::optional<Litres> holds)
{
    return {KitchenItemId{id}, id, "blender", holds};
}

/// A soup of 2 litres for 8, blended up to three quarters of the jug.
Recipe soup()
{
    Step blend = step("Blend the soup", 4_min);
    blend.scaling = Scaling::PerBatch;
    return recipe("Soup", {with(blend, ApplianceUse{"blender", 0_min, Filling{2_l, 75}})});
}

Step filled(Litres filling, int percent = 100, int count = 1)
{
    return with(step("Fill the tins", 5_min),
                VesselUse{"tart tin", {}, count, 0_min, Filling{filling, percent}});
}

std::vector<Portions> sizesOf(const Formulation& formulation, const std::string& step)
{
    std::vector<Portions> sizes;
    for (const TaskIndex task : formulation.tasks.indices()) {
        const TaskSource& source = formulation.tasks[task];
        if (source.step && source.step->text() == step) {
            sizes.push_back(source.portions);
        }
    }
    return sizes;
}

TEST(BatchRoom, MakesABatchOfWhatTheBlenderHolds)
{
    const auto blended = [](std::optional<Litres> holds, int portions) {
        Supper supper;
        supper.kitchen.appliances = {blender("blender", holds)};
        supper.serve(soup(), portions);
        return sizesOf(*supper.formulated(), "blend-the-soup");
    };
    // 1.5 l to three quarters is 1.125 l: 4½ portions of ¼ l.
    EXPECT_THAT(blended(decilitres(15), 8), ElementsAre(Portions{4}, Portions{4}));
    EXPECT_THAT(blended(decilitres(15), 9), ElementsAre(Portions(9, 2), Portions(9, 2)));
    EXPECT_THAT(blended(decilitres(15), 10), ElementsAre(Portions{4}, Portions{3}, Portions{3}));
    EXPECT_THAT(blended(3_l, 8), ElementsAre(Portions{8}));
    EXPECT_THAT(blended(std::nullopt, 8), ElementsAre(Portions{8}));
}

TEST(BatchRoom, MakesTwoTasksOnTheOneBlender)
{
    Supper supper;
    supper.kitchen.appliances = {blender("blender", decilitres(15))};
    supper.serve(soup());
    const FormulationPtr formulation = supper.formulated();
    EXPECT_THAT(
        lagsBetween(*formulation, "soup/*/blend-the-soup#1:start", "soup/*/blend-the-soup#2:start"),
        ElementsAre("0…"));
    const auto& demands = formulation->problem.demands;
    const Demand& first = demands[demandIndex(*formulation, "soup/*/blend-the-soup#1:blender")];
    const Demand& second = demands[demandIndex(*formulation, "soup/*/blend-the-soup#2:blender")];
    EXPECT_EQ(first.pool, second.pool);
    EXPECT_EQ(first.minSize, 14); // 1 l of three quarters, rounded up to a tenth of a litre
    // One blender, handed on from batch to batch.
    EXPECT_EQ(pointText(*formulation, first.to), "soup/*/blend-the-soup#2:start");
}

TEST(BatchRoom, TakesTheLargestOfItsKindAndGivesSmallBatchesToSmallOnes)
{
    Supper supper;
    supper.kitchen.vessels = {vessel("small", 1_l), vessel("large", 2_l)};
    supper.serve(recipe("Tart", {filled(4_l)}), 6);
    const FormulationPtr formulation = supper.formulated();
    EXPECT_THAT(sizesOf(*formulation, "fill-the-tins"), ElementsAre(Portions{3}, Portions{3}));
    const auto minSize = [&](const char* id) {
        return formulation->problem.demands[demandIndex(*formulation, id)].minSize;
    };
    EXPECT_EQ(minSize("tart/*/fill-the-tins#1:tart tin"), 15);
}

TEST(BatchRoom, SharesTheFillingOutAmongVesselsTakenTogether)
{
    const auto made = [](std::vector<Vessel> vessels, int count) {
        Supper supper;
        supper.kitchen.vessels = std::move(vessels);
        supper.serve(recipe("Tart", {filled(4_l, 100, count)}));
        return sizesOf(*supper.formulated(), "fill-the-tins");
    };
    EXPECT_THAT(made({vessel("tins", 1_l, 4)}, 4), ElementsAre(Portions{8}));
    EXPECT_THAT(made({vessel("tins", 1_l, 4)}, 2), ElementsAre(Portions{4}, Portions{4}));
    // As much in each: the smaller of the two bounds both.
    EXPECT_THAT(made({vessel("large", 2_l), vessel("small", 1_l)}, 2),
                ElementsAre(Portions{4}, Portions{4}));
}

TEST(BatchRoom, KeepsWhatTheRecipeItselfSaysIsTheMost)
{
    Supper supper;
    supper.kitchen.vessels = {vessel("large", 4_l)};
    Step fill = filled(4_l);
    fill.portionsPerBatch = Portions{6};
    supper.serve(recipe("Tart", {fill}));
    EXPECT_THAT(sizesOf(*supper.formulated(), "fill-the-tins"),
                ElementsAre(Portions{4}, Portions{4}));
}

TEST(BatchRoom, SaysThatNoVesselHoldsAPortion)
{
    const auto told = [](Litres volume) {
        Supper supper;
        supper.kitchen.vessels = {vessel("tin", volume)};
        supper.serve(recipe("Tart", {filled(8_l)}), 2);
        return supper.clashes();
    };
    EXPECT_THAT(told(1_l), IsEmpty());
    EXPECT_THAT(told(decilitres(9)),
                ElementsAre("The kitchen has no tart tin that holds 2 l for the tart."));
}

TEST(BatchRoom, SaysThatNoBlenderHoldsAPortion)
{
    const auto told = [](Litres holds) {
        Supper supper;
        supper.kitchen.appliances = {blender("blender", holds)};
        supper.serve(soup(), 1);
        return supper.clashes();
    };
    EXPECT_THAT(told(decilitres(4)), IsEmpty());
    EXPECT_THAT(told(decilitres(3)),
                ElementsAre("The kitchen has no blender that holds 0.4 l for the soup."));
}

TEST(BatchRoom, NeverFillsAVesselAboveWhatItHoldsAndMakesNoBatchInVain)
{
    forEachSeed(400, [](Random& random) {
        Kitchen kitchen;
        const auto vessels = random.between(1, 4);
        for (std::int64_t i = 0; i < vessels; ++i) {
            kitchen.vessels.push_back(vessel("tin-" + std::to_string(i),
                                             decilitres(random.between(1, 60)),
                                             static_cast<int>(random.between(1, 3))));
        }
        const int percent = static_cast<int>(random.between(10, 100));
        const int count = static_cast<int>(random.between(1, 3));
        const Litres volume = decilitres(random.between(1, 90));
        const Portions recipePortions{random.between(1, 12)};
        const Portions portions{random.between(1, 40), random.between(1, 2)};
        const BatchRoom room =
            roomForBatch(filled(volume, percent, count), recipePortions, portions, kitchen);
        if (room.tooSmall != nullptr) {
            EXPECT_FALSE(room.atOnce);
            return;
        }
        ASSERT_TRUE(room.atOnce);
        // Found by another way: one unit after the other, the largest first.
        std::vector<Rational> units;
        for (const Vessel& each : kitchen.vessels) {
            units.insert(units.end(), static_cast<std::size_t>(each.count),
                         Rational{each.volume.smallest() * percent, 1000});
        }
        std::ranges::sort(units, std::ranges::greater{});
        const std::size_t used = std::min(units.size(), static_cast<std::size_t>(count));
        const Rational each = units[used - 1];
        const Rational perPortion =
            Rational{volume.smallest(), 10} / recipePortions; // litres of one portion
        const std::vector<Portions> batches = inBatches(portions, room.atOnce);
        Rational all;
        for (const Portions& batch : batches) {
            EXPECT_LE(batch * perPortion, each * Rational{count});
            EXPECT_LE(roomFor({volume, percent}, count, recipePortions, batch).smallest(),
                      (units[used - 1] * Rational{1000} / Rational{percent}).ceiled());
            all = all + batch;
        }
        EXPECT_EQ(all, portions);
        const auto fewer = static_cast<std::int64_t>(batches.size()) - 1;
        EXPECT_LT(each * Rational{count} * Rational{fewer}, portions * perPortion);
    });
}

} // namespace

} // namespace suppertide::test
