// International Standard Atmosphere (ISO 2533) with IAPWS-IF97; printed boiling points of NOAA and
// NASA as quoted in encyclopaedias.
#include <gtest/gtest.h>

#include "core/science/water.h"
#include "tests/published/deviation.h"

namespace suppertide::science {
namespace {

double fahrenheit(double celsius)
{
    return celsius * 1.8 + 32.0;
}

TEST(IsaAltitude, PressureAndBoilingPointByAltitude)
{
    struct Row
    {
        double metres;
        double pressure;
        double boils;
        double boilsFahrenheit;
    };
    // Computed independently; half of the last digit. The row of °F is rounded to the whole degree.
    test::Deviation worst{"ISA and IF97, boiling by altitude: kPa, °C"};
    for (const Row& row : {Row{0, 101.33, 99.97, 212}, Row{500, 95.46, 98.31, 209},
                           Row{1000, 89.87, 96.65, 206}, Row{1500, 84.56, 94.98, 203},
                           Row{2000, 79.50, 93.32, 200}, Row{3000, 70.11, 89.97, 194}}) {
        SCOPED_TRACE(row.metres);
        worst.near(pressureAtAltitude(row.metres).value(), row.pressure, 0.0051, "2.6 pressure");
        worst.near(boilingPointAtAltitude(row.metres).value(), row.boils, 0.0051, "2.6 boiling °C");
        worst.near(fahrenheit(boilingPointAtAltitude(row.metres).value()), row.boilsFahrenheit, 0.5,
                   "2.6 boiling °F");
    }
}

TEST(IsaAltitude, PrintedBoilingPointsInFahrenheit)
{
    constexpr double foot = 0.3048;
    // Printed figures differ from the formulation by up to 0.2 °F: sources use other atmospheres.
    test::Deviation worst{"NOAA/NASA, boiling point by altitude: °F"};
    const auto boils = [](double feet) {
        return fahrenheit(boilingPointAtAltitude(feet * foot).value());
    };
    worst.near(boils(2000), 208.4, 0.21, "2.6 2000 ft");
    worst.near(boils(5000), 203.0, 0.21, "2.6 5000 ft");
    worst.near(boils(8000), 197.4, 0.21, "2.6 8000 ft");
    worst.near(boils(10000), 193.6, 0.21, "2.6 10 000 ft");
    worst.near(boils(2000), 208.3, 0.05, "2.6 2000 ft, computed");
    worst.near(boils(5000), 202.8, 0.05, "2.6 5000 ft, computed");
    worst.near(boils(8000), 197.3, 0.05, "2.6 8000 ft, computed");
    worst.near(boils(10000), 193.7, 0.05, "2.6 10 000 ft, computed");
    for (const double feet : {1000.0, 3000.0, 6000.0}) {
        // Rule of thumb: 1 °F for 500 ft, to about a tenth.
        worst.near((boils(0) - boils(feet)) / (feet / 500.0), 1.0, 0.1, "2.6 rule of thumb");
    }
}

} // namespace
} // namespace suppertide::science
