#include "core/food/line_text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "core/food/ingredient.h"
#include "core/food/quantity_words.h"

namespace suppertide {

std::optional<IngredientPart> partWord(std::string_view word)
{
    static constexpr std::array<std::pair<std::string_view, IngredientPart>, 16> words{{
        {"juice", IngredientPart::Juice},
        {"zest", IngredientPart::Zest},
        {"rind", IngredientPart::Peel},
        {"peel", IngredientPart::Peel},
        {"yolk", IngredientPart::Yolk},
        {"yolks", IngredientPart::Yolk},
        {"white", IngredientPart::White},
        {"whites", IngredientPart::White},
        {"seeds", IngredientPart::Seeds},
        {"leaves", IngredientPart::Leaves},
        {"stalks", IngredientPart::Stalks},
        {"stems", IngredientPart::Stalks},
        {"juiced", IngredientPart::Juice},
        {"squeezed", IngredientPart::Juice},
        {"zested", IngredientPart::Zest},
        {"bones", IngredientPart::Bones},
    }};
    const auto found = std::ranges::find(words, lowerWord(word),
                                         &std::pair<std::string_view, IngredientPart>::first);
    return found == words.end() ? std::nullopt : std::optional{found->second};
}

/// Blanks, list marks and tick boxes off the front.
std::string_view withoutBullet(std::string_view line)
{
    line = trimmed(line);
    for (bool isTaken = true; isTaken;) {
        isTaken = false;
        for (const std::string_view mark :
             {"•", "·", "–", "—", "- ", "*", "[ ]", "[x]", "□", "▢"}) {
            if (line.starts_with(mark)) {
                line = trimmedFront(line.substr(mark.size()));
                isTaken = true;
            }
        }
    }
    std::size_t digits = 0;
    while (digits < line.size() && std::isdigit(static_cast<unsigned char>(line[digits])) != 0) {
        ++digits;
    }
    const bool isNumbered =
        digits > 0 && digits + 1 < line.size() &&
        (line[digits] == ')' || (line[digits] == '.' && line[digits + 1] == ' '));
    return isNumbered ? trimmedFront(line.substr(digits + 1)) : line;
}

/// Where `words` stand as whole words in lower case; std::string_view::npos if they do not.
std::size_t findWords(std::string_view text, std::string_view words)
{
    const std::string lower = lowerWord(text);
    for (std::size_t at = lower.find(words); at != std::string_view::npos;
         at = lower.find(words, at + 1)) {
        const std::size_t end = at + words.size();
        const bool isBegin = at == 0 || lower[at - 1] == ' ' || lower[at - 1] == '(';
        if (isBegin &&
            (end == lower.size() || lower[end] == ' ' || lower[end] == ',' || lower[end] == ')')) {
            return at;
        }
    }
    return std::string_view::npos;
}

bool isHeading(std::string_view line)
{
    const bool hasFigure =
        std::ranges::any_of(line, [](unsigned char letter) { return std::isdigit(letter) != 0; });
    if (line.ends_with(':') || (!hasFigure && after(line, "for the"))) {
        return true;
    }
    const bool isLoud = std::ranges::none_of(
        line, [](unsigned char letter) { return std::islower(letter) != 0 || letter >= 128; });
    return !hasFigure && isLoud && findIngredient(line) == nullptr;
}

/// What shops sell under a name that begins with a describing word: "whole milk", "minced beef"; of
/// what is in a tin, how it was cut is its name.
bool isNameItself(std::string_view phrase, bool isTinned)
{
    static constexpr std::array<std::string_view, 11> inNames{
        "whole",   "minced",  "soft",     "thick", "mixed", "young",
        "roasted", "toasted", "strained", "lean",  "boiled"};
    static constexpr std::array<std::string_view, 5> inTins{"chopped", "diced", "crushed", "peeled",
                                                            "sliced"};
    const std::string first = lowerWord(wordAt(phrase));
    if (isTinned && std::ranges::find(inTins, first) != inTins.end()) {
        return true;
    }
    if (std::ranges::find(inNames, first) == inNames.end()) {
        return false;
    }
    const std::string key = nameKey(phrase);
    const Ingredient* found = findIngredient(phrase);
    return found != nullptr &&
           (nameKey(found->name) == key ||
            std::ranges::any_of(found->otherNames,
                                [&key](const std::string& name) { return nameKey(name) == key; }));
}

/// Blanks of other widths become plain ones.
std::string withPlainBlanks(std::string_view line)
{
    std::string plain(line);
    for (const std::string_view blank : {"\u00a0", "\u2009", "\u202f", "\t", "\r"}) {
        for (std::size_t at = plain.find(blank); at != std::string::npos; at = plain.find(blank)) {
            plain.replace(at, blank.size(), 1, ' ');
        }
    }
    return plain;
}

} // namespace suppertide
