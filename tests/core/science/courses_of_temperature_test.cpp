// Courses of temperature through several places, what they kill, and surfaces that evaporate.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/science/core_temperature.h"
#include "core/science/lethality.h"
#include "core/science/moist_surface.h"
#include "core/science/surroundings.h"
#include "core/science/temperature_curve.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::science {
namespace {

HeatedBody roast()
{
    return bodyFor({.food = findDinnerFood("beef_lean").value().composition,
                    .shape = roastOf(1.5, 1050.0).value(),
                    .start = 6.0,
                    .target = 55.0,
                    .surroundings = 170.0},
                   18.0)
        .value();
}

TEST(CoursesOfTemperature, OvenRestFridge)
{
    auto body = roast();
    const auto curve =
        temperatureCurve(body, {{{170.0, 18.0}, 70.0}, {{20.0, 10.0}, 20.0}, {{4.0, 8.0}, 240.0}},
                         5.0)
            .value();
    const auto at = [&curve](double minute) {
        const auto point = std::ranges::find_if(
            curve, [minute](const CurvePoint& p) { return std::abs(p.minute - minute) < 1e-6; });
        EXPECT_NE(point, curve.end()) << minute;
        return *point;
    };
    const CurvePoint outOfOven = at(70.0);
    const CurvePoint rested = at(90.0);
    EXPECT_EQ(curve.front().centre, 6.0);
    EXPECT_EQ(curve.front().surface, 6.0);
    EXPECT_NEAR(curve.back().minute, 330.0, 1e-9);
    EXPECT_GT(outOfOven.surface, outOfOven.mean);
    EXPECT_GT(outOfOven.mean, outOfOven.centre);
    EXPECT_GT(rested.centre, outOfOven.centre); // carry-over
    EXPECT_LT(rested.surface, outOfOven.surface);
    EXPECT_LT(curve.back().surface, curve.back().centre);
    EXPECT_NEAR(curve.back().centre, body.centre(), 1e-12);
}

TEST(CoursesOfTemperature, StraightLinesBetweenThePointsAreCloseEnough)
{
    auto coarse = roast();
    auto fine = coarse;
    const std::vector<Stay> stays{{{170.0, 18.0}, 80.0}, {{4.0, 8.0}, 900.0}};
    const auto points = temperatureCurve(coarse, stays, 1.0).value();
    double passed = 0.0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double middle = 0.5 * (points[i - 1].minute + points[i].minute);
        const Exchange place = middle < 80.0 ? stays[0].place : stays[1].place;
        ASSERT_TRUE(fine.advance(place, 60.0 * (middle - passed)));
        passed = middle;
        EXPECT_NEAR(0.5 * (points[i - 1].centre + points[i].centre), fine.centre(), 0.2) << middle;
        EXPECT_NEAR(0.5 * (points[i - 1].mean + points[i].mean), fine.mean(), 0.2) << middle;
        if (std::abs(middle - 80.0) > 1.0) {
            ASSERT_TRUE(fine.advance(place, 60.0 * (points[i].minute - passed)));
            passed = points[i].minute;
        }
    }
}

TEST(CoursesOfTemperature, APointBetweenDoesNotChangeWhatComesAfter)
{
    auto coarse = roast();
    auto fine = coarse;
    const std::vector<Stay> stays{{{170.0, 18.0}, 47.0}, {{20.0, 10.0}, 13.5}};
    const auto few = temperatureCurve(coarse, stays, 60.0).value();
    const auto many = temperatureCurve(fine, stays, 1.0).value();
    EXPECT_NEAR(few.back().centre, many.back().centre, 0.05);
    EXPECT_NEAR(few.back().surface, many.back().surface, 0.1);
    EXPECT_NEAR(few.back().minute, 60.5, 1e-9);
}

TEST(CoursesOfTemperature, TemperaturesStayBetweenFoodAndPlaces)
{
    test::forEachSeed(60, [](test::Random& random) {
        auto body = roast();
        double low = 6.0;
        double high = 6.0;
        std::vector<Stay> stays;
        for (int i = 0; i < 4; ++i) {
            const auto celsius = static_cast<double>(random.between(-18, 230));
            low = std::min(low, celsius);
            high = std::max(high, celsius);
            stays.push_back({{celsius, static_cast<double>(random.between(1, 800))},
                             static_cast<double>(random.between(0, 120))});
        }
        const auto curve = temperatureCurve(body, stays, 7.0).value();
        for (const CurvePoint& point : curve) {
            const double slack = 0.002 * (high - low); // of the extrapolated steps
            for (const double t : {point.centre, point.mean, point.surface}) {
                EXPECT_GE(t, low - slack);
                EXPECT_LE(t, high + slack);
            }
        }
    });
}

TEST(CoursesOfTemperature, LethalityAddsUpOverPartsAndGrowsWithTemperature)
{
    test::forEachSeed(100, [](test::Random& random) {
        std::vector<TimeTemperature> course{{0.0, static_cast<double>(random.between(20, 80))}};
        for (int i = 0; i < 6; ++i) {
            course.push_back({course.back().minute + static_cast<double>(random.between(0, 20)),
                              static_cast<double>(random.between(20, 80))});
        }
        const double whole = lethality(course, 70.0, 7.5).value();
        const double first = lethality({course.begin(), course.begin() + 4}, 70.0, 7.5).value();
        const double second = lethality({course.begin() + 3, course.end()}, 70.0, 7.5).value();
        EXPECT_NEAR(first + second, whole, 1e-9 * std::max(whole, 1.0));
        auto hotter = course;
        for (TimeTemperature& point : hotter) {
            point.celsius += 7.5;
        }
        EXPECT_NEAR(lethality(hotter, 70.0, 7.5).value(), 10.0 * whole,
                    1e-9 * std::max(10.0 * whole, 1.0));
    });
    EXPECT_NEAR(lethality({{0.0, 70.0}, {2.0, 70.0}}, 70.0, 7.5).value(), 2.0, 1e-12);
    // A slope that can hardly be told from none.
    EXPECT_NEAR(lethality({{0.0, 70.0}, {2.0, 70.0 + 1e-10}}, 70.0, 7.5).value(), 2.0, 1e-9);
    EXPECT_FALSE(lethality({{0.0, 70.0}}, 70.0, 7.5));
    EXPECT_FALSE(lethality({{1.0, 70.0}, {0.0, 70.0}}, 70.0, 7.5));
}

TEST(CoursesOfTemperature, EvaporationHoldsASurfaceBack)
{
    double last = 400.0;
    for (const double wetness : {0.0, 0.02, 0.1, 0.3, 1.0}) {
        const auto exchange = withEvaporation({200.0, 17.0}, wetness).value();
        EXPECT_LT(exchange.temperature, last);
        EXPECT_GE(exchange.coefficient, 17.0);
        last = exchange.temperature;
    }
    // Fully wet in air of 200 °C with little steam: near the wet bulb, 55 to 65 °C.
    EXPECT_NEAR(last, 60.0, 6.0);
    EXPECT_EQ(withEvaporation({20.0, 10.0}, 0.1).value(), (Exchange{20.0, 10.0}));
    EXPECT_EQ(withEvaporation({200.0, 17.0}, 0.0).value(), (Exchange{200.0, 17.0}));
    const auto still = surroundingsOf(Place::StillOven).coefficient;
    EXPECT_GT(withEvaporation({230.0, still.likely}, 0.1)->temperature,
              withEvaporation({180.0, still.likely}, 0.1)->temperature);
}

} // namespace
} // namespace suppertide::science
