// OvenPairs: whether two stays in one oven can both keep their temperatures. For given intervals a
// program of an oven exists exactly if its stays, and the temperature that it starts with, agree
// two by two: a temperature curve is a function whose slope lies in [−cool, heat] between a lower
// and an upper envelope; such a function exists exactly if no lower level at one time is out of
// reach of an upper level at another, and the envelopes are maxima and minima of bands. So a clash
// of temperatures is always a clash of two, and can be said as one. The one exception, found by
// oven_program.h, is a stay with the oven off that an earlier stay leaves too cool.
// Used by assign and the planner, and by core/plan to name both dishes of a clash.
#pragma once

#include <cstdint>
#include <optional>

#include "core/base/interval.h"
#include "core/problem/problem.h"

namespace suppertide {

/// Something in an oven: from when to when (its ends included, as far as temperature goes), the
/// temperatures that it accepts, and whether the oven must be off meanwhile.
struct OvenStay
{
    Interval during; // not empty
    int acceptLow = 0;
    int acceptHigh = 0;
    std::optional<int> prefer;
    bool off = false;

    friend bool operator==(const OvenStay&, const OvenStay&) = default;
};

[[nodiscard]] OvenStay ovenStay(const OvenDemand& demand, const Interval& during);

enum class OvenPairFault
{
    BandsApart,  // both are in at once (or meet in one minute) and no temperature suits both
    TooSlowUp,   // the later one is hotter and the gap is shorter than the ramp
    TooSlowDown, // the later one is cooler and the gap is shorter than the ramp
};

struct OvenPairClash
{
    OvenPairFault fault = OvenPairFault::BandsApart;
    Minutes ramp{0}; // whole minutes that the ramp between the two would take
    Minutes gap{0};  // minutes that there are for it
    Interval when;   // the minutes shared, or the gap; may be empty where the two meet

    friend bool operator==(const OvenPairClash&, const OvenPairClash&) = default;
};

/// Why these two cannot both be in this oven as far as temperature goes; absent: they can. The
/// order of the two does not matter. Constant time.
[[nodiscard]] std::optional<OvenPairClash> ovenPairClash(const Oven& oven, const OvenStay& one,
                                                         const OvenStay& other);

/// The same against the temperature with which the oven starts.
[[nodiscard]] std::optional<OvenPairClash> ovenStartClash(const Oven& oven, const OvenStay& stay);

/// Whether this oven can hold what the stay accepts at all, whatever else is in it.
[[nodiscard]] bool ovenSuits(const Oven& oven, const OvenStay& stay);

} // namespace suppertide
