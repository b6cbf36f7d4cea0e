// Each table of this folder is read whole, each row has a source, and faults name their line.
#include <gtest/gtest.h>

#include <set>

#include "core/science/boiling.h"
#include "core/science/dinner_foods.h"
#include "core/science/high_altitude_cakes.h"
#include "core/science/lethality.h"
#include "core/science/roast_scaling.h"
#include "core/science/surroundings.h"
#include "core/science/transitions.h"

namespace suppertide::science {
namespace {

template <typename Row>
void expectNamedOnceWithSources(const std::vector<Row>& rows, std::size_t least)
{
    std::set<std::string> ids;
    EXPECT_GE(rows.size(), least);
    for (const Row& row : rows) {
        EXPECT_TRUE(ids.insert(row.id).second) << row.id;
        EXPECT_FALSE(row.source.empty()) << row.id;
    }
}

TEST(ScienceTables, AreReadWhole)
{
    expectNamedOnceWithSources(dinnerFoods(), 40);
    expectNamedOnceWithSources(roastChart(), 16);
    expectNamedOnceWithSources(heatResistances(), 4);
    expectNamedOnceWithSources(transitions(), 30);
    expectNamedOnceWithSources(syrupStages(), 9);
    EXPECT_EQ(highAltitudeCakes().size(), 3U);
    for (int place = 0; place <= static_cast<int>(Place::ColdWater); ++place) {
        const auto& around = surroundingsOf(static_cast<Place>(place));
        EXPECT_EQ(around.place, static_cast<Place>(place));
        EXPECT_FALSE(around.name.empty());
        EXPECT_FALSE(around.source.empty());
        EXPECT_GT(around.coefficient.least, 0.0);
    }
    EXPECT_LT(surroundingsOf(Place::StillOven).coefficient.likely,
              surroundingsOf(Place::FanOven).coefficient.likely);
    EXPECT_LT(surroundingsOf(Place::Fridge).coefficient.likely,
              surroundingsOf(Place::IceBath).coefficient.likely);
}

TEST(ScienceTables, EachFoodHasPropertiesAndMakesAMaterial)
{
    for (const DinnerFood& food : dinnerFoods()) {
        SCOPED_TRACE(food.id);
        EXPECT_EQ(food.source.rfind("USDA SR26 ", 0), 0U);
        for (const double t : {-40.0, -18.0, -2.0, 0.0, 20.0, 80.0, 150.0}) {
            const auto properties = foodProperties(food.composition, t, food.freezesAt);
            ASSERT_TRUE(properties) << properties.error().forCook;
            EXPECT_GT(properties->density, 600.0);
            EXPECT_LT(properties->density, 1700.0);
            EXPECT_GT(properties->heatCapacity, 1000.0);
            EXPECT_LT(properties->heatCapacity, 6000.0);
            EXPECT_GT(properties->conductivity, properties->conductivityAcross);
            EXPECT_LE(properties->iceFraction, food.composition.water);
        }
        const auto material = heatMaterial(food.composition, food.freezesAt);
        ASSERT_TRUE(material) << material.error().forCook;
        for (const double t : {-39.0, -1.0, 5.0, 63.3}) {
            EXPECT_NEAR(material->temperature(material->enthalpy(t)), t, 1e-6);
        }
    }
}

TEST(ScienceTables, MeltingTakesTheHeatOfTheIce)
{
    const auto water = findDinnerFood("water").value();
    const auto lean = findDinnerFood("beef_lean").value();
    const auto heat = [](const DinnerFood& food, double from, double to) {
        const auto material = heatMaterial(food.composition, food.freezesAt).value();
        return (material.enthalpy(to) - material.enthalpy(from)) /
               foodProperties(food.composition, 20.0).value().density;
    };
    // Ice at 0 °C melts with 333.6 kJ/kg; a quarter of a degree on either side of the table adds
    // less than 2.
    EXPECT_NEAR(heat(water, -0.25, 0.25) / 1000.0, 333.6, 2.0);
    // R. L. Earle: 323 kJ/kg from 10 to −18 °C for lean meat of 73 % water; bound water and
    // composition move it by a tenth.
    EXPECT_NEAR(heat(lean, -18.0, 10.0) / 1000.0, 257.0, 40.0);
}

TEST(ScienceTables, FaultsNameTheirLine)
{
    const auto expectLine = [](const auto& result, const char* words) {
        ASSERT_FALSE(result);
        EXPECT_NE(result.error().forCook.find(words), std::string::npos) << result.error().forCook;
    };
    expectLine(readDinnerFoods(
                   "id\tname\twater\tprotein\tfat\tcarbohydrate\tfibre\tash\tfreezes_at\tsource\n"
                   "x\tx\tmuch\t0\t0\t0\t0\t0\t-\ts\n"),
               "line 2");
    expectLine(readSurroundings(
                   "id\tname\ttemperature\tleast\tlikely\tmost\tsource\nmoon\tm\t-\t1\t2\t3\ts\n"),
               "line 2");
    expectLine(readSurroundings(
                   "id\tname\ttemperature\tleast\tlikely\tmost\tsource\npan\tm\t-\t3\t2\t1\ts\n"),
               "line 2");
    expectLine(readSurroundings(
                   "id\tname\ttemperature\tleast\tlikely\tmost\tsource\npan\tm\t-\t1\t2\t3\ts\n"),
               "lacks a place");
    expectLine(readHobs("id\tname\tleast\tlikely\tmost\tsource\ninduction\ti\t1\t1\t1\ts\n"),
               "line 2");
    expectLine(readHobs("id\tname\tleast\tlikely\tmost\tsource\n"), "lacks one");
    expectLine(readRoastChart("id\tname\tpounds_least\tpounds_most\toven_f\tper\tminutes_"
                              "least\tminutes_most\tsource\n"
                              "a\ta\t1\t2\t325\ta stone\t10\t20\ts\n"),
               "line 2");
    expectLine(readRoastChart("id\tname\tpounds_least\tpounds_most\toven_f\tper\tminutes_"
                              "least\tminutes_most\tsource\n"
                              "a\ta\t1\t2\t325\tin all\t30\t20\ts\n"),
               "line 2");
    expectLine(readHeatResistances("id\torganism\tfood\td_minutes\tat\tz\tlog_"
                                   "reductions\tsource\na\ta\ta\t0\t60\t7\t6\ts\n"),
               "line 2");
    expectLine(readTransitions("id\twhat\tfrom\tto\tsource\na\ta\t70\t60\ts\n"), "line 2");
    expectLine(readSyrupStages("id\tname\tfrom\tto\tfrom_f\tto_f\tother_from\tother_to\tsugar_"
                               "percent\tsource\na\ta\tx\t1\t-\t-\t-\t-\t-\ts\n"),
               "line 2");
    expectLine(
        readHighAltitudeCakes("feet\tpowder_least\tpowder_most\tsugar_least\tsugar_most\tliquid_"
                              "least\tliquid_most\toven_f_least\toven_f_most\tsource\n"
                              "5000\t0\t0\t-\t-\t1\t2\t-\t-\ts\n3000\t0\t0\t-\t-\t1\t2\t-\t-\ts\n"),
        "line 3");
}

} // namespace
} // namespace suppertide::science
