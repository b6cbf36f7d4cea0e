#include "core/food/usda_foods.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/base/contracts.h"
#include "core/base/table_text.h"

namespace suppertide {

namespace tables {
std::string_view usdaFoods();
} // namespace tables

namespace {

constexpr std::size_t columnCount = 12;
using Cells = std::array<std::string_view, columnCount>;

/// Numbers are read only of the foods that are shown: going through the names takes a tenth of the
/// time that reading all figures would.
struct Entry
{
    std::string_view line;
    std::string lowerName;
};

std::string lowerCase(std::string_view text)
{
    std::string lower(text);
    std::ranges::transform(lower, lower.begin(), [](unsigned char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + ('a' - 'A'))
                                              : static_cast<char>(letter);
    });
    return lower;
}

Cells cellsOf(std::string_view line)
{
    Cells cells{};
    for (std::string_view& cell : cells) {
        const std::size_t tab = line.find('\t');
        cell = line.substr(0, tab);
        line = tab == std::string_view::npos ? std::string_view{} : line.substr(tab + 1);
    }
    return cells;
}

std::vector<Entry> readEntries(std::string_view text)
{
    std::vector<Entry> entries;
    bool isHead = true;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string_view line = text.substr(0, end);
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        if (line.empty() || line.front() == '#') {
            continue;
        }
        if (!std::exchange(isHead, false)) {
            entries.push_back({line, lowerCase(cellsOf(line)[2])});
        }
    }
    return entries;
}

const std::vector<Entry>& entries()
{
    static const std::vector<Entry> all = readEntries(tables::usdaFoods());
    return all;
}

std::optional<double> figure(std::string_view cell)
{
    return decimalNumber(cell);
}

/// "1 cup chopped = 128; 1 medium = 61".
std::vector<HouseholdWeight> weightsOf(std::string_view cell)
{
    constexpr std::string_view equals = " = ";
    std::vector<HouseholdWeight> weights;
    while (!cell.empty() && cell != "-") {
        const std::size_t end = cell.find("; ");
        const std::string_view one = cell.substr(0, end);
        cell = end == std::string_view::npos ? std::string_view{} : cell.substr(end + 2);
        const std::size_t blank = one.find(' ');
        const std::size_t sign = one.rfind(equals);
        const auto amount = decimalNumber(one.substr(0, blank));
        const auto grams = decimalNumber(one.substr(sign + equals.size()));
        ensures(amount && grams && blank < sign, "a household weight is “1 cup = 128”");
        weights.push_back({*amount, std::string(one.substr(blank + 1, sign - blank - 1)),
                           Grams::ofSmallest(std::llround(*grams * 1000))});
    }
    return weights;
}

UsdaFood foodOf(const Entry& entry)
{
    const Cells cells = cellsOf(entry.line);
    UsdaFood food;
    food.number = cells[0];
    food.group = cells[1];
    food.name = cells[2];
    food.water = figure(cells[3]);
    food.protein = figure(cells[4]);
    food.fat = figure(cells[5]);
    food.carbohydrate = figure(cells[6]);
    food.fibre = figure(cells[7]);
    food.ash = figure(cells[8]);
    food.refuse = figure(cells[9]);
    food.refuseWhat = cells[10] == "-" ? "" : cells[10];
    food.weights = weightsOf(cells[11]);
    return food;
}

std::vector<std::string> wordsOf(std::string_view query)
{
    std::vector<std::string> words;
    std::string word;
    for (const char letter : lowerCase(query) + " ") {
        if (letter != ' ' && letter != ',' && letter != '\t') {
            word += letter;
        } else if (!word.empty()) {
            words.push_back(std::exchange(word, {}));
        }
    }
    return words;
}

/// Where a word of `name` begins with `word`; npos if none does.
std::size_t beginOf(std::string_view name, std::string_view word)
{
    for (std::size_t at = name.find(word); at != std::string_view::npos;
         at = name.find(word, at + 1)) {
        const bool isBegin = at == 0 || name[at - 1] == ' ' || name[at - 1] == ',' ||
                             name[at - 1] == '(' || name[at - 1] == '-' || name[at - 1] == '/';
        if (isBegin) {
            return at;
        }
    }
    return std::string_view::npos;
}

/// Smaller is better; absent if a word is not there.
using Rank = std::tuple<int, int, std::size_t>;

std::optional<Rank> rankOf(const Entry& entry, const std::vector<std::string>& words)
{
    bool isFirst = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::size_t at = beginOf(entry.lowerName, words[i]);
        if (at == std::string_view::npos) {
            return std::nullopt;
        }
        isFirst = isFirst || (i == 0 && at == 0);
    }
    const bool isRaw = beginOf(entry.lowerName, "raw") != std::string_view::npos;
    return Rank{isFirst ? 0 : 1, isRaw ? 0 : 1, entry.lowerName.size()};
}

} // namespace

std::vector<UsdaFood> lookUpFoods(std::string_view query, std::size_t most)
{
    const std::vector<std::string> words = wordsOf(query);
    std::vector<std::pair<Rank, const Entry*>> found;
    if (!words.empty()) {
        for (const Entry& entry : entries()) {
            if (const auto rank = rankOf(entry, words)) {
                found.emplace_back(*rank, &entry);
            }
        }
    }
    const std::size_t count = std::min(most, found.size());
    std::ranges::partial_sort(found, found.begin() + static_cast<std::ptrdiff_t>(count));
    std::vector<UsdaFood> foods;
    for (std::size_t i = 0; i < count; ++i) {
        foods.push_back(foodOf(*found[i].second));
    }
    return foods;
}

std::optional<UsdaFood> findUsdaFood(std::string_view number)
{
    const auto found = std::ranges::find_if(
        entries(), [number](const Entry& entry) { return cellsOf(entry.line)[0] == number; });
    return found == entries().end() ? std::nullopt : std::optional{foodOf(*found)};
}

std::size_t usdaFoodCount()
{
    return entries().size();
}

} // namespace suppertide
