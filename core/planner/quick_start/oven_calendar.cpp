#include "core/planner/quick_start/oven_calendar.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

#include "core/planner/quick_start/resource_profile.h"

namespace suppertide::quick_start {

namespace {

/// A row of stays that one setting can serve.
struct Run
{
    int low = 0;
    int high = 0;
};

std::int64_t minutesFor(std::int64_t degrees, std::int64_t milliCPerMinute)
{
    return degrees <= 0 ? 0 : degrees * 1000 / milliCPerMinute;
}

/// Minutes on to bridge a time in which nothing is in: the oven is off and then heats again.
std::int64_t bridging(const Oven& oven, Minute gap, int setting)
{
    const std::int64_t rates = oven.heatMilliCPerMin + oven.coolMilliCPerMin;
    const std::int64_t reheating = gap * oven.coolMilliCPerMin / rates;
    return std::min(reheating, minutesFor(setting - oven.ambientC, oven.heatMilliCPerMin));
}

} // namespace

std::int64_t roughOvenCost(const Oven& oven, std::vector<OvenStay> stays, const Costs& costs)
{
    std::sort(stays.begin(), stays.end(),
              [](const OvenStay& a, const OvenStay& b) { return a.during.start < b.during.start; });
    std::vector<Run> runs;
    std::vector<std::size_t> runOf(stays.size(), 0);
    std::int64_t on = 0;
    Minute until = 0;
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const OvenStay& stay = stays[i];
        if (stay.off) {
            until = std::max(until, minuteOf(stay.during.end));
            continue;
        }
        const bool meets = !runs.empty() && stay.acceptLow <= runs.back().high &&
                           runs.back().low <= stay.acceptHigh;
        if (meets) {
            runs.back() = {std::max(runs.back().low, stay.acceptLow),
                           std::min(runs.back().high, stay.acceptHigh)};
        } else {
            runs.push_back({stay.acceptLow, stay.acceptHigh});
        }
        runOf[i] = runs.size() - 1;
        const Minute begin = minuteOf(stay.during.start);
        const Minute end = minuteOf(stay.during.end);
        if (begin > until) {
            on += runs.size() == 1 && runOf[i] == 0 && on == 0
                      ? minutesFor(stay.acceptLow - oven.startC, oven.heatMilliCPerMin)
                      : bridging(oven, begin - until, stay.acceptLow);
        }
        on += std::max<Minute>(0, end - std::max(begin, until));
        until = std::max(until, end);
    }
    std::int64_t cost = costs.ovenOnMinute * on;
    cost += runs.empty() ? 0 : costs.ovenChange * static_cast<std::int64_t>(runs.size() - 1);
    for (std::size_t i = 0; costs.preferC > 0 && i < stays.size(); ++i) {
        if (stays[i].prefer && !stays[i].off) {
            const Run& run = runs[runOf[i]];
            cost +=
                costs.preferC * std::abs(*stays[i].prefer -
                                         std::max(run.low, std::min(*stays[i].prefer, run.high)));
        }
    }
    return cost;
}

/// What is of the same group and in another oven has to go.
bool OvenCalendar::gather(Trial& trial, const Hold& hold, std::size_t oven) const
{
    if (!hold.group) {
        return true;
    }
    std::vector<const Entry*> elsewhere;
    for (const OvenIndex other : instance_->problem().ovens.indices()) {
        if (other.value() == oven) {
            continue;
        }
        trial.forEach({ResourceKind::Oven, other.value()}, [&](const Entry& entry, const Span&) {
            if (instance_->held[*entry.hold].group == hold.group) {
                elsewhere.push_back(&entry);
            }
        });
    }
    return std::all_of(elsewhere.begin(), elsewhere.end(), [&](const Entry* entry) {
        return trial.spanOf(*entry).empty() ||
               (trial.mayEject() &&
                trial.relieve(*entry, [](const Span& span) { return span.empty(); }));
    });
}

bool OvenCalendar::put(Trial& trial, HoldIndex index, const Span& span, std::size_t oven) const
{
    const Hold& hold = instance_->held[index];
    const Oven& model = instance_->problem().ovens[OvenIndex{oven}];
    OvenStay stay = hold.stay;
    stay.during = intervalOf(span);
    if (std::find(hold.servants.begin(), hold.servants.end(), oven) == hold.servants.end() ||
        !ovenSuits(model, stay)) {
        return false;
    }
    if (const auto clash = ovenStartClash(model, stay)) {
        trial.blockage.allow({never, std::max<Minute>(1, (clash->ramp - clash->gap).count())});
        return false;
    }
    const auto clashWith = [&](const Entry& entry,
                               const Span& other) -> std::optional<OvenPairClash> {
        const Hold& there = instance_->held[*entry.hold];
        if (hold.mode && there.mode && hold.mode != there.mode && span.overlaps(other)) {
            return OvenPairClash{};
        }
        if (!hold.stay.off && !there.stay.off && hold.stay.acceptLow <= there.stay.acceptHigh &&
            there.stay.acceptLow <= hold.stay.acceptHigh) {
            return std::nullopt; // whenever they are
        }
        OvenStay theirs = there.stay;
        theirs.during = intervalOf(other);
        return ovenPairClash(model, stay, theirs);
    };
    const Resource resource{ResourceKind::Oven, oven};
    std::vector<const Entry*> clashing;
    Blockage away;
    trial.forEach(resource, [&](const Entry& entry, const Span& other) {
        if (const auto clash = clashWith(entry, other)) {
            clashing.push_back(&entry);
            const Minute ramp = clash->ramp.count();
            away.allow({std::max<Minute>(1, span.end + ramp - other.begin),
                        std::max<Minute>(1, other.end + ramp - span.begin)});
        }
    });
    for (const Entry* entry : clashing) {
        const auto isFine = [&](const Span& left) {
            return left.empty() || !clashWith(*entry, left);
        };
        if (!isFine(trial.spanOf(*entry)) && !(trial.mayEject() && trial.relieve(*entry, isFine))) {
            trial.blockage.allow(away);
            return false;
        }
    }
    Need need;
    need.span = span;
    need.amount = hold.amount;
    if (hold.amount > 0 && !makeRoom(trial, resource, need, model.shelves)) {
        return false;
    }
    return gather(trial, hold, oven);
}

bool OvenCalendar::putAll(Trial& trial, const std::vector<HoldIndex>& bundle, std::size_t oven,
                          Choice& choice) const
{
    for (const HoldIndex index : bundle) {
        const Hold& hold = instance_->held[index];
        const Span span = trial.spanOf(hold);
        if (span.empty()) {
            continue;
        }
        if (!put(trial, index, span, oven)) {
            return false;
        }
        Entry entry;
        entry.span = span;
        entry.amount = hold.amount;
        entry.hold = index;
        entry.from = hold.from.block;
        entry.to = hold.to.block;
        trial.enter({ResourceKind::Oven, oven}, entry);
        choice.servants.emplace_back(index, oven);
    }
    return true;
}

std::int64_t OvenCalendar::costAdded(const Trial& trial, std::size_t oven) const
{
    std::vector<OvenStay> before;
    std::vector<OvenStay> after;
    trial.forEach({ResourceKind::Oven, oven}, [&](const Entry& entry, const Span& span) {
        OvenStay stay = instance_->held[*entry.hold].stay;
        stay.during = intervalOf(span);
        after.push_back(stay);
        if (entry.from != trial.index() && entry.to != trial.index()) {
            before.push_back(stay);
        }
    });
    const Problem& problem = instance_->problem();
    const Oven& model = problem.ovens[OvenIndex{oven}];
    return roughOvenCost(model, std::move(after), problem.costs) -
           roughOvenCost(model, std::move(before), problem.costs);
}

OvenCalendar::Choice OvenCalendar::choose(Trial& trial, const std::vector<HoldIndex>& bundle,
                                          bool withCost) const
{
    const std::size_t ovens = instance_->problem().ovens.size();
    const std::int64_t before = trial.penalty();
    struct Best
    {
        std::size_t oven = 0;
        std::int64_t penalty = std::numeric_limits<std::int64_t>::max();
        std::int64_t cost = 0;
    };
    std::optional<Best> best;
    for (std::size_t oven = 0; oven < ovens; ++oven) {
        const std::size_t mark = trial.mark();
        Choice choice;
        if (putAll(trial, bundle, oven, choice)) {
            Best now{oven, trial.penalty() - before, 0};
            if (withCost && !choice.servants.empty()) {
                now.cost = costAdded(trial, oven);
            }
            if (!best || now.penalty < best->penalty ||
                (now.penalty == best->penalty && now.cost < best->cost)) {
                best = now;
            }
        }
        trial.leaveLast(choice.servants.size());
        trial.undoTo(mark);
        if (choice.servants.empty() && best) {
            break; // nothing is held: any oven does
        }
    }
    Choice result;
    if (best) {
        result.found = putAll(trial, bundle, best->oven, result);
        result.cost = best->cost;
    } else if (ovens == 0) {
        result.found = std::all_of(bundle.begin(), bundle.end(), [&](HoldIndex index) {
            return trial.spanOf(instance_->held[index]).empty();
        });
    }
    return result;
}

} // namespace suppertide::quick_start
