#include "core/planner/exact/oven_programs.h"

#include <algorithm>
#include <utility>

#include "core/assign/cheapest_program.h"
#include "core/assign/closed_up.h"
#include "core/assign/oven_program.h"
#include "core/assign/pulsed_program.h"

namespace suppertide::exact {

namespace {

/// More than any program costs.
constexpr std::int64_t anyCost = 1'000'000'000;
constexpr std::size_t mostRemembered = 20'000;
/// States; a state takes about 100 bytes, and a microsecond or two.
constexpr std::int64_t mostEffort = 160'000;

std::vector<std::int64_t> keyOf(const std::vector<OvenStay>& stays)
{
    std::vector<std::int64_t> key;
    key.reserve(stays.size() * 6);
    for (const OvenStay& stay : stays) {
        key.insert(key.end(), {minuteOf(stay.during.start), minuteOf(stay.during.end),
                               stay.acceptLow, stay.acceptHigh,
                               stay.prefer ? std::int64_t{*stay.prefer} : std::int64_t{1} << 40,
                               stay.off ? 1 : 0});
    }
    return key;
}

} // namespace

KnownProgram OvenPrograms::of(OvenIndex oven, std::vector<OvenStay> stays, std::int64_t below)
{
    // An oven that starts warm is of use only at once.
    const Oven& kind = problem_->ovens[oven];
    const bool fromAnyTime = kind.startC <= kind.ambientC;
    const ClosedUp closed =
        closedUp(std::move(stays),
                 fromAnyTime ? Minutes{ovenForgets(kind)} : problem_->horizon - PlanTime{});
    auto& known = known_[oven];
    std::vector<std::int64_t> key = keyOf(closed.stays);
    auto place = known.find(key);
    if (place == known.end()) {
        if (known.size() >= mostRemembered) {
            known.clear();
        }
        place = known.emplace(std::move(key), plain(oven, closed.stays)).first;
    }
    KnownProgram& found = place->second;
    if (!found.program && found.triedBelow == 0) {
        improve(found, oven, closed.stays, anyCost);
    }
    const std::int64_t asked = std::min(below, found.cost);
    if (found.program && found.bound < asked &&
        (found.triedBelow < asked || found.effort < effort_)) {
        improve(found, oven, closed.stays, asked);
    }
    KnownProgram result = found;
    if (result.program) {
        result.program = openedUp(kind, *result.program, closed);
    }
    return result;
}

/// Where switching on costs, what is not found on the grid (grid_to_go.h) hardly ever is later.
bool OvenPrograms::canTryHarder() const
{
    return effort_ < mostEffort && problem_->costs.ovenSwitchOn == 0 &&
           problem_->costs.ovenSwitchOnWithin == 0;
}

bool OvenPrograms::tryHarder()
{
    const bool can = canTryHarder();
    effort_ = can ? mostEffort : effort_;
    return can;
}

KnownProgram OvenPrograms::plain(OvenIndex oven, const std::vector<OvenStay>& stays) const
{
    KnownProgram result;
    const auto take = [&](OvenProgramResult found) {
        if (!result.program || found.cost < result.cost) {
            result.program = std::move(found.program);
            result.cost = found.cost;
        }
    };
    for (const bool coast : {true, false}) {
        const OvenProgramStyle style = ovenProgramStyle(problem_->costs, coast);
        OvenProgramResult found = ovenProgramFor(problem_->ovens[oven], stays, style);
        if (!found.ignored.empty()) {
            continue;
        }
        if (auto pulsed = pulsedProgram(problem_->ovens[oven], found.program, stays, style)) {
            take(*std::move(pulsed));
        }
        take(std::move(found));
    }
    return result;
}

void OvenPrograms::improve(KnownProgram& known, OvenIndex oven, const std::vector<OvenStay>& stays,
                           std::int64_t below) const
{
    CheapestProgram cheapest = cheapestProgram(
        problem_->ovens[oven], stays, ovenProgramStyle(problem_->costs, true), below, effort_);
    if (cheapest.program) {
        known.program = std::move(cheapest.program);
        known.cost = cheapest.cost;
    }
    known.isImpossible =
        cheapest.isImpossible || (!cheapest.program && below >= anyCost && cheapest.bound >= below);
    known.triedBelow = below;
    known.effort = effort_;
    known.bound = std::max(known.bound, std::min(known.cost, cheapest.bound));
}

} // namespace suppertide::exact
