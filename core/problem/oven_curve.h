// OvenCurve: the temperature of one oven over time under a program, exactly, in thousandths of a
// °C. Between two entries of the program it only rises, only falls or stays.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide {

class OvenCurve
{
public:
    OvenCurve(const Oven& oven, const OvenProgram& program);

    /// The setting in force at a minute (an entry is in force from its own minute on); absent: off.
    [[nodiscard]] std::optional<int> setting(PlanTime at) const;
    /// The temperature at a minute, in thousandths of a °C.
    [[nodiscard]] std::int64_t milliC(PlanTime at) const;
    /// Minutes whose temperatures bound all those in [begin, end]: the two ends and the entries
    /// between them.
    [[nodiscard]] std::vector<PlanTime> turningMinutes(const Interval& during) const;
    /// The first minute of `during` in which the oven is on; absent if it is off throughout.
    [[nodiscard]] std::optional<PlanTime> firstOn(const Interval& during) const;
    /// Minutes on before the horizon.
    [[nodiscard]] Minutes onBefore(PlanTime horizon) const;
    /// How often the program goes from one setting to another; off in between does not matter.
    [[nodiscard]] int changes() const;

    /// When the program goes from off to a setting.
    [[nodiscard]] std::vector<PlanTime> switchedOn() const;

    /// A corner of the curve: from `at` the temperature moves from `milliC` to the setting.
    struct Knot
    {
        PlanTime at;
        std::int64_t milliC = 0;
        std::optional<int> setC;
    };
    [[nodiscard]] const std::vector<Knot>& knots() const { return knots_; }

private:
    [[nodiscard]] const Knot& knotAt(PlanTime at) const;

    Oven oven_;
    std::vector<Knot> knots_; // the first one is the start of time, off
};

} // namespace suppertide
