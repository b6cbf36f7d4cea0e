#include "core/planner/quick_start/cook_roster.h"

#include <algorithm>

#include "core/planner/quick_start/resource_profile.h"

namespace suppertide::quick_start {

namespace {

/// How far work must move into the nearest time in which a cook is free.
Blockage towardsFree(const std::vector<Span>& free, const Span& span)
{
    const Minute length = span.end - span.begin;
    Blockage result;
    for (const Span& one : free) {
        if (one.end - one.begin < length) {
            continue;
        }
        if (one.begin > span.begin) {
            result.up = std::min(result.up, one.begin - span.begin);
        }
        if (one.end < span.end) {
            result.down = std::min(result.down, span.end - one.end);
        }
    }
    return result;
}

} // namespace

CookRoster::CookRoster(const Instance& instance) : instance_(&instance)
{
    for (const Cook& cook : instance.problem().cooks) {
        std::vector<Span>& free = free_.emplace_back();
        std::vector<Span>& table = table_.emplace_back();
        std::transform(cook.free.begin(), cook.free.end(), std::back_inserter(free), spanOf);
        std::transform(cook.table.begin(), cook.table.end(), std::back_inserter(table), spanOf);
    }
}

bool CookRoster::isThere(Trial& trial, const Work& work, CookIndex cook, const Span& span) const
{
    const auto& free = free_[cook.value()];
    if (std::none_of(free.begin(), free.end(),
                     [&](const Span& one) { return one.contains(span); })) {
        trial.blockage.allow(towardsFree(free, span));
        return false;
    }
    if (work.atTable) {
        return true;
    }
    for (const Span& seated : table_[cook.value()]) {
        if (seated.overlaps(span)) {
            trial.blockage.allow({span.end - seated.begin, seated.end - span.begin});
            return false;
        }
    }
    for (const std::size_t index : instance_->seatingsOf[cook]) {
        const Seating& seating = instance_->seatings[index];
        const auto start = trial.startOf(seating.at.block);
        if (!start) {
            continue;
        }
        const Span seated{*start + seating.at.offset, *start + seating.at.offset + seating.minutes};
        if (seated.overlaps(span) && !(trial.mayEject() && trial.eject(seating.at.block))) {
            trial.blockage.allow({span.end - seated.begin, seated.end - span.begin});
            return false;
        }
    }
    return true;
}

/// About how many working sessions more the cook has with this work.
std::int64_t CookRoster::sessionsAdded(const Trial& trial, CookIndex cook, const Span& span) const
{
    const Minute gap = instance_->problem().costs.sessionGap.count();
    Minute latest = -never;
    Minute next = never;
    trial.forEach({ResourceKind::Cook, cook.value()}, [&](const Entry&, const Span& other) {
        if (other.begin <= span.begin) {
            latest = std::max(latest, other.end);
        } else {
            next = std::min(next, other.begin);
        }
    });
    const bool begins = span.begin > latest + gap;
    const bool nextBegan = next < never && next > latest + gap;
    const bool nextBegins = next < never && next > std::max(latest, span.end) + gap;
    return (begins ? 1 : 0) + (nextBegins ? 1 : 0) - (nextBegan ? 1 : 0);
}

bool CookRoster::take(Trial& trial, const Work& work, CookIndex cook) const
{
    Need need;
    need.span.begin = trial.start() + work.offset;
    need.span.end = need.span.begin + work.duration;
    need.amount = work.attention;
    return isThere(trial, work, cook, need.span) &&
           makeRoom(trial, {ResourceKind::Cook, cook.value()}, need, 100);
}

CookRoster::Choice CookRoster::choose(Trial& trial, WorkIndex index) const
{
    const Work& work = instance_->work[index];
    const std::int64_t sessionCost = instance_->problem().costs.session;
    const Span span{trial.start() + work.offset, trial.start() + work.offset + work.duration};
    std::vector<Candidate> candidates;
    for (const CookIndex cook : work.able) {
        const std::size_t mark = trial.mark();
        const std::int64_t before = trial.penalty();
        if (take(trial, work, cook)) {
            candidates.push_back(
                {cook, trial.penalty() - before, sessionCost * sessionsAdded(trial, cook, span)});
        }
        trial.undoTo(mark);
    }
    if (candidates.size() < work.cooks) {
        return {};
    }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) {
                         return a.penalty != b.penalty ? a.penalty < b.penalty : a.cost < b.cost;
                     });
    Choice result;
    for (std::size_t i = 0; i < work.cooks; ++i) {
        if (candidates[i].penalty > 0 && !take(trial, work, candidates[i].cook)) {
            return {};
        }
        result.cooks.push_back(candidates[i].cook);
        result.cost += candidates[i].cost;
    }
    Entry entry;
    entry.span = span;
    entry.amount = work.attention;
    entry.work = index;
    entry.from = work.block;
    entry.to = work.block;
    for (const CookIndex cook : result.cooks) {
        trial.enter({ResourceKind::Cook, cook.value()}, entry);
    }
    return result;
}

std::optional<WorkIndex> CookRoster::seat(Trial& trial, std::size_t index) const
{
    const Seating& seating = instance_->seatings[index];
    const Minute begin = trial.start() + seating.at.offset;
    const Span seated{begin, begin + seating.minutes};
    std::vector<WorkIndex> inTheWay;
    trial.forEachDuring(
        {ResourceKind::Cook, seating.cook.value()}, seated,
        [&](const Entry& entry, const Span& span) {
            if (!instance_->work[entry.work].atTable) {
                inTheWay.push_back(entry.work);
                trial.blockage.allow({seated.end - span.begin, span.end - seated.begin});
            }
        });
    for (const WorkIndex work : inTheWay) {
        const BlockIndex block = instance_->work[work].block;
        if (trial.startOf(block) && !(trial.mayEject() && trial.eject(block))) {
            return work;
        }
    }
    return std::nullopt;
}

} // namespace suppertide::quick_start
