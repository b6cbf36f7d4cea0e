#include "core/menus/figure.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace suppertide::menus {

namespace {

using FigureKey = std::pair<Figure, std::string_view>;

constexpr std::array keys{
    FigureKey{Figure::HandsOn, "hands-on"},
    FigureKey{Figure::LastHour, "last-hour"},
    FigureKey{Figure::Ahead, "ahead"},
    FigureKey{Figure::Steps, "steps"},
    FigureKey{Figure::ExtraSteps, "extra-steps"},
    FigureKey{Figure::OvenChanges, "oven-changes"},
    FigureKey{Figure::OvenOn, "oven-on"},
    FigureKey{Figure::Energy, "energy"},
    FigureKey{Figure::Price, "price"},
    FigureKey{Figure::Repeated, "repeated"},
};
static_assert(keys.size() == allFigures.size());

std::int64_t valueOf(const EveningFigures& evening, Figure figure)
{
    switch (figure) {
    case Figure::HandsOn:
        return evening.handsOn.count();
    case Figure::LastHour:
        return evening.lastHour.count();
    case Figure::Ahead:
        return evening.ahead.count();
    case Figure::Steps:
        return evening.steps;
    case Figure::OvenChanges:
        return evening.ovenChanges;
    case Figure::OvenOn:
        return evening.ovenOn.count();
    case Figure::Energy:
        return evening.energy.wattHours;
    case Figure::ExtraSteps:
    case Figure::Price:
    case Figure::Repeated:
        break; // of the menu, not of its evening
    }
    return 0;
}

/// Less is better, whatever the figure.
std::optional<std::int64_t> lessIsBetter(const ComparedMenu& menu, Figure figure)
{
    const auto value = menus::valueOf(menu, figure);
    return value && isMoreBetter(figure) ? -*value : value;
}

} // namespace

std::string_view keyOf(Figure figure)
{
    const auto found = std::ranges::find(keys, figure, &FigureKey::first);
    return found == keys.end() ? std::string_view{} : found->second;
}

std::optional<Figure> findFigure(std::string_view key)
{
    const auto found = std::ranges::find(keys, key, &FigureKey::second);
    return found == keys.end() ? std::nullopt : std::optional{found->first};
}

bool isMoreBetter(Figure figure)
{
    return figure == Figure::Ahead;
}

std::optional<std::int64_t> valueOf(const ComparedMenu& menu, Figure figure)
{
    switch (figure) {
    case Figure::ExtraSteps:
        return menu.extraSteps;
    case Figure::Price:
        return menu.price;
    case Figure::Repeated:
        return static_cast<std::int64_t>(menu.repeated.size());
    case Figure::HandsOn:
    case Figure::LastHour:
    case Figure::Ahead:
    case Figure::Steps:
    case Figure::OvenChanges:
    case Figure::OvenOn:
    case Figure::Energy:
        break;
    }
    return menu.evening ? std::optional{valueOf(*menu.evening, figure)} : std::nullopt;
}

std::vector<std::size_t> sortedBy(std::span<const ComparedMenu> menus, Figure figure)
{
    std::vector<std::size_t> order(menus.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::ranges::stable_sort(order, {}, [&](std::size_t i) {
        const auto value = lessIsBetter(menus[i], figure);
        return std::pair{!value.has_value(), value.value_or(0)};
    });
    return order;
}

std::vector<std::size_t> unbeaten(std::span<const ComparedMenu> menus, Figure one, Figure other)
{
    struct Point
    {
        std::int64_t x = 0;
        std::int64_t y = 0;
        std::size_t menu = 0;
    };
    std::vector<Point> points;
    for (std::size_t i = 0; i < menus.size(); ++i) {
        const auto x = lessIsBetter(menus[i], one);
        const auto y = lessIsBetter(menus[i], other);
        if (x && y && menus[i].cookable == Cookable::Yes) {
            points.push_back({*x, *y, i});
        }
    }
    std::ranges::sort(points, {}, [](const Point& point) {
        return std::tuple{point.x, point.y, point.menu};
    });
    std::vector<std::size_t> front;
    std::optional<Point> last; // of the front
    for (const Point& point : points) {
        const bool isEqual = last && last->x == point.x && last->y == point.y;
        if (!last || point.y < last->y || isEqual) {
            front.push_back(point.menu);
            last = point;
        }
    }
    return front;
}

} // namespace suppertide::menus
