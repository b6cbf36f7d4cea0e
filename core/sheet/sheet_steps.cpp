// Steps as lines of the sheet: the deed, what one needs to know of it, its amounts, and what begins
// when it ends.
#include <fmt/format.h>

#include <algorithm>

#include "core/plan/seen_step.h"
#include "core/problem/oven_curve.h"
#include "core/sheet/sheet_parts.h"
#include "core/sheet/sheet_words.h"
#include "core/wording/phrases.h"
#include "core/wording/why_this_long.h"

namespace suppertide {

namespace {

/// "8 to 25 min", "at least 4 h", "at most 15 min", "at once"; empty if it is bound by nothing.
std::string boundText(const LagSource& lag)
{
    if (!lag.most) {
        return lag.least > Minutes{0} ? "at least " + durationText(lag.least) : std::string{};
    }
    if (*lag.most == Minutes{0}) {
        return "at once";
    }
    if (lag.least == *lag.most) {
        return durationText(lag.least);
    }
    if (lag.least == Minutes{0}) {
        return "at most " + durationText(*lag.most);
    }
    if (*lag.most < Minutes{60}) {
        return fmt::format("{} to {} min", lag.least.count(), lag.most->count());
    }
    return durationText(lag.least) + " to " + durationText(*lag.most);
}

/// The same time in the oven, cut by a turn, or the same pot, cut by a change of hands.
bool isSameStep(const TaskSource& one, const TaskSource& other)
{
    return one.dish == other.dish && one.recipe == other.recipe && one.step == other.step &&
           one.variants == other.variants && one.batch == other.batch;
}

class StepLines
{
public:
    explicit StepLines(const SheetContext& context)
        : context_(context), formulation_(context.formulation)
    {
        for (const TaskIndex task : formulation_.tasks.indices()) {
            if (formulation_.tasks[task].role == TaskRole::OvenIn &&
                context_.timetable.interval(task)) {
                intoOven_.push_back(task);
            }
        }
    }

    [[nodiscard]] std::vector<SheetStep> all() const
    {
        std::vector<SheetStep> steps;
        for (const TaskIndex task : formulation_.tasks.indices()) {
            const auto when = context_.timetable.interval(task);
            if (when && isPrinted(task)) {
                steps.push_back(line(task, *when));
            }
        }
        std::ranges::stable_sort(steps, {}, &SheetStep::start);
        joinPieces(steps);
        return steps;
    }

private:
    [[nodiscard]] bool isPrinted(TaskIndex task) const
    {
        const TaskSource& source = formulation_.tasks[task];
        if (source.role == TaskRole::Step) {
            // The time in the oven is told by the lines that put in and take out.
            return formulation_.problem.tasks[task].needsCooks() ||
                   (formulation_.problem.tasks[task].duration > Minutes{0} && !ovenIn(source));
        }
        return isWork(source.role);
    }

    [[nodiscard]] std::optional<TaskIndex> ovenIn(const TaskSource& source) const
    {
        const auto found = std::ranges::find_if(intoOven_, [&](TaskIndex task) {
            return isSameStep(formulation_.tasks[task], source);
        });
        return found == intoOven_.end() ? std::nullopt : std::optional{*found};
    }

    [[nodiscard]] SheetStep line(TaskIndex task, const Interval& when) const
    {
        const TaskSource& source = formulation_.tasks[task];
        const std::optional<Hands>& hands = formulation_.problem.tasks[task].hands;
        SheetStep step;
        step.task = task;
        step.start = when.start;
        step.end = when.end;
        step.deed = inStyle(deedOf(source), context_.style);
        step.detail = detail(task, when);
        step.after = after(task);
        for (const ScaledLine& each : source.lines) {
            step.amounts.push_back(inStyle(amountLine(each, context_.style), context_.style));
        }
        step.cooks = context_.cooksOf(task);
        step.dish = source.dish;
        step.attention = hands ? hands->attention : unattended;
        return step;
    }

    [[nodiscard]] std::string detail(TaskIndex task, const Interval& when) const
    {
        const TaskSource& source = formulation_.tasks[task];
        std::vector<std::string> parts;
        if (source.role == TaskRole::Step && !source.dishName.empty() &&
            source.text.find(source.dishName) == std::string::npos) {
            parts.push_back(source.dishName);
        }
        // Washing up is the same whatever was in it.
        const bool isWashing = source.role == TaskRole::Washing;
        parts.push_back(isWashing ? std::string{} : source.variantName);
        parts.push_back(inStyle(source.detail, context_.style));
        parts.push_back(places(task));
        if (source.batches > 1 && !isWashing) {
            parts.push_back(fmt::format("batch {} of {}", source.batch, source.batches));
        }
        if (source.role == TaskRole::OvenIn) {
            parts.push_back(outOfOven(task, when));
        } else {
            parts.push_back(durationText(when.length()));
        }
        const bool isItsBegin = source.role == TaskRole::OvenIn || source.role == TaskRole::Step;
        parts.push_back(isItsBegin && source.computed ? lengthNote(*source.computed)
                                                      : std::string{});
        std::string text;
        for (const std::string& part : parts) {
            if (!part.empty()) {
                text += (text.empty() ? "" : " · ") + part;
            }
        }
        return text;
    }

    /// "150 °C, fan · out 20:20"; "120 °C · until 23:12" for what then stays in the oven.
    [[nodiscard]] std::string outOfOven(TaskIndex in, const Interval& when) const
    {
        const TaskSource& source = formulation_.tasks[in];
        std::string text;
        std::optional<PlanTime> until;
        for (const OvenDemandIndex index : formulation_.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation_.problem.ovenDemands[index];
            const auto held = context_.timetable.held(demand.from, demand.to);
            if (held && demand.from.task == in) {
                text = heat(index, when);
                until = held->end;
            }
        }
        for (const TaskIndex task : formulation_.tasks.indices()) {
            const TaskSource& other = formulation_.tasks[task];
            const auto out = context_.timetable.interval(task);
            if (out && other.role == TaskRole::OvenOut && isSameStep(other, source)) {
                return text + "out " + context_.clock(out->start, when.start);
            }
        }
        return text + (until && *until > when.end ? "until " + context_.clock(*until, when.start)
                                                  : durationText(when.length()));
    }

    /// What the oven is set to as the door shuts: what the food prefers is not always what it gets.
    [[nodiscard]] std::string heat(OvenDemandIndex index, const Interval& in) const
    {
        const OvenDemand& demand = formulation_.problem.ovenDemands[index];
        std::optional<int> celsius = demand.prefer;
        if (const auto oven = context_.plan.schedule.ovens[index]) {
            const OvenCurve curve(formulation_.problem.ovens[*oven],
                                  context_.plan.schedule.programs[*oven]);
            const auto shut = curve.setting(in.end);
            celsius = shut ? shut : curve.setting(in.start);
        }
        if (!celsius) {
            return "oven off · ";
        }
        const std::string mode = demand.mode ? ", " + *demand.mode : std::string{};
        return temperatureText(*celsius, context_.style) + mode + " · ";
    }

    /// What it is done on and in: the burner by its name, the appliance, the pan, which oven.
    [[nodiscard]] std::string places(TaskIndex task) const
    {
        std::vector<std::string> names;
        for (const DemandIndex index : formulation_.problem.demands.indices()) {
            const Demand& demand = formulation_.problem.demands[index];
            const DemandSource& source = formulation_.demands[index];
            const TaskPoint from{source.washedFor.value_or(demand.from.task),
                                 source.washedFor ? Edge::Start : demand.from.edge};
            if (from != TaskPoint{task, Edge::Start} || !demand.pool || source.isWash ||
                !context_.timetable.held(demand.from, demand.to)) {
                continue;
            }
            const ResourceSource& pool = formulation_.pools[*demand.pool];
            const auto unit = context_.plan.schedule.units[index];
            const bool isNamed = unit && unit->value() < pool.unitNames.size() &&
                                 formulation_.problem.pools[*demand.pool].units.size() > 1;
            names.push_back(isNamed ? pool.unitNames[unit->value()] : pool.name);
        }
        for (const OvenDemandIndex index : formulation_.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation_.problem.ovenDemands[index];
            const auto oven = context_.plan.schedule.ovens[index];
            if (demand.from == TaskPoint{task, Edge::Start} && oven &&
                formulation_.ovenNames.size() > 1) {
                names.push_back(formulation_.ovenNames[*oven]);
            }
        }
        return listed(names);
    }

    [[nodiscard]] std::string after(TaskIndex task) const
    {
        std::vector<std::string> waits;
        std::vector<std::string> leaves;
        std::optional<Minutes> freshness;
        for (const LagIndex index : formulation_.problem.lags.indices()) {
            const Lag& lag = formulation_.problem.lags[index];
            const LagSource& source = formulation_.lags[index];
            if (lag.from != TaskPoint{task, Edge::End} || source.text.empty() ||
                !context_.timetable.bothPresent(lag.from, lag.to)) {
                continue;
            }
            if (formulation_.tasks[task].role == TaskRole::Trip) {
                freshness = source.most;
            } else if (formulation_.tasks[lag.to.task].role == TaskRole::TakeFrom) {
                leaves.push_back(source.text + " kept for " +
                                 theThing(formulation_.tasks[lag.to.task].dishName));
            } else {
                const std::string bound = boundText(source);
                const std::string note =
                    source.computed ? lengthNote(*source.computed) : std::string{};
                waits.push_back(source.text + (bound.empty() ? "" : ", " + bound) +
                                (note.empty() ? "" : " (" + note + ")"));
            }
        }
        if (freshness) {
            return "to be used within " + durationText(*freshness);
        }
        std::string text;
        for (const std::string& wait : eachOnce(waits)) {
            text += (text.empty() ? "then " : "; ") + wait;
        }
        for (const std::string& kept : eachOnce(leaves)) {
            text += (text.empty() ? "" : "; ") + kept;
        }
        return inStyle(text, context_.style);
    }

    /// Waits of several batches or users say the same.
    static std::vector<std::string> eachOnce(const std::vector<std::string>& texts)
    {
        std::vector<std::string> result;
        for (const std::string& text : texts) {
            if (std::ranges::find(result, text) == result.end()) {
                result.push_back(text);
            }
        }
        return result;
    }

    /// A pot watched by one cook throughout is one line, however often hands might have changed.
    void joinPieces(std::vector<SheetStep>& steps) const
    {
        for (std::size_t i = 0; i < steps.size(); ++i) {
            for (std::size_t next = i + 1; next < steps.size();) {
                if (!isPieceOf(steps[i], steps[next])) {
                    ++next;
                    continue;
                }
                steps[i].end = steps[next].end;
                steps[i].after = steps[next].after;
                steps[i].detail = detail(steps[i].task, {steps[i].start, steps[i].end});
                steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(next));
            }
        }
    }

    [[nodiscard]] bool isPieceOf(const SheetStep& one, const SheetStep& next) const
    {
        const TaskSource& source = formulation_.tasks[one.task];
        const TaskSource& other = formulation_.tasks[next.task];
        return source.role == TaskRole::Step && other.role == TaskRole::Step && source.step &&
               isSameStep(source, other) && one.end == next.start && one.cooks == next.cooks;
    }

    const SheetContext& context_;
    const Formulation& formulation_;
    std::vector<TaskIndex> intoOven_;
};

} // namespace

std::vector<SheetStep> sheetSteps(const SheetContext& context)
{
    return StepLines(context).all();
}

} // namespace suppertide
