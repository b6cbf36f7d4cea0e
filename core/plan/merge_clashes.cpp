// One cause, one clash: what core/check finds minute by minute and requirement by requirement is
// put together where it is the same trouble.
#include <algorithm>

#include "core/plan/clash_finder.h"

namespace suppertide {

namespace {

bool touch(const std::optional<Interval>& one, const std::optional<Interval>& other)
{
    return one && other && one->start <= other->end && other->start <= one->end;
}

bool shareTask(const Clash& one, const Clash& other)
{
    return std::ranges::any_of(one.tasks, [&](TaskIndex task) {
        return std::ranges::find(other.tasks, task) != other.tasks.end();
    });
}

/// In, cooking, turn and out, or the pieces of one step: the same batch.
bool areOneBatch(const Formulation& formulation, const Clash& one, const Clash& other)
{
    const TaskSource& a = formulation.tasks[one.tasks.front()];
    const TaskSource& b = formulation.tasks[other.tasks.front()];
    return a.step && a.step == b.step && a.dish == b.dish && a.recipe == b.recipe &&
           a.batch == b.batch && a.variants == b.variants;
}

/// The same pair of stays, or pairs of stays that hang together in one oven.
bool areOnePair(const Formulation& formulation, const Clash& one, const Clash& other)
{
    const auto same = [&](const std::optional<OvenDemandIndex>& a,
                          const std::optional<OvenDemandIndex>& b) {
        if (!a || !b) {
            return a == b;
        }
        const OvenDemand& first = formulation.problem.ovenDemands[*a];
        const OvenDemand& second = formulation.problem.ovenDemands[*b];
        return a == b || (first.group && first.group == second.group);
    };
    const bool isStraight = same(one.ovenDemands[0], other.ovenDemands[0]) &&
                            same(one.ovenDemands[1], other.ovenDemands[1]);
    const bool isCrossed = same(one.ovenDemands[0], other.ovenDemands[1]) &&
                           same(one.ovenDemands[1], other.ovenDemands[0]);
    return isStraight || isCrossed;
}

bool areOneCause(const Formulation& formulation, const Clash& one, const Clash& other)
{
    if (one.kind != other.kind || one.oven != other.oven || one.count != other.count ||
        one.pool != other.pool) {
        return false;
    }
    switch (one.kind) {
    case ClashKind::OvenTemperature:
    case ClashKind::OvenRamp:
        return areOnePair(formulation, one, other) && touch(one.when, other.when);
    case ClashKind::OvenSpace:
    case ClashKind::Burner:
    case ClashKind::Appliance:
    case ClashKind::Vessel:
    case ClashKind::ColdSpace:
    case ClashKind::Utensils:
        return shareTask(one, other) && touch(one.when, other.when);
    case ClashKind::Unwatched:
        return shareTask(one, other);
    case ClashKind::Hands:
        return one.cook == other.cook && shareTask(one, other) && touch(one.when, other.when);
    case ClashKind::CookNotFree:
        return one.tasks == other.tasks ||
               (areOneBatch(formulation, one, other) && touch(one.when, other.when));
    case ClashKind::WaitTooShort:
    case ClashKind::WaitTooLong:
        return one.lag == other.lag;
    case ClashKind::LateForServing:
        return one.course == other.course && one.tasks == other.tasks;
    case ClashKind::NothingChosen:
    case ClashKind::OutsideWindow:
    case ClashKind::Allergen:
    case ClashKind::GuestLeftOut:
    case ClashKind::ContentsUnknown:
    case ClashKind::FoodSafety:
    case ClashKind::UnwashedTool:
        return false;
    }
    return false;
}

/// How much of what is asked is above (below) what is allowed.
std::int64_t excess(const Clash& clash)
{
    const std::int64_t difference = clash.asked - clash.allowed;
    return difference < 0 ? -difference : difference;
}

void absorb(Clash& into, const Clash& from)
{
    if (into.when && from.when) {
        into.when = Interval{std::min(into.when->start, from.when->start),
                             std::max(into.when->end, from.when->end)};
    }
    if (excess(from) > excess(into)) {
        into.asked = from.asked;
        into.allowed = from.allowed;
    }
    for (const TaskIndex task : from.tasks) {
        if (std::ranges::find(into.tasks, task) == into.tasks.end()) {
            into.tasks.push_back(task);
        }
    }
    for (const std::string& name : from.broken) {
        if (std::ranges::find(into.broken, name) == into.broken.end()) {
            into.broken.push_back(name);
        }
    }
}

} // namespace

std::vector<Clash> mergedClashes(const Formulation& formulation, std::vector<Clash> clashes)
{
    std::vector<Clash> result;
    for (Clash& clash : clashes) {
        const auto same = std::ranges::find_if(
            result, [&](const Clash& known) { return areOneCause(formulation, known, clash); });
        if (same == result.end()) {
            result.push_back(std::move(clash));
        } else {
            absorb(*same, clash);
        }
    }
    return result;
}

void sortClashes(std::vector<Clash>& clashes)
{
    std::ranges::stable_sort(clashes, [](const Clash& one, const Clash& other) {
        if (one.severity != other.severity) {
            return one.severity < other.severity;
        }
        const PlanTime a = one.when ? one.when->start : PlanTime::max();
        const PlanTime b = other.when ? other.when->start : PlanTime::max();
        return a != b ? a < b : one.kind < other.kind;
    });
}

} // namespace suppertide
