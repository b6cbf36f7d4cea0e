// Turns of the ovens' knobs, and what goes into and out of the cold or the warm.
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
            if (entry.setC != before) {
                const PlanTime until =
                    i + 1 < program_.size() ? program_[i + 1].at : formulation_.problem.horizon;
                turns.push_back({oven_, entry.at, entry.setC, text(entry, before, until)});
            }
            before = entry.setC;
        }
    }

private:
    [[nodiscard]] std::string text(const ProgramEntry& entry, std::optional<int> before,
                                   PlanTime until) const
    {
        const std::string& name = formulation_.ovenNames[oven_];
        if (!entry.setC) {
            return name + " off";
        }
        std::string text = fmt::format("{}{} to {}", name,
                                       !before                 ? " on,"
                                       : *before > *entry.setC ? " down"
                                                               : " up",
                                       temperatureText(*entry.setC, context_.style));
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

/// Food that stands somewhere from one minute to another.
struct Stay
{
    std::string dish;
    std::string place;
    Interval when;
    std::int64_t tenths = 0; // litres × 10, together
    TaskIndex before;
    TaskIndex after;
};

class Stays
{
public:
    explicit Stays(const SheetContext& context) : context_(context) { collect(); }

    [[nodiscard]] std::vector<SheetFetch> fetches() const
    {
        std::vector<SheetFetch> result;
        for (const Stay& stay : stays_) {
            const std::string room = stay.tenths > 0 ? ", " + litres(stay.tenths) : "";
            result.push_back({stay.when.start,
                              fmt::format("{} into the {}{}; out {}", stay.dish, stay.place, room,
                                          context_.clock(stay.when.end, stay.when.start)),
                              cooksAt(stay.before, stay.when.start)});
            result.push_back({stay.when.end, fmt::format("{} out of the {}", stay.dish, stay.place),
                              cooksAt(stay.after, stay.when.end)});
        }
        std::ranges::stable_sort(result, {}, &SheetFetch::at);
        return result;
    }

private:
    void collect()
    {
        const Formulation& formulation = context_.formulation;
        for (const DemandIndex index : formulation.problem.demands.indices()) {
            const Demand& demand = formulation.problem.demands[index];
            if (!demand.count || !isCold(formulation.counts[*demand.count].kind)) {
                continue;
            }
            const ResourceSource& count = formulation.counts[*demand.count];
            add(demand.from, demand.to, formulation.demands[index], count.name,
                demand.amount * 10 / std::max<std::int64_t>(count.perUnit, 1));
        }
        for (const OvenDemandIndex index : formulation.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation.problem.ovenDemands[index];
            if (formulation.ovenDemands[index].isKeep) {
                add(demand.from, demand.to, formulation.ovenDemands[index], "warm oven", 0);
            }
        }
    }

    static bool isCold(ResourceKind kind)
    {
        return kind == ResourceKind::Fridge || kind == ResourceKind::Freezer;
    }

    /// What goes on standing where it is, or goes in and out together, is one stay.
    void add(const TaskPoint& from, const TaskPoint& to, const DemandSource& source,
             const std::string& place, std::int64_t tenths)
    {
        const auto held = context_.timetable.held(from, to);
        if (!held) {
            return;
        }
        const std::string dish = source.dishName.empty() ? "What was bought" : source.dishName;
        for (Stay& stay : stays_) {
            if (stay.dish != dish || stay.place != place) {
                continue;
            }
            if (stay.when == *held) {
                stay.tenths += tenths;
                return;
            }
            if (stay.when.end == held->start) {
                stay.when.end = held->end;
                stay.after = to.task;
                return;
            }
        }
        stays_.push_back({dish, place, *held, tenths, from.task, to.task});
    }

    static std::string litres(std::int64_t tenths)
    {
        return tenths % 10 == 0 ? fmt::format("{} l", tenths / 10)
                                : fmt::format("{}.{} l", tenths / 10, tenths % 10);
    }

    /// The cooks of the task itself, or, where it is an event, of its dish's task that ends or
    /// starts there.
    [[nodiscard]] std::vector<std::string> cooksAt(TaskIndex task, PlanTime time) const
    {
        std::vector<std::string> cooks = context_.cooksOf(task);
        if (!cooks.empty()) {
            return cooks;
        }
        const Formulation& formulation = context_.formulation;
        for (const TaskIndex other : formulation.tasks.indices()) {
            const auto when = context_.timetable.interval(other);
            if (when && formulation.tasks[other].dish == formulation.tasks[task].dish &&
                (when->end == time || when->start == time)) {
                cooks = context_.cooksOf(other);
                if (!cooks.empty()) {
                    return cooks;
                }
            }
        }
        return {};
    }

    const SheetContext& context_;
    std::vector<Stay> stays_;
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

std::vector<SheetFetch> sheetFetches(const SheetContext& context)
{
    return Stays(context).fetches();
}

} // namespace suppertide
