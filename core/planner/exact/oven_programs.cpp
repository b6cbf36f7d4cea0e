#include "core/planner/exact/oven_programs.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/assign/cheapest_program.h"
#include "core/assign/oven_program.h"
#include "core/assign/pulsed_program.h"

namespace suppertide::exact {

namespace {

/// States that the search for a cheapest program may look at.
constexpr std::int64_t effort = 20'000;
/// More than any program costs.
constexpr std::int64_t anyCost = 1'000'000'000;
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

const KnownProgram& OvenPrograms::of(OvenIndex oven, std::vector<OvenStay> stays,
                                     std::int64_t below)
{
    std::sort(stays.begin(), stays.end(),
              [](const OvenStay& a, const OvenStay& b) { return rank(a) < rank(b); });
    auto& known = known_[oven];
    std::vector<std::int64_t> key = keyOf(stays);
    auto place = known.find(key);
    if (place == known.end()) {
        if (known.size() >= mostRemembered) {
            known.clear();
        }
        place = known.emplace(std::move(key), plain(oven, stays)).first;
    }
    KnownProgram& result = place->second;
    if (!result.program && result.triedBelow == 0) {
        improve(result, oven, stays, anyCost);
    }
    const std::int64_t asked = std::min(below, result.cost);
    if (result.program && result.bound < asked && result.triedBelow < asked) {
        improve(result, oven, stays, asked);
    }
    return result;
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
        problem_->ovens[oven], stays, ovenProgramStyle(problem_->costs, true), below, effort);
    if (cheapest.program) {
        known.program = std::move(cheapest.program);
        known.cost = cheapest.cost;
    }
    known.isImpossible =
        cheapest.isImpossible || (!cheapest.program && below >= anyCost && cheapest.bound >= below);
    known.triedBelow = below;
    known.bound = std::max(known.bound, std::min(known.cost, cheapest.bound));
}

} // namespace suppertide::exact
