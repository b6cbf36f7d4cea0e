#include "core/shopping/day_words.h"

#include <fmt/format.h>

#include <array>
#include <string_view>

namespace suppertide::shopping {

std::string dayWords(const CivilDate& date)
{
    using namespace std::string_view_literals;
    constexpr std::array days{"Monday"sv, "Tuesday"sv,  "Wednesday"sv, "Thursday"sv,
                              "Friday"sv, "Saturday"sv, "Sunday"sv};
    constexpr std::array months{"January"sv,   "February"sv, "March"sv,    "April"sv,
                                "May"sv,       "June"sv,     "July"sv,     "August"sv,
                                "September"sv, "October"sv,  "November"sv, "December"sv};
    if (!isValid(date)) {
        return toIso(date);
    }
    return fmt::format("{} {} {}", days.at(static_cast<std::size_t>(weekdayOf(date))), date.day,
                       months.at(date.month - 1));
}

} // namespace suppertide::shopping
