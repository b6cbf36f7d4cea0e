#include <fmt/format.h>

#include <chrono>
#include <ostream>
#include <set>

#include "app/evening.h"
#include "app/text_file.h"
#include "app/verbs.h"
#include "core/menus/compare.h"
#include "core/menus/figure.h"
#include "core/plan/making.h"
#include "core/shopping/menu_price.h"
#include "core/wording/menu_words.h"

namespace suppertide::app {

namespace {

using menus::ComparedMenu;
using menus::Figure;

constexpr int usualSeconds = 60;

/// What fits a terminal beside the menu's name.
constexpr std::array columns{Figure::HandsOn, Figure::LastHour, Figure::Ahead, Figure::OvenChanges,
                             Figure::OvenOn,  Figure::Energy,   Figure::Price, Figure::Repeated};

/// Columns as a terminal shows them: bytes that go on a letter begun do not count.
std::size_t widthOf(std::string_view text)
{
    return static_cast<std::size_t>(std::ranges::count_if(
        text, [](char each) { return (static_cast<unsigned char>(each) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width)
{
    const std::size_t own = widthOf(text);
    return std::string(own < width ? width - own : 0, ' ') + text;
}

void sayTable(const Occasion& occasion, const std::vector<ComparedMenu>& menus, Figure by,
              std::ostream& out)
{
    const std::vector<std::size_t> order = menus::sortedBy(menus, by);
    const auto front =
        menus::unbeaten(menus, by, by == Figure::HandsOn ? Figure::Ahead : Figure::HandsOn);
    const std::set<std::size_t> unbeaten(front.begin(), front.end());
    const auto shown = [&](Figure figure) {
        return std::ranges::any_of(menus, [figure](const ComparedMenu& menu) {
            return menus::valueOf(menu, figure).has_value();
        });
    };
    std::string heading = "     Cooked";
    for (const Figure figure : columns) {
        if (shown(figure)) {
            heading += "  " + std::string(headingOf(figure));
        }
    }
    out << heading << "  Menu\n";
    int place = 0;
    for (const std::size_t i : order) {
        const ComparedMenu& menu = menus[i];
        std::string row = fmt::format("{:>4}{}", ++place, unbeaten.contains(i) ? "*" : " ");
        row += padded(
            menu.cookable == menus::Cookable::NotSettled ? "?" : std::string(nameOf(menu.cookable)),
            6);
        for (const Figure figure : columns) {
            if (shown(figure)) {
                row += "  " + padded(figureText(figure, menus::valueOf(menu, figure)),
                                     headingOf(figure).size());
            }
        }
        out << row << "  " << menuName(occasion, menu);
        if (!menu.suitsEverybody()) {
            out << "; " << whomItSuits(occasion, menu);
        }
        out << '\n';
    }
}

void saySummary(const std::vector<ComparedMenu>& menus, Figure by, std::ostream& out)
{
    const auto count = [&menus](menus::Cookable cookable) {
        return std::ranges::count(menus, cookable, &ComparedMenu::cookable);
    };
    const Figure other = by == Figure::HandsOn ? Figure::Ahead : Figure::HandsOn;
    out << fmt::format("{} menus: {} can be cooked here, {} cannot, {} not settled (?).\n"
                       "* nothing beats it in both “{}” and “{}”. Energy is an estimate.\n",
                       menus.size(), count(menus::Cookable::Yes), count(menus::Cookable::No),
                       count(menus::Cookable::NotSettled), headingOf(by), headingOf(other));
}

/// Each guest for whom a course has nothing safe, once for each leading alternative.
void sayNotServed(const Occasion& occasion, const PlanInput& input, const menus::MenuTable& table,
                  std::ostream& out)
{
    std::set<std::string> told;
    const RecipeTable recipes = recipeTable(input);
    for (std::size_t i = 0; i < occasion.courses.size(); ++i) {
        for (const menus::CourseMix& mix : table.mixes()[i]) {
            for (const menus::NotServed& guest : mix.notServed) {
                std::string said = notServedSentence(occasion, occasion.courses[i], recipes, guest);
                if (told.insert(said).second) {
                    out << said << '\n';
                }
            }
        }
    }
}

} // namespace

Exit runCompare(const CommandLine& line, const VerbContext& context)
{
    auto named = namedEvening(line);
    if (!named) {
        return say(named.error(), context);
    }
    const PlanInput& input = named->input;
    menus::CompareRequest request{input, {}, {}, 0};
    request.limits.wallClock = std::chrono::seconds(line.seconds.value_or(usualSeconds));
    request.price = shopping::priceOfMenus(larderOf(named->evening.state));
    const auto comparison = menus::compareMenus(request);
    if (!comparison) {
        return say(comparison.error(), context);
    }
    const Occasion& occasion = *input.occasion;
    const Figure by = line.by.value_or(Figure::HandsOn);
    sayTable(occasion, comparison->menus, by, context.out);
    saySummary(comparison->menus, by, context.out);
    sayNotServed(occasion, input, comparison->table, context.out);
    if (line.csv) {
        if (auto written = writeText(menusAsCsv(occasion, comparison->menus), *line.csv);
            !written) {
            return say(written.error(), context);
        }
        context.out << fmt::format("Written to {}.\n", line.csv->string());
    }
    const bool canBeCooked = std::ranges::any_of(comparison->menus, [](const ComparedMenu& menu) {
        return menu.cookable == menus::Cookable::Yes;
    });
    return canBeCooked ? Exit::Done : Exit::NoPlanInTime;
}

} // namespace suppertide::app
