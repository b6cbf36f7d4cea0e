// What the user sees of a plan's goodness.
#include <algorithm>

#include "core/plan/clash_finder.h"
#include "core/problem/oven_curve.h"

namespace suppertide {

namespace {

constexpr Minutes lastHour{60};
constexpr std::int64_t percent = 100;
constexpr std::int64_t minutesPerHour = 60;

class Figures
{
public:
    Figures(const Formulation& formulation, const Schedule& schedule)
        : formulation_(formulation), problem_(formulation.problem), schedule_(schedule),
          times_(problem_, schedule)
    {}

    PlanFigures make() const
    {
        PlanFigures figures;
        figures.cost = costOf(problem_, schedule_);
        figures.handsOnTotal = handsOn({{planTime(0), problem_.horizon}});
        if (const auto first = firstServing()) {
            figures.handsOnLastHour = handsOn({{*first - lastHour, *first}});
        }
        figures.handsOnAtTable = handsOn(atTable());
        for (const OvenIndex oven : problem_.ovens.indices()) {
            const OvenCurve curve(problem_.ovens[oven], schedule_.programs[oven]);
            figures.ovenOn += curve.onBefore(problem_.horizon);
            figures.ovenChanges += curve.changes();
        }
        figures.sessions = sessions();
        figures.lossOfQuality = lossOfQuality();
        return figures;
    }

private:
    /// Minutes weighted by attention and number of cooks, within any of these times.
    [[nodiscard]] Minutes handsOn(const std::vector<Interval>& during) const
    {
        std::int64_t percentMinutes = 0;
        for (const TaskIndex index : problem_.tasks.indices()) {
            const Task& task = problem_.tasks[index];
            const auto when = times_.interval(index);
            if (!when || !task.needsCooks()) {
                continue;
            }
            Minutes within{0};
            for (const Interval& part : during) {
                within += when->common(part).length();
            }
            percentMinutes += within.count() * task.hands->attention.percent() * task.hands->cooks;
        }
        return Minutes{(percentMinutes + percent / 2) / percent};
    }

    [[nodiscard]] std::optional<PlanTime> firstServing() const
    {
        std::optional<PlanTime> first;
        for (const auto& [course, event] : formulation_.servings) {
            if (const auto when = times_.time({event, Edge::Start})) {
                first = std::min(first.value_or(*when), *when);
            }
        }
        return first;
    }

    /// Times when some host sits at table, not overlapping.
    [[nodiscard]] std::vector<Interval> atTable() const
    {
        std::vector<Interval> all;
        for (const Cook& cook : problem_.cooks) {
            const std::vector<Interval> seated = times_.atTable(cook);
            all.insert(all.end(), seated.begin(), seated.end());
        }
        std::ranges::sort(all);
        std::vector<Interval> apart;
        for (const Interval& each : all) {
            if (!apart.empty() && each.start <= apart.back().end) {
                apart.back().end = std::max(apart.back().end, each.end);
            } else {
                apart.push_back(each);
            }
        }
        return apart;
    }

    [[nodiscard]] int sessions() const
    {
        int count = 0;
        for (const CookIndex cook : problem_.cooks.indices()) {
            std::vector<Interval> work;
            for (const TaskIndex task : problem_.tasks.indices()) {
                const auto& cooks = schedule_.cooks[task];
                const auto when = times_.interval(task);
                if (when && std::ranges::find(cooks, cook) != cooks.end()) {
                    work.push_back(*when);
                }
            }
            std::ranges::sort(work);
            std::optional<PlanTime> last;
            for (const Interval& each : work) {
                count += !last || each.start > *last + problem_.costs.sessionGap ? 1 : 0;
                last = std::max(last.value_or(each.end), each.end);
            }
        }
        return count;
    }

    /// In points: what is lost an hour, for the time above the least, half an hour rounded up.
    [[nodiscard]] std::int64_t lossOfQuality() const
    {
        std::int64_t pointMinutes = 0;
        for (const LagIndex index : problem_.lags.indices()) {
            const LagSource& source = formulation_.lags[index];
            const auto from = times_.time(problem_.lags[index].from);
            const auto to = times_.time(problem_.lags[index].to);
            if (source.lossPerHour > 0 && from && to && *to - *from > source.least) {
                pointMinutes += source.lossPerHour * (*to - *from - source.least).count();
            }
        }
        return (pointMinutes + minutesPerHour / 2) / minutesPerHour;
    }

    const Formulation& formulation_;
    const Problem& problem_;
    const Schedule& schedule_;
    Timetable times_;
};

} // namespace

PlanFigures figuresOf(const Formulation& formulation, const Schedule& schedule)
{
    return Figures(formulation, schedule).make();
}

} // namespace suppertide
