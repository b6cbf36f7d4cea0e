// Where and when a clash is, for the second line of its row.
#include <fmt/format.h>

#include "core/wording/clash_words.h"

namespace suppertide {

namespace {

std::string place(const ClashWords& words)
{
    const Clash& clash = words.clash();
    const auto without = [](const std::string& name) {
        return capitalised(name.starts_with("the ") ? name.substr(4) : name);
    };
    if (clash.guest) {
        const std::string dish = clash.dish ? words.dish() : words.course();
        return words.guest() + ", " + dish;
    }
    if (clash.oven) {
        return without(words.oven());
    }
    if (clash.cook) {
        return words.cook();
    }
    if (clash.pool || clash.count) {
        return capitalised(words.thing());
    }
    if (clash.course) {
        return without(words.course());
    }
    return without(words.dish());
}

/// "Saturday 17:40 to 18:10"; the second day only where it is another.
std::string dayAndTime(const ClashWords& words, const Interval& when)
{
    const PlanCalendar& calendar = words.formulation().calendar;
    const ReadingStyle& style = words.times().style();
    const auto day = [&calendar](PlanTime time) {
        const std::string text = dayText(calendar.civil(time).date);
        return text.substr(0, text.find(' '));
    };
    const auto clock = [&](PlanTime time) { return timeText(calendar, time, {}, style); };
    std::string start = day(when.start) + " " + clock(when.start);
    if (when.empty()) {
        return start;
    }
    const std::string endDay =
        day(when.end) == day(when.start) ? std::string{} : day(when.end) + " ";
    return start + " to " + endDay + clock(when.end);
}

} // namespace

std::string placeAndTime(const Plan& plan, const Occasion& occasion, const Clash& clash,
                         const ReadingStyle& style)
{
    const ClashWords words(plan, occasion, clash, style);
    return clash.when ? place(words) + ", " + dayAndTime(words, *clash.when) : place(words);
}

} // namespace suppertide
