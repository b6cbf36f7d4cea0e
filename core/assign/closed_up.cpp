#include "core/assign/closed_up.h"

#include <algorithm>
#include <tuple>

#include "core/problem/oven_curve.h"

namespace suppertide {

namespace {

std::int64_t minutesFor(std::int64_t milliC, std::int64_t rate)
{
    return (milliC + rate - 1) / rate;
}

auto rank(const OvenStay& stay)
{
    return std::tuple(stay.during.start, stay.during.end, stay.acceptLow, stay.acceptHigh,
                      stay.prefer, stay.off);
}

/// The last of the coolest minutes from one moment to another: until then a program is about what
/// was before.
PlanTime coolest(const OvenCurve& curve, PlanTime from, PlanTime to)
{
    PlanTime result = to;
    for (PlanTime at = to; at >= from; at -= Minutes{1}) {
        if (curve.milliC(at) < curve.milliC(result)) {
            result = at;
        }
    }
    return result;
}

} // namespace

/// With as many minutes more as rounding to whole ones may hide.
std::int64_t ovenForgets(const Oven& oven)
{
    const std::int64_t range = 1000 * (std::max({oven.maxC, oven.startC, oven.ambientC}) -
                                       std::min({oven.minC, oven.startC, oven.ambientC}));
    const std::int64_t both = oven.heatMilliCPerMin + oven.coolMilliCPerMin;
    return minutesFor(range, oven.heatMilliCPerMin) + minutesFor(range, oven.coolMilliCPerMin) +
           4 * minutesFor(both, oven.coolMilliCPerMin);
}

ClosedUp closedUp(std::vector<OvenStay> stays, Minutes longest)
{
    std::ranges::sort(stays, {}, rank);
    ClosedUp result;
    PlanTime free{};
    Minutes earlier{0};
    for (OvenStay& stay : stays) {
        stay.during = Interval{stay.during.start - earlier, stay.during.end - earlier};
        const Minutes more = stay.during.start - free - longest;
        if (more > Minutes{0}) {
            stay.during = Interval{stay.during.start - more, stay.during.end - more};
            earlier += more;
            result.parts.push_back({stay.during.start, earlier});
        }
        free = std::max(free, stay.during.end);
    }
    result.stays = std::move(stays);
    return result;
}

OvenProgram openedUp(const Oven& oven, const OvenProgram& program, const ClosedUp& closed)
{
    const OvenCurve curve(oven, program);
    OvenProgram result = program;
    for (const ClosedUp::Part& part : closed.parts) {
        PlanTime ended{};
        for (const OvenStay& stay : closed.stays) {
            if (stay.during.start < part.start) {
                ended = std::max(ended, stay.during.end);
            }
        }
        const PlanTime anew = coolest(curve, ended, part.start);
        for (std::size_t i = 0; i < program.size(); ++i) {
            if (program[i].at >= anew) {
                result[i].at = program[i].at + part.earlier;
            }
        }
    }
    return result;
}

} // namespace suppertide
