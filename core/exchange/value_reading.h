// Typed values of recipes, kitchens and occasions taken from JSON: each notes its own fault with an
// example of what would do, and then gives a harmless value.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/exchange/enum_names.h"
#include "core/exchange/json_reader.h"
#include "core/exchange/quantity_text.h"

namespace suppertide {

[[nodiscard]] std::string readIdText(const JsonCursor& at);
[[nodiscard]] std::string readText(const JsonCursor& at);
[[nodiscard]] bool readBool(const JsonCursor& at);
[[nodiscard]] int readCount(const JsonCursor& at);  // 0…1000
[[nodiscard]] int readPoints(const JsonCursor& at); // of the plan's cost, 0…1,000,000
[[nodiscard]] Minutes readMinutes(const JsonCursor& at);
[[nodiscard]] DurationRange readDuration(const JsonCursor& at);
[[nodiscard]] Amount readAmount(const JsonCursor& at);
[[nodiscard]] Portions readPortions(const JsonCursor& at);
[[nodiscard]] Celsius readCelsius(const JsonCursor& at);
[[nodiscard]] Length readLength(const JsonCursor& at);
[[nodiscard]] Litres readLitres(const JsonCursor& at);
[[nodiscard]] Power readPower(const JsonCursor& at);
[[nodiscard]] Attention readAttention(const JsonCursor& at);
[[nodiscard]] int readPercent(const JsonCursor& at); // 1…100
[[nodiscard]] Grams readGrams(const JsonCursor& at); // whole
[[nodiscard]] FoodClass readFoodClass(const JsonCursor& at);
[[nodiscard]] RiskFact readRiskFact(const JsonCursor& at);
[[nodiscard]] RiskGroup readRiskGroup(const JsonCursor& at);
[[nodiscard]] Substance readSubstance(const JsonCursor& at);
[[nodiscard]] Diet readDiet(const JsonCursor& at);
[[nodiscard]] CivilDate readDate(const JsonCursor& at);
[[nodiscard]] CivilTime readCivil(const JsonCursor& at);
[[nodiscard]] ClockTime readClock(const JsonCursor& at); // 24:00 included
[[nodiscard]] Instant readInstant(const JsonCursor& at);

/// Notes that the text at `at` is none of `names`.
void noteNoneOf(const JsonCursor& at, const std::string& found,
                const std::vector<std::string_view>& names);

template <typename IdType>
[[nodiscard]] IdType readId(const JsonCursor& at)
{
    return IdType{readIdText(at)};
}

template <typename E>
[[nodiscard]] E readEnum(const JsonCursor& at)
{
    const std::string text = at.anyText();
    if (const auto found = findIn<E>(enumNames<E>, text)) {
        return *found;
    }
    std::vector<std::string_view> names;
    names.reserve(enumNames<E>.size());
    for (const auto& [value, name] : enumNames<E>) {
        names.push_back(name);
    }
    noteNoneOf(at, text, names);
    return enumNames<E>.front().first;
}

/// Sets `member` if the key is there.
template <typename T, typename Read>
void take(JsonFields& fields, std::string_view key, T& member, const Read& read)
{
    if (const auto at = fields.optional(key)) {
        member = read(*at);
    }
}

template <typename Read>
[[nodiscard]] auto readList(const JsonCursor& at, const Read& read)
{
    std::vector<decltype(read(at))> items;
    at.forEachItem([&](const JsonCursor& item) { items.push_back(read(item)); });
    return items;
}

/// Replaces the list if the key is there.
template <typename T, typename Read>
void takeList(JsonFields& fields, std::string_view key, std::vector<T>& items, const Read& read)
{
    if (const auto at = fields.optional(key)) {
        items = readList(*at, read);
    }
}

/// Takes the id, which must be there, and adds it to the place of later faults.
template <typename IdType>
void takeOwnId(JsonFields& fields, IdType& id)
{
    id = readId<IdType>(fields.required("id"));
    if (!id.empty()) {
        fields.nameAs(id.text());
    }
}

/// An object of known keys; `read` takes them.
template <typename Read>
[[nodiscard]] auto readObject(const JsonCursor& at, const Read& read)
{
    decltype(read(std::declval<JsonFields&>())) result{};
    JsonFields fields = at.fields(); // notes what is no object
    if (at.isObject()) {
        result = read(fields);
        fields.done();
    }
    return result;
}

} // namespace suppertide
