#include "core/planner/engine/timetable.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace suppertide::engine {

void TimetablePropagator::post(Engine& engine, std::vector<TimetableItem> items, Bound capacity)
{
    std::vector<View> views;
    for (const TimetableItem& item : items) {
        views.push_back(item.start.variable.plus());
        views.push_back(item.start.variable.minus());
        views.push_back(item.end.variable.plus());
        views.push_back(item.end.variable.minus());
        if (item.present) {
            views.push_back(item.present->view);
        }
    }
    std::sort(views.begin(), views.end());
    views.erase(std::unique(views.begin(), views.end()), views.end());
    engine.add(std::make_unique<TimetablePropagator>(std::move(items), capacity), views);
}

bool TimetablePropagator::isPresent(const Trail& trail, const TimetableItem& item) const
{
    return !item.present || trail.holds(*item.present);
}

bool TimetablePropagator::isAbsent(const Trail& trail, const TimetableItem& item) const
{
    return item.present && trail.fails(*item.present);
}

bool TimetablePropagator::isSurelyAt(const Trail& trail, const TimetableItem& item,
                                     Bound minute) const
{
    return trail.most(item.start) <= minute && trail.least(item.end) > minute;
}

Literals TimetablePropagator::usedAt(const Trail& trail, Bound minute, Bound room,
                                     const TimetableItem* without) const
{
    std::vector<const TimetableItem*> there;
    Bound load = 0;
    for (const TimetableItem& item : items_) {
        if (&item != without && isPresent(trail, item) && isSurelyAt(trail, item, minute)) {
            there.push_back(&item);
            load += item.amount;
        }
    }
    std::stable_sort(there.begin(), there.end(),
                     [](const auto* a, const auto* b) { return a->amount > b->amount; });
    Bound spare = load - room - 1; // may be left out of the explanation
    Literals because;
    for (auto item = there.rbegin(); item != there.rend(); ++item) {
        if ((*item)->amount <= spare) {
            spare -= (*item)->amount;
            continue;
        }
        because.push_back(atMost((*item)->start, minute));
        because.push_back(atLeast((*item)->end, minute + 1));
        if ((*item)->present) {
            because.push_back(*(*item)->present);
        }
    }
    return because;
}

bool TimetablePropagator::buildProfile(Engine& engine)
{
    const Trail& trail = engine.trail();
    changes_.swap(lastChanges_);
    changes_.clear();
    for (const TimetableItem& item : items_) {
        const Bound latestStart = trail.most(item.start);
        const Bound earliestEnd = trail.least(item.end);
        if (latestStart < earliestEnd && isPresent(trail, item)) {
            changes_.push_back({latestStart, item.amount});
            changes_.push_back({earliestEnd, -item.amount});
        }
    }
    if (changes_ == lastChanges_) {
        return true;
    }
    for (Seen& seen : seen_) {
        seen.isQuiet = false;
    }
    sorted_ = changes_;
    std::sort(sorted_.begin(), sorted_.end(), [](const Step& a, const Step& b) {
        return a.from != b.from ? a.from < b.from : a.load < b.load;
    });
    profile_.clear();
    most_ = 0;
    Bound load = 0;
    for (std::size_t i = 0; i < sorted_.size(); ++i) {
        load += sorted_[i].load;
        if (i + 1 < sorted_.size() && sorted_[i + 1].from == sorted_[i].from) {
            continue;
        }
        if (load > capacity_) {
            forgetProfile(); // it would not be whole
            return engine.fail(usedAt(trail, sorted_[i].from, capacity_, nullptr));
        }
        most_ = std::max(most_, load);
        profile_.push_back({sorted_[i].from, load});
    }
    return true;
}

void TimetablePropagator::forgetProfile()
{
    changes_.clear();
    profile_.clear();
    most_ = 0;
}

std::size_t TimetablePropagator::stepAt(Bound minute) const
{
    const auto after =
        std::upper_bound(profile_.begin(), profile_.end(), minute,
                         [](Bound value, const Step& step) { return value < step.from; });
    return static_cast<std::size_t>(after - profile_.begin()) - (after == profile_.begin() ? 0 : 1);
}

/// Moves the start behind minutes that the item surely would be at and cannot.
TimetablePropagator::Verdict TimetablePropagator::raiseStart(Engine& engine,
                                                             const TimetableItem& item)
{
    const Trail& trail = engine.trail();
    const Bound room = capacity_ - item.amount;
    Verdict verdict = Verdict::Quiet;
    for (std::size_t i = stepAt(trail.least(item.start)); i + 1 < profile_.size();) {
        const Bound from = profile_[i].from;
        const Bound until = profile_[i + 1].from;
        if (from >= trail.least(item.end) || from > trail.most(item.start)) {
            break;
        }
        if (profile_[i].load <= room || until <= trail.least(item.start)) {
            ++i;
            continue;
        }
        const Bound minute = std::min(until, trail.least(item.end)) - 1;
        if (minute < trail.least(item.start)) {
            break;
        }
        if (isSurelyAt(trail, item, std::max(from, trail.least(item.start)))) {
            ++i; // counted in the profile itself
            continue;
        }
        Literals because = usedAt(trail, minute, room, &item);
        because.push_back(atLeast(item.end, minute + 1));
        if (item.present) {
            because.push_back(*item.present);
        }
        if (!engine.imply(atLeast(item.start, minute + 1), because)) {
            return Verdict::Conflict;
        }
        verdict = Verdict::Changed;
    }
    return verdict;
}

/// The same from behind.
TimetablePropagator::Verdict TimetablePropagator::lowerEnd(Engine& engine,
                                                           const TimetableItem& item)
{
    const Trail& trail = engine.trail();
    const Bound room = capacity_ - item.amount;
    Verdict verdict = Verdict::Quiet;
    if (profile_.size() < 2) {
        return verdict;
    }
    std::size_t i = std::min(stepAt(trail.most(item.end) - 1), profile_.size() - 2);
    while (true) {
        const Bound from = profile_[i].from;
        const Bound until = profile_[i + 1].from;
        if (until <= trail.most(item.start) || until <= trail.least(item.end)) {
            break;
        }
        if (profile_[i].load > room && from < trail.most(item.end)) {
            const Bound minute = std::max(from, trail.most(item.start));
            if (minute >= trail.most(item.end)) {
                break;
            }
            if (!isSurelyAt(trail, item, std::min(until, trail.most(item.end)) - 1)) {
                Literals because = usedAt(trail, minute, room, &item);
                because.push_back(atMost(item.start, minute));
                if (item.present) {
                    because.push_back(*item.present);
                }
                if (!engine.imply(atMost(item.end, minute), because)) {
                    return Verdict::Conflict;
                }
                verdict = Verdict::Changed;
                continue;
            }
        }
        if (i == 0) {
            break;
        }
        --i;
    }
    return verdict;
}

/// An item that may or may not be: not, if it surely would be where there is no room.
TimetablePropagator::Verdict TimetablePropagator::ruleOut(Engine& engine, const TimetableItem& item)
{
    const Trail& trail = engine.trail();
    const Bound room = capacity_ - item.amount;
    const Bound begin = trail.most(item.start);
    const Bound end = trail.least(item.end);
    if (begin >= end) {
        return Verdict::Quiet;
    }
    for (std::size_t i = stepAt(begin); i + 1 < profile_.size() && profile_[i].from < end; ++i) {
        if (profile_[i].load <= room || profile_[i + 1].from <= begin) {
            continue;
        }
        const Bound minute = std::max(begin, profile_[i].from);
        Literals because = usedAt(trail, minute, room, &item);
        because.push_back(atMost(item.start, minute));
        because.push_back(atLeast(item.end, minute + 1));
        return engine.imply(~*item.present, because) ? Verdict::Quiet : Verdict::Conflict;
    }
    return Verdict::Quiet;
}

TimetablePropagator::Seen TimetablePropagator::seenNow(const Trail& trail,
                                                       const TimetableItem& item) const
{
    return {trail.least(item.start), trail.most(item.start), trail.least(item.end),
            trail.most(item.end),    isPresent(trail, item), true};
}

TimetablePropagator::Verdict TimetablePropagator::lookAt(Engine& engine, const TimetableItem& item)
{
    const Trail& trail = engine.trail();
    if (!isPresent(trail, item)) {
        return ruleOut(engine, item);
    }
    if (trail.isFixed(item.start.variable) && trail.isFixed(item.end.variable)) {
        return Verdict::Quiet;
    }
    const Verdict ofStart = raiseStart(engine, item);
    if (ofStart == Verdict::Conflict) {
        return ofStart;
    }
    const Verdict ofEnd = lowerEnd(engine, item);
    return ofEnd == Verdict::Quiet ? ofStart : ofEnd;
}

/// Each that is not as it was when the profile had nothing to say to it.
TimetablePropagator::Verdict TimetablePropagator::lookAtAll(Engine& engine)
{
    const Trail& trail = engine.trail();
    Verdict result = Verdict::Quiet;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        const TimetableItem& item = items_[i];
        // Nothing is too much for it anywhere.
        if (most_ <= capacity_ - item.amount || isAbsent(trail, item)) {
            continue;
        }
        const Seen now = seenNow(trail, item);
        if (now == seen_[i]) {
            continue;
        }
        const Verdict verdict = lookAt(engine, item);
        if (verdict == Verdict::Conflict) {
            seen_[i].isQuiet = false;
            return verdict;
        }
        seen_[i] = now;
        // What has just been ruled out was not quiet.
        seen_[i].isQuiet = verdict == Verdict::Quiet && !isAbsent(trail, item);
        result = verdict == Verdict::Changed ? verdict : result;
    }
    return result;
}

bool TimetablePropagator::propagate(Engine& engine)
{
    Verdict verdict = Verdict::Changed;
    while (verdict == Verdict::Changed) {
        if (!buildProfile(engine)) {
            return false;
        }
        verdict = lookAtAll(engine);
    }
    return verdict == Verdict::Quiet;
}

} // namespace suppertide::engine
