// Oven curve: how an oven heats up and cools down, from points that the cook has measured; the
// settings that stand for one another (fan, gas mark).
#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

/// A reading: °C, minutes after switching on (or off).
struct OvenReading
{
    double minutes = 0.0;
    double celsius = 0.0;
};

/// T(t) = T_end − (T_end − T₀)·e^(−t/τ): constant power against losses that grow with temperature;
/// or a straight line, if no end is known. Source: first-order (lumped) heating: Incropera et al.,
/// “General lumped capacitance analysis”.
class OvenHeating
{
public:
    /// From one reading: a straight line from `room`. Room 0…45 °C, 1…180 minutes, at least 20 °C
    /// above the room, at most 400 °C; a failure outside.
    static Result<OvenHeating> fromOneReading(double room, const OvenReading& reading);

    /// From two, the second later and hotter. If the oven heats as fast in the second part or up to
    /// a tenth faster, a line through the second; if faster still, a failure: a reading is wrong.
    static Result<OvenHeating> fromTwoReadings(double room, const OvenReading& first,
                                               const OvenReading& second);

    /// Minutes from one temperature up to another. A failure if this oven does not get there.
    [[nodiscard]] Result<double> minutesBetween(double from, double to) const;
    /// °C after `minutes` (0…1440) at full power from `from`, at most 400 °C.
    [[nodiscard]] Result<double> temperatureAfter(double from, double minutes) const;
    /// °C at which it ends; nothing if the readings do not show one.
    [[nodiscard]] std::optional<double> hottest() const { return end_; }

private:
    OvenHeating(std::optional<double> end, double rate) : end_(end), rate_(rate) {}

    std::optional<double> end_;
    double rate_; // 1/τ a minute; without an end °C a minute
};

/// T(t) = room + (T₀ − room)·e^(−t/τ), door as it was during the reading.
class OvenCooling
{
public:
    /// From `hot` °C at switching off to a reading between it and the room. A failure otherwise.
    static Result<OvenCooling> fromReading(double room, double hot, const OvenReading& reading);

    /// By common practice: near 200 °C 2, 2.5, 3 °C a minute with the door shut; 5, 6.5, 8 with it
    /// ajar.
    static OvenCooling usual(double room, bool isDoorAjar);

    /// Minutes from one temperature down to another above the room; a failure otherwise.
    [[nodiscard]] Result<double> minutesBetween(double from, double to) const;
    /// °C after `minutes` (0…1440) from `from` °C.
    [[nodiscard]] Result<double> temperatureAfter(double from, double minutes) const;
    /// °C a minute at `celsius`.
    [[nodiscard]] double rateAt(double celsius) const { return (celsius - room_) * rate_; }

private:
    OvenCooling(double room, double rate) : room_(room), rate_(rate) {}

    double room_;
    double rate_; // 1/τ a minute
};

/// Minutes to pre-heat an oven of which nothing is known, to 50…300 °C: 10…15 to 175 °C and 5 more
/// for each 50 °C. Common practice; measure your own.
[[nodiscard]] Result<Estimate> usualPreheat(double celsius);

/// The fan setting that cooks like a conventional one of 50…300 °C in the same time: 20 °C lower;
/// and back. Source: NSW Health, food safety advice; ovens differ.
[[nodiscard]] Result<double> fanSetting(double conventional);
[[nodiscard]] Result<double> conventionalSetting(double fan);

/// °F of a gas mark ¼, ½, 1…9: 225, 250, 250 + 25 n; a failure for others. The rounding to °C on
/// dials is custom.
[[nodiscard]] Result<double> fahrenheitOfGasMark(double mark);
/// °C, exact.
[[nodiscard]] Result<double> celsiusOfGasMark(double mark);

} // namespace suppertide::science
