#include "core/planner/exact/oven_cost.h"

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <utility>

#include "core/assign/oven_heat.h"

namespace suppertide::exact {

namespace {

using engine::atLeast;
using engine::atMost;
using engine::Bound;
using engine::Engine;
using engine::Literal;
using engine::Literals;
using engine::Trail;
using engine::View;

constexpr std::size_t mostRemembered = 20'000;
/// Minutes by which what is surely in has to differ from what was looked at before.
constexpr std::int64_t fewMinutes = 12;

} // namespace

OvenCostPropagator::OvenCostPropagator(Oven oven, const OvenProgramStyle& style,
                                       std::vector<PossibleStay> stays, engine::Variable least,
                                       std::int64_t most)
    : oven_(std::move(oven)), style_(style), stays_(std::move(stays)), least_(least), most_(most)
{}

void OvenCostPropagator::post(Engine& engine, const Oven& oven, const OvenProgramStyle& style,
                              std::vector<PossibleStay> stays, engine::Variable least,
                              std::int64_t most)
{
    std::vector<View> views;
    for (const PossibleStay& stay : stays) {
        views.insert(views.end(),
                     {stay.from.variable.plus(), stay.from.variable.minus(),
                      stay.to.variable.plus(), stay.to.variable.minus(), stay.inside.view});
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<OvenCostPropagator>(oven, style, std::move(stays), least, most),
               views);
}

/// The balance of heat takes long to find, so it is left until it can have changed much, or all is
/// known.
bool OvenCostPropagator::isWorthALook(const std::vector<OvenStay>& sure, bool allFixed)
{
    std::int64_t minutes = 0;
    for (const OvenStay& stay : sure) {
        minutes += stay.during.length().count();
    }
    if (!allFixed && std::abs(minutes - sureMinutes_) < fewMinutes) {
        return false;
    }
    sureMinutes_ = minutes;
    return true;
}

std::int64_t OvenCostPropagator::costOfHeat(const std::vector<OvenStay>& sure)
{
    if (sure.empty() || (style_.onMinute == 0 && style_.switchOn == 0)) {
        return 0;
    }
    std::vector<std::int64_t> key;
    key.reserve(sure.size() * 4);
    for (const OvenStay& stay : sure) {
        key.insert(key.end(), {minuteOf(stay.during.start), minuteOf(stay.during.end),
                               stay.off ? 1 : 0, stay.acceptLow, stay.acceptHigh});
    }
    const auto known = heat_.find(key);
    if (known != heat_.end()) {
        return known->second;
    }
    if (heat_.size() >= mostRemembered) {
        heat_.clear();
    }
    const OvenHeat heat(oven_, sure, style_, most_);
    const std::int64_t cost = heat.least(0, std::int64_t{oven_.startC} * 1000, false, false);
    return heat_.emplace(std::move(key), cost).first->second;
}

/// The best setting is one of those preferred, as the cost of each bends only there.
std::int64_t OvenCostPropagator::costOfOneSetting(const std::vector<int>& preferred,
                                                  std::size_t from, std::size_t to) const
{
    std::int64_t best = 0;
    for (std::size_t chosen = from; chosen < to; ++chosen) {
        std::int64_t sum = 0;
        for (std::size_t i = from; i < to; ++i) {
            const std::int64_t away = std::abs(std::int64_t{preferred[chosen]} - preferred[i]);
            const std::int64_t off = std::abs(std::int64_t{oven_.ambientC} - preferred[i]);
            sum += style_.preferC * std::min(away, off);
        }
        best = chosen == from ? sum : std::min(best, sum);
    }
    return best;
}

std::int64_t
OvenCostPropagator::costOfSettings(const std::vector<const PossibleStay*>& inside) const
{
    std::vector<int> preferred;
    for (const PossibleStay* stay : inside) {
        if (stay->stay.prefer && !stay->stay.off) {
            preferred.push_back(*stay->stay.prefer);
        }
    }
    if (style_.preferC == 0 || preferred.size() < 2) {
        return 0;
    }
    std::sort(preferred.begin(), preferred.end());
    std::vector<std::int64_t> best(preferred.size() + 1, 0);
    for (std::size_t to = 1; to <= preferred.size(); ++to) {
        best[to] = -1;
        for (std::size_t from = 0; from < to; ++from) {
            const std::int64_t sum =
                best[from] + costOfOneSetting(preferred, from, to) + (from > 0 ? style_.change : 0);
            best[to] = best[to] < 0 ? sum : std::min(best[to], sum);
        }
    }
    return best.back();
}

bool OvenCostPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    std::vector<const PossibleStay*> inside;
    std::vector<OvenStay> sure;
    Literals because;
    bool allFixed = true;
    for (const PossibleStay& stay : stays_) {
        if (!trail.holds(stay.inside)) {
            continue;
        }
        inside.push_back(&stay);
        because.push_back(stay.inside);
        const Bound from = trail.most(stay.from);
        const Bound to = trail.least(stay.to);
        allFixed = allFixed && trail.least(stay.from) == from && trail.most(stay.to) == to;
        if (from < to) {
            sure.push_back(stay.stay);
            sure.back().during = interval(from, to);
            because.push_back(atMost(stay.from, from));
            because.push_back(atLeast(stay.to, to));
        }
    }
    const std::int64_t heat = isWorthALook(sure, allFixed) ? costOfHeat(sure) : 0;
    const std::int64_t cost = std::min(most_, heat + costOfSettings(inside));
    const auto least = static_cast<Bound>(cost);
    return trail.least(least_) >= least || engine.imply(atLeast(least_, least), because);
}

} // namespace suppertide::exact
