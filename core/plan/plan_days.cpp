#include "core/plan/plan_days.h"

#include <algorithm>

namespace suppertide {

namespace {

constexpr int mostDaysAhead = 7;
/// After the last course has been eaten there is so long to wash up.
constexpr Minutes washingUp{4 * 60};

/// The least time from the start of a making's first step to the moment it is served or used:
/// durations and waits, one after the other, whoever does it.
class LeastLead
{
public:
    explicit LeastLead(const std::vector<Making>& makings) : makings_(makings) {}

    Minutes longest()
    {
        // Users stand before their preparations, so what follows a preparation is known.
        std::vector<std::vector<Minutes>> fromStep(makings_.size());
        Minutes longest{0};
        for (std::size_t index = 0; index < makings_.size(); ++index) {
            const Making& making = makings_[index];
            Minutes afterwards{0};
            for (const Consumer& consumer : making.consumers) {
                const std::size_t user = makings_[consumer.making].batches[consumer.batch].step;
                afterwards = std::max(afterwards, fromStep[consumer.making][user]);
            }
            fromStep[index] = stepLeads(making, afterwards);
            for (const Minutes lead : fromStep[index]) {
                longest = std::max(longest, lead);
            }
        }
        return longest;
    }

private:
    /// From the start of each step.
    static std::vector<Minutes> stepLeads(const Making& making, Minutes afterwards)
    {
        std::vector<Minutes> leads(making.steps.size(), Minutes{0});
        const std::vector<Wait> waits = allWaits(making);
        for (std::size_t i = making.steps.size(); i-- > 0;) {
            const MadeStep& made = making.steps[i];
            Minutes after = afterwards + leastWait(waits, made.step.id, std::nullopt);
            for (std::size_t later = i + 1; later < making.steps.size(); ++later) {
                const MadeStep& next = making.steps[later];
                if (std::ranges::find(next.before, i) != next.before.end()) {
                    after = std::max(after,
                                     leads[later] + leastWait(waits, made.step.id, next.step.id));
                }
            }
            const DurationRange range = scaledDuration(made.step, making.recipe->portions,
                                                       making.shareOf(made.variants).total());
            const auto batches = static_cast<Minutes::rep>(made.batches.size());
            leads[i] = after + range.most * batches + made.step.ovenIn + made.step.ovenOut;
        }
        return leads;
    }

    static std::vector<Wait> allWaits(const Making& making)
    {
        std::vector<Wait> waits;
        const auto add = [&](const RecipePart& part) {
            waits.insert(waits.end(), part.waits.begin(), part.waits.end());
        };
        for (const MakingVariant& variant : making.variants) {
            add(variant.recipe.part);
            for (const MethodChoice& choice : variant.recipe.methods) {
                for (const Method& method : choice.methods) {
                    add(method.part);
                }
            }
        }
        return waits;
    }

    static Minutes leastWait(const std::vector<Wait>& waits, const StepId& from,
                             const std::optional<StepId>& to)
    {
        Minutes least{0};
        for (const Wait& wait : waits) {
            if (wait.from.step == from && wait.from.edge == StepEdge::End && wait.to.step == to) {
                least = std::max(least, wait.least);
            }
        }
        return least;
    }

    const std::vector<Making>& makings_;
};

class DayFinder
{
public:
    DayFinder(const PlanInput& input, const TimeZone& zone) : input_(input), zone_(zone) {}

    PlanDays find(const std::vector<Making>& makings)
    {
        const Occasion& occasion = *input_.occasion;
        const Instant first = servedFirst();
        const CivilDate earliest = addDays(zone_.civil(first).date, -mostDaysAhead);
        // A day to spare before the least that is needed: nights and cooks' hours come between.
        CivilDate day = addDays(zone_.civil(first - LeastLead(makings).longest()).date, -1);
        for (const HouseJob& job : occasion.houseJobs) {
            day = std::min(day, job.earliest.date);
        }
        for (const ShoppingTrip& trip : occasion.trips) {
            day = std::min(day, trip.earliest.date);
        }
        for (const auto& [cook, days] : occasion.hours) {
            for (const HoursOfDay& hours : days) {
                day = hours.hours.empty() ? day : std::min(day, hours.date);
            }
        }
        for (const auto& [task, start] : input_.layout->starts) {
            day = std::min(day, zone_.civil(start).date);
        }
        for (const OvenSettingPin& pin : input_.layout->ovenSettings) {
            day = std::min(day, zone_.civil(pin.from).date);
        }
        PlanDays days{{zone_.instant(CivilTime{std::max(day, earliest), {}}), zone_}, {}};
        days.horizon = days.calendar.planTime(end());
        return days;
    }

private:
    [[nodiscard]] Instant servedFirst() const
    {
        return zone_.instant(input_.occasion->courses.front().serving);
    }

    [[nodiscard]] Instant end() const
    {
        Instant last = servedFirst();
        for (const Course& course : input_.occasion->courses) {
            constexpr Minutes latestBy{30}; // a course that is not pinned
            const Minutes late = course.isServingPinned ? Minutes{0} : latestBy;
            last = std::max(last, zone_.instant(course.serving) + late + course.atTable);
        }
        last += washingUp;
        for (const HouseJob& job : input_.occasion->houseJobs) {
            const Instant by = zone_.instant(job.latest);
            last = by < last + Minutes{24 * 60} ? std::max(last, by) : last;
        }
        return last;
    }

    const PlanInput& input_;
    const TimeZone& zone_;
};

} // namespace

PlanDays planDays(const PlanInput& input, const std::vector<Making>& makings, const TimeZone& zone)
{
    return DayFinder(input, zone).find(makings);
}

} // namespace suppertide
