// What goes into and out of the cold or the warm, and when.
#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// Food that stands somewhere from one minute to another.
struct Stay
{
    std::string food;
    std::string place;
    Interval when;
    std::int64_t tenths = 0; // litres × 10, together
    TaskIndex before;
    TaskIndex after;
    bool isBought = false; // as it comes from the shop
};

std::string litres(std::int64_t tenths)
{
    return tenths % 10 == 0 ? fmt::format("{} l", tenths / 10)
                            : fmt::format("{}.{} l", tenths / 10, tenths % 10);
}

class Stays
{
public:
    explicit Stays(const SheetContext& context)
        : context_(context), formulation_(context.formulation)
    {
        collect();
    }

    [[nodiscard]] std::vector<SheetFetch> fetches() const
    {
        std::vector<SheetFetch> result;
        std::vector<bool> isIn(stays_.size(), false);
        std::vector<bool> isOut(stays_.size(), false);
        for (std::size_t i = 0; i < stays_.size(); ++i) {
            if (!isIn[i]) {
                result.push_back(goingIn(i, isIn));
            }
            // What was bought is taken out as its steps list it.
            if (!isOut[i] && !stays_[i].isBought) {
                result.push_back(comingOut(i, isOut));
            }
        }
        std::ranges::stable_sort(result, {}, &SheetFetch::at);
        return result;
    }

private:
    void collect()
    {
        for (const DemandIndex index : formulation_.problem.demands.indices()) {
            const Demand& demand = formulation_.problem.demands[index];
            if (!demand.count || !isCold(formulation_.counts[*demand.count].kind)) {
                continue;
            }
            const ResourceSource& count = formulation_.counts[*demand.count];
            add(demand.from, demand.to, formulation_.demands[index], count.name,
                demand.amount * 10 / std::max<std::int64_t>(count.perUnit, 1));
        }
        for (const OvenDemandIndex index : formulation_.problem.ovenDemands.indices()) {
            const OvenDemand& demand = formulation_.problem.ovenDemands[index];
            if (formulation_.ovenDemands[index].isKeep) {
                add(demand.from, demand.to, formulation_.ovenDemands[index], "warm oven", 0);
            }
        }
    }

    static bool isCold(ResourceKind kind)
    {
        return kind == ResourceKind::Fridge || kind == ResourceKind::Freezer;
    }

    /// What goes on standing where it is is one stay.
    void add(const TaskPoint& from, const TaskPoint& to, const DemandSource& source,
             const std::string& place, std::int64_t tenths)
    {
        const auto held = context_.timetable.held(from, to);
        if (!held) {
            return;
        }
        const TaskSource& giver = formulation_.tasks[from.task];
        const bool isBought = giver.role == TaskRole::Trip || source.dishName.empty();
        std::string food = isBought ? "What was bought" : source.dishName;
        if (!isBought && !giver.variantName.empty()) {
            food += ", " + giver.variantName + ",";
        }
        for (Stay& stay : stays_) {
            if (stay.food == food && stay.place == place && stay.when.end == held->start &&
                stay.after == from.task) {
                stay.when.end = held->end;
                stay.after = to.task;
                return;
            }
        }
        stays_.push_back({std::move(food), place, *held, tenths, from.task, to.task, isBought});
    }

    /// All of one food that goes in at one minute: "Lamb stock into the fridge, 1.3 l; out 19:56".
    [[nodiscard]] SheetFetch goingIn(std::size_t first, std::vector<bool>& told) const
    {
        const Stay& stay = stays_[first];
        std::int64_t tenths = 0;
        std::vector<PlanTime> ends;
        for (std::size_t i = first; i < stays_.size(); ++i) {
            const Stay& other = stays_[i];
            if (std::tie(other.food, other.place, other.when.start) ==
                std::tie(stay.food, stay.place, stay.when.start)) {
                told[i] = true;
                tenths += other.tenths;
                ends.push_back(other.when.end);
            }
        }
        std::string text = fmt::format("{} into the {}", stay.food, stay.place);
        text += tenths > 0 ? ", " + litres(tenths) : "";
        if (!stay.isBought) {
            std::ranges::sort(ends);
            std::vector<std::string> outs;
            for (const PlanTime end : ends) {
                outs.push_back(context_.clock(end, stay.when.start));
            }
            text += "; out " + listed(outs);
        }
        return {stay.when.start, std::move(text), cooksAt(stay.before, stay.when.start)};
    }

    [[nodiscard]] SheetFetch comingOut(std::size_t first, std::vector<bool>& told) const
    {
        const Stay& stay = stays_[first];
        for (std::size_t i = first; i < stays_.size(); ++i) {
            const Stay& other = stays_[i];
            if (std::tie(other.food, other.place, other.when.end) ==
                std::tie(stay.food, stay.place, stay.when.end)) {
                told[i] = true;
            }
        }
        return {stay.when.end, fmt::format("{} out of the {}", stay.food, stay.place),
                cooksAt(stay.after, stay.when.end)};
    }

    /// The cooks of the task itself, or, where it is an event, of its dish's task that ends or
    /// starts there.
    [[nodiscard]] std::vector<std::string> cooksAt(TaskIndex task, PlanTime time) const
    {
        std::vector<std::string> cooks = context_.cooksOf(task);
        if (!cooks.empty()) {
            return cooks;
        }
        for (const TaskIndex other : formulation_.tasks.indices()) {
            const auto when = context_.timetable.interval(other);
            if (when && formulation_.tasks[other].dish == formulation_.tasks[task].dish &&
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
    const Formulation& formulation_;
    std::vector<Stay> stays_;
};

} // namespace

std::vector<SheetFetch> sheetFetches(const SheetContext& context)
{
    return Stays(context).fetches();
}

} // namespace suppertide
