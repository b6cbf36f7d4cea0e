// Rules: published limits of food safety as data. A row keeps the source's own figure and unit, who
// says it to whom, and where it stands. What a rule means for a food's history is computed in
// judge_history; a rule knows nothing of how it is judged.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/food/food_class.h"
#include "core/safety/published_temperature.h"

namespace suppertide::safety {

/// Whose rules the user has picked.
enum class RuleBook
{
    UsHome,  // USDA, FSIS and foodsafety.gov advice to homes; trade limits where there is none
    UsTrade, // FDA Food Code
    UkEu,    // UK advice and regulations, EU hygiene law; regulations do not bind a private home
};

inline constexpr std::array allRuleBooks{RuleBook::UsHome, RuleBook::UsTrade, RuleBook::UkEu};

/// "US home advice", "US trade (Food Code)", "UK and EU".
[[nodiscard]] std::string_view nameOf(RuleBook book);

/// What a rule is about.
enum class Subject
{
    DangerZone,       // sum of minutes between two temperatures
    DangerZoneHotAir, // …where the air is hot
    TimeAlone,        // time as the only control, from cold or hot
    TimeAloneCold,    // …for food that never gets warm
    HotPeriod,        // one period below hot holding
    ColdPeriod,       // one period above chilling
    CoolingFirst,     // first stage of cooling
    CoolingTotal,     // both stages
    CoolingFromRoom,  // of what was made from ingredients at room temperature
    HotHolding,       // least temperature of what is kept hot
    HotHoldingRoast,  // …of whole roasts cooked by the time–temperature chart
    ColdHolding,      // highest temperature of what is kept cold
    Freezing,         // highest temperature of a freezer
    Reheating,        // temperature to reach
    ReheatingTime,    // time in which to reach it
    ReheatingOnce,    // how often at most
    CoreTemperature,  // least core temperature of a cooked food
    Rest,             // minutes between reaching it and eating
    Microwave,        // least core temperature in a microwave oven
    RoastingOven,     // least oven temperature of a dry roast
    ComingUp,         // minutes of heating through the range of growth
    LowBath,          // minutes in a bath with a core that is not hot
    DateMark,         // days, the day of making being day 1
    Thawing,          // by which methods
    ThawingWater,     // running water: its temperature, and minutes of warming
    CookAfterThawing, // straight to the heat
    RiceCooling,      // minutes from cooked to cold place
    GarlicInOil,      // where it may stand
    RawEgg,           // who may eat it
    RareMeat,
    RawFish,
    RawShellfish,
    ColdSmokedFish,
    UnpasteurisedMilk,
    Parasites, // freezing of fish to be eaten raw
    Canning,
    FridgeOrder,   // raw above ready-to-eat
    BoardOrder,    // one board, raw then ready
    AllergenOrder, // portions free of something first
    NotKnown,      // what could not be judged: a temperature was not computed
    Reference,     // stands for comparison; nothing is judged by it
};

enum class Strength
{
    ConsumerAdvice, // to a home
    TradeLimit,     // to a business
    CommonPractice, // of the trade; an editable default, never a safety rule
};

[[nodiscard]] std::string_view nameOf(Strength strength);

/// How well a row is known.
enum class RowStatus
{
    Confirmed,
    Secondary, // read in another's restatement
    FromMemory,
    CommonPractice
};

/// How bad it is to break it.
enum class Weight
{
    Unsafe,
    Caution
};

/// One row of resources/tables/safety_rules.tsv.
struct Rule
{
    std::string id; // "us_home_poultry_core"
    Subject subject = Subject::Reference;
    std::vector<RuleBook> books;  // empty: no book judges by it
    std::vector<FoodClass> foods; // empty: all that need control of time and temperature
    std::optional<PublishedTemperature> temperature; // the limit, or the lower end of a zone
    std::optional<PublishedTemperature> upper;       // the upper end of a zone
    std::optional<double> minutes;                   // the limit in time
    std::string printedTime;                         // as the source prints it: "15 s", "7 d"
    std::string equivalents; // a table of time_temperature.tsv that does as well
    Strength strength = Strength::ConsumerAdvice;
    Weight weight = Weight::Unsafe;
    RowStatus status = RowStatus::Confirmed;
    std::string source;  // "FDA, Food Code 2022"
    std::string section; // "3-501.14(A)(1)"
    std::string says;    // in one sentence of a cook

    [[nodiscard]] bool isIn(RuleBook book) const;
    [[nodiscard]] bool isAbout(FoodClass food) const;
};

/// All rows, in the order of the table.
[[nodiscard]] const std::vector<Rule>& allRules();
/// Null if there is none of that id.
[[nodiscard]] const Rule* findRule(std::string_view id);
/// The rows of one book about one subject and food, rows for that very food before rows for all;
/// consumer advice before trade limits.
[[nodiscard]] std::vector<const Rule*> rulesAbout(RuleBook book, Subject subject, FoodClass food);
/// The first of them; null if there is none.
[[nodiscard]] const Rule* ruleAbout(RuleBook book, Subject subject, FoodClass food);

/// Whether the book wants the time and temperature of a food watched: all that
/// isTimeTemperatureControlled, but in the UK and EU not eggs in the shell, which are sold and kept
/// unchilled there (Regulation (EC) 589/2008, Art. 2: class A eggs are not chilled below 5 °C).
[[nodiscard]] bool watches(RuleBook book, FoodClass food);

/// Reads a table of rules. BadInput names the line that cannot be read.
[[nodiscard]] Result<std::vector<Rule>> readRules(std::string_view table);

} // namespace suppertide::safety
