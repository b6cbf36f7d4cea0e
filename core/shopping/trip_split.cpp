#include "core/shopping/trip_split.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/shopping/day_words.h"

namespace suppertide::shopping {

namespace {

/// What keeps longer is bought early with the dry goods; what does not, as late as can be (our own
/// choice).
constexpr int dryGoodsKeep = 7;

/// One time of going shopping, with what binds it.
struct Going
{
    TripOfList trip;
    Instant back; // with what was bought
    CivilDate day;
    const ShoppingTrip* stated = nullptr; // null: proposed
};

bool isToBuy(const ShoppingLine& line)
{
    return line.toBuy.value > Rational{0} || line.toBuy.unit == Unit::ToTaste;
}

std::optional<Instant> lastUse(const ShoppingLine& line)
{
    std::optional<Instant> last = line.firstUse;
    for (const ShoppingNeed& need : line.needs) {
        if (need.takenFrom.empty() && need.firstUse && (!last || *need.firstUse > *last)) {
            last = need.firstUse;
        }
    }
    return last;
}

std::optional<Instant> plannedEnd(const Plan* plan, const HouseJobId& job)
{
    if (plan == nullptr) {
        return std::nullopt;
    }
    const Formulation& formulation = *plan->formulation;
    for (const TaskIndex task : formulation.tasks.indices()) {
        const TaskSource& source = formulation.tasks[task];
        const auto when = plan->interval(task);
        if (source.role == TaskRole::Trip && source.job == job && when) {
            return formulation.calendar.instant(when->end);
        }
    }
    return std::nullopt;
}

class TripSplitter
{
public:
    TripSplitter(ShoppingList& list, const ShoppingInput& input)
        : list_(list), input_(input),
          zone_(TimeZone::find(list.zone) ? *TimeZone::find(list.zone) : TimeZone::utc())
    {}

    void split()
    {
        findTrips();
        std::vector<bool> isUsed(goings_.size(), false);
        for (ShoppingLine& line : list_.lines) {
            if (isToBuy(line) && !goings_.empty()) {
                line.trip = bestFor(line);
                noteWhatDoesNotFit(line, goings_[*line.trip]);
                isUsed[*line.trip] = true;
            }
        }
        keepUsed(isUsed);
    }

private:
    void findTrips()
    {
        for (const ShoppingTrip& trip : input_.evening.occasion->trips) {
            const Instant back =
                plannedEnd(input_.plan.get(), trip.id).value_or(zone_.instant(trip.latest));
            const CivilTime when = zone_.civil(back);
            goings_.push_back({{trip.id, trip.name, when}, back, when.date, &trip});
        }
        if (goings_.empty()) {
            propose();
        }
        std::ranges::stable_sort(goings_, {}, &Going::back);
    }

    void propose()
    {
        std::optional<Instant> first;
        for (const ShoppingLine& line : list_.lines) {
            if (isToBuy(line) && line.firstUse && (!first || *line.firstUse < *first)) {
                first = line.firstUse;
            }
        }
        if (!first) {
            return;
        }
        const CivilDate day = zone_.civil(*first).date;
        const auto add = [&](const char* name, int before) {
            const CivilTime when{addDays(day, -before), {18, 0}};
            goings_.push_back(
                {{std::nullopt, name, when}, zone_.instant(when), when.date, nullptr});
        };
        add("A week before", dryGoodsKeep);
        add("The day before", 1);
    }

    [[nodiscard]] static bool isInTime(const ShoppingLine& line, const Going& going)
    {
        return !line.firstUse || going.back <= *line.firstUse;
    }

    [[nodiscard]] int daysKept(const ShoppingLine& line, const Going& going) const
    {
        const auto last = lastUse(line);
        return last ? daysBetween(going.day, zone_.civil(*last).date) : 0;
    }

    [[nodiscard]] bool isFresh(const ShoppingLine& line, const Going& going) const
    {
        // Of what nobody knows, the program proposes the day before.
        const std::optional<int> keeps =
            line.keepsDays || going.stated != nullptr ? line.keepsDays : std::optional{1};
        const bool isTimely = going.stated == nullptr || !going.stated->freshness ||
                              !line.firstUse ||
                              *line.firstUse - going.back <= *going.stated->freshness;
        return isTimely && (!keeps || daysKept(line, going) <= *keeps);
    }

    [[nodiscard]] static bool isPerishable(const ShoppingLine& line)
    {
        return line.keepsDays && *line.keepsDays <= dryGoodsKeep;
    }

    [[nodiscard]] static bool covers(const ShoppingLine& line, const Going& going)
    {
        if (going.stated == nullptr || going.stated->forDishes.empty()) {
            return true;
        }
        const auto& dishes = going.stated->forDishes;
        return std::ranges::all_of(line.needs, [&](const ShoppingNeed& need) {
            return std::ranges::all_of(need.dishes, [&](const DishId& dish) {
                return std::ranges::find(dishes, dish) != dishes.end();
            });
        });
    }

    /// In time, then fresh, then for the dishes that it is said to be for; then late if it does not
    /// keep long, else early.
    [[nodiscard]] std::size_t bestFor(const ShoppingLine& line) const
    {
        std::size_t best = 0;
        std::tuple<bool, bool, bool> most;
        for (std::size_t i = 0; i < goings_.size(); ++i) {
            const std::tuple score{isInTime(line, goings_[i]), isFresh(line, goings_[i]),
                                   covers(line, goings_[i])};
            const bool isLaterBetter =
                std::get<0>(score) && (!std::get<1>(score) || isPerishable(line));
            if (i == 0 || score > most || (score == most && isLaterBetter)) {
                best = i;
                most = score;
            }
        }
        return best;
    }

    void noteWhatDoesNotFit(ShoppingLine& line, const Going& going) const
    {
        if (!isInTime(line, going)) {
            const CivilTime first = zone_.civil(*line.firstUse);
            line.notes.push_back(fmt::format(
                "It is needed on {} at {}, before anybody goes shopping: go earlier, or see that "
                "there is some.",
                dayWords(first.date), toIso(first.clock)));
        } else if (line.keepsDays && daysKept(line, going) > *line.keepsDays) {
            line.notes.push_back(fmt::format(
                "It keeps about {} {} and is wanted {} after “{}”: go later, or take care that it "
                "is fresh.",
                *line.keepsDays, *line.keepsDays == 1 ? "day" : "days",
                daysKept(line, going) == 1 ? "1 day"
                                           : fmt::format("{} days", daysKept(line, going)),
                going.trip.name));
        }
    }

    /// Stated trips stay, also if they bring nothing; proposed ones only if they do.
    void keepUsed(const std::vector<bool>& isUsed)
    {
        std::vector<std::size_t> place(goings_.size(), 0);
        for (std::size_t i = 0; i < goings_.size(); ++i) {
            place[i] = list_.trips.size();
            if (isUsed[i] || goings_[i].stated != nullptr) {
                list_.trips.push_back(goings_[i].trip);
            }
        }
        for (ShoppingLine& line : list_.lines) {
            if (line.trip) {
                line.trip = place[*line.trip];
            }
        }
    }

    ShoppingList& list_;
    const ShoppingInput& input_;
    TimeZone zone_;
    std::vector<Going> goings_;
};

} // namespace

void splitOverTrips(ShoppingList& list, const ShoppingInput& input)
{
    TripSplitter(list, input).split();
}

} // namespace suppertide::shopping
