#include "core/planner/quick_start/cost_meter.h"

#include <algorithm>
#include <cstdlib>

namespace suppertide::quick_start {

namespace {

constexpr std::size_t mostKnown = 12; // programs of each oven

std::optional<Minute> timeOf(const PartialPlan& plan, const TaskPoint& point)
{
    const auto start = startOf(plan, point.task);
    const auto& task = plan.instance().problem().tasks[point.task];
    const Minute length = point.edge == Edge::End ? task.duration.count() : 0;
    return start ? std::optional{*start + length} : std::nullopt;
}

} // namespace

std::optional<Minute> startOf(const PartialPlan& plan, TaskIndex task)
{
    const auto place = plan.instance().placeOf(task);
    const auto start = place ? plan.start(place->block) : std::nullopt;
    return start ? std::optional{*start + place->offset} : std::nullopt;
}

std::int64_t CostMeter::lossCost(const PartialPlan& plan) const
{
    std::int64_t cost = 0;
    for (const Lag& lag : problem_->lags) {
        if (lag.loss == 0 || !lag.min) {
            continue;
        }
        const auto from = timeOf(plan, lag.from);
        const auto to = timeOf(plan, lag.to);
        cost += from && to ? lag.loss * (*to - *from - lag.min->count()) : 0;
    }
    return cost;
}

std::int64_t CostMeter::quietCost(const PartialPlan& plan) const
{
    std::int64_t cost = 0;
    for (const Quiet& quiet : problem_->costs.quiet) {
        Span during = spanOf(quiet.when);
        if (quiet.before) {
            const auto before = startOf(plan, *quiet.before);
            if (!before) {
                continue;
            }
            during = {*before - quiet.minutes.count(), *before};
        }
        for (const Work& work : plan.instance().work) {
            const Minute begin = *plan.start(work.block) + work.offset;
            const Minute common =
                std::min(during.end, begin + work.duration) - std::max(during.begin, begin);
            cost += quiet.rate * work.attention * static_cast<std::int64_t>(work.cooks) *
                    std::max<Minute>(0, common);
        }
    }
    return cost;
}

std::int64_t CostMeter::sessionCost(const PartialPlan& plan) const
{
    std::int64_t sessions = 0;
    std::vector<Span> spans;
    for (const CookIndex cook : problem_->cooks.indices()) {
        spans.clear();
        for (const Entry& entry : plan.entries({ResourceKind::Cook, cook.value()})) {
            spans.push_back(entry.span);
        }
        std::sort(spans.begin(), spans.end(),
                  [](const Span& a, const Span& b) { return a.begin < b.begin; });
        Minute latest = -never;
        for (const Span& span : spans) {
            sessions += span.begin > latest + problem_->costs.sessionGap.count() ? 1 : 0;
            latest = std::max(latest, span.end);
        }
    }
    return problem_->costs.session * sessions;
}

std::int64_t CostMeter::otherCost(const PartialPlan& plan) const
{
    std::int64_t cost = 0;
    for (const ChoiceIndex choice : problem_->choices.indices()) {
        cost += problem_->choices[choice].options[*plan.instance().options()[choice]].cost;
    }
    for (const BeforeStart& before : problem_->costs.before) {
        const auto start = startOf(plan, before.task);
        if (start && *start != minuteOf(before.start)) {
            cost += problem_->costs.beforeMoved +
                    problem_->costs.beforeRate * std::abs(*start - minuteOf(before.start));
        }
    }
    return cost;
}

const OvenProgramResult& CostMeter::programFor(const PartialPlan& plan, OvenIndex oven)
{
    const auto& entries = plan.entries({ResourceKind::Oven, oven.value()});
    std::vector<const Entry*> ordered;
    ordered.reserve(entries.size());
    for (const Entry& entry : entries) {
        ordered.push_back(&entry);
    }
    std::sort(ordered.begin(), ordered.end(),
              [](const Entry* a, const Entry* b) { return *a->hold < *b->hold; });
    std::vector<OvenStay> stays;
    for (const Entry* entry : ordered) {
        stays.push_back(plan.instance().held[*entry->hold].stay);
        stays.back().during = intervalOf(entry->span);
    }
    std::vector<Known>& known = known_[oven];
    auto found = std::find_if(known.begin(), known.end(),
                              [&](const Known& one) { return one.stays == stays; });
    if (found == known.end()) {
        auto result =
            ovenProgramFor(problem_->ovens[oven], stays, ovenProgramStyle(problem_->costs, true));
        if (known.size() < mostKnown) {
            known.push_back({std::move(stays), std::move(result)});
            found = known.end() - 1;
        } else {
            oldest_ = (oldest_ + 1) % mostKnown;
            known[oldest_] = {std::move(stays), std::move(result)};
            found = known.begin() + static_cast<std::ptrdiff_t>(oldest_);
        }
    }
    for (const std::size_t ignored : found->result.ignored) {
        unkept_.push_back(*ordered[ignored]->hold);
    }
    return found->result;
}

OvenProgram CostMeter::program(const PartialPlan& plan, OvenIndex oven)
{
    return programFor(plan, oven).program;
}

std::optional<std::int64_t> CostMeter::cost(const PartialPlan& plan)
{
    unkept_.clear();
    std::int64_t cost = lossCost(plan) + quietCost(plan) + sessionCost(plan) + otherCost(plan);
    for (const OvenIndex oven : problem_->ovens.indices()) {
        cost += programFor(plan, oven).cost;
    }
    return unkept_.empty() ? std::optional{cost} : std::nullopt;
}

} // namespace suppertide::quick_start
