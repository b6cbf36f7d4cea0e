#include "core/wording/food_safety_sentence.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/safety/rules.h"
#include "core/safety/time_temperature.h"

namespace suppertide {

namespace {

using safety::Measure;
using safety::Subject;

std::string lowered(std::string text)
{
    std::ranges::transform(text, text.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    return text;
}

/// A sentence that goes on after a colon.
std::string within(std::string says)
{
    if (says.ends_with('.')) {
        says.pop_back();
    }
    const bool isWord = says.size() > 1 && std::islower(static_cast<unsigned char>(says[1])) != 0;
    const bool isOneLetter = says.starts_with("A ");
    if (isWord || isOneLetter) {
        says.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(says.front())));
    }
    // Names of places keep their capital.
    return says.starts_with("scotland") ? capitalised(says) : says;
}

/// Of a limit that is printed in `unit`, as the user reads temperatures; a tenth where whole
/// degrees would not tell the two apart.
class Degrees
{
public:
    Degrees(const safety::Finding& finding, const ReadingStyle& style)
        : finding_(finding), fahrenheit_(style.fahrenheit)
    {
        isFine_ = std::lround(shown(finding.measured)) == std::lround(shown(finding.limit));
    }

    [[nodiscard]] std::string text(double value) const
    {
        const char* unit = fahrenheit_ ? "°F" : "°C";
        return isFine_ ? fmt::format("{:.1f} {}", shown(value), unit)
                       : fmt::format("{} {}", std::lround(shown(value)), unit);
    }

private:
    [[nodiscard]] double shown(double value) const
    {
        const bool isFahrenheit = finding_.measure == Measure::Fahrenheit;
        if (isFahrenheit == fahrenheit_) {
            return value;
        }
        return fahrenheit_ ? safety::fahrenheitOf(value) : safety::celsiusOf(value);
    }

    const safety::Finding& finding_;
    bool fahrenheit_;
    bool isFine_ = false;
};

/// What is more than allowed is never shown as what is allowed.
std::string amount(double value, bool isMeasured, const safety::Finding& finding,
                   const ReadingStyle& style)
{
    const bool isOver = finding.measured > finding.limit;
    const auto whole = [&](double exact) {
        return std::llround(isMeasured == isOver ? std::ceil(exact - safety::onTheLimit)
                                                 : std::floor(exact + safety::onTheLimit));
    };
    switch (finding.measure) {
    case Measure::None:
        return {};
    case Measure::Minutes:
        return durationText(Minutes{whole(value)});
    case Measure::Days:
        return counted(whole(value), "day", "days");
    case Measure::Times:
        return counted(whole(value), "time", "times");
    case Measure::Celsius:
    case Measure::Fahrenheit:
        return Degrees(finding, style).text(value);
    }
    return {};
}

/// "cools for", "gets in its middle to": what the measured figure is of.
std::string verbOf(Subject subject)
{
    switch (subject) {
    case Subject::DangerZone:
    case Subject::DangerZoneHotAir:
    case Subject::TimeAlone:
    case Subject::TimeAloneCold:
    case Subject::HotPeriod:
    case Subject::ColdPeriod:
    case Subject::GarlicInOil:
    case Subject::ThawingWater:
        return "stands for";
    case Subject::CoolingFirst:
    case Subject::CoolingTotal:
    case Subject::CoolingFromRoom:
    case Subject::RiceCooling:
        return "cools for";
    case Subject::HotHolding:
    case Subject::HotHoldingRoast:
        return "is kept warm at";
    case Subject::ColdHolding:
    case Subject::Freezing:
        return "is kept cold at";
    case Subject::Reheating:
    case Subject::CoreTemperature:
    case Subject::Microwave:
    case Subject::RawEgg:
    case Subject::Canning:
        return "gets in its middle to";
    case Subject::Rest:
        return "rests for";
    case Subject::RoastingOven:
        return "is in an oven of";
    case Subject::ReheatingTime:
    case Subject::ComingUp:
    case Subject::LowBath:
        return "is warmed for";
    case Subject::ReheatingOnce:
        return "is reheated";
    case Subject::DateMark:
        return "is kept for";
    case Subject::Thawing:
    case Subject::CookAfterThawing:
    case Subject::RareMeat:
    case Subject::RawFish:
    case Subject::RawShellfish:
    case Subject::ColdSmokedFish:
    case Subject::UnpasteurisedMilk:
    case Subject::Parasites:
    case Subject::FridgeOrder:
    case Subject::BoardOrder:
    case Subject::AllergenOrder:
    case Subject::NotKnown:
    case Subject::Reference:
        return "comes to";
    }
    return "comes to";
}

std::string foodOf(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (!clash.food || !words.formulation().foods.contains(*clash.food)) {
        return words.dish();
    }
    const TrackedFood& food = words.formulation().foods[*clash.food];
    std::string text = theThing(food.name);
    if (lowered(food.dishName).find(lowered(food.name)) == std::string::npos) {
        text += " of " + theThing(food.dishName);
    }
    return food.variantName.empty() ? text : text + ", " + food.variantName + ",";
}

/// Whether the food's name is of several things; of a dish nobody can tell, and it is one dish.
bool areSeveral(const ClashWords& words)
{
    const Clash& clash = words.clash();
    return clash.food && words.formulation().foods.contains(*clash.food) &&
           isPlural(words.formulation().foods[*clash.food].name);
}

std::string guestsOf(const safety::Finding& finding)
{
    std::vector<std::string> groups;
    for (const RiskGroup group : finding.guests) {
        groups.emplace_back(nameOf(group));
    }
    return groups.empty()
               ? std::string{}
               : fmt::format(", and there are guests at higher risk ({})", listed(groups));
}

/// The figures of a rule that is printed in the other unit, as the user reads temperatures.
std::string inOwnUnits(const safety::Finding& finding, const ReadingStyle& style)
{
    const safety::Rule* rule = safety::findRule(finding.rule);
    if (rule == nullptr || !rule->temperature || finding.measure != Measure::Minutes) {
        return {};
    }
    const bool isFahrenheit = rule->temperature->unit == safety::TemperatureUnit::Fahrenheit;
    if (isFahrenheit == style.fahrenheit) {
        return {};
    }
    const auto shown = [&style](const safety::PublishedTemperature& limit) {
        return std::lround(style.fahrenheit ? safety::fahrenheitOf(limit.celsius())
                                            : limit.celsius());
    };
    const char* unit = style.fahrenheit ? "°F" : "°C";
    return rule->upper
               ? fmt::format(" – {} to {} {}", shown(*rule->temperature), shown(*rule->upper), unit)
               : fmt::format(" – {} {}", shown(*rule->temperature), unit);
}

} // namespace

std::string ruleAfter(const Clash& clash)
{
    if (!clash.finding) {
        return {};
    }
    const safety::FindingSource source = safety::sourceOf(*clash.finding);
    const bool isSection = !source.section.empty() && source.section != "-";
    return fmt::format(": {} ({}{})", within(source.says), source.source,
                       isSection ? ", " + source.section : std::string{});
}

std::string foodSafetySentence(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (!clash.finding) {
        return capitalised(words.dish() + " breaks a rule of food safety.");
    }
    const safety::Finding& finding = *clash.finding;
    const ReadingStyle& style = words.times().style();
    const safety::FindingSource source = safety::sourceOf(finding);
    const safety::Rule* rule = safety::findRule(finding.rule);
    std::string text;
    if (!finding.counts.empty() && clash.when) {
        text = fmt::format("From {} on ", words.times().at(clash.when->start));
    }
    text += foodOf(words);
    const bool isSeveral = areSeveral(words);
    const auto verb = [isSeveral](std::string one) {
        return isSeveral ? ofSeveral(one) : std::move(one);
    };
    if (finding.measure == Measure::None) {
        text += verb("does not keep to a rule").insert(0, " ");
    } else {
        const bool isOver = finding.measured > finding.limit;
        text +=
            fmt::format(" {} {} where {} is the {}",
                        verb(verbOf(rule != nullptr ? rule->subject : Subject::DateMark)),
                        amount(finding.measured, true, finding, style),
                        amount(finding.limit, false, finding, style), isOver ? "most" : "least");
    }
    text += guestsOf(finding);
    if (const auto* table = safety::findTimeTemperatureTable(finding.equivalent)) {
        text += fmt::format(", though it is there as long as {} asks for instead", table->source);
    }
    return capitalised(fmt::format("{}: {}{} ({}, {}).", text, within(source.says),
                                   inOwnUnits(finding, style), source.source, source.section));
}

} // namespace suppertide
