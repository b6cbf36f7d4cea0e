// JsonCursor and JsonFields: take typed values out of a JsonValue, strictly. Nobody has to stop at
// a fault: it is remembered with its place ("tasks[3] (id t4).window"), readers go on with
// harmless values, and whoever began the reading asks for the faults at the end.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/exchange/json_value.h"

namespace suppertide {

/// What a reading found wrong: the first faults, as many as whoever began it wants.
class JsonFault
{
public:
    explicit JsonFault(std::size_t most = 1) : most_(most) {}

    void note(const std::string& place, std::string_view what);
    [[nodiscard]] std::optional<std::string> first() const;
    [[nodiscard]] const std::vector<std::string>& all() const { return faults_; }
    [[nodiscard]] bool isEmpty() const { return faults_.empty(); }
    /// As many were found as are wanted; reading on is of no use.
    [[nodiscard]] bool isFull() const { return faults_.size() >= most_; }

private:
    std::size_t most_;
    std::vector<std::string> faults_;
};

class JsonFields;

/// One value and the place where it stands. The tree and the fault must outlive it.
class JsonCursor
{
public:
    JsonCursor(const JsonValue& value, std::string place, JsonFault& fault)
        : value_(&value), place_(std::move(place)), fault_(&fault)
    {}

    [[nodiscard]] const std::string& place() const { return place_; }
    [[nodiscard]] bool isNull() const;
    void fault(std::string_view what) const;
    /// Whether anything was wrong so far, here or elsewhere.
    [[nodiscard]] bool isFaulty() const { return !fault_->isEmpty(); }

    /// A whole number within low…high; `low` at a fault.
    [[nodiscard]] std::int64_t whole(std::int64_t low, std::int64_t high) const;
    /// A number with at most `places` decimals, exactly, as a count of the last place's unit within
    /// low…high; `low` at a fault.
    [[nodiscard]] std::int64_t decimal(int places, std::int64_t low, std::int64_t high) const;
    /// A number above 0 with at most three decimals, exactly, in thousandths; 1 at a fault.
    [[nodiscard]] std::int64_t thousandths(std::int64_t most) const;
    /// A text that is not empty.
    [[nodiscard]] std::string text() const;
    [[nodiscard]] std::string anyText() const;
    [[nodiscard]] bool boolean() const;
    [[nodiscard]] bool isText() const;
    [[nodiscard]] bool isList() const;
    [[nodiscard]] bool isObject() const;
    /// Calls body(item) for each item of a list of at least `least`, until there are faults enough.
    template <typename Body>
    void forEachItem(Body&& body, std::size_t least = 0) const
    {
        const std::size_t size = listSize(least);
        for (std::size_t i = 0; i < size && !fault_->isFull(); ++i) {
            body(item(i));
        }
    }
    /// Items that must be exactly `count`; as many as asked for, also at a fault.
    [[nodiscard]] std::vector<JsonCursor> exactly(std::size_t count, std::string_view what) const;
    /// Calls body(key, value) for each member of an object that is a map, until there are faults
    /// enough.
    template <typename Body>
    void forEachEntry(Body&& body) const
    {
        for (const JsonMember& member : members()) {
            if (!fault_->isFull()) {
                body(member.key, JsonCursor{member.value, place_ + "." + member.key, *fault_});
            }
        }
    }
    /// An object with known keys.
    [[nodiscard]] JsonFields fields() const;

private:
    [[nodiscard]] std::size_t listSize(std::size_t least) const;
    [[nodiscard]] JsonCursor item(std::size_t index) const;
    [[nodiscard]] const JsonValue::Object& members() const;

    const JsonValue* value_;
    std::string place_;
    JsonFault* fault_;
};

/// The keys of one object, taken one by one; `done` complains of what was not taken.
class JsonFields
{
public:
    JsonFields(const JsonValue::Object& members, std::string place, JsonFault& fault)
        : members_(&members), taken_(members.size(), false), place_(std::move(place)),
          fault_(&fault)
    {}

    [[nodiscard]] const std::string& place() const { return place_; }
    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] JsonCursor required(std::string_view key);
    [[nodiscard]] std::optional<JsonCursor> optional(std::string_view key);
    /// Takes the required `id` and adds it to the place.
    [[nodiscard]] std::string takeId();
    /// Adds a name to the place: "recipes[2] (roast-roots)".
    void nameAs(std::string_view name);
    void fault(std::string_view what) const { fault_->note(place_, what); }
    void done() const;

private:
    [[nodiscard]] std::string placeOf(std::string_view key) const;

    const JsonValue::Object* members_;
    std::vector<bool> taken_;
    std::string place_;
    JsonFault* fault_;
};

} // namespace suppertide
