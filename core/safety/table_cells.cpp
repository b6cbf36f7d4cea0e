#include "core/safety/table_cells.h"

#include <array>

namespace suppertide::safety {

namespace {

/// The number and the unit of "145 °F".
struct Figure
{
    double value = 0;
    std::string_view unit;
};

std::optional<Figure> figureOf(std::string_view text)
{
    const auto blank = text.find(' ');
    if (blank == std::string_view::npos) {
        return std::nullopt;
    }
    const auto value = decimalNumber(text.substr(0, blank));
    return value ? std::optional{Figure{*value, text.substr(blank + 1)}} : std::nullopt;
}

constexpr std::array timeUnits{Word<double>{"s", 1.0 / 60}, Word<double>{"min", 1},
                               Word<double>{"h", 60},       Word<double>{"d", 1440},
                               Word<double>{"w", 7 * 1440}, Word<double>{"mo", 30 * 1440}};

constexpr std::array bookWords{Word<RuleBook>{"us_home", RuleBook::UsHome},
                               Word<RuleBook>{"us_trade", RuleBook::UsTrade},
                               Word<RuleBook>{"uk_eu", RuleBook::UkEu}};
constexpr std::array strengthWords{Word<Strength>{"advice", Strength::ConsumerAdvice},
                                   Word<Strength>{"trade", Strength::TradeLimit},
                                   Word<Strength>{"practice", Strength::CommonPractice}};
constexpr std::array weightWords{Word<Weight>{"unsafe", Weight::Unsafe},
                                 Word<Weight>{"caution", Weight::Caution}};
constexpr std::array statusWords{Word<RowStatus>{"confirmed", RowStatus::Confirmed},
                                 Word<RowStatus>{"secondary", RowStatus::Secondary},
                                 Word<RowStatus>{"from memory", RowStatus::FromMemory},
                                 Word<RowStatus>{"common practice", RowStatus::CommonPractice}};

} // namespace

Result<std::optional<PublishedTemperature>> temperatureCell(const TableRow& row,
                                                            std::string_view column)
{
    if (row.isEmpty(column)) {
        return std::optional<PublishedTemperature>{};
    }
    const auto figure = figureOf(row.text(column));
    if (!figure || (figure->unit != "°C" && figure->unit != "°F")) {
        return row.fault(column, "a temperature such as 145 °F");
    }
    return std::optional{PublishedTemperature{figure->value, figure->unit == "°C"
                                                                 ? TemperatureUnit::Celsius
                                                                 : TemperatureUnit::Fahrenheit}};
}

Result<std::optional<double>> minutesCell(const TableRow& row, std::string_view column)
{
    if (row.isEmpty(column)) {
        return std::optional<double>{};
    }
    std::string_view text = row.text(column);
    if (text.starts_with('<')) {
        text.remove_prefix(1);
    }
    const auto figure = figureOf(text);
    const auto unit =
        figure ? std::ranges::find(timeUnits, figure->unit, &Word<double>::first) : timeUnits.end();
    if (unit == timeUnits.end() || figure->value < 0) {
        return row.fault(column, "a time such as 15 s, 2 h or 7 d");
    }
    return std::optional{figure->value * unit->second};
}

Result<std::vector<RuleBook>> booksCell(const TableRow& row)
{
    std::vector<RuleBook> books;
    for (const std::string_view word : row.list("books")) {
        const auto found = std::ranges::find(bookWords, word, &Word<RuleBook>::first);
        if (found == bookWords.end()) {
            return row.fault("books", "a list of rule books");
        }
        books.push_back(found->second);
    }
    return books;
}

Result<std::vector<FoodClass>> foodsCell(const TableRow& row)
{
    std::vector<FoodClass> foods;
    for (const std::string_view word : row.list("foods")) {
        if (word == "*") {
            continue;
        }
        const auto food = findFoodClass(word);
        if (!food) {
            return row.fault("foods", "a list of classes of food");
        }
        foods.push_back(*food);
    }
    return foods;
}

Result<Strength> strengthCell(const TableRow& row)
{
    return wordCell<Strength>(row, "strength", strengthWords);
}

Result<Weight> weightCell(const TableRow& row)
{
    return wordCell<Weight>(row, "weight", weightWords);
}

Result<RowStatus> statusCell(const TableRow& row)
{
    return wordCell<RowStatus>(row, "status", statusWords);
}

} // namespace suppertide::safety
