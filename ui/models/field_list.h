// FieldList: the form of one kind of thing, each field with how it is read from the thing and
// written to it, said once. Used by the outlines.
#pragma once

#include <functional>
#include <utility>

#include "ui/models/outline.h"
#include "ui/models/reading.h"

namespace suppertide::ui {

template <typename Thing>
class FieldList
{
public:
    using Setter = std::function<Result<void>(Thing&, const FieldValue&)>;

    explicit FieldList(const Thing& thing) : thing_(thing) {}

    FieldList& add(Field field, Setter set)
    {
        entries_.push_back({std::move(field), std::move(set)});
        return *this;
    }

    FieldList& line(const char* key, const QString& label, std::string Thing::*member)
    {
        return add(plain(key, label, FieldKind::Line, thing_.*member),
                   [member](Thing& thing, const FieldValue& value) -> Result<void> {
                       thing.*member = std::get<std::string>(value);
                       return {};
                   });
    }
    FieldList& paragraph(const char* key, const QString& label, std::string Thing::*member)
    {
        line(key, label, member);
        entries_.back().field.kind = FieldKind::Paragraph;
        return *this;
    }
    FieldList& toggle(const char* key, const QString& label, bool Thing::*member)
    {
        return add(plain(key, label, FieldKind::Switch, thing_.*member),
                   [member](Thing& thing, const FieldValue& value) -> Result<void> {
                       thing.*member = std::get<bool>(value);
                       return {};
                   });
    }
    FieldList& whole(const char* key, const QString& label, int Thing::*member, std::int64_t least,
                     std::int64_t most, const QString& unit = {})
    {
        Field field = plain(key, label, FieldKind::Whole, std::int64_t{thing_.*member});
        field.least = least;
        field.most = most;
        field.unit = unit;
        return add(std::move(field),
                   [member](Thing& thing, const FieldValue& value) -> Result<void> {
                       thing.*member = static_cast<int>(std::get<std::int64_t>(value));
                       return {};
                   });
    }
    /// Text that `read` turns into a value and fieldText turns back.
    template <typename Value, typename Read>
    FieldList& readable(const char* key, const QString& label, Value Thing::*member, Read read)
    {
        return add(plain(key, label, FieldKind::Line, fieldText(thing_.*member)),
                   [member, read](Thing& thing, const FieldValue& value) -> Result<void> {
                       auto result = read(std::get<std::string>(value));
                       if (!result) {
                           return result.error();
                       }
                       thing.*member = *result;
                       return {};
                   });
    }
    /// The same for what may be left empty.
    template <typename Value, typename Read>
    FieldList& readable(const char* key, const QString& label, std::optional<Value> Thing::*member,
                        Read read)
    {
        const auto& now = thing_.*member;
        return add(plain(key, label, FieldKind::Line, now ? fieldText(*now) : std::string()),
                   [member, read](Thing& thing, const FieldValue& value) -> Result<void> {
                       const std::string& text = std::get<std::string>(value);
                       if (text.find_first_not_of(' ') == std::string::npos) {
                           (thing.*member).reset();
                           return {};
                       }
                       auto result = read(text);
                       if (!result) {
                           return result.error();
                       }
                       thing.*member = *result;
                       return {};
                   });
    }
    FieldList& duration(const char* key, const QString& label, Minutes Thing::*member)
    {
        return readable(key, label, member, readDuration);
    }
    FieldList& duration(const char* key, const QString& label,
                        std::optional<Minutes> Thing::*member)
    {
        return readable(key, label, member, readDuration);
    }
    /// One of a list of enumerators, told by their place in it.
    template <typename Value>
    FieldList& choice(const char* key, const QString& label, Value Thing::*member,
                      const std::vector<std::pair<Value, QString>>& options)
    {
        Field field = plain(key, label, FieldKind::Choice, std::string());
        for (std::size_t i = 0; i < options.size(); ++i) {
            field.options.push_back({std::to_string(i), options[i].second});
            if (options[i].first == thing_.*member) {
                field.value = std::to_string(i);
            }
        }
        return add(std::move(field),
                   [member, options](Thing& thing, const FieldValue& value) -> Result<void> {
                       thing.*member = options.at(std::stoul(std::get<std::string>(value))).first;
                       return {};
                   });
    }
    /// Any of a list of enumerators.
    template <typename Value>
    FieldList& checks(const char* key, const QString& label, std::vector<Value> Thing::*member,
                      const std::vector<std::pair<Value, QString>>& options)
    {
        Field field = plain(key, label, FieldKind::Checks, std::vector<std::string>());
        std::vector<std::string> ticked;
        const std::vector<Value>& now = thing_.*member;
        for (std::size_t i = 0; i < options.size(); ++i) {
            field.options.push_back({std::to_string(i), options[i].second});
            if (std::find(now.begin(), now.end(), options[i].first) != now.end()) {
                ticked.push_back(std::to_string(i));
            }
        }
        field.value = std::move(ticked);
        return add(std::move(field),
                   [member, options](Thing& thing, const FieldValue& value) -> Result<void> {
                       (thing.*member).clear();
                       for (const std::string& place : std::get<std::vector<std::string>>(value)) {
                           (thing.*member).push_back(options.at(std::stoul(place)).first);
                       }
                       return {};
                   });
    }
    /// What the last field stands for, of which the page also says what it is in the reader's
    /// measures.
    FieldList& amount(const std::optional<Amount>& amount)
    {
        entries_.back().field.amount = amount;
        return *this;
    }
    /// How the last field is to be filled in.
    /// `fahrenheit`: the same for who reads °F, if that is another.
    FieldList& help(const QString& text, const QString& fahrenheit = {})
    {
        entries_.back().field.help = text;
        entries_.back().field.fahrenheitHelp = fahrenheit;
        return *this;
    }

    [[nodiscard]] std::vector<Field> fields() const
    {
        std::vector<Field> fields;
        for (const Entry& entry : entries_) {
            fields.push_back(entry.field);
        }
        return fields;
    }
    /// Fails as the field's own reading does, or if there is no such field.
    [[nodiscard]] Result<Thing> with(const std::string& key, const FieldValue& value) const
    {
        for (const Entry& entry : entries_) {
            if (entry.field.key == key) {
                Thing next = thing_;
                const Result<void> outcome = entry.set(next, value);
                if (!outcome) {
                    return outcome.error();
                }
                return next;
            }
        }
        return Failure{FailureKind::NotFound, "This field is not there any more.", key};
    }
    [[nodiscard]] QString labelOf(const std::string& key) const
    {
        for (const Entry& entry : entries_) {
            if (entry.field.key == key) {
                return entry.field.label;
            }
        }
        return {};
    }

    static Field plain(const char* key, const QString& label, FieldKind kind, FieldValue value)
    {
        Field field;
        field.key = key;
        field.label = label;
        field.kind = kind;
        field.value = std::move(value);
        return field;
    }

private:
    struct Entry
    {
        Field field;
        Setter set;
    };

    Thing thing_;
    std::vector<Entry> entries_;
};

} // namespace suppertide::ui
