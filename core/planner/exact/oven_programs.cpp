#include "core/planner/exact/oven_programs.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/assign/cheapest_program.h"
#include "core/assign/oven_program.h"

namespace suppertide::exact {

namespace {

/// States that the search for a cheapest program may look at.
constexpr std::int64_t effort = 20'000;
constexpr std::size_t mostRemembered = 20'000;

auto rank(const OvenStay& stay)
{
    return std::tuple(stay.during.start, stay.during.end, stay.acceptLow, stay.acceptHigh,
                      stay.prefer, stay.off);
}

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

const KnownProgram& OvenPrograms::of(OvenIndex oven, std::vector<OvenStay> stays)
{
    std::sort(stays.begin(), stays.end(),
              [](const OvenStay& a, const OvenStay& b) { return rank(a) < rank(b); });
    auto& known = known_[oven];
    std::vector<std::int64_t> key = keyOf(stays);
    const auto place = known.find(key);
    if (place != known.end()) {
        return place->second;
    }
    if (known.size() >= mostRemembered) {
        known.clear();
    }
    return known.emplace(std::move(key), find(oven, stays)).first->second;
}

KnownProgram OvenPrograms::find(OvenIndex oven, const std::vector<OvenStay>& stays) const
{
    const Oven& its = problem_->ovens[oven];
    KnownProgram result;
    for (const bool coast : {true, false}) {
        OvenProgramResult plain =
            ovenProgramFor(its, stays, ovenProgramStyle(problem_->costs, coast));
        if (plain.ignored.empty() && (!result.program || plain.cost < result.cost)) {
            result.program = std::move(plain.program);
            result.cost = plain.cost;
        }
    }
    if (!result.program) {
        return result;
    }
    CheapestProgram cheapest =
        cheapestProgram(its, stays, ovenProgramStyle(problem_->costs, true), result.cost, effort);
    if (cheapest.program) {
        result.program = std::move(cheapest.program);
        result.cost = cheapest.cost;
    }
    result.bound = std::min(result.cost, cheapest.bound);
    return result;
}

} // namespace suppertide::exact
