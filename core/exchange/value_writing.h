// Typed values as JSON, the way value_reading takes them. JsonObject puts keys in order and leaves
// out what is at its default.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/exchange/enum_names.h"
#include "core/exchange/json_value.h"

namespace suppertide {

[[nodiscard]] JsonValue toJson(bool value);
[[nodiscard]] JsonValue toJson(int value);
[[nodiscard]] JsonValue toJson(std::int64_t value);
[[nodiscard]] JsonValue toJson(const std::string& text);
[[nodiscard]] JsonValue toJson(std::string_view text);
[[nodiscard]] JsonValue toJson(Minutes minutes);
[[nodiscard]] JsonValue toJson(const DurationRange& range);
[[nodiscard]] JsonValue toJson(const Amount& amount);
[[nodiscard]] JsonValue toJson(const Portions& portions);
[[nodiscard]] JsonValue toJson(Celsius temperature);
[[nodiscard]] JsonValue toJson(Length length);
[[nodiscard]] JsonValue toJson(Litres volume);
[[nodiscard]] JsonValue toJson(Power power);
[[nodiscard]] JsonValue toJson(Attention attention);
[[nodiscard]] JsonValue toJson(Grams mass); // whole
[[nodiscard]] JsonValue toJson(FoodClass food);
[[nodiscard]] JsonValue toJson(RiskFact fact);
[[nodiscard]] JsonValue toJson(RiskGroup group);
[[nodiscard]] JsonValue toJson(Substance substance);
[[nodiscard]] JsonValue toJson(Diet diet);
[[nodiscard]] JsonValue toJson(const CivilDate& date);
[[nodiscard]] JsonValue toJson(const CivilTime& time);
[[nodiscard]] JsonValue toJson(const ClockTime& clock);
[[nodiscard]] JsonValue toJson(Instant instant);

template <typename Tag>
[[nodiscard]] JsonValue toJson(const Id<Tag>& id)
{
    return toJson(id.text());
}

template <typename E>
requires std::is_enum_v<E>
[[nodiscard]] JsonValue toJson(E value)
{
    return toJson(nameIn(enumNames<E>, value).value_or("?"));
}

class JsonObject
{
public:
    void put(std::string_view key, JsonValue value)
    {
        members_.push_back({std::string(key), std::move(value)});
    }
    template <typename T>
    void putUnless(const T& atDefault, std::string_view key, const T& value)
    {
        if (!(value == atDefault)) {
            put(key, toJson(value));
        }
    }
    template <typename T>
    void putIfAny(std::string_view key, const std::optional<T>& value)
    {
        if (value) {
            put(key, toJson(*value));
        }
    }
    template <typename T, typename ItemJson>
    void putIfAny(std::string_view key, const std::vector<T>& items, const ItemJson& itemJson)
    {
        if (!items.empty()) {
            putList(key, items, itemJson);
        }
    }
    template <typename T>
    void putIfAny(std::string_view key, const std::vector<T>& items)
    {
        putIfAny(key, items, [](const T& item) { return toJson(item); });
    }
    /// Also if it is empty.
    template <typename T, typename ItemJson>
    void putList(std::string_view key, const std::vector<T>& items, const ItemJson& itemJson)
    {
        JsonValue::List list;
        list.reserve(items.size());
        for (const T& item : items) {
            list.push_back(itemJson(item));
        }
        put(key, JsonValue{std::move(list)});
    }

    [[nodiscard]] bool isEmpty() const { return members_.empty(); }
    [[nodiscard]] JsonValue take() { return JsonValue{std::move(members_)}; }

private:
    JsonValue::Object members_;
};

} // namespace suppertide
