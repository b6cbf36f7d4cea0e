#include "core/exchange/json_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/exchange/decimal.h"

namespace suppertide {

namespace {

/// A text as it may stand in a message: cut where it is long.
std::string shown(std::string_view text)
{
    constexpr std::size_t most = 60;
    if (text.size() <= most) {
        return fmt::format("“{}”", text);
    }
    std::size_t end = most;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end; // not within a UTF-8 character
    }
    return fmt::format("“{}…”", text.substr(0, end));
}

std::string shown(const JsonValue& value)
{
    struct
    {
        std::string operator()(std::monostate /*null*/) const { return "null"; }
        std::string operator()(bool b) const { return b ? "true" : "false"; }
        std::string operator()(std::int64_t n) const { return std::to_string(n); }
        std::string operator()(const JsonDecimal& d) const { return d.text.substr(0, 60); }
        std::string operator()(const std::string& s) const { return shown(s); }
        std::string operator()(const JsonValue::List& /*l*/) const { return "a list"; }
        std::string operator()(const JsonValue::Object& /*o*/) const { return "an object"; }
    } const inWords;
    return std::visit(inWords, value.data);
}

const JsonValue& nothing()
{
    static const JsonValue value;
    return value;
}

const JsonValue::Object& noMembers()
{
    static const JsonValue::Object members;
    return members;
}

} // namespace

void JsonFault::note(const std::string& place, std::string_view what)
{
    if (!isFull()) {
        faults_.push_back(place.empty() ? std::string(what) : fmt::format("{}: {}", place, what));
    }
}

std::optional<std::string> JsonFault::first() const
{
    return faults_.empty() ? std::nullopt : std::optional{faults_.front()};
}

void JsonCursor::fault(std::string_view what) const
{
    // A key that is missing was complained of when it was asked for.
    if (value_ != &nothing()) {
        fault_->note(place_, what);
    }
}

bool JsonCursor::isNull() const
{
    return std::holds_alternative<std::monostate>(value_->data);
}

std::int64_t JsonCursor::whole(std::int64_t low, std::int64_t high) const
{
    const auto* number = std::get_if<std::int64_t>(&value_->data);
    if (number == nullptr) {
        fault(fmt::format("expected a whole number, found {}", shown(*value_)));
        return low;
    }
    if (*number < low || *number > high) {
        fault(fmt::format("{} is not within {}…{}", *number, low, high));
        return low;
    }
    return *number;
}

std::int64_t JsonCursor::decimal(int places, std::int64_t low, std::int64_t high) const
{
    std::string text;
    if (const auto* number = std::get_if<std::int64_t>(&value_->data)) {
        text = std::to_string(*number);
    } else if (const auto* decimal = std::get_if<JsonDecimal>(&value_->data)) {
        text = decimal->text;
    } else {
        fault(fmt::format("expected a number, found {}", shown(*value_)));
        return low;
    }
    const auto result = wholeAt(parseDecimal(text), places);
    if (!result) {
        fault(fmt::format("expected a number with at most {} decimal{}, found {}", places,
                          places == 1 ? "" : "s", shown(*value_)));
        return low;
    }
    if (*result < low || *result > high) {
        fault(fmt::format("{} is not within {}…{}", shown(*value_), decimalText(low, places),
                          decimalText(high, places)));
        return low;
    }
    return *result;
}

std::int64_t JsonCursor::thousandths(std::int64_t most) const
{
    return decimal(3, 1, most);
}

std::string JsonCursor::text() const
{
    std::string result = anyText();
    if (result.empty()) {
        fault("expected a text that is not empty");
    }
    return result;
}

std::string JsonCursor::anyText() const
{
    if (const auto* text = std::get_if<std::string>(&value_->data)) {
        return *text;
    }
    fault(fmt::format("expected a text, found {}", shown(*value_)));
    return {};
}

bool JsonCursor::boolean() const
{
    if (const auto* value = std::get_if<bool>(&value_->data)) {
        return *value;
    }
    fault(fmt::format("expected true or false, found {}", shown(*value_)));
    return false;
}

std::vector<JsonCursor> JsonCursor::exactly(std::size_t count, std::string_view what) const
{
    std::vector<JsonCursor> result;
    const auto* list = std::get_if<JsonValue::List>(&value_->data);
    if (list == nullptr || list->size() != count) {
        fault(fmt::format("expected {}, found {}", what, shown(*value_)));
        result.resize(count, JsonCursor{nothing(), place_, *fault_});
        return result;
    }
    for (std::size_t i = 0; i < count; ++i) {
        result.push_back(item(i));
    }
    return result;
}

bool JsonCursor::isText() const
{
    return std::holds_alternative<std::string>(value_->data);
}

bool JsonCursor::isList() const
{
    return std::holds_alternative<JsonValue::List>(value_->data);
}

bool JsonCursor::isObject() const
{
    return std::holds_alternative<JsonValue::Object>(value_->data);
}

JsonFields JsonCursor::fields() const
{
    return {members(), place_, *fault_};
}

std::size_t JsonCursor::listSize(std::size_t least) const
{
    const auto* list = std::get_if<JsonValue::List>(&value_->data);
    if (list == nullptr) {
        fault(fmt::format("expected a list, found {}", shown(*value_)));
        return 0;
    }
    if (list->size() < least) {
        fault(fmt::format("expected at least {} entries", least));
    }
    return list->size();
}

JsonCursor JsonCursor::item(std::size_t index) const
{
    return {std::get<JsonValue::List>(value_->data)[index], fmt::format("{}[{}]", place_, index),
            *fault_};
}

const JsonValue::Object& JsonCursor::members() const
{
    if (const auto* object = std::get_if<JsonValue::Object>(&value_->data)) {
        return *object;
    }
    fault(fmt::format("expected an object, found {}", shown(*value_)));
    return noMembers();
}

bool JsonFields::has(std::string_view key) const
{
    return std::ranges::find(*members_, key, &JsonMember::key) != members_->end();
}

JsonCursor JsonFields::required(std::string_view key)
{
    if (auto found = optional(key)) {
        return *std::move(found);
    }
    fault(fmt::format("the key “{}” is missing", key));
    return {nothing(), placeOf(key), *fault_};
}

std::optional<JsonCursor> JsonFields::optional(std::string_view key)
{
    const auto found = std::ranges::find(*members_, key, &JsonMember::key);
    if (found == members_->end()) {
        return std::nullopt;
    }
    taken_[static_cast<std::size_t>(found - members_->begin())] = true;
    return JsonCursor{found->value, placeOf(key), *fault_};
}

std::string JsonFields::takeId()
{
    std::string id = required("id").text();
    place_ += fmt::format(" (id {})", id);
    return id;
}

void JsonFields::nameAs(std::string_view name)
{
    place_ += fmt::format("{}({})", place_.empty() ? "" : " ", name);
}

void JsonFields::done() const
{
    for (std::size_t i = 0; i < taken_.size(); ++i) {
        if (!taken_[i]) {
            fault(fmt::format("unknown key {}", shown((*members_)[i].key)));
            return;
        }
    }
}

std::string JsonFields::placeOf(std::string_view key) const
{
    return place_.empty() ? std::string(key) : fmt::format("{}.{}", place_, key);
}

} // namespace suppertide
