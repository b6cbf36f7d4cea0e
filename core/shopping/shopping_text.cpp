#include "core/shopping/shopping_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "core/shopping/day_words.h"
#include "core/shopping/part_words.h"

namespace suppertide::shopping {

namespace {

std::string packText(const PackCount& packs)
{
    const std::string size = toText(packs.pack.amount);
    const bool isPiece = packs.pack.amount == Amount{Rational{1}, Unit::Piece};
    if (isPiece && packs.pack.name.empty()) {
        return std::to_string(packs.count);
    }
    return packs.pack.name.empty()
               ? fmt::format("{} × {}", packs.count, size)
               : fmt::format("{} × {} of {}", packs.count, packs.pack.name, size);
}

std::string packsText(const ShoppingLine& line)
{
    std::vector<std::string> parts;
    for (const PackCount& packs : line.packs) {
        parts.push_back(packText(packs));
    }
    return fmt::format("{}", fmt::join(parts, " + "));
}

using Measures = std::optional<MeasureSystem>;

/// What is to be bought in the reader's measures: no less of it than is wanted.
std::string atLeast(const Amount& amount, const Measures& measures)
{
    const Dimension dimension = dimensionOf(amount.unit);
    if (!measures || (dimension != Dimension::Mass && dimension != Dimension::Volume)) {
        return kitchenText(amount, measures);
    }
    const Measured shown = measuredOut(amount.atMost(), *measures);
    Rational sum;
    for (const Amount& part : shown.parts) {
        sum = sum + part.value * sizeOf(part.unit);
    }
    const Rational size = sizeOf(amount.unit);
    if (sum >= amount.most() * size) {
        return kitchenText(amount, measures);
    }
    return kitchenText(Amount{amount.most() + shown.step / Rational{2} / size, amount.unit},
                       measures);
}

std::string needsText(const ShoppingLine& line, const Measures& measures)
{
    std::vector<std::string> parts;
    for (const ShoppingNeed& need : line.needs) {
        parts.push_back(needText(need, line, measures));
    }
    return fmt::format("{}", fmt::join(parts, "; "));
}

std::string leftText(const ShoppingLine& line, const Measures& measures)
{
    std::vector<std::string> parts = line.partsLeft;
    if (line.leftOver.value > Rational{0}) {
        parts.insert(parts.begin(), kitchenText(line.leftOver, measures));
    }
    std::string text = fmt::format("{}", fmt::join(parts, ", "));
    if (!text.empty() && !line.uses.empty()) {
        text += fmt::format(" (could go into {})", fmt::join(line.uses, ", "));
    }
    return text;
}

class TextWriter
{
public:
    explicit TextWriter(const ShoppingList& list) : list_(list) {}

    std::string write()
    {
        text_ = fmt::format("Shopping for “{}”\n", list_.occasion);
        if (list_.lines.empty()) {
            text_ += "\nThere is nothing to buy: no dish has portions.\n";
        }
        for (std::size_t trip = 0; trip < list_.trips.size(); ++trip) {
            addTrip(trip);
        }
        addFromHome();
        addSpare();
        addSentences();
        addCost();
        return std::move(text_) + "\n" + labelCaution() + "\n";
    }

private:
    [[nodiscard]] std::string said(const Amount& amount) const
    {
        return kitchenText(amount, list_.measures);
    }

    void addTrip(std::size_t trip)
    {
        text_ += fmt::format("\n{}\n", tripText(list_.trips[trip]));
        const std::string* section = nullptr;
        for (const ShoppingLine& line : list_.lines) {
            if (line.trip != trip) {
                continue;
            }
            if (section == nullptr || *section != line.section) {
                section = &line.section;
                text_ += fmt::format("  {}\n", section->empty() ? "elsewhere" : *section);
            }
            addLine(line);
        }
        if (section == nullptr) {
            text_ += "  nothing\n";
        }
    }

    void addLine(const ShoppingLine& line)
    {
        text_ += fmt::format("    [{}] {}: {}", line.isBought ? "x" : " ", line.ingredient,
                             buyText(line, list_.measures));
        if (line.cost) {
            text_ += fmt::format(", {}", priceText(*line.cost, list_.currency));
        }
        text_ += "\n";
        if (line.boughtBefore) {
            addUnder(fmt::format("{} is bought; more is wanted now", said(*line.boughtBefore)));
        }
        if (line.fromHome.value > Rational{0}) {
            addUnder(fmt::format("besides {} from home", said(line.fromHome)));
        }
        addUnder(needsText(line, list_.measures));
        if (const std::string left = leftText(line, list_.measures); !left.empty()) {
            addUnder("left over: " + left);
        }
        for (const std::string& note : line.notes) {
            addUnder(note);
        }
        if (!line.isInTable) {
            addUnder("not in the table of ingredients: it stands as the recipe has it");
        }
    }

    void addUnder(const std::string& text) { text_ += fmt::format("        {}\n", text); }

    void addFromHome()
    {
        bool isFirst = true;
        for (const ShoppingLine& line : list_.lines) {
            if (line.trip) {
                continue;
            }
            if (isFirst) {
                text_ += "\nNothing to buy of\n";
                isFirst = false;
            }
            text_ += fmt::format("    {}: {}\n", line.ingredient, needsText(line, list_.measures));
            for (const std::string& note : line.notes) {
                addUnder(note);
            }
        }
    }

    void addSpare()
    {
        if (list_.spare.empty()) {
            return;
        }
        text_ += "\nLeft over of the cooking\n";
        for (std::size_t i = 0; i < list_.spare.size(); ++i) {
            const SpareByProduct& spare = list_.spare[i];
            text_ += fmt::format(
                "    {}, {}, from “{}”{}\n", spare.name, said(spare.amount), spare.from,
                list_.spareUses[i].empty() ? ""
                                           : fmt::format(": could go into {}", list_.spareUses[i]));
        }
    }

    void addSentences()
    {
        if (!list_.sentences.empty()) {
            text_ += "\nNot counted\n";
        }
        for (const std::string& sentence : list_.sentences) {
            text_ += fmt::format("    {}\n", sentence);
        }
    }

    void addCost()
    {
        if (list_.cost > 0) {
            text_ += fmt::format("\nCost: {}", priceText(list_.cost, list_.currency));
            text_ +=
                list_.unpriced == 0
                    ? ".\n"
                    : fmt::format(", without {} of which nobody has said a "
                                  "price.\n",
                                  list_.unpriced == 1 ? "1 thing"
                                                      : fmt::format("{} things", list_.unpriced));
        }
    }

    const ShoppingList& list_;
    std::string text_;
};

std::string quoted(const std::string& field)
{
    if (field.find_first_of(",\"\r\n") == std::string::npos) {
        return field;
    }
    std::string text = "\"";
    for (const char c : field) {
        text += c == '"' ? "\"\"" : std::string(1, c);
    }
    return text + "\"";
}

template <std::size_t n>
std::string csvLine(const std::array<std::string, n>& fields)
{
    std::string line;
    for (const std::string& field : fields) {
        line += (&field == &fields.front() ? "" : ",") + quoted(field);
    }
    return line + "\r\n";
}

/// A price as a number with the currency's decimals, for sums in a table.
std::string priceNumber(const std::optional<std::int64_t>& cost, const std::string& currency)
{
    if (!cost) {
        return {};
    }
    const std::string text = priceText(*cost, currency);
    return text.substr(0, text.find(' '));
}

} // namespace

std::string labelCaution()
{
    return "Check the label of everything that comes in a packet for what your guests must avoid: "
           "makers change what they put in.";
}

std::string buyText(const ShoppingLine& line, const std::optional<MeasureSystem>& measures)
{
    if (line.toBuy.unit == Unit::ToTaste) {
        return "some";
    }
    return line.packs.empty() ? atLeast(line.toBuy, measures) : packsText(line);
}

std::string needText(const ShoppingNeed& need, const ShoppingLine& line,
                     const std::optional<MeasureSystem>& measures)
{
    const std::string part(wordFor(need.part));
    const bool isCounted = dimensionOf(need.amount.unit) == Dimension::Count;
    std::string what = kitchenText(need.amount, measures);
    if (!part.empty()) {
        what = isCounted ? fmt::format("{} of {}", part, what) : fmt::format("{} {}", what, part);
    }
    const bool isCalledOtherwise = ingredientKey(need.ingredient) != ingredientKey(line.ingredient);
    const std::string word = isCalledOtherwise ? fmt::format(" ({})", need.ingredient) : "";
    std::string text = fmt::format("{}{} for {}", what, word, need.recipeName);
    if (need.dishNames.size() != 1 || need.dishNames.front() != need.recipeName) {
        text += fmt::format(" ({})", fmt::join(need.dishNames, ", "));
    }
    return text;
}

std::string tripText(const TripOfList& trip)
{
    return fmt::format("{}, by {}: {}", dayWords(trip.latest.date), toIso(trip.latest.clock),
                       trip.name);
}

std::string textOf(const ShoppingList& list)
{
    return TextWriter(list).write();
}

std::string csvOf(const ShoppingList& list)
{
    std::string text = csvLine(
        std::array<std::string, 12>{"Trip", "Day", "Section", "Ingredient", "Needed", "At home",
                                    "Buy", "Cost", "Currency", "Bought", "For", "Left over"});
    for (const ShoppingLine& line : list.lines) {
        const TripOfList* trip = line.trip ? &list.trips[*line.trip] : nullptr;
        text += csvLine(std::array<std::string, 12>{
            trip == nullptr ? "" : trip->name, trip == nullptr ? "" : toIso(trip->latest.date),
            line.section, line.ingredient, toText(line.needed),
            line.fromHome.value > Rational{0} ? toText(line.fromHome) : "",
            trip == nullptr ? "" : buyText(line), priceNumber(line.cost, list.currency),
            line.cost ? list.currency : "", line.isBought ? "yes" : "", needsText(line, {}),
            leftText(line, {})});
    }
    return text;
}

} // namespace suppertide::shopping
