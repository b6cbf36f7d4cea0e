#include "core/night/times_to_learn.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/night/facts.h"

namespace suppertide {

namespace {

constexpr std::string_view beforeLearning = "computed before learning";
constexpr int mostTimesAsLong = 5;

/// What was reported of the tasks of one batch of a step.
struct Reported
{
    std::optional<Instant> begun; // of what was computed: in the oven, or begun
    std::optional<Instant> ended;
    KitchenItemId on;
};

class Learner
{
public:
    Learner(const Formulation& formulation, const Progress& progress, const Kitchen& kitchen)
        : formulation_(formulation), progress_(progress), kitchen_(kitchen)
    {}

    std::vector<TimeTaken> learn()
    {
        for (const TaskIndex task : formulation_.tasks.indices()) {
            const TaskSource& source = formulation_.tasks[task];
            if (isFirstOfItsStep(task) && source.computed && source.computed->failure.empty()) {
                addIfNew(task, reportedOf(source));
            }
        }
        std::ranges::stable_sort(found_, {}, &Found::at);
        std::vector<TimeTaken> times;
        for (Found& found : found_) {
            found.time.id = freeId(found.time, times);
            times.push_back(std::move(found.time));
        }
        return times;
    }

private:
    struct Found
    {
        Instant at;
        TimeTaken time;
    };

    /// A step in pieces counts once.
    [[nodiscard]] bool isFirstOfItsStep(TaskIndex task) const
    {
        const TaskSource& source = formulation_.tasks[task];
        if (source.role != TaskRole::Step) {
            return false;
        }
        for (const TaskIndex other : formulation_.tasks.indices()) {
            if (formulation_.tasks[other].role == TaskRole::Step &&
                areOneBatch(source, formulation_.tasks[other])) {
                return other == task;
            }
        }
        return true;
    }

    [[nodiscard]] Reported reportedOf(const TaskSource& step) const
    {
        Reported reported;
        bool isInOven = false;
        for (const TaskIndex task : formulation_.tasks.indices()) {
            const TaskSource& source = formulation_.tasks[task];
            const auto report = progress_.steps.find(formulation_.problem.tasks[task].id);
            if (!areOneBatch(step, source) || report == progress_.steps.end() ||
                report->second.isLeftOut) {
                continue;
            }
            const StepReport& said = report->second;
            if (source.role == TaskRole::OvenIn && said.done) {
                reported.begun = said.done;
                isInOven = true;
            } else if (source.role == TaskRole::OvenOut && said.started) {
                reported.ended = said.started;
            } else if (source.role == TaskRole::Step && !isInOven) {
                reported.begun = reported.begun ? reported.begun : said.started;
                reported.ended = said.done ? said.done : reported.ended;
            }
            noteWhere(said, reported);
        }
        return reported;
    }

    void noteWhere(const StepReport& said, Reported& reported) const
    {
        for (const auto& [demand, oven] : said.ovens) {
            reported.on = KitchenItemId{oven};
        }
        for (const auto& [demand, unit] : said.units) {
            const bool isBurner =
                std::ranges::any_of(kitchen_.burners, [&unit = unit](const Burner& burner) {
                    return burner.id.text() == unit;
                });
            if (isBurner && reported.on.empty()) {
                reported.on = KitchenItemId{unit};
            }
        }
    }

    void addIfNew(TaskIndex task, const Reported& reported)
    {
        if (!reported.begun || !reported.ended || reported.on.empty() ||
            *reported.ended <= *reported.begun) {
            return;
        }
        const TaskSource& source = formulation_.tasks[task];
        TimeTaken time;
        time.name = source.text;
        time.on = reported.on;
        time.date = formulation_.calendar.zone.civil(*reported.begun).date;
        time.taken = *reported.ended - *reported.begun;
        time.computed = unlearned(*source.computed);
        const bool makesSense = time.taken * mostTimesAsLong > time.computed &&
                                time.computed * mostTimesAsLong > time.taken;
        const bool isAsPlanned = time.taken == formulation_.problem.tasks[task].duration;
        const bool isKnown = std::ranges::any_of(kitchen_.timesTaken, [&](const TimeTaken& known) {
            return known.name == time.name && known.on == time.on && known.date == time.date;
        });
        if (makesSense && !isAsPlanned && !isKnown) {
            found_.push_back({*reported.begun, std::move(time)});
        }
    }

    /// What the estimate was before times taken moved it.
    static Minutes unlearned(const ComputedDuration& computed)
    {
        const auto found =
            std::ranges::find(computed.because, beforeLearning, &science::Figure::name);
        return found == computed.because.end()
                   ? computed.range.likely
                   : std::max(Minutes{1}, Minutes{std::llround(found->value)});
    }

    [[nodiscard]] KitchenItemId freeId(const TimeTaken& time,
                                       const std::vector<TimeTaken>& others) const
    {
        for (int number = 1;; ++number) {
            const KitchenItemId id{fmt::format("time-{}-{}", toIso(time.date), number)};
            const auto isIt = [&id](const auto& thing) { return thing.id == id; };
            const bool isTaken = std::ranges::any_of(kitchen_.timesTaken, isIt) ||
                                 std::ranges::any_of(others, isIt) ||
                                 std::ranges::any_of(kitchen_.ovens, isIt) ||
                                 std::ranges::any_of(kitchen_.burners, isIt) ||
                                 std::ranges::any_of(kitchen_.appliances, isIt) ||
                                 std::ranges::any_of(kitchen_.vessels, isIt) ||
                                 std::ranges::any_of(kitchen_.coldPlaces, isIt);
            if (!isTaken) {
                return id;
            }
        }
    }

    const Formulation& formulation_;
    const Progress& progress_;
    const Kitchen& kitchen_;
    std::vector<Found> found_;
};

} // namespace

std::vector<TimeTaken> timesToLearn(const Formulation& formulation, const Progress& progress,
                                    const Kitchen& kitchen)
{
    return Learner(formulation, progress, kitchen).learn();
}

} // namespace suppertide
