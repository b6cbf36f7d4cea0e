#include "ui/timeline/pleats.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

constexpr std::int64_t quarter = 15;
/// A fold keeps this far from work, so that a label beside it has some room.
constexpr Minutes margin{5};

std::int64_t floorTo(std::int64_t value, std::int64_t step)
{
    const std::int64_t rest = value % step;
    return value - (rest < 0 ? rest + step : rest);
}

std::vector<Interval> busyTimes(const Scene& scene)
{
    std::vector<Interval> busy;
    const auto addMoment = [&](PlanTime time) { busy.push_back({time, time}); };
    for (const SceneBlock& block : scene.blocks) {
        if (block.attention > unattended) {
            busy.push_back(block.when());
        }
    }
    for (const SceneLane& lane : scene.lanes) {
        if (const auto* oven = std::get_if<OvenLane>(&lane.kind)) {
            for (const OvenSetting& setting : oven->settings) {
                addMoment(setting.when.start);
                addMoment(setting.when.end);
            }
        }
    }
    for (const SceneServing& serving : scene.servings) {
        addMoment(serving.time);
    }
    std::sort(busy.begin(), busy.end());
    return busy;
}

/// Quarter hours are those of the wall clock: origins need not lie on one.
Interval cutToQuarters(const Interval& free, const PlanCalendar& calendar)
{
    const auto instant = [&](PlanTime time) {
        return calendar.instant(time).time_since_epoch().count();
    };
    const std::int64_t start = -floorTo(-instant(free.start), quarter);
    const std::int64_t end = floorTo(instant(free.end), quarter);
    return {calendar.planTime(Instant{Minutes{start}}), calendar.planTime(Instant{Minutes{end}})};
}

} // namespace

std::vector<Interval> pleatsOf(const Scene& scene)
{
    std::vector<Interval> pleats;
    if (scene.blocks.empty()) {
        return pleats;
    }
    const auto consider = [&](const Interval& free) {
        const Interval pleat = cutToQuarters(free, scene.calendar).common(scene.horizon);
        if (pleat.length() >= shortestPleat) {
            pleats.push_back(pleat);
        }
    };
    PlanTime at = scene.horizon.start;
    for (const Interval& busy : busyTimes(scene)) {
        if (busy.end < scene.horizon.start || busy.start > scene.horizon.end) {
            continue;
        }
        consider({at, busy.start - margin});
        at = std::max(at, busy.end + margin);
    }
    consider({at, scene.horizon.end});
    return pleats;
}

} // namespace suppertide::ui
