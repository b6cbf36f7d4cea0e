#include "core/menus/energy.h"

#include <algorithm>

#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"

namespace suppertide::menus {

namespace {

constexpr std::int64_t ovenWatts = 2400;
constexpr Minutes atFull{10};
constexpr std::int64_t simmerShare = 4; // one part in so many
constexpr std::int64_t minutesPerHour = 60;
constexpr std::int64_t milli = 1000;

/// In watt minutes.
std::int64_t ofOven(const Oven& oven, const OvenProgram& program, PlanTime horizon)
{
    const OvenCurve curve(oven, program);
    const std::int64_t holding =
        ovenWatts * oven.coolMilliCPerMin / (oven.heatMilliCPerMin + oven.coolMilliCPerMin);
    std::int64_t sum = 0;
    const auto& knots = curve.knots();
    for (std::size_t i = 0; i < knots.size(); ++i) {
        if (!knots[i].setC) {
            continue;
        }
        const PlanTime end = i + 1 < knots.size() ? std::min(knots[i + 1].at, horizon) : horizon;
        const std::int64_t target = *knots[i].setC * milli;
        for (PlanTime at = knots[i].at; at < end; at += Minutes{1}) {
            const std::int64_t now = curve.milliC(at);
            if (now == target) {
                sum += holding * (end - at).count(); // and so it stays until the next setting
                break;
            }
            sum += now < target ? ovenWatts : 0;
        }
    }
    return sum;
}

std::int64_t meanWatts(const Kitchen& kitchen)
{
    if (kitchen.burners.empty()) {
        return 0;
    }
    std::int64_t sum = 0;
    for (const Burner& burner : kitchen.burners) {
        sum += burner.power.smallest();
    }
    return sum / static_cast<std::int64_t>(kitchen.burners.size());
}

class BurnerEnergy
{
public:
    BurnerEnergy(const Plan& plan, const Kitchen& kitchen)
        : plan_(plan), kitchen_(kitchen), times_(plan.formulation->problem, plan.schedule),
          mean_(meanWatts(kitchen))
    {}

    /// In watt minutes.
    [[nodiscard]] std::int64_t sum() const
    {
        const Problem& problem = plan_.formulation->problem;
        std::int64_t sum = 0;
        for (const DemandIndex index : problem.demands.indices()) {
            const Demand& demand = problem.demands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (held && isBurner(demand)) {
                const Minutes full = std::min(held->length(), atFull);
                const Minutes rest = held->length() - full;
                sum += watts(index) * demand.amount * (full.count() + rest.count() / simmerShare);
            }
        }
        return sum;
    }

private:
    [[nodiscard]] bool isBurner(const Demand& demand) const
    {
        const ResourceSource& source = demand.pool ? plan_.formulation->pools[*demand.pool]
                                                   : plan_.formulation->counts[*demand.count];
        return source.kind == ResourceKind::Burner;
    }

    [[nodiscard]] std::int64_t watts(DemandIndex index) const
    {
        const auto unit = plan_.schedule.units[index];
        const auto pool = plan_.formulation->problem.demands[index].pool;
        if (!unit || !pool) {
            return mean_;
        }
        const std::string& name = plan_.formulation->problem.pools[*pool].units[*unit].id;
        const auto burner = std::ranges::find_if(
            kitchen_.burners, [&name](const Burner& each) { return each.id.text() == name; });
        return burner == kitchen_.burners.end() ? mean_ : burner->power.smallest();
    }

    const Plan& plan_;
    const Kitchen& kitchen_;
    Timetable times_;
    std::int64_t mean_;
};

} // namespace

Energy energyOf(const Plan& plan, const Kitchen& kitchen)
{
    const Problem& problem = plan.formulation->problem;
    std::int64_t wattMinutes = BurnerEnergy(plan, kitchen).sum();
    for (const OvenIndex oven : problem.ovens.indices()) {
        wattMinutes += ofOven(problem.ovens[oven], plan.schedule.programs[oven], problem.horizon);
    }
    return {(wattMinutes + minutesPerHour / 2) / minutesPerHour};
}

} // namespace suppertide::menus
