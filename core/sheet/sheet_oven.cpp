// Turns of the ovens' knobs: on, up, down and off, and when the oven is hot.
#include <fmt/format.h>

#include <algorithm>

#include "core/problem/oven_curve.h"
#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// The first minute from `entry` on in which the oven has reached its setting; absent if it is
/// there already, or is set to something else before.
std::optional<PlanTime> hotAt(const Oven& oven, const OvenProgram& program,
                              const ProgramEntry& entry, PlanTime until)
{
    const OvenCurve curve(oven, program);
    const std::int64_t wanted = std::int64_t{*entry.setC} * 1000;
    if (curve.milliC(entry.at) == wanted) {
        return std::nullopt;
    }
    const std::int64_t apart = wanted - curve.milliC(entry.at);
    const std::int64_t rate = apart > 0 ? oven.heatMilliCPerMin : oven.coolMilliCPerMin;
    const std::int64_t minutes = ((apart > 0 ? apart : -apart) + rate - 1) / rate;
    const PlanTime there = entry.at + Minutes{minutes};
    return there <= until ? std::optional{there} : std::nullopt;
}

class OvenTurns
{
public:
    OvenTurns(const SheetContext& context, OvenIndex oven)
        : context_(context), formulation_(context.formulation), oven_(oven),
          program_(context.plan.schedule.programs[oven])
    {}

    void write(std::vector<SheetOvenTurn>& turns) const
    {
        std::optional<int> before;
        for (std::size_t i = 0; i < program_.size(); ++i) {
            const ProgramEntry& entry = program_[i];
            if (isBarelyOff(i, before)) {
                continue;
            }
            if (entry.setC != before) {
                const PlanTime until =
                    i + 1 < program_.size() ? program_[i + 1].at : formulation_.problem.horizon;
                turns.push_back({oven_, entry.at, entry.setC, text(entry, before, until)});
            }
            before = entry.setC;
        }
    }

private:
    /// Nobody turns an empty oven off that must be as hot or hotter a few minutes later. Left on,
    /// it is hot no later than the plan says.
    [[nodiscard]] bool isBarelyOff(std::size_t index, std::optional<int> before) const
    {
        constexpr Minutes barely{5};
        if (program_[index].setC || !before || index + 1 >= program_.size()) {
            return false;
        }
        const ProgramEntry& next = program_[index + 1];
        return next.setC && *next.setC >= *before && next.at - program_[index].at <= barely &&
               isEmpty({program_[index].at, next.at});
    }

    [[nodiscard]] bool isEmpty(const Interval& during) const
    {
        for (const OvenDemandIndex index : formulation_.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation_.problem.ovenDemands[index];
            const auto held = context_.timetable.held(demand.from, demand.to);
            if (held && context_.plan.schedule.ovens[index] == oven_ && held->overlaps(during)) {
                return false;
            }
        }
        return true;
    }

    [[nodiscard]] std::string text(const ProgramEntry& entry, std::optional<int> before,
                                   PlanTime until) const
    {
        const std::string& name = formulation_.ovenNames[oven_];
        if (!entry.setC) {
            return name + " off";
        }
        std::string text = name + turned(*entry.setC, before);
        const auto demand = nextIn({entry.at, until});
        const std::optional<std::string> mode =
            demand ? formulation_.problem.ovenDemands[*demand].mode : std::nullopt;
        if (mode && *mode != modeOff) {
            text += ", " + *mode;
        }
        if (const auto hot = hotAt(formulation_.problem.ovens[oven_], program_, entry, until)) {
            text += fmt::format("; {} at {}", before && *before > *entry.setC ? "down" : "hot",
                                context_.clock(*hot, entry.at));
        }
        if (demand && !formulation_.ovenDemands[*demand].dishName.empty()) {
            text += " for " + theThing(formulation_.ovenDemands[*demand].dishName);
        }
        return text;
    }

    /// " on, to 150 °C", " from 150 °C up to 220 °C".
    [[nodiscard]] std::string turned(int celsius, std::optional<int> before) const
    {
        const std::string to = temperatureText(celsius, context_.style);
        return !before ? " on, to " + to
                       : fmt::format(" from {} {} to {}", temperatureText(*before, context_.style),
                                     *before > celsius ? "down" : "up", to);
    }

    /// What goes in first while the setting is in force.
    [[nodiscard]] std::optional<OvenDemandIndex> nextIn(const Interval& during) const
    {
        std::optional<OvenDemandIndex> next;
        PlanTime first = during.end;
        for (const OvenDemandIndex index : formulation_.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation_.problem.ovenDemands[index];
            const auto held = context_.timetable.held(demand.from, demand.to);
            if (held && context_.plan.schedule.ovens[index] == oven_ &&
                held->start >= during.start && held->start < first) {
                next = index;
                first = held->start;
            }
        }
        return next;
    }

    const SheetContext& context_;
    const Formulation& formulation_;
    OvenIndex oven_;
    const OvenProgram& program_;
};

} // namespace

std::vector<SheetOvenTurn> sheetOvenTurns(const SheetContext& context)
{
    std::vector<SheetOvenTurn> turns;
    for (const OvenIndex oven : context.formulation.problem.ovens.indices()) {
        OvenTurns(context, oven).write(turns);
    }
    std::ranges::stable_sort(turns, {}, &SheetOvenTurn::at);
    return turns;
}

} // namespace suppertide
