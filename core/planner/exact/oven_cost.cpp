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
/// Minutes on; more are not told apart.
constexpr std::int64_t mostOn = 20'000;
/// Minutes; what lasts longer is not looked at by itself.
constexpr std::int64_t mostLength = 2'000;
/// Minutes by which what is surely in has to differ from what was looked at before.
constexpr std::int64_t fewMinutes = 12;

} // namespace

OvenCostPropagator::OvenCostPropagator(std::vector<Oven> ovens, const OvenProgramStyle& style,
                                       std::vector<PossibleStay> stays, engine::Variable least,
                                       std::int64_t most)
    : ovens_(std::move(ovens)), style_(style), stays_(std::move(stays)), least_(least), most_(most),
      heat_(ovens_.front(), mostOn), order_(ovens_, stays_, style),
      oneSetting_(ovens_.front(), stays_, style)
{
    beOnWhereItPays(heat_, style);
    for (const Oven& oven : ovens_) {
        shelves_ = std::max(shelves_, oven.shelves);
    }
    lookAtEach();
}

/// Of a stay alone in an oven that is as hot as it may be when the stay begins.
std::int64_t OvenCostPropagator::costWhileIn(const Oven& oven, const PossibleStay& stay) const
{
    if (stay.length <= 0 || stay.length > mostLength) {
        return 0;
    }
    OvenStay alone = stay.stay;
    alone.during = interval(0, stay.length);
    const std::int64_t hottest = std::int64_t{alone.acceptHigh} * 1000;
    LeastHeat heat(oven, mostOn);
    beOnWhereItPays(heat, style_);
    const std::int64_t minutes = heat.minutesOn({alone}, hottest);
    return minutes < mostOn ? style_.onMinute * minutes : 0;
}

/// Until the oven is warm enough for the stay, if nothing is in it earlier.
std::int64_t OvenCostPropagator::costBefore(const Oven& oven, const PossibleStay& stay) const
{
    const std::int64_t rises =
        (std::int64_t{stay.stay.acceptLow} - std::max(oven.startC, oven.ambientC)) * 1000;
    const std::int64_t minutes = (rises + oven.heatMilliCPerMin - 1) / oven.heatMilliCPerMin;
    return rises <= 0 ? 0 : style_.switchOn + style_.onMinute * minutes;
}

void OvenCostPropagator::lookAtEach()
{
    for (const PossibleStay& stay : stays_) {
        std::int64_t whileIn = most_;
        std::int64_t before = most_;
        for (const Oven& oven : ovens_) {
            whileIn = std::min(whileIn, costWhileIn(oven, stay));
            before = std::min(before, costBefore(oven, stay));
        }
        whileIn_.push_back(whileIn);
        before_.push_back(before);
    }
}

bool OvenCostPropagator::mayMeet(const PossibleStay& one, const PossibleStay& other) const
{
    return one.shelves + other.shelves <= shelves_ && one.stay.acceptLow <= other.stay.acceptHigh &&
           other.stay.acceptLow <= one.stay.acceptHigh;
}

/// Each minute that costs something is shared by no more stays than can be in at once.
std::int64_t OvenCostPropagator::costOfShares(const std::vector<std::size_t>& inside) const
{
    std::int64_t alone = 0;  // of stays beside which no other can be in
    std::int64_t shared = 0; // times shelves
    std::int64_t longest = 0;
    std::int64_t before = most_;
    for (const std::size_t i : inside) {
        const bool meets = std::any_of(inside.begin(), inside.end(), [&](std::size_t j) {
            return j != i && mayMeet(stays_[i], stays_[j]);
        });
        if (meets) {
            shared += whileIn_[i] * stays_[i].shelves;
            longest = std::max(longest, whileIn_[i]);
        } else {
            alone += whileIn_[i];
        }
        before = std::min(before, before_[i]);
    }
    const std::int64_t together = std::max(longest, (shared + shelves_ - 1) / shelves_);
    return inside.empty() ? 0 : std::min(most_, before + alone + together);
}

void OvenCostPropagator::post(Engine& engine, std::vector<Oven> ovens,
                              const OvenProgramStyle& style, std::vector<PossibleStay> stays,
                              engine::Variable least, std::int64_t most)
{
    std::vector<View> views;
    for (const PossibleStay& stay : stays) {
        views.insert(views.end(),
                     {stay.from.variable.plus(), stay.from.variable.minus(),
                      stay.to.variable.plus(), stay.to.variable.minus(), stay.inside.view});
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<OvenCostPropagator>(std::move(ovens), style, std::move(stays),
                                                    least, most),
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
    return style_.switchOn == 0 ? style_.onMinute * heat_.minutesOn(sure) : costOfSwitching(sure);
}

std::int64_t OvenCostPropagator::costOfSwitching(const std::vector<OvenStay>& sure)
{
    std::vector<std::int64_t> key;
    key.reserve(sure.size() * 5);
    for (const OvenStay& stay : sure) {
        key.insert(key.end(), {minuteOf(stay.during.start), minuteOf(stay.during.end),
                               stay.off ? 1 : 0, stay.acceptLow, stay.acceptHigh});
    }
    const auto known = switching_.find(key);
    if (known != switching_.end()) {
        return known->second;
    }
    if (switching_.size() >= mostRemembered) {
        switching_.clear();
    }
    OvenHeat heat(ovens_.front(), sure, style_, most_);
    heat.weigh({});
    const std::int64_t cost =
        heat.least(0, std::int64_t{ovens_.front().startC} * 1000, false, false);
    return switching_.emplace(std::move(key), cost).first->second;
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
            std::int64_t off = away;
            for (const Oven& oven : ovens_) {
                off = std::min(off, std::abs(std::int64_t{oven.ambientC} - preferred[i]));
            }
            sum += style_.preferC * off;
        }
        best = chosen == from ? sum : std::min(best, sum);
    }
    return best;
}

OvenCostPropagator::SettingCosts
OvenCostPropagator::costOfSettings(const std::vector<std::size_t>& inside) const
{
    std::vector<int> preferred;
    for (const std::size_t i : inside) {
        const OvenStay& stay = stays_[i].stay;
        if (stay.prefer && !stay.off) {
            preferred.push_back(*stay.prefer);
        }
    }
    if (style_.preferC == 0 || preferred.size() < 2) {
        return {0, style_.change};
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
    std::int64_t withChange = costOfOneSetting(preferred, 0, preferred.size()) + style_.change;
    for (std::size_t from = 1; from < preferred.size(); ++from) {
        withChange = std::min(withChange, best[from] + style_.change +
                                              costOfOneSetting(preferred, from, preferred.size()));
    }
    // Each oven begins with a setting that is no change.
    const auto free = static_cast<std::int64_t>(ovens_.size()) - 1;
    return {std::max<std::int64_t>(0, best.back() - style_.change * free), withChange};
}

void OvenCostPropagator::note(std::vector<std::size_t> inside)
{
    if (inside != inside_) {
        const SettingCosts settings = costOfSettings(inside);
        costOfSettings_ = settings.least;
        costWithChange_ = settings.withChange;
        costOfShares_ = costOfShares(inside);
        inside_ = std::move(inside);
    }
}

bool OvenCostPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    std::vector<std::size_t> inside;
    std::vector<OvenStay> sure;
    Literals because;
    Literals times;
    Literals starts;
    std::vector<OvenStay> begun; // the same with what those prefer that are known to begin
    bool allFixed = true;
    for (std::size_t i = 0; i < stays_.size(); ++i) {
        const PossibleStay& stay = stays_[i];
        if (!trail.holds(stay.inside)) {
            continue;
        }
        inside.push_back(i);
        because.push_back(stay.inside);
        const Bound from = trail.most(stay.from);
        const Bound to = trail.least(stay.to);
        allFixed = allFixed && trail.least(stay.from) == from && trail.most(stay.to) == to;
        if (from < to) {
            sure.push_back(stay.stay);
            sure.back().during = interval(from, to);
            begun.push_back(sure.back());
            sure.back().prefer.reset();
            if (trail.least(stay.from) == from) {
                starts.push_back(atLeast(stay.from, from));
            } else {
                begun.back().prefer.reset();
            }
            times.push_back(atMost(stay.from, from));
            times.push_back(atLeast(stay.to, to));
        }
    }
    note(std::move(inside));
    const auto raiseTo = [&](std::int64_t cost, const Literals& reasons) {
        const auto least = static_cast<Bound>(std::min(most_, cost));
        return trail.least(least_) >= least || engine.imply(atLeast(least_, least), reasons);
    };
    const auto raise = [&](std::int64_t cost, const Literals& reasons) {
        return raiseTo(cost + costOfSettings_, reasons);
    };
    const auto raiseJointly = [&](std::int64_t cost, std::int64_t ofOne, const Literals& reasons) {
        return raiseTo(std::min(ofOne, cost + costWithChange_), reasons);
    };
    if (!raise(costOfShares_, because)) {
        return false;
    }
    const std::int64_t inOrder = style_.onMinute * order_.minutesOn(inside_, trail);
    Literals why = because;
    why.insert(why.end(), order_.because().begin(), order_.because().end());
    if (!raise(inOrder, why)) {
        return false;
    }
    if (ovens_.size() == 1 && style_.switchOn == 0) {
        if (looks_ != order_.looks()) {
            looks_ = order_.looks();
            ofOneInOrder_ = oneSetting_.leastInOrder(inside_, trail, inOrder);
        }
        if (!raiseJointly(inOrder, ofOneInOrder_, why)) {
            return false;
        }
    }
    if (ovens_.size() > 1 || !isWorthALook(sure, allFixed)) {
        return true;
    }
    because.insert(because.end(), times.begin(), times.end());
    if (!raise(costOfHeat(sure), because)) {
        return false;
    }
    because.insert(because.end(), starts.begin(), starts.end());
    const std::int64_t heat = costOfHeat(begun);
    return raise(heat, because) &&
           (style_.switchOn > 0 || !allFixed ||
            raiseJointly(heat, oneSetting_.leastFor(inside_, begun, heat), because));
}

} // namespace suppertide::exact
