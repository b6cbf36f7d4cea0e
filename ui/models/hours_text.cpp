#include "ui/models/hours_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide::ui {

namespace {

constexpr std::string_view atHome = "at home";
constexpr std::string_view dash = "–";

std::string_view trimmed(std::string_view text)
{
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

Failure notHours(std::string_view text)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” cannot be read as hours. Write them like 08:00–13:00, at home "
                        "13:00–16:00, 16:00–23:00.",
                        text),
            {}};
}

/// The end of a day may be written 24:00.
Result<ClockTime> readClock(std::string_view text)
{
    if (trimmed(text) == "24:00") {
        return ClockTime{24, 0};
    }
    return parseClock(trimmed(text));
}

Result<Hours> readOne(std::string_view text)
{
    std::string_view rest = trimmed(text);
    Hours hours;
    if (rest.starts_with(atHome)) {
        hours.presence = Presence::AtHome;
        rest = trimmed(rest.substr(atHome.size()));
    }
    auto cut = rest.find(dash);
    std::size_t width = dash.size();
    if (cut == std::string_view::npos) {
        cut = rest.find('-');
        width = 1;
    }
    if (cut == std::string_view::npos) {
        return notHours(text);
    }
    const auto from = readClock(rest.substr(0, cut));
    const auto to = readClock(rest.substr(cut + width));
    if (!from || !to) {
        return notHours(text);
    }
    hours.from = *from;
    hours.to = *to;
    return hours;
}

} // namespace

std::string hoursText(const std::vector<Hours>& hours)
{
    std::string text;
    for (const Hours& each : hours) {
        text += fmt::format("{}{}{}–{}", text.empty() ? "" : ", ",
                            each.presence == Presence::AtHome ? "at home " : "", toIso(each.from),
                            toIso(each.to));
    }
    return text;
}

Result<std::vector<Hours>> readHours(std::string_view text)
{
    std::vector<Hours> result;
    std::string_view rest = trimmed(text);
    while (!rest.empty()) {
        const auto comma = rest.find(',');
        const auto one = readOne(rest.substr(0, comma));
        if (!one) {
            return one.error();
        }
        result.push_back(*one);
        rest =
            comma == std::string_view::npos ? std::string_view{} : trimmed(rest.substr(comma + 1));
    }
    std::ranges::sort(result, {}, &Hours::from);
    for (std::size_t i = 0; i < result.size(); ++i) {
        if (result[i].to <= result[i].from || (i > 0 && result[i].from < result[i - 1].to)) {
            return Failure{FailureKind::BadInput,
                           fmt::format("In “{}” hours end before they begin, or overlap.", text),
                           {}};
        }
    }
    return result;
}

} // namespace suppertide::ui
