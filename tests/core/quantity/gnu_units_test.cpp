// Conversions against GNU Units, a program for units of all kinds that shares nothing with ours
// (Debian package "units").
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <vector>

#include "core/quantity/amount.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

struct NamedUnit
{
    Unit unit;
    const char* name; // in GNU Units
};

constexpr std::array masses{NamedUnit{Unit::Gram, "g"}, NamedUnit{Unit::Kilogram, "kg"},
                            NamedUnit{Unit::Ounce, "oz"}, NamedUnit{Unit::Pound, "lb"}};
constexpr std::array volumes{NamedUnit{Unit::Millilitre, "ml"},
                             NamedUnit{Unit::Centilitre, "cl"},
                             NamedUnit{Unit::Decilitre, "dl"},
                             NamedUnit{Unit::Litre, "l"},
                             NamedUnit{Unit::MetricCup, "metriccup"},
                             NamedUnit{Unit::AustralianTablespoon, "australiatablespoon"},
                             NamedUnit{Unit::UsTeaspoon, "ustsp"},
                             NamedUnit{Unit::UsTablespoon, "ustbsp"},
                             NamedUnit{Unit::UsFluidOunce, "usfloz"},
                             NamedUnit{Unit::UsCup, "uscup"},
                             NamedUnit{Unit::UsPint, "uspint"},
                             NamedUnit{Unit::UsQuart, "usquart"},
                             NamedUnit{Unit::UsGallon, "usgallon"},
                             NamedUnit{Unit::ImperialFluidOunce, "brfloz"},
                             NamedUnit{Unit::ImperialPint, "brpint"},
                             NamedUnit{Unit::ImperialQuart, "brquart"},
                             NamedUnit{Unit::ImperialGallon, "brgallon"}};
constexpr std::array lengths{NamedUnit{Unit::Millimetre, "mm"}, NamedUnit{Unit::Centimetre, "cm"},
                             NamedUnit{Unit::Inch, "inch"}};

struct Conversion
{
    Rational value;
    NamedUnit from;
    NamedUnit to;
};

template <std::size_t n>
Conversion anyConversion(test::Random& random, const std::array<NamedUnit, n>& units)
{
    const auto any = [&] {
        return units.at(static_cast<std::size_t>(random.between(0, static_cast<int>(n) - 1)));
    };
    return {Rational{random.between(1, 5000), random.between(1, 24)}, any(), any()};
}

std::vector<Conversion> thousands()
{
    std::vector<Conversion> conversions;
    test::forEachSeed(1500, [&conversions](test::Random& random) {
        conversions.push_back(anyConversion(random, masses));
        conversions.push_back(anyConversion(random, volumes));
        conversions.push_back(anyConversion(random, lengths));
    });
    return conversions;
}

/// What GNU Units answers to each line of the file.
std::vector<std::string> answersTo(const std::filesystem::path& questions)
{
    const std::string command = "units -q -t -d 15 < '" + questions.string() + "' 2>&1";
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    std::vector<std::string> answers;
    std::array<char, 200> line{};
    while (pipe && std::fgets(line.data(), line.size(), pipe.get()) != nullptr) {
        answers.emplace_back(line.data());
    }
    return answers;
}

TEST(GnuUnits, ConvertsAsWeDo)
{
    const std::vector<Conversion> conversions = thousands();
    const auto questions = std::filesystem::path(SUPPERTIDE_BINARY_DIR) / "gnu_units_questions.txt";
    {
        std::ofstream out(questions);
        for (const Conversion& each : conversions) {
            out << each.value.numerator() << '|' << each.value.denominator() << ' '
                << each.from.name << '\n'
                << each.to.name << '\n';
        }
    }
    const std::vector<std::string> answers = answersTo(questions);
    std::filesystem::remove(questions);
    ASSERT_EQ(answers.size(), conversions.size())
        << "GNU Units does not answer. Install the package “units”. "
        << (answers.empty() ? "" : answers.front());
    double worst = 0;
    for (std::size_t i = 0; i < conversions.size(); ++i) {
        const Conversion& each = conversions[i];
        const auto ours = inUnit({each.value, each.from.unit}, each.to.unit);
        ASSERT_TRUE(ours);
        const double theirs = std::strtod(answers[i].c_str(), nullptr);
        const double off = std::abs(ours->value.toDouble() / theirs - 1);
        EXPECT_LE(off, 2e-12) << each.value.text() << " " << each.from.name << " in "
                              << each.to.name << ": " << answers[i];
        worst = std::max(worst, off);
    }
    std::printf("[published] GNU Units: %zu conversions, worst off by %.1e of it\n",
                conversions.size(), worst);
}

} // namespace
} // namespace suppertide
