// Shopping trips (formulate rules 11 and 13): before the first use of what they buy and no earlier
// than its freshness allows; while the only one at home is out, nothing may be hot.
#include <algorithm>

#include "core/plan/evening.h"
#include "core/plan/presence.h"

namespace suppertide {

namespace {

/// Some hours in which the trip may be made, and whether somebody else is at home all the while.
struct TripWindow
{
    Interval when;
    bool leavesHomeEmpty = false;
};

/// Steps of a making that take something bought and come after no other such step.
std::vector<std::size_t> firstUses(const Making& making)
{
    std::vector<bool> comesAfterOne(making.steps.size(), false);
    const auto buys = [](const MadeStep& made) {
        return made.step.lines.empty() ||
               std::ranges::any_of(made.lines,
                                   [](const IngredientLine& line) { return !line.preparation; });
    };
    std::vector<std::size_t> first;
    for (std::size_t step = 0; step < making.steps.size(); ++step) {
        for (const std::size_t before : making.steps[step].before) {
            comesAfterOne[step] =
                comesAfterOne[step] || comesAfterOne[before] || buys(making.steps[before]);
        }
        if (!comesAfterOne[step] && buys(making.steps[step])) {
            first.insert(first.end(), making.steps[step].batches.begin(),
                         making.steps[step].batches.end());
        }
    }
    return first;
}

class TripWriter
{
public:
    TripWriter(Evening& evening, const ShoppingTrip& trip)
        : evening_(evening), draft_(evening.draft), trip_(trip)
    {}

    void write()
    {
        const std::vector<std::size_t> makings = makingsFor();
        if (makings.empty()) {
            return; // nothing to buy
        }
        std::vector<TripWindow> windows = windowsFor();
        const std::string id = "trip/" + trip_.id.text();
        if (windows.size() == 1) {
            writeTask(id, windows.front(), makings);
            return;
        }
        const ChoiceIndex choice = draft_.addChoice(id, {ChoiceKind::Trip, {}, {}, trip_.name, {}});
        const auto said = evening_.layout().options.find(id);
        for (const TripWindow& window : windows) {
            const std::string day = toIso(draft_.calendar().civil(window.when.start));
            const std::string option = window.leavesHomeEmpty ? day + "-alone" : day;
            const bool isPinned = evening_.layout().pinned.contains(id) &&
                                  said != evening_.layout().options.end() && isKnown(windows);
            if (isPinned && said->second != option) {
                continue;
            }
            const OptionRef ref = draft_.addOption(choice, option, option);
            const TaskIndex task = writeTask(id + "@" + option, window, makings);
            draft_.putInto(ref, task);
        }
    }

private:
    [[nodiscard]] bool isKnown(const std::vector<TripWindow>& windows) const
    {
        const auto said = evening_.layout().options.find("trip/" + trip_.id.text());
        return std::ranges::any_of(windows, [&](const TripWindow& window) {
            const std::string day = toIso(draft_.calendar().civil(window.when.start));
            return said->second == (window.leavesHomeEmpty ? day + "-alone" : day);
        });
    }

    /// Its dishes, and the preparations that only they use.
    [[nodiscard]] std::vector<std::size_t> makingsFor() const
    {
        std::vector<bool> isFor(evening_.makings.size(), false);
        std::vector<std::size_t> result;
        for (std::size_t index = 0; index < evening_.makings.size(); ++index) {
            const Making& making = evening_.makings[index];
            if (trip_.forDishes.empty()) {
                isFor[index] = true;
            } else if (!making.isPreparation) {
                isFor[index] =
                    std::ranges::find(trip_.forDishes, making.dish->id) != trip_.forDishes.end();
            } else {
                isFor[index] = std::ranges::all_of(making.consumers, [&](const Consumer& consumer) {
                    return isFor[consumer.making];
                });
            }
            if (isFor[index]) {
                result.push_back(index);
            }
        }
        return result;
    }

    /// Each stretch in which who goes is free, and, within it, those in which somebody else is at
    /// home. The latest first: what is bought is then freshest.
    [[nodiscard]] std::vector<TripWindow> windowsFor() const
    {
        const Interval allowed = Interval{draft_.calendar().planTime(trip_.earliest),
                                          draft_.calendar().planTime(trip_.latest)}
                                     .common(draft_.wholeHorizon());
        std::vector<TripWindow> windows;
        const auto& cooks = evening_.kitchen().cooks;
        const bool anyWatched = evening_.things.contains({ResourceKind::Watch, "watch"});
        std::vector<CookPresence> presence;
        for (const KitchenCook& cook : cooks) {
            presence.push_back(
                presenceOf(cook, evening_.occasion(), draft_.calendar(), draft_.wholeHorizon()));
        }
        for (std::size_t i = 0; i < cooks.size(); ++i) {
            if (trip_.cook && cooks[i].id != *trip_.cook) {
                continue;
            }
            std::vector<Interval> others;
            for (std::size_t j = 0; j < cooks.size(); ++j) {
                if (j != i) {
                    others.insert(others.end(), presence[j].atHome.begin(),
                                  presence[j].atHome.end());
                }
            }
            const auto free = common(presence[i].free, {allowed});
            addWindows(windows, free, anyWatched ? merged(std::move(others)) : free);
        }
        std::ranges::sort(windows, [](const TripWindow& one, const TripWindow& other) {
            return one.when != other.when ? one.when > other.when
                                          : one.leavesHomeEmpty < other.leavesHomeEmpty;
        });
        const auto same = [](const TripWindow& one, const TripWindow& other) {
            return one.when == other.when && one.leavesHomeEmpty == other.leavesHomeEmpty;
        };
        const auto rest = std::ranges::unique(windows, same);
        windows.erase(rest.begin(), rest.end());
        if (windows.empty()) {
            windows.push_back({allowed, false}); // a clash will say that nobody is free
        }
        return windows;
    }

    void addWindows(std::vector<TripWindow>& windows, const std::vector<Interval>& free,
                    const std::vector<Interval>& othersAtHome) const
    {
        const auto watched = common(free, othersAtHome);
        for (const Interval& when : watched) {
            if (when.length() >= trip_.duration) {
                windows.push_back({when, false});
            }
        }
        for (const Interval& when : free) {
            if (when.length() >= trip_.duration &&
                std::ranges::find(watched, when) == watched.end()) {
                windows.push_back({when, true});
            }
        }
    }

    TaskIndex writeTask(const std::string& id, const TripWindow& window,
                        const std::vector<std::size_t>& makings)
    {
        Task task;
        task.id = id;
        task.duration = trip_.duration;
        task.window = window.when;
        task.hands = Hands{undivided, 1, std::nullopt};
        TaskSource source;
        source.role = TaskRole::Trip;
        source.rule = Rule::BeforeTheDay;
        source.job = trip_.id;
        source.verb = "Shop";
        source.text = trip_.name;
        source.duration = {trip_.duration, trip_.duration, trip_.duration};
        const TaskIndex added = draft_.addTask(std::move(task), std::move(source));
        if (trip_.cook) {
            evening_.wantedCooks[added] = {*trip_.cook};
        }
        if (window.leavesHomeEmpty) {
            emptyHome(added, id);
        }
        for (const std::size_t making : makings) {
            writeUses(added, id, making, makings.size());
        }
        return added;
    }

    void emptyHome(TaskIndex trip, const std::string& id)
    {
        const KitchenThing& watch = thingOf(evening_, ResourceKind::Watch, "watch");
        Demand demand{id + ":watch", startOf(trip), endOf(trip), {}, 1, {}, 0, {}};
        demand.count = watch.count;
        demand.amount = draft_.count(*watch.count).capacity;
        draft_.addDemand(std::move(demand),
                         {Rule::Cooks, {}, {}, "watch", "nobody at home", false, false});
    }

    void writeUses(TaskIndex trip, const std::string& id, std::size_t index, std::size_t makings)
    {
        const Making& making = evening_.makings[index];
        const std::vector<std::size_t> uses = firstUses(making);
        const auto parts =
            static_cast<std::int64_t>(makings * std::max<std::size_t>(1, uses.size()));
        const std::int64_t tenths = (trip_.fridge.smallest() + parts - 1) / parts;
        for (const std::size_t batch : uses) {
            const TaskPoint use = evening_.batchTasks(index, batch).start();
            LagSource source = orderSource(making, Rule::BeforeTheDay);
            source.text = "bought on " + trip_.name;
            source.most = trip_.freshness;
            draft_.addLag(endOf(trip), use, {Minutes{0}, trip_.freshness}, source);
            if (tenths > 0) {
                Demand demand{id + ":fridge", endOf(trip), use, {}, tenths, {}, 0, {}};
                demand.count = thingOf(evening_, ResourceKind::Fridge, "fridge").count;
                DemandSource held = demandSource(making, Rule::BeforeTheDay, "fridge",
                                                 "shopping for " + making.name);
                held.isKeep = true;
                draft_.addDemand(std::move(demand), std::move(held));
            }
        }
    }

    Evening& evening_;
    FormulationDraft& draft_;
    const ShoppingTrip& trip_;
};

} // namespace

void addTrips(Evening& evening)
{
    for (const ShoppingTrip& trip : evening.occasion().trips) {
        TripWriter(evening, trip).write();
    }
}

} // namespace suppertide
