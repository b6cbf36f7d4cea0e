#include "core/food/ingredient.h"

#include <algorithm>
#include <array>

#include "core/base/contracts.h"
#include "core/food/describing_words.h"

namespace suppertide {

namespace tables {
std::string_view ingredients();
} // namespace tables

namespace {

using Names = std::map<std::string, const Ingredient*, std::less<>>;

Names namesOf(std::span<const Ingredient> ingredients)
{
    Names names;
    for (const Ingredient& ingredient : ingredients) {
        names.insert_or_assign(nameKey(ingredient.name), &ingredient);
    }
    // A name of one's own comes before another's other name.
    for (const Ingredient& ingredient : ingredients) {
        for (const std::string& name : ingredient.otherNames) {
            names.try_emplace(nameKey(name), &ingredient);
        }
    }
    return names;
}

const Names& tableNames()
{
    static const Names names = namesOf(allIngredients());
    return names;
}

std::string_view withoutCommas(std::string_view word)
{
    while (!word.empty() && word.back() == ',') {
        word.remove_suffix(1);
    }
    return word;
}

/// Without the describing words at its front; "finely" and its like only before one.
std::string_view withoutDescription(std::string_view key)
{
    std::string_view rest = key;
    while (true) {
        const std::size_t blank = rest.find(' ');
        const std::string_view word = withoutCommas(rest.substr(0, blank));
        if (blank == std::string_view::npos ||
            (!isDescribingWord(word) && !isDegreeWord(word) && word != "and")) {
            return rest;
        }
        rest = rest.substr(blank + 1);
    }
}

/// Whether nothing of it may be something to eat: "skin on", "at room temperature, sliced".
bool isOnlyDescription(std::string_view text)
{
    static constexpr std::array<std::string_view, 22> harmless{
        "and",  "at",          "bone", "bones", "for",   "in",   "into",  "lengthways",
        "of",   "off",         "on",   "one",   "out",   "room", "rinds", "rind",
        "skin", "temperature", "the",  "to",    "skins", "or"};
    std::string_view rest = text;
    while (!rest.empty()) {
        const std::size_t blank = rest.find(' ');
        const std::string_view word = withoutCommas(rest.substr(0, blank));
        if (!word.empty() && !isDescribingWord(word) && !isDegreeWord(word) &&
            std::ranges::find(harmless, word) == harmless.end()) {
            return false;
        }
        rest = blank == std::string_view::npos ? std::string_view{} : rest.substr(blank + 1);
    }
    return true;
}

/// Tries the whole name first, so that "whole milk" is not just milk if anybody knows it.
template <typename Find>
const Ingredient* findAnyForm(std::string_view name, const Find& find)
{
    const std::string key = nameKey(name);
    if (const Ingredient* found = find(key)) {
        return found;
    }
    if (const Ingredient* found = find(nameKey(withoutDescription(key)))) {
        return found;
    }
    const std::size_t comma = key.find(", ");
    if (comma == std::string::npos || !isOnlyDescription(std::string_view(key).substr(comma + 2))) {
        return nullptr;
    }
    const std::string before = nameKey(std::string_view(key).substr(0, comma));
    const Ingredient* found = find(before);
    return found != nullptr ? found : find(nameKey(withoutDescription(before)));
}

const Ingredient* findInTable(const std::string& key)
{
    const auto found = tableNames().find(key);
    return found == tableNames().end() ? nullptr : found->second;
}

} // namespace

const std::vector<Ingredient>& allIngredients()
{
    static const std::vector<Ingredient> ingredients = [] {
        auto read = readIngredients(tables::ingredients());
        ensures(read.has_value(), "the table of ingredients can be read");
        return std::move(read).value();
    }();
    return ingredients;
}

const Ingredient* findIngredient(std::string_view name)
{
    return findAnyForm(name, findInTable);
}

IngredientBook::IngredientBook(std::span<const Ingredient> own)
    : own_(std::make_shared<const std::vector<Ingredient>>(own.begin(), own.end())),
      names_(namesOf(*own_))
{}

const Ingredient* IngredientBook::find(std::string_view name) const
{
    return findAnyForm(name, [this](const std::string& key) {
        const auto mine = names_.find(key);
        return mine == names_.end() ? findInTable(key) : mine->second;
    });
}

} // namespace suppertide
