#include "core/wording/menu_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/wording/phrases.h"

namespace suppertide {

namespace {

using menus::Figure;

struct FigureWords
{
    Figure figure;
    std::string_view heading;
    std::string_view meaning;
    std::string_view unit; // in files
};

constexpr std::array words{
    FigureWords{Figure::HandsOn, "Hands-on", "Work of all cooks together, weighted by attention",
                "minutes"},
    FigureWords{Figure::LastHour, "Last hour", "Work in the hour before the first serving",
                "minutes"},
    FigureWords{Figure::Ahead, "Made ahead", "Work done before the day of the first serving",
                "minutes"},
    FigureWords{Figure::Steps, "Steps", "Steps of the whole evening", ""},
    FigureWords{Figure::ExtraSteps, "Extra steps",
                "Steps for guests whom what leads a course does not suit", ""},
    FigureWords{Figure::OvenChanges, "Oven changes",
                "How often an oven is set to another "
                "temperature",
                ""},
    FigureWords{Figure::OvenOn, "Oven on", "Minutes that ovens are on", "minutes"},
    FigureWords{Figure::Energy, "Energy", "What ovens and burners draw, estimated", "Wh"},
    FigureWords{Figure::Price, "Cost", "Of what must be bought, where prices are known", ""},
    FigureWords{Figure::Repeated, "Repeated", "Main ingredients of more than one course", ""},
};
static_assert(words.size() == menus::allFigures.size());

constexpr const char* dash = "–";
constexpr std::int64_t wattHoursPerKilowattHour = 1000;
constexpr std::int64_t hundred = 100;

const FigureWords& wordsOf(Figure figure)
{
    return *std::ranges::find(words, figure, &FigureWords::figure);
}

std::string guestName(const Occasion& occasion, const GuestId& id)
{
    const auto guest = std::ranges::find(occasion.guests, id, &Guest::id);
    return guest == occasion.guests.end() || guest->name.empty() ? id.text() : guest->name;
}

std::string guestNames(const Occasion& occasion, const std::vector<GuestId>& ids)
{
    std::vector<std::string> names;
    for (const GuestId& id : ids) {
        names.push_back(guestName(occasion, id));
    }
    return listed(names);
}

std::string cell(const std::string& text)
{
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string quotedText = "\"";
    for (const char each : text) {
        quotedText += each;
        if (each == '"') {
            quotedText += each;
        }
    }
    return quotedText + "\"";
}

std::string substitutionText(const menus::Substitution& change, const Recipe& recipe)
{
    std::string where;
    if (change.as) {
        const auto as = std::ranges::find(recipe.variants, *change.as, &Variant::id);
        where = fmt::format(" (as in {})",
                            quoted(as == recipe.variants.end() ? change.as->text() : as->name));
    }
    return change.instead && *change.instead != change.ingredient
               ? fmt::format("{} instead of {}{}", *change.instead, change.ingredient, where)
           : change.instead ? fmt::format("another {}{}", change.ingredient, where)
                            : fmt::format("no {}{}", change.ingredient, where);
}

} // namespace

std::string_view headingOf(Figure figure)
{
    return wordsOf(figure).heading;
}

std::string_view meaningOf(Figure figure)
{
    return wordsOf(figure).meaning;
}

std::string figureText(Figure figure, std::optional<std::int64_t> value)
{
    if (!value) {
        return dash;
    }
    switch (figure) {
    case Figure::HandsOn:
    case Figure::LastHour:
    case Figure::Ahead:
    case Figure::OvenOn:
        return durationText(Minutes{*value});
    case Figure::Energy:
        return fmt::format("{:.1f} kWh",
                           static_cast<double>(*value) / double{wattHoursPerKilowattHour});
    case Figure::Price:
        return fmt::format("{}.{:02}", *value / hundred, *value % hundred);
    case Figure::Steps:
    case Figure::ExtraSteps:
    case Figure::OvenChanges:
    case Figure::Repeated:
        break;
    }
    return std::to_string(*value);
}

std::string_view nameOf(menus::Cookable cookable)
{
    switch (cookable) {
    case menus::Cookable::Yes:
        return "yes";
    case menus::Cookable::No:
        return "no";
    case menus::Cookable::NotSettled:
        break;
    }
    return "not settled";
}

std::string alternativeName(const Course& course, const AlternativeId& alternative)
{
    const auto found = std::ranges::find(course.alternatives, alternative, &Alternative::id);
    if (found != course.alternatives.end() && !found->name.empty()) {
        return found->name;
    }
    return alternative.empty() ? course.name : alternative.text();
}

std::string menuName(const Occasion& occasion, const menus::ComparedMenu& menu)
{
    std::string name;
    for (std::size_t i = 0; i < menu.leading.size() && i < occasion.courses.size(); ++i) {
        name += i == 0 ? "" : ", ";
        name += alternativeName(occasion.courses[i], menu.leading[i]);
    }
    return name;
}

std::string whomItSuits(const Occasion& occasion, const menus::ComparedMenu& menu)
{
    if (menu.suitsEverybody()) {
        return "everybody";
    }
    std::string text;
    if (!menu.notServed.empty()) {
        text = "nothing safe for " + guestNames(occasion, menu.notServed);
    }
    if (!menu.unsure.empty()) {
        text += (text.empty() ? "" : "; ") +
                ("not all is known for " + guestNames(occasion, menu.unsure));
    }
    return text;
}

std::string repeatedText(const Occasion& occasion, const menus::ComparedMenu& menu)
{
    std::string text;
    for (const menus::Repeated& each : menu.repeated) {
        std::vector<std::string> names;
        for (const CourseId& id : each.courses) {
            const auto course = std::ranges::find(occasion.courses, id, &Course::id);
            names.push_back(course == occasion.courses.end() ? id.text() : course->name);
        }
        text += (text.empty() ? "" : "; ") + each.ingredient + " in " + listed(names);
    }
    return text;
}

std::string leftUsedText(const menus::ComparedMenu& menu)
{
    std::string text;
    for (const menus::LeftUsed& used : menu.leftUsed) {
        text += fmt::format("{}{} for {}", text.empty() ? "" : "; ", used.what, used.by);
    }
    return text;
}

std::string notServedSentence(const Occasion& occasion, const Course& course,
                              const std::map<RecipeId, const Recipe*>& recipes,
                              const menus::NotServed& guest)
{
    std::string text = fmt::format("{} gets nothing of {}: no dish of it suits.",
                                   guestName(occasion, guest.guest), quoted(course.name));
    for (const menus::WayToServe& way : guest.ways) {
        const auto dish = std::ranges::find(course.dishes, way.dish, &Dish::id);
        const auto recipe =
            dish == course.dishes.end() ? recipes.end() : recipes.find(dish->recipe);
        if (recipe == recipes.end()) {
            continue;
        }
        std::vector<std::string> changes;
        for (const menus::Substitution& change : way.substitutions) {
            changes.push_back(substitutionText(change, *recipe->second));
        }
        const auto variant = std::ranges::find(recipe->second->variants, way.variant, &Variant::id);
        text += fmt::format(" {}, {}, would with {}.", capitalised(theThing(recipe->second->name)),
                            quoted(variant->name), listed(changes));
    }
    return text;
}

std::string menusAsCsv(const Occasion& occasion, const std::vector<menus::ComparedMenu>& menus)
{
    std::string text;
    for (const Course& course : occasion.courses) {
        text += cell(course.name) + ",";
    }
    text += "Can be cooked,Suits";
    for (const FigureWords& each : words) {
        text += "," + std::string(each.heading) +
                (each.unit.empty() ? "" : fmt::format(" ({})", each.unit));
    }
    text += "\r\n";
    for (const menus::ComparedMenu& menu : menus) {
        for (std::size_t i = 0; i < menu.leading.size(); ++i) {
            text += cell(alternativeName(occasion.courses[i], menu.leading[i])) + ",";
        }
        text += std::string(nameOf(menu.cookable)) + "," + cell(whomItSuits(occasion, menu));
        for (const FigureWords& each : words) {
            const auto value = menus::valueOf(menu, each.figure);
            text += ",";
            text += !value                         ? std::string()
                    : each.figure == Figure::Price ? figureText(each.figure, value)
                                                   : std::to_string(*value);
        }
        text += "\r\n";
    }
    return text;
}

} // namespace suppertide
