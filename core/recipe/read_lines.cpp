#include "core/recipe/read_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

namespace suppertide {

namespace {

std::string joined(const std::string& a, const std::string& b)
{
    return a.empty() ? b : b.empty() ? a : a + ", " + b;
}

LineId freeId(const std::string& ingredient, const std::set<LineId>& taken)
{
    std::string slug;
    for (const char letter : nameKey(ingredient)) {
        const auto code = static_cast<unsigned char>(letter);
        if (code < 128 && std::isalnum(code) != 0) {
            slug += letter;
        } else if (!slug.empty() && slug.back() != '-') {
            slug += '-';
        }
    }
    while (!slug.empty() && slug.back() == '-') {
        slug.pop_back();
    }
    slug = slug.empty() ? "line" : slug;
    std::string id = slug;
    for (int number = 2; taken.contains(LineId{id}); ++number) {
        id = fmt::format("{}-{}", slug, number);
    }
    return LineId{id};
}

} // namespace

IngredientLine lineFrom(const IngredientLineReading& reading, const std::set<LineId>& taken)
{
    IngredientLine line;
    line.ingredient = reading.ingredient;
    line.part = reading.part;
    line.amount = reading.amount.value_or(Amount{Rational{0}, Unit::ToTaste});
    line.also = reading.also;
    line.note = reading.note;
    if (!reading.more.empty()) {
        line.note =
            joined(line.note, reading.more == "more" ? "plus more" : "plus more " + reading.more);
    }
    line.note = joined(line.note, reading.rest);
    line.id = freeId(line.ingredient, taken);
    return line;
}

std::vector<IngredientLine> linesFrom(std::string_view text, MeasureSystem system,
                                      std::set<LineId> taken)
{
    std::vector<IngredientLine> lines;
    for (const IngredientLineReading& reading : readIngredientLines(text, system)) {
        if (!reading.ingredient.empty()) {
            lines.push_back(lineFrom(reading, taken));
            taken.insert(lines.back().id);
        }
    }
    return lines;
}

MeasureSystem systemOf(std::string_view text)
{
    static constexpr std::array<std::string_view, 8> metric{"g",  "kg",    "ml",    "l",
                                                            "dl", "grams", "litre", "litres"};
    static constexpr std::array<std::string_view, 13> customary{
        "cup", "cups", "stick", "sticks", "oz",    "ounce", "ounces",
        "lb",  "lbs",  "pound", "pounds", "quart", "quarts"};
    bool isCustomary = false;
    std::string word;
    for (const char letter : std::string(text) + " ") {
        const auto code = static_cast<unsigned char>(letter);
        if (std::isalpha(code) != 0) {
            word += static_cast<char>(std::tolower(code));
            continue;
        }
        if (std::ranges::find(metric, word) != metric.end()) {
            return MeasureSystem::Metric;
        }
        isCustomary = isCustomary || std::ranges::find(customary, word) != customary.end();
        word.clear();
    }
    return isCustomary ? MeasureSystem::UsCustomary : MeasureSystem::Metric;
}

} // namespace suppertide
