#include "core/shopping/shopping_list.h"

#include <algorithm>
#include <tuple>

#include "core/shopping/left_overs.h"
#include "core/shopping/line_writer.h"
#include "core/shopping/sections.h"
#include "core/shopping/trip_split.h"

namespace suppertide::shopping {

namespace {

void sortLines(ShoppingList& list, const Larder& larder)
{
    const std::size_t noTrip = list.trips.size();
    std::ranges::stable_sort(list.lines, {}, [&](const ShoppingLine& line) {
        return std::tuple{line.trip.value_or(noTrip), placeOfSection(line.section, larder),
                          line.section, ingredientKey(line.ingredient)};
    });
}

/// Compares what was ticked with what there is to buy now.
void compareWithTick(ShoppingLine& line, const Bought& bought, const Larder& larder)
{
    line.isBought = false;
    line.boughtBefore.reset();
    const auto ticked = bought.lines.find(line.key);
    if (ticked == bought.lines.end()) {
        return;
    }
    line.isBought = ticked->second == line.toBuy;
    if (!line.isBought) {
        const auto before =
            measured(ticked->second, line.toBuy.unit, factsOf(line.ingredient, larder));
        line.isBought = before && *before >= line.toBuy.value;
    }
    if (!line.isBought) {
        line.boughtBefore = ticked->second;
    }
}

void addCosts(ShoppingList& list)
{
    for (const ShoppingLine& line : list.lines) {
        if (!line.trip) {
            continue;
        }
        list.cost += line.cost.value_or(0);
        list.unpriced += line.cost ? 0U : 1U;
    }
}

} // namespace

ShoppingList shoppingListOf(const ShoppingInput& input)
{
    ShoppingList list;
    list.occasion = input.evening.occasion->name;
    list.zone = input.evening.occasion->zone;
    list.currency = input.larder.currency;
    list.measures = input.measures;
    Needs needs = needsOf(input.evening, input.plan.get(), input.measures);
    FactsBook facts(input.larder);
    list.lines = linesFor(needs.needs, input, facts);
    list.spare = std::move(needs.spare);
    list.sentences = std::move(needs.sentences);
    splitOverTrips(list, input);
    findUses(list, input, facts);
    sortLines(list, input.larder);
    addCosts(list);
    return withTicks(std::move(list), input.bought, input.larder);
}

ShoppingList withTicks(ShoppingList list, const Bought& bought, const Larder& larder)
{
    for (ShoppingLine& line : list.lines) {
        compareWithTick(line, bought, larder);
    }
    return list;
}

Bought withTicked(Bought bought, const ShoppingLine& line, bool isBought)
{
    if (isBought) {
        bought.lines.insert_or_assign(line.key, line.toBuy);
    } else {
        bought.lines.erase(line.key);
    }
    return bought;
}

} // namespace suppertide::shopping
