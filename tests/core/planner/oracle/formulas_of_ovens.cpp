#include <algorithm>
#include <numeric>

#include "tests/core/planner/oracle/formulas.h"

namespace suppertide::test {

void SecondReading::Formulas::addOvens()
{
    for (const Oven& oven : problem_->ovens) {
        addHeat(oven);
    }
    for (const OvenDemandIndex demand : problem_->ovenDemands.indices()) {
        addStay(demand);
    }
    addModes();
    for (const OvenIndex oven : problem_->ovens.indices()) {
        std::vector<std::pair<Span, std::int64_t>> uses;
        for (const OvenDemandIndex demand : problem_->ovenDemands.indices()) {
            Span use = stays_[demand.value()];
            use.held = inside_[demand][oven.value()];
            uses.emplace_back(use, problem_->ovenDemands[demand].shelves);
        }
        capped(uses, problem_->ovens[oven].shelves);
    }
}

/// The setting, or none, of each minute is free; the temperature follows.
void SecondReading::Formulas::addHeat(const Oven& oven)
{
    Heat heat;
    const std::int64_t finest = // thousandths of a degree
        std::gcd(std::gcd(oven.heatMilliCPerMin, oven.coolMilliCPerMin), std::int64_t{1000});
    heat.perDegree = 1000 / finest;
    const Expr up = number(oven.heatMilliCPerMin / finest);
    const Expr down = number(oven.coolMilliCPerMin / finest);
    heat.warmth.push_back(number(oven.startC * heat.perDegree));
    for (std::int64_t minute = 0; minute < horizon_; ++minute) {
        const Expr on = newBool();
        const Expr setting = newNumber();
        solver_.add(number(oven.minC) <= setting && setting <= number(oven.maxC));
        if (minute > 0) {
            solver_.add(z3::implies(!on, setting == heat.setting.back()));
        }
        const Expr goal =
            z3::ite(on, setting * number(heat.perDegree), number(oven.ambientC * heat.perDegree));
        const Expr now = heat.warmth.back();
        const Expr higher = z3::ite(now + up <= goal, now + up, goal);
        const Expr lower = z3::ite(now - down >= goal, now - down, goal);
        heat.on.push_back(on);
        heat.setting.push_back(setting);
        heat.warmth.push_back(newNumber());
        solver_.add(heat.warmth.back() == z3::ite(goal >= now, higher, lower));
    }
    heats_.push_back(heat);
}

/// Between two minutes the temperature only rises, only falls or stays, so looking at whole minutes
/// is enough.
void SecondReading::Formulas::addStay(OvenDemandIndex index)
{
    const OvenDemand& demand = problem_->ovenDemands[index];
    const Span stay = span(demand.from, demand.to);
    std::vector<Expr> ovens;
    for (const OvenIndex oven : problem_->ovens.indices()) {
        const Expr here = newBool();
        const Heat& heat = heats_[oven.value()];
        ovens.push_back(here);
        if (demand.ovens && std::count(demand.ovens->begin(), demand.ovens->end(), oven) == 0) {
            solver_.add(!here);
        }
        for (std::int64_t minute = 0; minute <= horizon_; ++minute) {
            const Expr at = number(minute);
            const Expr& warmth = heat.warmth[static_cast<std::size_t>(minute)];
            solver_.add(z3::implies(here && stay.from <= at && at <= stay.to,
                                    number(demand.acceptLow * heat.perDegree) <= warmth &&
                                        warmth <= number(demand.acceptHigh * heat.perDegree)));
            if (demand.mode == modeOff && minute < horizon_) {
                solver_.add(z3::implies(here && stay.from <= at && at < stay.to,
                                        !heat.on[static_cast<std::size_t>(minute)]));
            }
        }
    }
    exactlyOne(stay.held, ovens);
    stays_.push_back(stay);
    inside_.push_back(ovens);
}

void SecondReading::Formulas::addModes()
{
    const auto& demands = problem_->ovenDemands;
    for (const OvenDemandIndex one : demands.indices()) {
        for (const OvenDemandIndex other : demands.indices()) {
            const Span& first = stays_[one.value()];
            const Span& second = stays_[other.value()];
            for (std::size_t oven = 0; one < other && oven < heats_.size(); ++oven) {
                if (demands[one].group && demands[one].group == demands[other].group) {
                    solver_.add(z3::implies(first.held && second.held,
                                            inside_[one][oven] == inside_[other][oven]));
                }
                if (demands[one].mode && demands[other].mode &&
                    demands[one].mode != demands[other].mode) {
                    solver_.add(
                        !(inside_[one][oven] && inside_[other][oven] && first.meets(second)));
                }
            }
        }
    }
}

void SecondReading::Formulas::addOvenCosts()
{
    const Costs& costs = problem_->costs;
    for (const OvenIndex index : problem_->ovens.indices()) {
        const Heat& heat = heats_[index.value()];
        for (std::size_t minute = 0; minute < heat.on.size(); ++minute) {
            charge(heat.on[minute], costs.ovenOnMinute);
            const Expr switched =
                minute == 0 ? heat.on[0] : heat.on[minute] && !heat.on[minute - 1];
            charge(switched, costs.ovenSwitchOn);
            Expr within = context_.bool_val(false);
            for (const OvenDemandIndex demand : problem_->ovenDemands.indices()) {
                const Span& stay = stays_[demand.value()];
                const Expr at = number(static_cast<std::int64_t>(minute));
                within = within || (inside_[demand][index.value()] && stay.held && stay.from < at &&
                                    at < stay.to);
            }
            charge(switched && within, costs.ovenSwitchOnWithin);
            // While it is off the setting stays what it was, and before it is first on it is
            // whatever it will be.
            if (minute > 0) {
                charge(heat.setting[minute] != heat.setting[minute - 1], costs.ovenChange);
            }
            const Expr now = z3::ite(heat.on[minute], heat.setting[minute],
                                     number(problem_->ovens[index].ambientC));
            for (const OvenDemandIndex demand : problem_->ovenDemands.indices()) {
                const auto& prefer = problem_->ovenDemands[demand].prefer;
                if (!prefer) {
                    continue;
                }
                const Expr begins =
                    inside_[demand][index.value()] &&
                    stays_[demand.value()].from == number(static_cast<std::int64_t>(minute));
                const Expr over = now - number(*prefer);
                charge(begins, z3::ite(over >= number(0), over, -over), costs.preferC);
            }
        }
    }
}

} // namespace suppertide::test
