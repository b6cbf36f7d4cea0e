#include "ui/timeline/time_words.h"

#include <fmt/core.h>

#include <array>

namespace suppertide::ui {

std::string clockText(const PlanCalendar& calendar, PlanTime time)
{
    return toIso(calendar.civil(time).clock);
}

std::string lengthText(Minutes length)
{
    const auto count = length.count();
    if (count < 60) {
        return fmt::format("{} min", count);
    }
    if (count % 60 == 0) {
        return fmt::format("{} h", count / 60);
    }
    return fmt::format("{} h {:02}", count / 60, count % 60);
}

std::string roughLengthText(Minutes length)
{
    if (length < Minutes{60}) {
        return lengthText(length);
    }
    constexpr std::array quarters{"", "¼", "½", "¾"};
    const auto rounded = (length.count() + 7) / 15;
    return fmt::format("{}{} h", rounded / 4, quarters.at(static_cast<std::size_t>(rounded % 4)));
}

std::string countdownText(Minutes before)
{
    return fmt::format("−{}:{:02}", before.count() / 60, before.count() % 60);
}

} // namespace suppertide::ui
