#include "ui/models/other_heats.h"

#include <fmt/format.h>

#include <algorithm>

#include "ui/models/comma_list.h"
#include "ui/models/reading.h"

namespace suppertide::ui {

namespace {

Failure unreadable(std::string_view text)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” cannot be read here. Write it like 45 min at 180 °C or 45 min at "
                        "355 °F, with commas between several.",
                        text),
            ""};
}

Celsius bestOf(const OtherHeat& heat)
{
    return heat.prefer.value_or(Celsius::tenths((heat.low.tenths() + heat.high.tenths()) / 2));
}

Minutes inProportion(Minutes part, Minutes whole, Minutes likely)
{
    return whole > Minutes{0} ? likely * part.count() / whole.count() : likely;
}

OtherHeat heatLike(const Step& step, Celsius best, Minutes likely)
{
    constexpr int around = 50; // tenths, where the step says nothing
    const auto use = std::ranges::find_if(
        step.uses, [](const Use& each) { return std::holds_alternative<OvenUse>(each); });
    int below = around;
    int above = around;
    if (use != step.uses.end()) {
        const auto& oven = std::get<OvenUse>(*use);
        const int own =
            oven.prefer.value_or(Celsius::tenths((oven.low.tenths() + oven.high.tenths()) / 2))
                .tenths();
        below = own - oven.low.tenths();
        above = oven.high.tenths() - own;
    }
    const DurationRange& usual = step.duration;
    return {best + TemperatureDelta::tenths(-below),
            best + TemperatureDelta::tenths(above),
            best,
            {std::min(likely, inProportion(usual.least, usual.likely, likely)), likely,
             std::max(likely, inProportion(usual.most, usual.likely, likely))},
            0};
}

Result<OtherHeat> readOne(std::string_view text, const Step& step)
{
    const auto read = readTimeAndDegrees(text, " at ");
    if (!read) {
        return unreadable(text);
    }
    for (const OtherHeat& known : step.otherHeats) {
        if (bestOf(known).wholeDegrees() == read->second.wholeDegrees() &&
            known.duration.likely == read->first) {
            return known;
        }
    }
    return heatLike(step, read->second, read->first);
}

} // namespace

Result<std::vector<OtherHeat>> readOtherHeats(std::string_view text, const Step& step)
{
    return readCommaList<OtherHeat>(text,
                                    [&step](std::string_view one) { return readOne(one, step); });
}

std::string otherHeatsText(const Step& step, bool isFahrenheit)
{
    std::string text;
    for (const OtherHeat& heat : step.otherHeats) {
        text += fmt::format("{}{} at {}", text.empty() ? "" : ", ", fieldText(heat.duration.likely),
                            typedDegrees(bestOf(heat), isFahrenheit));
    }
    return text;
}

} // namespace suppertide::ui
