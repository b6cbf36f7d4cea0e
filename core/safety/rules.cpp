#include "core/safety/rules.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <utility>

#include "core/base/own_table.h"
#include "core/safety/table_cells.h"

namespace suppertide::tables {

std::string_view safetyRules();

} // namespace suppertide::tables

namespace suppertide::safety {

namespace {

constexpr std::array subjectWords{
    Word<Subject>{"danger zone", Subject::DangerZone},
    Word<Subject>{"danger zone in hot air", Subject::DangerZoneHotAir},
    Word<Subject>{"time alone", Subject::TimeAlone},
    Word<Subject>{"time alone, cold", Subject::TimeAloneCold},
    Word<Subject>{"hot period", Subject::HotPeriod},
    Word<Subject>{"cold period", Subject::ColdPeriod},
    Word<Subject>{"cooling, first stage", Subject::CoolingFirst},
    Word<Subject>{"cooling, in total", Subject::CoolingTotal},
    Word<Subject>{"cooling from the room", Subject::CoolingFromRoom},
    Word<Subject>{"hot holding", Subject::HotHolding},
    Word<Subject>{"hot holding of roasts", Subject::HotHoldingRoast},
    Word<Subject>{"cold holding", Subject::ColdHolding},
    Word<Subject>{"freezing", Subject::Freezing},
    Word<Subject>{"reheating", Subject::Reheating},
    Word<Subject>{"time of reheating", Subject::ReheatingTime},
    Word<Subject>{"reheating once", Subject::ReheatingOnce},
    Word<Subject>{"core temperature", Subject::CoreTemperature},
    Word<Subject>{"rest", Subject::Rest},
    Word<Subject>{"microwave", Subject::Microwave},
    Word<Subject>{"roasting oven", Subject::RoastingOven},
    Word<Subject>{"coming up", Subject::ComingUp},
    Word<Subject>{"low bath", Subject::LowBath},
    Word<Subject>{"date mark", Subject::DateMark},
    Word<Subject>{"thawing", Subject::Thawing},
    Word<Subject>{"thawing in water", Subject::ThawingWater},
    Word<Subject>{"cook after thawing", Subject::CookAfterThawing},
    Word<Subject>{"cooling of rice", Subject::RiceCooling},
    Word<Subject>{"garlic in oil", Subject::GarlicInOil},
    Word<Subject>{"raw egg", Subject::RawEgg},
    Word<Subject>{"rare meat", Subject::RareMeat},
    Word<Subject>{"raw fish", Subject::RawFish},
    Word<Subject>{"raw shellfish", Subject::RawShellfish},
    Word<Subject>{"cold-smoked fish", Subject::ColdSmokedFish},
    Word<Subject>{"unpasteurised milk", Subject::UnpasteurisedMilk},
    Word<Subject>{"parasites", Subject::Parasites},
    Word<Subject>{"canning", Subject::Canning},
    Word<Subject>{"order in the fridge", Subject::FridgeOrder},
    Word<Subject>{"order on a board", Subject::BoardOrder},
    Word<Subject>{"order of portions", Subject::AllergenOrder},
    Word<Subject>{"not known", Subject::NotKnown},
    Word<Subject>{"reference", Subject::Reference},
};

Result<Rule> ruleOf(const TableRow& row)
{
    const auto subject = wordCell<Subject>(row, "subject", subjectWords);
    const auto books = booksCell(row);
    const auto foods = foodsCell(row);
    const auto temperature = temperatureCell(row, "temperature");
    const auto upper = temperatureCell(row, "upper");
    const auto minutes = minutesCell(row, "time");
    const auto strength = strengthCell(row);
    const auto weight = weightCell(row);
    const auto status = statusCell(row);
    if (const auto failure = firstFailure(subject, books, foods, temperature, upper, minutes,
                                          strength, weight, status)) {
        return *failure;
    }
    for (const char* column : {"id", "source", "says"}) {
        if (row.isEmpty(column)) {
            return row.fault(column, "a text");
        }
    }
    return Rule{std::string(row.text("id")),
                *subject,
                *books,
                *foods,
                *temperature,
                *upper,
                *minutes,
                std::string(row.text("time")),
                std::string(row.text("equivalents")),
                *strength,
                *weight,
                *status,
                std::string(row.text("source")),
                std::string(row.text("section")),
                std::string(row.text("says"))};
}

using RulesByBook = std::map<std::pair<RuleBook, Subject>, std::vector<const Rule*>>;

/// In the order in which rulesAbout gives them.
const RulesByBook& rulesByBook()
{
    static const RulesByBook index = [] {
        RulesByBook byBook;
        for (const Rule& rule : allRules()) {
            for (const RuleBook book : rule.books) {
                byBook[{book, rule.subject}].push_back(&rule);
            }
        }
        for (auto& [key, rules] : byBook) {
            std::ranges::stable_sort(rules, {}, [](const Rule* rule) {
                return std::pair(rule->foods.empty(), rule->strength);
            });
        }
        return byBook;
    }();
    return index;
}

} // namespace

std::string_view nameOf(RuleBook book)
{
    switch (book) {
    case RuleBook::UsHome:
        return "US home advice";
    case RuleBook::UsTrade:
        return "US trade (Food Code)";
    case RuleBook::UkEu:
        return "UK and EU";
    }
    return "";
}

std::string_view nameOf(Strength strength)
{
    switch (strength) {
    case Strength::ConsumerAdvice:
        return "advice to homes";
    case Strength::TradeLimit:
        return "trade limit";
    case Strength::CommonPractice:
        return "common practice";
    }
    return "";
}

bool Rule::isIn(RuleBook book) const
{
    return std::ranges::find(books, book) != books.end();
}

bool Rule::isAbout(FoodClass food) const
{
    return foods.empty() ? isTimeTemperatureControlled(food)
                         : std::ranges::find(foods, food) != foods.end();
}

bool watches(RuleBook book, FoodClass food)
{
    return isTimeTemperatureControlled(food) &&
           !(book == RuleBook::UkEu && food == FoodClass::ShellEgg);
}

Result<std::vector<Rule>> readRules(std::string_view table)
{
    const auto text = TableText::read("safety_rules", table,
                                      {"id", "subject", "books", "foods", "temperature", "upper",
                                       "time", "equivalents", "strength", "weight", "status",
                                       "source", "section", "says"});
    if (!text) {
        return text.error();
    }
    std::vector<Rule> rules;
    std::set<std::string, std::less<>> ids;
    for (const TableRow& row : text->rows()) {
        auto rule = ruleOf(row);
        if (!rule) {
            return rule.error();
        }
        if (!ids.insert(rule->id).second) {
            return row.fault("id", "an id that no other row has");
        }
        rules.push_back(std::move(*rule));
    }
    return rules;
}

const std::vector<Rule>& allRules()
{
    static const std::vector<Rule> rules =
        ownTable(readRules(tables::safetyRules()), "the table of safety rules can be read");
    return rules;
}

const Rule* findRule(std::string_view id)
{
    const auto found = std::ranges::find(allRules(), id, &Rule::id);
    return found == allRules().end() ? nullptr : &*found;
}

std::vector<const Rule*> rulesAbout(RuleBook book, Subject subject, FoodClass food)
{
    std::vector<const Rule*> found;
    const auto& index = rulesByBook();
    const auto rules = index.find({book, subject});
    if (rules != index.end()) {
        std::ranges::copy_if(rules->second, std::back_inserter(found),
                             [food](const Rule* rule) { return rule->isAbout(food); });
    }
    return found;
}

const Rule* ruleAbout(RuleBook book, Subject subject, FoodClass food)
{
    const auto found = rulesAbout(book, subject, food);
    return found.empty() ? nullptr : found.front();
}

} // namespace suppertide::safety
