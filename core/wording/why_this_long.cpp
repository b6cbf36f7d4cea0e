#include "core/wording/why_this_long.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/science/valid_range.h"
#include "core/wording/wording.h"

namespace suppertide {

namespace {

std::string figureText(const science::Figure& figure, const ReadingStyle& style)
{
    if (figure.unit == "°C" && style.fahrenheit) {
        return fmt::format("{} {} °F", figure.name,
                           science::plainNumber(std::round(figure.value * 1.8 + 32.0)));
    }
    return fmt::format("{} {}{}{}", figure.name, science::plainNumber(figure.value),
                       figure.unit.empty() ? "" : " ", figure.unit);
}

} // namespace

std::vector<std::string> whyThisLong(const ComputedDuration& computed, const ReadingStyle& style)
{
    const std::string written = durationText(computed.written.likely);
    if (!computed.failure.empty()) {
        return {
            fmt::format("The length is the recipe's own, {}: it could not be computed.", written),
            inStyle(computed.failure, style)};
    }
    std::vector<std::string> sentences{
        fmt::format("Computed for the {}: {} ({} to {}). The recipe says {}{}", computed.food,
                    durationText(computed.range.likely), durationText(computed.range.least),
                    durationText(computed.range.most), written,
                    computed.differsMuch ? ": they differ much, so look whether mass, thickness "
                                           "and temperature are as you have them."
                                         : ".")};
    std::string because;
    for (const science::Figure& figure : computed.because) {
        because += (because.empty() ? "Because: " : "; ") + figureText(figure, style);
    }
    if (!because.empty()) {
        sentences.push_back(because + ".");
    }
    sentences.emplace_back("Go by the thermometer, not by the clock.");
    return sentences;
}

std::vector<ComputedDuration> computedAt(const Plan& plan, TaskIndex task)
{
    const Formulation& formulation = *plan.formulation;
    std::vector<ComputedDuration> all;
    const auto add = [&all](const std::optional<ComputedDuration>& computed) {
        if (computed && std::ranges::find(all, *computed) == all.end()) {
            all.push_back(*computed);
        }
    };
    add(formulation.tasks[task].computed);
    for (const LagIndex index : formulation.problem.lags.indices()) {
        const Lag& lag = formulation.problem.lags[index];
        if (lag.from.task == task || lag.to.task == task) {
            add(formulation.lags[index].computed);
        }
    }
    return all;
}

std::string lengthNote(const ComputedDuration& computed)
{
    if (!computed.failure.empty() || !computed.differsMuch) {
        return {};
    }
    return fmt::format("computed {}, the recipe says {}", durationText(computed.range.likely),
                       durationText(computed.written.likely));
}

} // namespace suppertide
