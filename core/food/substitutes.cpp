#include "core/food/substitutes.h"

#include <algorithm>

#include "core/base/contracts.h"
#include "core/base/table_text.h"
#include "core/food/ingredient.h"

namespace suppertide::tables {

std::string_view substitutes();

} // namespace suppertide::tables

namespace suppertide {

Result<std::vector<Substitutes>> readSubstitutes(std::string_view table)
{
    const auto text = TableText::read("substitutes", table, {"ingredient", "instead", "source"});
    if (!text) {
        return text.error();
    }
    std::vector<Substitutes> result;
    for (const TableRow& row : text->rows()) {
        if (row.isEmpty("ingredient")) {
            return row.fault("ingredient", "the name of an ingredient");
        }
        Substitutes& each = result.emplace_back();
        each.ingredient = row.text("ingredient");
        each.source = row.text("source");
        for (const std::string_view name : row.list("instead")) {
            each.instead.emplace_back(name);
        }
        if (each.instead.empty()) {
            return row.fault("instead", "a list of ingredients");
        }
    }
    return result;
}

const std::vector<Substitutes>& allSubstitutes()
{
    static const std::vector<Substitutes> all = [] {
        auto read = readSubstitutes(tables::substitutes());
        ensures(read.has_value(), "the table of substitutes can be read");
        return std::move(read).value();
    }();
    return all;
}

const std::vector<std::string>& substitutesFor(std::string_view ingredient)
{
    static const std::vector<std::string> none;
    const Ingredient* known = findIngredient(ingredient);
    const auto& all = allSubstitutes();
    const auto found = known == nullptr
                           ? all.end()
                           : std::ranges::find(all, known->name, &Substitutes::ingredient);
    return found == all.end() ? none : found->instead;
}

} // namespace suppertide
