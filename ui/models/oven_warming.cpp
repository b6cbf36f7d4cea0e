#include "ui/models/oven_warming.h"

#include <fmt/format.h>

#include "core/plan/oven_rate.h"
#include "ui/models/comma_list.h"
#include "ui/models/reading.h"

namespace suppertide::ui {

namespace {

Failure unreadable(std::string_view text)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” cannot be read here. Write it like 14 min to 200 °C or 14 min to "
                        "390 °F, with a comma between two.",
                        text),
            ""};
}

Result<OvenWarming> readOne(std::string_view text)
{
    const auto read = readTimeAndDegrees(text, " to ");
    return read ? Result<OvenWarming>(OvenWarming{read->first, read->second}) : unreadable(text);
}

} // namespace

Result<std::vector<OvenWarming>> readWarming(std::string_view text)
{
    const auto read = readCommaList<OvenWarming>(text, readOne);
    if (!read) {
        return read.error();
    }
    const std::vector<OvenWarming>& warming = *read;
    constexpr std::size_t most = 2;
    if (warming.size() > most) {
        return Failure{FailureKind::BadInput, "Two measurements are enough. Take the others away.",
                       ""};
    }
    if (!warming.empty()) {
        const auto minutes = measuredPreheat(warming, Celsius::degrees(20), warming.back().shown);
        if (!minutes) {
            return minutes.error();
        }
    }
    return warming;
}

std::string warmingText(const std::vector<OvenWarming>& warming, bool isFahrenheit)
{
    std::string text;
    for (const OvenWarming& each : warming) {
        text += fmt::format("{}{} to {}", text.empty() ? "" : ", ", fieldText(each.after),
                            typedDegrees(each.shown, isFahrenheit));
    }
    return text;
}

} // namespace suppertide::ui
