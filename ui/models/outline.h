// Outline: a page as a tree of rows on the left hand and a form for the chosen row on the other.
// The menu, the recipe and the kitchen are each one; a page widget shows any of them. Pure logic
// over a state: rows, fields and commands are asked for, wishes are answered by an Edit or by a
// sentence why not.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/quantity/amount.h"
#include "core/quantity/quantity.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

enum class RowKind
{
    Heading,
    Item
};

struct OutlineRow
{
    std::string id; // see RowPath
    int depth = 0;
    RowKind kind = RowKind::Item;
    QString title;
    QString detail;               // at the right, secondary
    std::optional<Amount> amount; // that stands in `detail` as toText writes it
    std::optional<int> look;      // of a dish: hue, pattern and letter
    QString fault;                // what is wrong with it, in a sentence; empty: nothing

    friend bool operator==(const OutlineRow&, const OutlineRow&) = default;
};

enum class FieldKind
{
    Line,      // one line of text, also lengths of time and amounts, which the model reads
    Paragraph, // several lines
    Pasted,    // ingredient lines, which are shown as they are read before they are taken
    Whole,     // a whole number from `least` to `most`
    Switch,    // yes or no
    Choice,    // one of `options`
    Checks,    // any of `options`
    DateTime,  // "2027-06-19T19:30"
    Date,      // "2027-06-19"
    Clock      // "19:30"
};

struct FieldOption
{
    std::string key;
    QString text;

    friend bool operator==(const FieldOption&, const FieldOption&) = default;
};

/// As the kind has it: text, number, yes or no, or the keys that are ticked.
using FieldValue = std::variant<std::string, std::int64_t, bool, std::vector<std::string>>;

struct Field
{
    std::string key;
    QString label;
    FieldKind kind = FieldKind::Line;
    FieldValue value;
    std::vector<FieldOption> options;
    std::int64_t least = 0;
    std::int64_t most = 1000;
    QString unit; // after a number: "°C"
    /// Of a temperature: exactly. It may be entered as text too, in tenths of a °C.
    std::optional<Celsius> celsius;
    /// Of a line with temperatures in it: the same in °F. A figure that is then entered without a
    /// unit is one of °F.
    std::optional<std::string> fahrenheit;
    std::optional<Amount> amount; // that is entered, as it is stored
    QString help;                 // how to fill it in
    QString fahrenheitHelp;       // the same for who reads °F; empty: `help`
    QString fault;                // what is wrong with it now

    friend bool operator==(const Field&, const Field&) = default;
};

struct RowCommand
{
    std::string key;
    QString text; // "Add course"

    friend bool operator==(const RowCommand&, const RowCommand&) = default;
};

class Outline
{
public:
    Outline() = default;
    Outline(const Outline&) = delete;
    Outline& operator=(const Outline&) = delete;
    Outline(Outline&&) = delete;
    Outline& operator=(Outline&&) = delete;
    virtual ~Outline() = default;

    [[nodiscard]] virtual std::vector<OutlineRow> rows(const LibraryState& library) const = 0;
    /// Empty for rows that are not there.
    [[nodiscard]] virtual std::vector<Field> fields(const LibraryState& library,
                                                    const std::string& row) const = 0;
    [[nodiscard]] virtual std::vector<RowCommand> commands(const LibraryState& library,
                                                           const std::string& row) const = 0;
    [[nodiscard]] virtual Result<Edit> set(const LibraryState& library, const std::string& row,
                                           const std::string& field,
                                           const FieldValue& value) const = 0;
    [[nodiscard]] virtual Result<Edit> run(const LibraryState& library, const std::string& row,
                                           const std::string& command) const = 0;
};

} // namespace suppertide::ui
