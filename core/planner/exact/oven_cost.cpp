#include "core/planner/exact/oven_cost.h"

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <memory>
#include <utility>

#include "core/assign/band_changes.h"
#include "core/assign/closed_up.h"
#include "core/assign/oven_heat.h"

namespace suppertide::exact {

namespace {

using engine::atLeast;
using engine::Bound;
using engine::Engine;
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
/// What a look at stays in their order adds at most, or so, beside having to switch on once more.
constexpr std::int64_t mostToRaise = 40;

} // namespace

OvenCostPropagator::OvenCostPropagator(std::vector<Oven> ovens, const OvenProgramStyle& style,
                                       std::vector<PossibleStay> stays,
                                       std::shared_ptr<const StartDifferences> differences,
                                       std::shared_ptr<BoxCosts> boxes, engine::Variable least,
                                       std::int64_t most)
    : ovens_(std::move(ovens)), style_(style), ofHeat_(style), stays_(std::move(stays)),
      differences_(std::move(differences)), least_(least), most_(most),
      heat_(ovens_.front(), mostOn), order_(ovens_, stays_, style, differences_),
      oneSetting_(ovens_.front(), stays_, style, differences_), sequences_(std::move(boxes), stays_)
{
    ofHeat_.switchOnWithin = 0;
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
    if (style_.countsSwitching()) {
        OvenHeat heat(oven, {alone}, ofHeat_, most_);
        heat.weigh({});
        return std::min(most_, heat.least(0, hottest, true, false));
    }
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

/// Those that may be in beside this one, or beside one that may be, and so on; taken from `left`.
std::vector<std::size_t> OvenCostPropagator::meeting(std::size_t first,
                                                     std::vector<std::size_t>& left) const
{
    std::vector<std::size_t> result{first};
    for (std::size_t at = 0; at < result.size(); ++at) {
        const auto meets = [&](std::size_t i) { return mayMeet(stays_[i], stays_[result[at]]); };
        const auto others = std::stable_partition(left.begin(), left.end(), std::not_fn(meets));
        result.insert(result.end(), others, left.end());
        left.erase(others, left.end());
    }
    return result;
}

/// Each minute that costs something is shared by no more stays than can be in at once.
std::int64_t OvenCostPropagator::costOfShares(const std::vector<std::size_t>& inside) const
{
    std::int64_t sum = 0;
    std::int64_t before = most_;
    for (const std::size_t i : inside) {
        before = std::min(before, before_[i]);
    }
    std::vector<std::size_t> left = inside;
    while (!left.empty()) {
        const std::size_t first = left.back();
        left.pop_back();
        const std::vector<std::size_t> together = meeting(first, left);
        std::int64_t shared = 0; // times shelves
        std::int64_t longest = 0;
        for (const std::size_t i : together) {
            shared += whileIn_[i] * stays_[i].shelves;
            longest = std::max(longest, whileIn_[i]);
        }
        sum +=
            together.size() == 1 ? longest : std::max(longest, (shared + shelves_ - 1) / shelves_);
    }
    return inside.empty() ? 0 : std::min(most_, before + sum);
}

void OvenCostPropagator::post(Engine& engine, std::vector<Oven> ovens,
                              const OvenProgramStyle& style, std::vector<PossibleStay> stays,
                              std::shared_ptr<const StartDifferences> differences,
                              std::shared_ptr<BoxCosts> boxes, engine::Variable least,
                              std::int64_t most)
{
    std::vector<View> views;
    for (const PossibleStay& stay : stays) {
        views.insert(views.end(),
                     {stay.from.variable.plus(), stay.from.variable.minus(),
                      stay.to.variable.plus(), stay.to.variable.minus(), stay.inside.view});
    }
    for (const StartDifferences::Difference& difference : differences->all()) {
        views.insert(views.end(), {difference.variable.plus(), difference.variable.minus()});
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<OvenCostPropagator>(std::move(ovens), style, std::move(stays),
                                                    std::move(differences), std::move(boxes), least,
                                                    most),
               views);
}

std::int64_t OvenCostPropagator::costOfHeat(const std::vector<OvenStay>& sure)
{
    if (sure.empty() || (style_.onMinute == 0 && !style_.countsSwitching())) {
        return 0;
    }
    return style_.countsSwitching() ? costOfSwitching(sure)
                                    : style_.onMinute * heat_.minutesOn(sure);
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
    OvenHeat heat(ovens_.front(), sure, ofHeat_, most_);
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

/// Where switching on again costs less than a change, each may be either.
std::int64_t OvenCostPropagator::costOfBands(const std::vector<std::size_t>& inside) const
{
    const std::int64_t change = std::min(style_.change, style_.switchOnWithin);
    if (change == 0) {
        return 0;
    }
    std::vector<HeldBand> bands;
    for (const std::size_t i : inside) {
        const PossibleStay& stay = stays_[i];
        if (!stay.stay.off) {
            bands.push_back({stay.stay.acceptLow, stay.stay.acceptHigh, stay.length});
        }
    }
    return change * changesForBands(ovens_, std::move(bands));
}

OvenCostPropagator::SettingCosts
OvenCostPropagator::costOfSettings(const std::vector<std::size_t>& inside) const
{
    SettingCosts costs = costOfPreferred(inside);
    costs.least = std::max(costs.least, costOfBands(inside));
    return costs;
}

OvenCostPropagator::SettingCosts
OvenCostPropagator::costOfPreferred(const std::vector<std::size_t>& inside) const
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
        byHeat_ = inside_;
        std::ranges::stable_sort(byHeat_, std::greater{}, [&](std::size_t i) {
            return stays_[i].stay.off ? 0 : stays_[i].stay.acceptLow;
        });
    }
}

bool OvenCostPropagator::raiseTo(Engine& engine, std::int64_t cost, const Literals& because) const
{
    const auto least = static_cast<Bound>(std::min(most_, cost));
    return engine.trail().least(least_) >= least || engine.imply(atLeast(least_, least), because);
}

bool OvenCostPropagator::raiseByOrder(Engine& engine, const Literals& because)
{
    const Trail& trail = engine.trail();
    const std::int64_t heat = order_.least(inside_, trail);
    std::int64_t cost = heat + costOfSettings_;
    if (ovens_.size() == 1 && !style_.countsSwitching()) {
        if (looks_ != order_.looks()) {
            looks_ = order_.looks();
            ofOneInOrder_ = oneSetting_.leastInOrder(inside_, trail, heat);
        }
        cost = std::max(cost, std::min(ofOneInOrder_, heat + costWithChange_));
    }
    if (trail.least(least_) >= std::min(most_, cost)) {
        return true;
    }
    Literals why = order_.because(trail);
    why.insert(why.end(), because.begin(), because.end());
    return raiseTo(engine, cost, why);
}

/// The hottest ones first, as long as it is sure in which order all of them begin and end.
std::vector<std::size_t> OvenCostPropagator::inSureOrder(const Trail& trail) const
{
    const auto isSure = [&](const engine::Term& one, const engine::Term& other) {
        return differences_->least(trail, one, other) >= 0 ||
               differences_->least(trail, other, one) >= 0;
    };
    std::vector<std::size_t> result;
    for (const std::size_t i : byHeat_) {
        const PossibleStay& stay = stays_[i];
        const bool isInOrder = std::ranges::all_of(result, [&](std::size_t j) {
            const PossibleStay& other = stays_[j];
            return differences_->least(trail, stay.to, other.from) >= 0 ||
                   differences_->least(trail, other.to, stay.from) >= 0 ||
                   (isSure(stay.from, other.from) && isSure(stay.from, other.to) &&
                    isSure(stay.to, other.from) && isSure(stay.to, other.to));
        });
        if (isInOrder) {
            result.push_back(i);
        }
    }
    std::ranges::sort(result);
    return result;
}

/// In the order in which stays are known to come; of as many of them as it is sure of.
bool OvenCostPropagator::raiseBySequence(Engine& engine, bool& ofAll)
{
    const Trail& trail = engine.trail();
    const std::int64_t below = trail.most(least_) + std::int64_t{1};
    if (below >= most_ || below - trail.least(least_) > mostToRaise + style_.switchOn) {
        return true;
    }
    const std::vector<std::size_t> positions = inSureOrder(trail);
    const auto* found = sequences_.least(positions, *differences_, trail, below, engine.steps());
    if (found == nullptr) {
        return true;
    }
    ofAll = positions.size() == inside_.size();
    if (trail.least(least_) >= found->least) {
        return true;
    }
    Literals why = found->because;
    for (const std::size_t i : found->inside) {
        why.push_back(stays_[i].inside);
    }
    if (found->isNew) {
        Literals clause{atLeast(least_, static_cast<Bound>(found->least))};
        std::ranges::transform(why, std::back_inserter(clause),
                               [](auto literal) { return ~literal; });
        engine.note(std::move(clause));
    }
    return raiseTo(engine, found->least, why);
}

/// The balance of heat takes long to find, so it is left until it can have changed much, or all is
/// known.
bool OvenCostPropagator::raiseByHeat(Engine& engine, const SureStays& sure, Literals because,
                                     std::int64_t& lastMinutes)
{
    if (!sure.allFixed && std::abs(sure.minutes - lastMinutes) < fewMinutes) {
        return true;
    }
    lastMinutes = sure.minutes;
    because.insert(because.end(), sure.times.begin(), sure.times.end());
    if (!raiseTo(engine, costOfHeat(sure.stays) + costOfSettings_, because)) {
        return false;
    }
    because.insert(because.end(), sure.starts.begin(), sure.starts.end());
    const std::int64_t heat = costOfHeat(sure.begun);
    if (!raiseTo(engine, heat + costOfSettings_, because)) {
        return false;
    }
    if (style_.countsSwitching() || !sure.allFixed) {
        return true;
    }
    const std::int64_t ofOne = oneSetting_.leastFor(inside_, sure.begun, heat);
    return raiseTo(engine, std::min(ofOne, heat + costWithChange_), because);
}

/// An oven that starts warm is of use only at once.
bool OvenCostPropagator::countsFromAnyTime() const
{
    return ovens_.front().startC <= ovens_.front().ambientC &&
           std::ranges::all_of(inside_, [&](std::size_t i) {
               return differences_->knows(stays_[inside_.front()].from, stays_[i].from) &&
                      differences_->knows(stays_[inside_.front()].from, stays_[i].to);
           });
}

bool OvenCostPropagator::propagate(Engine& engine)
{
    const Trail& trail = engine.trail();
    std::vector<std::size_t> inside;
    Literals because;
    for (std::size_t i = 0; i < stays_.size(); ++i) {
        if (trail.holds(stays_[i].inside)) {
            inside.push_back(i);
            because.push_back(stays_[i].inside);
        }
    }
    note(std::move(inside));
    if (!raiseTo(engine, costOfShares_ + costOfSettings_, because) ||
        !raiseByOrder(engine, because)) {
        return false;
    }
    if (ovens_.size() > 1) {
        return true;
    }
    if (!countsFromAnyTime()) {
        return raiseByHeat(engine, sureByTheClock(stays_, inside_, trail), because,
                           sureByTheClock_);
    }
    bool ofAll = false;
    if (!raiseBySequence(engine, ofAll)) {
        return false;
    }
    if (ofAll) { // it knows more than others
        return true;
    }
    // What is sure by the clock is so to each other.
    const SureStays sure =
        sureToEachOther(stays_, inside_, *differences_, ovenForgets(ovens_.front()), trail);
    return raiseByHeat(engine, sure, because, sureToEachOther_);
}

} // namespace suppertide::exact
