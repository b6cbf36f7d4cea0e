#include "core/exchange/value_reading.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

namespace {

/// Notes what the parser of a base type says of a text.
template <typename T, typename Parse>
T readParsed(const JsonCursor& at, const Parse& parse)
{
    const std::string text = at.anyText();
    if (!at.isText()) {
        return {};
    }
    const Result<T> parsed = parse(text);
    if (parsed) {
        return *parsed;
    }
    at.fault(parsed.error().forCook);
    return {};
}

} // namespace

std::string readIdText(const JsonCursor& at)
{
    std::string id = at.text();
    const auto isControl = [](char c) { return static_cast<unsigned char>(c) < 0x20; };
    if (std::ranges::any_of(id, isControl)) {
        at.fault("an id is one line of plain text, like “roast-roots”");
    }
    return id;
}

std::string readText(const JsonCursor& at)
{
    return at.anyText();
}

bool readBool(const JsonCursor& at)
{
    return at.boolean();
}

int readCount(const JsonCursor& at)
{
    return static_cast<int>(at.whole(0, 1000));
}

int readPoints(const JsonCursor& at)
{
    return static_cast<int>(at.whole(0, 1'000'000));
}

Minutes readMinutes(const JsonCursor& at)
{
    if (!at.isText()) {
        return Minutes{at.whole(0, mostMinutes)};
    }
    const std::string text = at.anyText();
    if (const auto minutes = parseMinutes(text)) {
        return *minutes;
    }
    at.fault(fmt::format("“{}” is not a length of time. Write a number of minutes, or text like "
                         "“1 h 30 min” or “3 days”",
                         text));
    return {};
}

DurationRange readDuration(const JsonCursor& at)
{
    if (!at.isList()) {
        const Minutes all = readMinutes(at);
        return {all, all, all};
    }
    const auto parts = at.exactly(3, "a number of minutes, or a list of the least, the likely and "
                                     "the most minutes");
    return {readMinutes(parts[0]), readMinutes(parts[1]), readMinutes(parts[2])};
}

Amount readAmount(const JsonCursor& at)
{
    const std::string text = at.anyText();
    if (const auto amount = parseAmount(text)) {
        return *amount;
    }
    if (at.isText()) {
        at.fault(fmt::format("“{}” is not an amount. Write it like “400 g”, “1.2 kg”, “250 ml”, "
                             "“2 1/2 tbsp”, “1 US cup”, “3 piece”, “2-3 clove”, “pinch” or "
                             "“to taste”",
                             text));
    }
    return {};
}

Portions readPortions(const JsonCursor& at)
{
    if (!at.isText()) {
        const Rational value{at.decimal(3, 0, mostAmount * 1000), 1000};
        return value;
    }
    // Halves to twelfths and three decimals: sums of such shares never outgrow a number.
    constexpr std::int64_t commonDenominator = 693'000;
    const std::string text = at.anyText();
    const auto value = parseFraction(text);
    if (value && commonDenominator % value->denominator() == 0) {
        return *value;
    }
    at.fault(fmt::format("“{}” is not a number of portions. Write it like 8 or “1/2”", text));
    return {};
}

Celsius readCelsius(const JsonCursor& at)
{
    return Celsius::tenths(static_cast<int>(at.decimal(1, -2730, 20'000)));
}

Length readLength(const JsonCursor& at)
{
    return millimetres(at.decimal(1, 0, 100'000));
}

Litres readLitres(const JsonCursor& at)
{
    return decilitres(at.decimal(1, 0, 1'000'000));
}

Power readPower(const JsonCursor& at)
{
    return watts(at.whole(0, 1'000'000));
}

Attention readAttention(const JsonCursor& at)
{
    if (!at.isText()) {
        return Attention::percent(static_cast<int>(at.whole(0, 100)));
    }
    const std::string text = at.anyText();
    if (const auto grade = findIn<Attention>(attentionNames, text)) {
        return *grade;
    }
    noteNoneOf(at, text, {"undivided", "hands-on", "keep an eye", "unattended"});
    return handsOn;
}

int readPercent(const JsonCursor& at)
{
    return static_cast<int>(at.whole(1, 100));
}

Grams readGrams(const JsonCursor& at)
{
    return grams(at.whole(0, 1'000'000));
}

namespace {

/// A word for one of `all`, whose words `nameOf` says.
template <typename T, std::size_t n>
T readWord(const JsonCursor& at, const std::array<T, n>& all)
{
    const std::string text = at.anyText();
    std::vector<std::string_view> names;
    names.reserve(n);
    for (const T each : all) {
        names.push_back(nameOf(each));
        if (names.back() == text) {
            return each;
        }
    }
    noteNoneOf(at, text, names);
    return all.front();
}

} // namespace

FoodClass readFoodClass(const JsonCursor& at)
{
    return readWord(at, allFoodClasses);
}

RiskFact readRiskFact(const JsonCursor& at)
{
    return readWord(at, allRiskFacts);
}

RiskGroup readRiskGroup(const JsonCursor& at)
{
    return readWord(at, allRiskGroups);
}

Substance readSubstance(const JsonCursor& at)
{
    return readWord(at, allSubstances);
}

Diet readDiet(const JsonCursor& at)
{
    return readWord(at, allDiets);
}

CivilDate readDate(const JsonCursor& at)
{
    return readParsed<CivilDate>(at, parseDate);
}

CivilTime readCivil(const JsonCursor& at)
{
    return readParsed<CivilTime>(at, parseCivil);
}

ClockTime readClock(const JsonCursor& at)
{
    return readParsed<ClockTime>(at, [](std::string_view text) {
        return text == "24:00" ? Result<ClockTime>{ClockTime{24, 0}} : parseClock(text);
    });
}

Instant readInstant(const JsonCursor& at)
{
    return readParsed<Instant>(at, [](std::string_view text) { return parseInstant(text); });
}

void noteNoneOf(const JsonCursor& at, const std::string& found,
                const std::vector<std::string_view>& names)
{
    if (at.isText()) {
        at.fault(fmt::format("“{}” is not known here. Write one of “{}”", found,
                             fmt::join(names, "”, “")));
    }
}

} // namespace suppertide
