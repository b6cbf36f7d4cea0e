// Serving lines: which course when, how many of what, and who must get which. And when cooks sit.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

class ServingLines
{
public:
    explicit ServingLines(const SheetContext& context) : context_(context) {}

    [[nodiscard]] std::vector<SheetServing> all() const
    {
        std::vector<SheetServing> result;
        int number = 0;
        for (const Course& course : context_.occasion.courses) {
            ++number;
            const auto event = context_.formulation.servings.find(course.id);
            if (event == context_.formulation.servings.end()) {
                continue;
            }
            const auto when = context_.timetable.interval(event->second);
            if (!when) {
                continue;
            }
            result.push_back({number, course.id, when->start, "Serve " + plainName(course.name),
                              helpingLines(course)});
        }
        std::ranges::stable_sort(result, {}, &SheetServing::at);
        return result;
    }

private:
    [[nodiscard]] std::string guestName(const GuestId& id) const
    {
        const auto guest = std::ranges::find(context_.occasion.guests, id, &Guest::id);
        return guest == context_.occasion.guests.end() ? id.text() : guest->name;
    }

    [[nodiscard]] bool avoidsSomething(const GuestId& id) const
    {
        const auto guest = std::ranges::find(context_.occasion.guests, id, &Guest::id);
        return guest != context_.occasion.guests.end() && !avoidedBy(*guest).empty();
    }

    /// "6 smoked trout", "2 mushroom (Bea, Dov)": a line a variant; guests are named where it
    /// matters which of several they get.
    [[nodiscard]] std::vector<std::string> helpingLines(const Course& course) const
    {
        const std::vector<Helping> helpings =
            helpingsOf(context_.occasion, course, context_.recipes, context_.ingredients);
        std::vector<std::string> lines;
        for (const Dish& dish : course.dishes) {
            const auto recipe = context_.recipes.find(dish.recipe);
            if (recipe == context_.recipes.end()) {
                continue;
            }
            for (const MixEntry& entry : dish.mix) {
                if (entry.portions > Portions{0}) {
                    lines.push_back(line(*recipe->second, dish, entry, helpings));
                }
            }
        }
        return lines;
    }

    [[nodiscard]] std::string line(const Recipe& recipe, const Dish& dish, const MixEntry& entry,
                                   const std::vector<Helping>& helpings) const
    {
        const std::string text = fmt::format("{} {}", toText(Amount{entry.portions, Unit::Piece}),
                                             portionName(recipe, entry.variant));
        std::vector<std::string> takers;
        std::vector<std::string> harmed;
        for (const Helping& helping : helpings) {
            if (helping.dish != dish.id || helping.variant != entry.variant) {
                continue;
            }
            const bool isNamed =
                std::ranges::find(entry.guests, helping.guest) != entry.guests.end();
            if (!helping.unsuitable.empty()) {
                harmed.push_back(guestName(helping.guest));
            } else if (isNamed || avoidsSomething(helping.guest)) {
                takers.push_back(guestName(helping.guest));
            }
        }
        // Who gets it need not be said of what everybody gets.
        std::string whom =
            takers.size() == context_.occasion.guests.size() ? std::string{} : listed(takers);
        if (!harmed.empty()) {
            whom += (whom.empty() ? "not for " : "; not for ") + listed(harmed);
        }
        return whom.empty() ? text : fmt::format("{} ({})", text, whom);
    }

    const SheetContext& context_;
};

} // namespace

std::string plainName(const std::string& name)
{
    const std::string named = theThing(name);
    return named.starts_with("the ") ? named.substr(4) : named;
}

std::string portionName(const Recipe& recipe, const VariantId& variant)
{
    const auto found = std::ranges::find(recipe.variants, variant, &Variant::id);
    const bool isOneOfSeveral = recipe.variants.size() > 1 && found != recipe.variants.end();
    return plainName(recipe.name) + (isOneOfSeveral ? ", " + found->name : std::string{});
}

std::vector<SheetServing> sheetServings(const SheetContext& context)
{
    return ServingLines(context).all();
}

std::vector<SheetTable> sheetTable(const SheetContext& context)
{
    std::vector<SheetTable> result;
    for (const CookIndex cook : context.formulation.problem.cooks.indices()) {
        std::vector<Interval> times =
            context.timetable.atTable(context.formulation.problem.cooks[cook]);
        std::ranges::sort(times);
        std::vector<Interval> joined;
        for (const Interval& each : times) {
            if (!joined.empty() && each.start <= joined.back().end) {
                joined.back().end = std::max(joined.back().end, each.end);
            } else {
                joined.push_back(each);
            }
        }
        for (const Interval& each : joined) {
            result.push_back({cook, each});
        }
    }
    return result;
}

} // namespace suppertide
