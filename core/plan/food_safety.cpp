#include "core/plan/food_safety.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/log.h"

namespace suppertide {

namespace {

bool isKnown(const safety::Finding& finding)
{
    const safety::Rule* rule = safety::findRule(finding.rule);
    return rule == nullptr || rule->subject != safety::Subject::NotKnown;
}

/// What is bought raw may be kept for all of the chart's range: only what the cook has made is best
/// used at its beginning.
bool isWithinTheShopsRange(const TrackedFood& food, const safety::Finding& finding)
{
    return !food.bought.empty() && finding.weight == safety::Weight::Caution &&
           finding.rule.starts_with("storage/") && isRawAnimal(food.kind.food);
}

std::optional<Interval> whenOf(const safety::Finding& finding)
{
    if (finding.counts.empty()) {
        return std::nullopt;
    }
    const auto from = planTime(std::llround(std::floor(finding.counts.front().from)));
    const auto to = planTime(std::llround(std::ceil(finding.counts.back().to)));
    return Interval{from, std::max(from, to)};
}

/// The steps that it goes through in these minutes; else the last before them; without minutes all.
std::vector<TaskIndex> tasksOf(const Formulation& formulation, const Schedule& schedule,
                               const TrackedFood& food, const std::optional<Interval>& when)
{
    std::vector<TaskIndex> meet;
    std::optional<TaskIndex> before;
    for (const FoodStage& stage : food.stages) {
        const auto& start = schedule.starts[stage.first];
        const auto& last = schedule.starts[stage.last];
        if (!start || !last) {
            continue;
        }
        const Interval span{*start, *last + formulation.problem.tasks[stage.last].duration};
        if (!when || span.overlaps(*when)) {
            meet.push_back(stage.first);
        } else if (span.end <= when->start) {
            before = stage.first;
        }
    }
    if (before && (meet.empty() || schedule.starts[meet.front()] > when->start)) {
        meet.insert(meet.begin(), *before);
    }
    return meet;
}

Clash clashOf(const Formulation& formulation, const Schedule& schedule, FoodIndex index,
              const safety::Finding& finding)
{
    const TrackedFood& food = formulation.foods[index];
    Clash clash;
    clash.kind = ClashKind::FoodSafety;
    clash.severity =
        finding.weight == safety::Weight::Unsafe ? severityOf(clash.kind) : Severity::Undesirable;
    clash.when = whenOf(finding);
    clash.tasks = tasksOf(formulation, schedule, food, clash.when);
    clash.asked = std::llround(std::ceil(finding.measured));
    clash.allowed = std::llround(std::floor(finding.limit));
    clash.course = food.course;
    clash.dish = food.dish;
    clash.food = index;
    clash.finding = finding;
    clash.broken = {"food:" + food.key + "/" + finding.rule};
    return clash;
}

} // namespace

FoodSafety::FoodSafety(const Formulation& formulation, const PlanInput& input)
    : formulation_(formulation), kitchen_(input.kitchen), book_(input.occasion->preferences.rules),
      temperatures_(formulation, *kitchen_)
{}

std::vector<Clash> FoodSafety::update(const Schedule& schedule)
{
    std::vector<Clash> clashes;
    histories_ = temperatures_.update(schedule);
    passOn(schedule);
    std::vector<safety::LiveHistories::Food> foods;
    for (const FoodIndex food : formulation_.foods.indices()) {
        if (const auto& history = histories_[food]) {
            foods.push_back({formulation_.foods[food].key,
                             *history,
                             {book_, formulation_.foods[food].risks, formulation_.calendar}});
        }
    }
    judged_.update(std::move(foods));
    for (const FoodIndex food : formulation_.foods.indices()) {
        const auto why = notJudged(food);
        if (why && told_.insert(food).second) {
            log::warn("core.plan", "the history of {} cannot be judged: {}",
                      formulation_.foods[food].key, *why);
        }
    }
    for (const FoodIndex food : formulation_.foods.indices()) {
        for (const safety::Finding& finding : findingsOf(food)) {
            if (isKnown(finding) && !isOfAPart(food, finding) &&
                !isWithinTheShopsRange(formulation_.foods[food], finding)) {
                clashes.push_back(clashOf(formulation_, schedule, food, finding));
            }
        }
    }
    return clashes;
}

void FoodSafety::passOn(const Schedule& schedule)
{
    // A preparation comes after what it goes into.
    for (std::size_t i = formulation_.foods.size(); i-- > 0;) {
        const FoodIndex whole{i};
        if (!histories_[whole]) {
            continue;
        }
        for (const FoodPart& part : formulation_.foods[whole].parts) {
            const auto& at = schedule.starts[part.at];
            const auto& history = histories_[part.food];
            if (!at || !history) {
                continue;
            }
            safety::MixedIn mixed = keptSoFar(*history, *at, formulation_.calendar);
            if (auto stood = stoodSoFar(*history, *at, book_)) {
                mixed.stood = std::move(*stood);
            }
            histories_[whole]->events.emplace_back(std::move(mixed));
        }
    }
}

bool FoodSafety::isOfAPart(FoodIndex food, const safety::Finding& finding) const
{
    return std::ranges::any_of(formulation_.foods[food].parts, [&](const FoodPart& part) {
        const std::vector<safety::Finding> ofPart = findingsOf(part.food);
        return std::ranges::find(ofPart, finding.rule, &safety::Finding::rule) != ofPart.end() ||
               isOfAPart(part.food, finding);
    });
}

void FoodSafety::mergeWaits(const Formulation& formulation, std::vector<Clash>& clashes)
{
    std::set<std::string> said; // lags, as clashes name them
    for (const Clash& clash : clashes) {
        if (clash.kind != ClashKind::FoodSafety) {
            continue;
        }
        for (const FoodKeep& keep : formulation.foods[*clash.food].keeps) {
            if (formulation.lags[keep.lag].limitedBy == clash.finding->rule) {
                said.insert("lag:" + formulation.problem.lags[keep.lag].id);
            }
        }
    }
    std::erase_if(clashes, [&said](const Clash& clash) {
        return clash.kind == ClashKind::WaitTooLong &&
               std::ranges::any_of(
                   clash.broken, [&said](const std::string& name) { return said.contains(name); });
    });
}

std::optional<std::string> FoodSafety::notJudged(FoodIndex food) const
{
    const auto* findings = judged_.findingsOf(formulation_.foods[food].key);
    return findings != nullptr && !findings->has_value() ? std::optional(findings->error().forCook)
                                                         : std::nullopt;
}

std::vector<safety::Finding> FoodSafety::findingsOf(FoodIndex food) const
{
    const auto* findings = judged_.findingsOf(formulation_.foods[food].key);
    return findings != nullptr && findings->has_value() ? findings->value()
                                                        : std::vector<safety::Finding>{};
}

} // namespace suppertide
