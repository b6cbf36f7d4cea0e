#include "core/advice/ways_out.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/advice/candidates.h"
#include "core/advice/narrow.h"
#include "core/advice/requirement.h"
#include "core/plan/lay_out.h"
#include "core/propose/make_plan.h"

namespace suppertide {

namespace {

/// Of one kind of change no more than this are told of: five helpers are no choice.
constexpr std::size_t mostOfAKind = 2;
/// Nor of what is by so many points dearer than what is found already.
constexpr std::int64_t mostDearer = 20;
/// Where times alone can be arranged so that all holds, nothing is eaten otherwise or fetched.
constexpr std::int64_t mostBesideArranging = 8;
constexpr Minutes servingGrain{5};
constexpr std::int64_t costUnitsAPoint = 1200; // as core/plan weighs preferences

/// Of food, and hangs on when things are done.
bool isOfTimes(ClashKind kind)
{
    return kind == ClashKind::FoodSafety || kind == ClashKind::UnwashedTool;
}

bool isOfFood(ClashKind kind)
{
    return kind == ClashKind::Allergen || kind == ClashKind::GuestLeftOut ||
           kind == ClashKind::ContentsUnknown || isOfTimes(kind);
}

bool isSameFood(const Clash& one, const Clash& other)
{
    return one.kind == other.kind && one.guest == other.guest && one.course == other.course &&
           one.dish == other.dish && one.substances == other.substances &&
           one.broken == other.broken;
}

/// What came of planning an evening.
struct Tried
{
    PlanPtr plan; // null: none was found
    std::vector<std::string> conflict;
    FormulationPtr formulation;
};

/// Ends as soon as there is any plan.
Tried firstPlan(const PlanInput& input, const PlannerLimits& limits, const std::stop_token& stop)
{
    std::stop_source own;
    const std::stop_callback stopped(stop, [&own] { own.request_stop(); });
    PlanRequest request{input, limits};
    const auto outcome = makePlan(request, own.get_token(), [&own](const PlanProgress& progress) {
        if (progress.better) {
            own.request_stop();
        }
    });
    Tried tried;
    if (!outcome) {
        return tried; // the change makes a faulty evening: no way out
    }
    if (const auto* found = std::get_if<PlanFound>(&*outcome)) {
        tried.plan = found->plan;
    } else if (const auto* early = std::get_if<Stopped>(&*outcome)) {
        tried.plan = early->best;
    } else if (const auto& none = std::get<NoPlan>(*outcome); none.isProven) {
        tried.conflict = none.conflict;
        tried.formulation = none.formulation;
    }
    return tried;
}

PlanPtr betterPlan(const PlanRequest& request, const std::stop_token& stop, const PlanPtr& known)
{
    const auto outcome = makePlan(request, stop);
    PlanPtr plan;
    if (outcome) {
        if (const auto* found = std::get_if<PlanFound>(&*outcome)) {
            plan = found->plan;
        } else if (const auto* early = std::get_if<Stopped>(&*outcome)) {
            plan = early->best;
        }
    }
    const auto unwashed = [](const Plan& of) {
        return std::ranges::count(of.clashes, ClashKind::UnwashedTool, &Clash::kind);
    };
    const bool isBetter = plan && (plan->figures.cost.total() <= known->figures.cost.total() ||
                                   unwashed(*plan) < unwashed(*known));
    return isBetter ? plan : known;
}

class Finder
{
public:
    Finder(const AdviceRequest& request, std::stop_token stop, const AdviceSink& sink)
        : request_(request), stop_(std::move(stop)), sink_(sink)
    {}

    Result<Advice> find()
    {
        auto formulation = formulate(request_.input);
        if (!formulation) {
            return formulation.error();
        }
        advice_.formulation = *formulation;
        foodClashes_ =
            judgePlan(*formulation, request_.input, emptyScheduleFor((*formulation)->problem))
                ->clashes;
        std::erase_if(foodClashes_, [](const Clash& clash) { return !isOfFood(clash.kind); });
        if (request_.laidOut) {
            std::ranges::copy_if(request_.laidOut->clashes, std::back_inserter(foodClashes_),
                                 [](const Clash& clash) { return isOfTimes(clash.kind); });
        }
        tryAsItIs();
        tryEach(candidates());
        if (advice_.ways.empty()) {
            tryPairs();
        }
        std::ranges::stable_sort(advice_.ways, {}, &WayOut::points);
        return std::move(advice_);
    }

private:
    /// A change that led to another conflict.
    struct HalfWay
    {
        EveningChange change;
        std::vector<std::string> conflict;
        FormulationPtr formulation;
    };

    [[nodiscard]] bool isOver() const
    {
        return stop_.stop_requested() || advice_.ways.size() >= request_.most ||
               advice_.tried >= request_.mostTrials;
    }

    void report(const WayOut* found)
    {
        if (sink_) {
            sink_({found, advice_.conflict.empty() ? nullptr : &advice_.conflict, advice_.tried,
                   toTry_});
        }
    }

    void tryAsItIs()
    {
        const Tried tried = firstPlan(request_.input, request_.first, stop_);
        advice_.conflict = tried.conflict;
        ++advice_.tried;
        if (tried.plan && !stop_.stop_requested()) {
            keep({PlanAnew{}}, request_.input, tried.plan);
            isEnoughToArrange_ = !advice_.ways.empty();
        }
        report(nullptr);
    }

    /// What bears on the clash and, where there is one, on the conflict.
    [[nodiscard]] std::vector<EveningChange> candidates() const
    {
        Concern concern;
        if (!advice_.conflict.empty()) {
            concern = concernOf(*advice_.formulation, advice_.conflict);
        } else if (request_.clash) {
            concern = concernOf(*request_.laidOut->formulation, *request_.clash);
        } else if (request_.laidOut) {
            return {}; // planned anew as a whole, if it can be
        }
        return candidatesFor(request_.input, *advice_.formulation, request_.laidOut.get(), concern);
    }

    void tryEach(const std::vector<EveningChange>& changes)
    {
        toTry_ = advice_.tried + changes.size();
        for (const EveningChange& change : changes) {
            if (isOver()) {
                return;
            }
            tryOne(change);
            report(nullptr);
        }
    }

    void tryOne(const EveningChange& change)
    {
        if (isEnoughOf(change) || isTooDear(change)) {
            return;
        }
        const PlanInput input = triedWith(request_.input, change);
        if (!bearsOn(input, advice_.formulation->problem, advice_.conflict)) {
            return;
        }
        ++advice_.tried;
        const Tried tried = firstPlan(input, request_.first, stop_);
        if (tried.plan && std::holds_alternative<ServeLater>(change)) {
            keepServedLater(std::get<ServeLater>(change), input, tried.plan);
        } else if (tried.plan) {
            keep({change}, input, tried.plan);
        } else if (!tried.conflict.empty()) {
            halfWays_.push_back({change, tried.conflict, tried.formulation});
        }
    }

    /// The least delay of the course that can be found: between what failed and what did not,
    /// halving.
    void keepServedLater(const ServeLater& change, const PlanInput& input, const PlanPtr& plan)
    {
        const PlanCalendar& calendar = advice_.formulation->calendar;
        const Occasion& occasion = *request_.input.occasion;
        const auto course = static_cast<std::size_t>(
            std::ranges::find(occasion.courses, change.moves.front().course, &Course::id) -
            occasion.courses.begin());
        const PlanTime wanted = calendar.planTime(occasion.courses[course].serving);
        const auto& task = plan->formulation->servings.at(occasion.courses[course].id);
        const Minutes found = *plan->schedule.starts[task] - wanted;
        Minutes fails = calendar.planTime(change.moves.front().to) - wanted;
        Minutes works = (found + servingGrain - Minutes{1}) / servingGrain * servingGrain;
        PlanInput best = input;
        PlanPtr bestPlan = plan;
        while (works - fails > servingGrain && !stop_.stop_requested()) {
            const Minutes between = (fails + works) / 2 / servingGrain * servingGrain;
            const PlanInput tried =
                applied(request_.input, servedLater(occasion, calendar, course, between));
            ++advice_.tried;
            if (const Tried outcome = firstPlan(tried, request_.first, stop_); outcome.plan) {
                works = between;
                best = tried;
                bestPlan = outcome.plan;
            } else {
                fails = between;
            }
        }
        keep({change}, best, bestPlan);
    }

    [[nodiscard]] bool isEnoughOf(const EveningChange& change) const
    {
        const auto alike = std::ranges::count_if(advice_.ways, [&](const WayOut& way) {
            return way.changes.front().index() == change.index();
        });
        // Serving later still is no other way.
        return alike >= static_cast<std::ptrdiff_t>(mostOfAKind) ||
               (alike > 0 && isSameServing(change));
    }

    /// Nobody fetches an oven where moving a step does.
    [[nodiscard]] bool isTooDear(const EveningChange& change) const
    {
        const std::int64_t least = leastPointsOf(change);
        return (isEnoughToArrange_ && least > mostBesideArranging) ||
               std::ranges::any_of(advice_.ways, [&](const WayOut& way) {
                   return least > way.points + mostDearer;
               });
    }

    [[nodiscard]] bool isSameServing(const EveningChange& change) const
    {
        const auto* later = std::get_if<ServeLater>(&change);
        return later != nullptr && std::ranges::any_of(advice_.ways, [&](const WayOut& way) {
                   const auto* known = std::get_if<ServeLater>(&way.changes.front());
                   return known != nullptr &&
                          std::ranges::any_of(known->moves, [&](const ServingMove& move) {
                              return move.course == later->moves.front().course;
                          });
               });
    }

    /// Whether a change of the evening has to do with a conflict; without one everything has.
    [[nodiscard]] static bool bearsOn(const PlanInput& input, const Problem& before,
                                      const std::vector<std::string>& conflict)
    {
        if (conflict.empty()) {
            return true;
        }
        const auto after = formulate(input);
        return after && touches(before, conflict, (*after)->problem);
    }

    /// Each of the changes that help only in part, with one more that meets what is left.
    void tryPairs()
    {
        const std::vector<HalfWay> firsts = std::exchange(halfWays_, {});
        for (const HalfWay& first : firsts) {
            const PlanInput between = applied(request_.input, first.change);
            const Concern concern = concernOf(*first.formulation, first.conflict);
            for (const EveningChange& second :
                 candidatesFor(between, *first.formulation, nullptr, concern)) {
                if (isOver()) {
                    return;
                }
                if (second.index() != first.change.index()) {
                    tryPair(first, between, second);
                }
            }
        }
    }

    void tryPair(const HalfWay& first, const PlanInput& between, const EveningChange& second)
    {
        // Times that are still wide would be narrowed for both at once.
        if (isWide(first.change) || std::ranges::any_of(advice_.ways, [&](const WayOut& way) {
                return way.changes.front().index() == first.change.index() &&
                       way.changes.back().index() == second.index();
            })) {
            return;
        }
        const PlanInput input = triedWith(between, second);
        if (!bearsOn(input, first.formulation->problem, first.conflict)) {
            return;
        }
        ++advice_.tried;
        const Tried tried = firstPlan(input, request_.first, stop_);
        if (tried.plan) {
            keep({first.change, second}, input, tried.plan);
        }
        report(nullptr);
    }

    [[nodiscard]] static bool isWide(const EveningChange& change)
    {
        return std::holds_alternative<ServeLater>(change) ||
               std::holds_alternative<FreeCook>(change) || std::holds_alternative<Helper>(change);
    }

    /// Plans the evening well, narrows the last change to what the plan uses, lays the outcome out
    /// as it would be kept, and tells of it if it holds.
    void keep(std::vector<EveningChange> changes, const PlanInput& input, PlanPtr plan)
    {
        plan = betterPlan(better(input, changes.back()), stop_, plan);
        PlanInput start = request_.input;
        for (std::size_t i = 0; i + 1 < changes.size(); ++i) {
            start = applied(start, changes[i]);
        }
        auto use = narrowed(changes.back(), start, *plan);
        if (!use) {
            return;
        }
        changes.back() = use->change;
        Layout layout = layoutOf(*plan->formulation, use->schedule, *input.layout);
        const std::int64_t forMoving = plan->figures.cost.before;
        WayOut way;
        way.changes = std::move(changes);
        way.before = request_.input;
        way.laidOut = request_.laidOut;
        way.clash = request_.clash;
        way.after = applied(start, way.changes.back());
        for (const EveningChange& change : way.changes) {
            layout = released(std::move(layout), change, *request_.input.layout);
        }
        way.after.layout = std::make_shared<const Layout>(std::move(layout));
        way.plan = laidOut(way.after);
        if (!way.plan) {
            way.plan = planned(way);
        }
        if (!way.plan || isKnown(way) || !isNeeded(way)) {
            return;
        }
        measure(way, way.plan->figures.cost.total() + forMoving);
        report(&advice_.ways.emplace_back(std::move(way)));
    }

    /// To wash the tool is a way out of its own, not part of arranging anew.
    [[nodiscard]] PlanRequest better(const PlanInput& input, const EveningChange& change) const
    {
        PlanRequest request{input, request_.better};
        request.mayWash = !std::holds_alternative<PlanAnew>(change) || !request_.clash ||
                          request_.clash->kind != ClashKind::UnwashedTool;
        return request;
    }

    /// Null if it does not hold; what was wrong with the food before may be so still, but for the
    /// clash that this is about.
    [[nodiscard]] PlanPtr laidOut(const PlanInput& input) const
    {
        auto formulation = formulate(input);
        if (!formulation) {
            return nullptr;
        }
        PlanPtr plan = judgePlan(*formulation, input, layOut(**formulation, *input.layout));
        const bool holds = std::ranges::all_of(plan->clashes, [&](const Clash& clash) {
            const bool isAbout = request_.clash && isSameFood(clash, *request_.clash);
            return isOfFood(clash.kind) && !isAbout &&
                   std::ranges::any_of(foodClashes_, [&](const Clash& before) {
                       return isSameFood(clash, before);
                   });
        });
        return holds ? plan : nullptr;
    }

    /// Where what was found does not hold under the narrowed change, it is planned once more.
    [[nodiscard]] PlanPtr planned(WayOut& way) const
    {
        const Tried again = firstPlan(way.after, request_.first, stop_);
        if (!again.plan) {
            return nullptr;
        }
        const PlanPtr plan = betterPlan(better(way.after, way.changes.back()), stop_, again.plan);
        way.after.layout = std::make_shared<const Layout>(
            layoutOf(*plan->formulation, plan->schedule, *way.after.layout));
        return laidOut(way.after);
    }

    /// Whether the plan does not hold without the changes just as well.
    [[nodiscard]] bool isNeeded(const WayOut& way) const
    {
        const bool changesMore = *way.after.occasion != *way.before.occasion ||
                                 *way.after.kitchen != *way.before.kitchen;
        if (!changesMore) {
            return true;
        }
        PlanInput without = way.before;
        without.layout = way.after.layout;
        return laidOut(without) == nullptr;
    }

    [[nodiscard]] bool isKnown(const WayOut& way) const
    {
        return std::ranges::any_of(advice_.ways, [&](const WayOut& known) {
            return known.changes == way.changes ||
                   (*known.after.occasion == *way.after.occasion &&
                    *known.after.kitchen == *way.after.kitchen &&
                    known.after.layout->starts == way.after.layout->starts &&
                    known.after.layout->options == way.after.layout->options &&
                    known.after.layout->units == way.after.layout->units &&
                    known.after.layout->washed == way.after.layout->washed &&
                    known.after.layout->ovenSettings == way.after.layout->ovenSettings);
        });
    }

    void measure(WayOut& way, std::int64_t cost)
    {
        if (!asItIs_) {
            asItIs_ = request_.laidOut ? request_.laidOut->figures.cost.total() : cost;
        }
        for (const EveningChange& change : way.changes) {
            way.points += pointsOf(change);
        }
        way.points += std::max<std::int64_t>(0, cost - *asItIs_) / costUnitsAPoint;
        if (!request_.laidOut) {
            return;
        }
        const Formulation& now = *request_.laidOut->formulation;
        const Formulation& then = *way.plan->formulation;
        for (const TaskIndex task : then.problem.tasks.indices()) {
            const auto there = now.taskById.find(then.problem.tasks[task].id);
            const auto& to = way.plan->schedule.starts[task];
            if (there == now.taskById.end() || !to || !isDeed(then.tasks[task].role)) {
                continue;
            }
            const auto& from = request_.laidOut->schedule.starts[there->second];
            if (from && now.calendar.instant(*from) != then.calendar.instant(*to)) {
                way.moved.push_back(
                    {task, now.calendar.instant(*from), then.calendar.instant(*to)});
            }
        }
        std::ranges::stable_sort(way.moved, std::greater{}, [](const MovedStep& step) {
            return std::chrono::abs(step.to - step.from);
        });
    }

    [[nodiscard]] static bool isDeed(TaskRole role)
    {
        return role == TaskRole::Step || role == TaskRole::HouseJob || role == TaskRole::Trip;
    }

    const AdviceRequest& request_;
    std::stop_token stop_;
    const AdviceSink& sink_;
    Advice advice_;
    std::vector<Clash> foodClashes_; // of the evening as it is
    std::vector<HalfWay> halfWays_;
    std::optional<std::int64_t> asItIs_; // what plans are compared with
    bool isEnoughToArrange_ = false;
    std::size_t toTry_ = 1;
};

} // namespace

Result<Advice> findWaysOut(const AdviceRequest& request, const std::stop_token& stop,
                           const AdviceSink& sink)
{
    return Finder(request, stop, sink).find();
}

} // namespace suppertide
