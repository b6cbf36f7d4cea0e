#include "core/advice/narrow.h"

#include <algorithm>

#include "core/advice/helping_hours.h"
#include "core/check/check.h"

namespace suppertide {

namespace {

/// People come and guests are called at such minutes.
constexpr Minutes grain{5};

class Narrowing
{
public:
    Narrowing(const PlanInput& input, const Plan& plan)
        : input_(input), formulation_(*plan.formulation), schedule_(plan.schedule)
    {}

    std::optional<EveningChange> operator()(const ServeLater& change) const
    {
        ServeLater used;
        for (const ServingMove& move : change.moves) {
            const auto task = formulation_.servings.find(move.course);
            if (task == formulation_.servings.end() || !schedule_.starts[task->second]) {
                continue;
            }
            const PlanTime served = *schedule_.starts[task->second];
            const PlanTime wanted = formulation_.calendar.planTime(move.from);
            if (served > wanted) {
                const Minutes by = (served - wanted + grain - Minutes{1}) / grain * grain;
                used.moves.push_back(
                    {move.course, move.from, formulation_.calendar.civil(wanted + by)});
            }
        }
        return used.moves.empty() ? std::nullopt : std::optional(EveningChange{used});
    }

    std::optional<EveningChange> operator()(const FreeCook& change)
    {
        auto hours = hoursOf(change.cook.text(), change.from, change.to);
        if (!hours) {
            return std::nullopt;
        }
        // Who comes earlier stays, and who goes later has not gone meanwhile.
        const auto cook = std::ranges::find(input_.kitchen->cooks, change.cook, &KitchenCook::id);
        if (cook != input_.kitchen->cooks.end()) {
            for (const Hours& free : hoursOn(*input_.occasion, *cook, change.from.date)) {
                if (free.presence == Presence::Free && free.from == change.to.clock) {
                    hours->second = change.to;
                }
                if (free.presence == Presence::Free && free.to == change.from.clock) {
                    hours->first = change.from;
                }
            }
        }
        return EveningChange{FreeCook{change.cook, hours->first, hours->second}};
    }

    std::optional<EveningChange> operator()(const Helper& change)
    {
        // The helper is the last of the cooks.
        const std::size_t last = formulation_.problem.cooks.size() - 1;
        const auto hours =
            hoursOf(formulation_.problem.cooks[CookIndex{last}].id, change.from, change.to);
        return hours ? std::optional(EveningChange{Helper{hours->first, hours->second}})
                     : std::nullopt;
    }

    template <typename Other>
    std::optional<EveningChange> operator()(const Other& change) const
    {
        return EveningChange{change};
    }

    [[nodiscard]] const Schedule& schedule() const { return schedule_; }

private:
    /// What the cook does within these hours and nobody else can; whole steps of the clock. A job
    /// that begins or ends within is done within as far as it goes.
    std::optional<std::pair<CivilTime, CivilTime>>
    hoursOf(const std::string& id, const CivilTime& from, const CivilTime& to)
    {
        const PlanCalendar& calendar = formulation_.calendar;
        const PlanTime begins = calendar.planTime(CivilTime{from.date, {}});
        const Interval within{begins + minuteOfDay(from.clock), begins + minuteOfDay(to.clock)};
        std::optional<Interval> used;
        for (const CookIndex cook : formulation_.problem.cooks.indices()) {
            if (formulation_.problem.cooks[cook].id == id) {
                used = usedBy(cook, within);
            }
        }
        if (!used) {
            return std::nullopt;
        }
        const Minutes first = (used->start - begins) / grain * grain;
        const Minutes last = (used->end - begins + grain - Minutes{1}) / grain * grain;
        return std::pair{CivilTime{from.date, clockAt(std::max(first, minuteOfDay(from.clock)))},
                         CivilTime{from.date, clockAt(std::min(last, minuteOfDay(to.clock)))}};
    }

    std::optional<Interval> usedBy(CookIndex cook, const Interval& within)
    {
        std::optional<Interval> used;
        for (const TaskIndex task : formulation_.problem.tasks.indices()) {
            std::vector<CookIndex>& cooks = schedule_.cooks[task];
            const auto place = std::ranges::find(cooks, cook);
            const auto& start = schedule_.starts[task];
            if (place == cooks.end() || !start) {
                continue;
            }
            const Interval part =
                Interval{*start, *start + formulation_.problem.tasks[task].duration}.common(within);
            if (part.empty() || isHandedOver(task, place - cooks.begin())) {
                continue;
            }
            used = used ? Interval{std::min(used->start, part.start), std::max(used->end, part.end)}
                        : part;
        }
        return used;
    }

    /// Gives the task to any other cook who can take it on.
    bool isHandedOver(TaskIndex task, std::ptrdiff_t place)
    {
        const auto index = static_cast<std::size_t>(place);
        const CookIndex was = schedule_.cooks[task][index];
        for (const CookIndex other : formulation_.problem.cooks.indices()) {
            if (std::ranges::find(schedule_.cooks[task], other) != schedule_.cooks[task].end()) {
                continue;
            }
            schedule_.cooks[task][index] = other;
            if (check(formulation_.problem, schedule_).empty()) {
                return true;
            }
            schedule_.cooks[task][index] = was;
        }
        return false;
    }

    const PlanInput& input_;
    const Formulation& formulation_;
    Schedule schedule_;
};

} // namespace

PlanInput triedWith(const PlanInput& input, const EveningChange& change)
{
    PlanInput tried = applied(input, change);
    if (const auto* later = std::get_if<ServeLater>(&change)) {
        Occasion occasion = *tried.occasion;
        for (Course& course : occasion.courses) {
            if (std::ranges::find(later->moves, course.id, &ServingMove::course) !=
                later->moves.end()) {
                course.isServingPinned = false;
            }
        }
        tried.occasion = std::make_shared<const Occasion>(std::move(occasion));
    }
    return tried;
}

std::optional<Narrowed> narrowed(const EveningChange& change, const PlanInput& input,
                                 const Plan& plan)
{
    Narrowing narrowing(input, plan);
    auto used = std::visit(narrowing, change);
    if (!used) {
        return std::nullopt;
    }
    return Narrowed{*std::move(used), narrowing.schedule()};
}

} // namespace suppertide
