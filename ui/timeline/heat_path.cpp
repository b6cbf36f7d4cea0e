#include "ui/timeline/heat_path.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace suppertide::ui {

namespace {

double minutes(PlanTime time)
{
    return static_cast<double>(minuteOf(time));
}

/// The curve's temperature in tenths at a minute within it.
double tenthsAt(std::span<const HeatKnot> knots, PlanTime time)
{
    const auto after =
        std::lower_bound(knots.begin(), knots.end(), time,
                         [](const HeatKnot& knot, PlanTime value) { return knot.time < value; });
    if (after == knots.begin() || after == knots.end()) {
        const HeatKnot& edge = after == knots.end() ? knots.back() : *after;
        return edge.temperature.tenths();
    }
    const HeatKnot& a = *(after - 1);
    const HeatKnot& b = *after;
    const double share = (minutes(time) - minutes(a.time)) / (minutes(b.time) - minutes(a.time));
    return a.temperature.tenths() + share * (b.temperature.tenths() - a.temperature.tenths());
}

bool isOnAt(std::span<const OvenSetting> settings, PlanTime time)
{
    return std::any_of(settings.begin(), settings.end(), [&](const OvenSetting& setting) {
        return setting.set && setting.when.contains(time);
    });
}

} // namespace

std::vector<HeatPoint> heatPath(std::span<const HeatKnot> knots,
                                std::span<const OvenSetting> settings, const TimeAxis& axis)
{
    if (knots.empty()) {
        return {};
    }
    std::vector<PlanTime> times;
    for (const HeatKnot& knot : knots) {
        times.push_back(knot.time);
    }
    const Interval whole{knots.front().time, knots.back().time};
    const auto add = [&](PlanTime time) {
        if (whole.contains(time)) {
            times.push_back(time);
        }
    };
    for (const TimeAxis::Piece& piece : axis.pieces()) {
        add(piece.when.start);
    }
    for (const OvenSetting& setting : settings) {
        add(setting.when.start);
        add(setting.when.end);
    }
    std::sort(times.begin(), times.end());
    times.erase(std::unique(times.begin(), times.end()), times.end());
    std::vector<HeatPoint> path;
    path.reserve(times.size());
    for (const PlanTime time : times) {
        path.push_back({axis.xOf(time), tenthsAt(knots, time), isOnAt(settings, time)});
    }
    return path;
}

std::vector<Hold> holdsOf(const OvenLane& oven)
{
    constexpr int halfDegree = 5;
    std::vector<Hold> holds;
    if (oven.curve.empty()) {
        return holds;
    }
    for (std::size_t i = 0; i < oven.settings.size(); ++i) {
        const OvenSetting& setting = oven.settings[i];
        if (!setting.set) {
            continue;
        }
        const auto isReached = [&](PlanTime time) {
            return std::abs(tenthsAt(oven.curve, time) - setting.set->tenths()) <= halfDegree;
        };
        std::optional<PlanTime> from;
        if (isReached(setting.when.start)) {
            from = setting.when.start;
        }
        for (const HeatKnot& knot : oven.curve) {
            if (!from && setting.when.contains(knot.time) && isReached(knot.time)) {
                from = knot.time;
            }
        }
        if (from) {
            const double before = tenthsAt(oven.curve, *from - Minutes{1});
            holds.push_back({i, *from, *setting.set, before < setting.set->tenths()});
        }
    }
    return holds;
}

} // namespace suppertide::ui
