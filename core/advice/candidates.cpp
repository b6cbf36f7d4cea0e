#include "core/advice/candidates.h"

#include <algorithm>
#include <array>

#include "core/advice/for_guest.h"
#include "core/advice/helping_hours.h"
#include "core/advice/requirement.h"
#include "core/plan/lay_out.h"
#include "core/problem/timetable.h"
#include "core/recipe/temperature_methods.h"

namespace suppertide {

namespace {

constexpr Minutes day{24 * 60};
constexpr Minutes hour{60};
/// Serving is tried so much later at first, and then so much again.
constexpr std::array servingSteps{Minutes{0}, Minutes{30}, Minutes{60}, Minutes{90}};

class ConcernBuilder
{
public:
    explicit ConcernBuilder(const Formulation& formulation) : formulation_(formulation) {}

    void add(const TaskIndex& task)
    {
        const TaskSource& source = formulation_.tasks[task];
        concern_.tasks.insert(task);
        if (source.course) {
            concern_.courses.insert(*source.course);
        }
        if (source.dish) {
            concern_.dishes.insert(*source.dish);
        }
    }
    void operator()(ChoiceIndex choice)
    {
        if (const auto& dish = formulation_.choices[choice].dish) {
            concern_.dishes.insert(*dish);
        }
    }
    void operator()(const WindowOf& window) { add(window.task); }
    void operator()(const HandsOf& hands)
    {
        add(hands.task);
        concern_.hands = true;
    }
    void operator()(LagIndex /*lag*/) {}
    void operator()(DemandIndex demand)
    {
        const Demand& asked = formulation_.problem.demands[demand];
        if (asked.count) {
            concern_.counts.insert(*asked.count);
            // Heat wants somebody at home, and that is a cook.
            concern_.hands =
                concern_.hands || formulation_.counts[*asked.count].kind == ResourceKind::Watch;
        } else {
            concern_.pools.insert(*asked.pool);
        }
    }
    void operator()(OvenDemandIndex /*demand*/) { concern_.ovens = true; }

    Concern& concern() { return concern_; }

private:
    const Formulation& formulation_;
    Concern concern_;
};

class CandidateList
{
public:
    CandidateList(const PlanInput& input, const Formulation& formulation, const Plan* laidOut,
                  const Concern& concern)
        : input_(input), occasion_(*input.occasion), formulation_(formulation),
          problem_(formulation.problem), laidOut_(laidOut), concern_(concern)
    {}

    std::vector<EveningChange> all()
    {
        addPins();
        addTools();
        addMoves();
        addOptions();
        addMethods();
        addServings();
        addJobs();
        addCooks();
        addThings();
        addVariants();
        addAlternatives();
        addForGuest();
        if (occasion_.preferences.caution != CautionLevel::Likely) {
            add(PlanLikely{occasion_.preferences.caution});
        }
        std::ranges::stable_sort(list_, {}, leastPointsOf);
        return std::move(list_);
    }

private:
    void add(EveningChange change) { list_.push_back(std::move(change)); }

    [[nodiscard]] bool concerns(const DishId& dish) const { return concern_.dishes.contains(dish); }

    void addPins()
    {
        const Layout& layout = *input_.layout;
        for (const TaskIndex task : concern_.tasks) {
            if (layout.pinned.contains(problem_.tasks[task].id)) {
                add(Unpin{problem_.tasks[task].id});
            }
        }
        for (const ChoiceIndex choice : problem_.choices.indices()) {
            const auto& dish = formulation_.choices[choice].dish;
            if (layout.pinned.contains(problem_.choices[choice].id) && dish && concerns(*dish)) {
                add(Unpin{problem_.choices[choice].id});
            }
        }
        for (std::size_t i = 0; concern_.ovens && i < layout.ovenSettings.size(); ++i) {
            add(Unpin{{}, static_cast<int>(i)});
            addSharedTemperature(static_cast<int>(i));
        }
    }

    /// Of a pinned setting: what all that is baked by the concerned dishes accepts, if there is
    /// such a temperature.
    void addSharedTemperature(int setting)
    {
        const OvenSettingPin& pin = input_.layout->ovenSettings[static_cast<std::size_t>(setting)];
        std::optional<int> low;
        std::optional<int> high;
        for (const OvenDemandIndex index : problem_.ovenDemands.indices()) {
            const OvenDemand& demand = problem_.ovenDemands[index];
            const auto& dish = formulation_.ovenDemands[index].dish;
            if (dish && concerns(*dish) && demand.mode != modeOff) {
                low = std::max(low.value_or(demand.acceptLow), demand.acceptLow);
                high = std::min(high.value_or(demand.acceptHigh), demand.acceptHigh);
            }
        }
        if (low && *low <= *high) {
            add(ShareTemperature{setting, pin.setC, std::clamp(pin.setC, *low, *high)});
        }
    }

    [[nodiscard]] bool isMovable(TaskIndex task) const
    {
        const TaskRole role = formulation_.tasks[task].role;
        return role == TaskRole::Step || role == TaskRole::HouseJob || role == TaskRole::OvenIn;
    }

    void addMoves()
    {
        if (laidOut_ == nullptr) {
            return;
        }
        for (const TaskIndex task : concern_.tasks) {
            const auto& start = laidOut_->schedule.starts[task];
            if (!start || !isMovable(task) ||
                input_.layout->pinned.contains(problem_.tasks[task].id)) {
                continue;
            }
            const Interval range = dragRange(formulation_, laidOut_->schedule, task).starts;
            if (range.start <= *start - day) {
                addMove(MoveStep::Why::DayBefore, task, *start - day);
            }
            if (concern_.isFoodSafety && range.end >= *start + day) {
                addMove(MoveStep::Why::DayLater, task, *start + day);
            }
            addShorterWaits(task, *start, range);
        }
    }

    /// Another one of the kind, washing it, and the other order.
    void addTools()
    {
        if (laidOut_ == nullptr || !concern_.tool || concern_.dirtyThenClean.size() != 2) {
            return;
        }
        const TaskIndex dirty = concern_.dirtyThenClean[0];
        const TaskIndex clean = concern_.dirtyThenClean[1];
        const Demand& demand = problem_.demands[*concern_.tool];
        const auto unit = laidOut_->schedule.units[*concern_.tool];
        const Pool& pool = problem_.pools[*demand.pool];
        for (const UnitIndex other : pool.units.indices()) {
            if (unit && other != *unit && pool.units[other].size >= demand.minSize) {
                add(UseOther{demand.id, problem_.tasks[clean].id, pool.units[*unit].id,
                             pool.units[other].id});
            }
        }
        add(WashBefore{demand.id, problem_.tasks[clean].id, formulation_.pools[*demand.pool].name});
        addCleanFirst(dirty, clean);
    }

    /// The clean one just before the other, or the other just after it.
    void addCleanFirst(TaskIndex dirty, TaskIndex clean)
    {
        const auto first = laidOut_->schedule.starts[dirty];
        const auto then = laidOut_->schedule.starts[clean];
        if (!first || !then) {
            return;
        }
        const auto addIfFree = [this](TaskIndex task, PlanTime to) {
            const Interval range = dragRange(formulation_, laidOut_->schedule, task).starts;
            if (isMovable(task) && range.start <= to && to <= range.end &&
                !input_.layout->pinned.contains(problem_.tasks[task].id)) {
                addMove(MoveStep::Why::CleanFirst, task, to);
            }
        };
        addIfFree(clean, *first - problem_.tasks[clean].duration);
        addIfFree(dirty, *then + problem_.tasks[clean].duration);
    }

    void addMove(MoveStep::Why why, TaskIndex task, PlanTime to)
    {
        const PlanCalendar& calendar = formulation_.calendar;
        add(MoveStep{why, problem_.tasks[task].id,
                     calendar.instant(*laidOut_->schedule.starts[task]), calendar.instant(to)});
    }

    /// Waits of the dish that are longer than their least: the step before comes later.
    void addShorterWaits(TaskIndex task, PlanTime start, const Interval& range)
    {
        const Timetable times(problem_, laidOut_->schedule);
        for (const LagIndex index : problem_.lags.indices()) {
            const Lag& lag = problem_.lags[index];
            if (lag.from.task != task || !formulation_.lags[index].wait || !lag.min) {
                continue;
            }
            const auto from = times.time(lag.from);
            const auto to = times.time(lag.to);
            if (!from || !to || *to - *from <= *lag.min) {
                continue;
            }
            const PlanTime later = start + (*to - *from - *lag.min);
            if (later <= range.end) {
                addMove(MoveStep::Why::ShorterWait, task, later);
            }
        }
    }

    void addOptions()
    {
        if (laidOut_ == nullptr) {
            return;
        }
        for (const ChoiceIndex index : problem_.choices.indices()) {
            const auto& dish = formulation_.choices[index].dish;
            const auto& taken = laidOut_->schedule.options[index];
            if (!dish || !concerns(*dish) || !taken) {
                continue;
            }
            const Choice& choice = problem_.choices[index];
            for (const OptionIndex option : choice.options.indices()) {
                if (option != *taken) {
                    add(TakeOption{choice.id, choice.options[*taken].id,
                                   choice.options[option].id});
                }
            }
        }
    }

    template <typename Body>
    void forEachDish(Body body) const
    {
        for (const Course& course : occasion_.courses) {
            for (const Dish& dish : course.dishes) {
                const auto recipe = input_.recipes.find(dish.recipe);
                if (concerns(dish.id) && recipe != input_.recipes.end() &&
                    portionsOf(dish) > Portions{0}) {
                    body(course, dish, *recipe->second);
                }
            }
        }
    }

    void addMethods()
    {
        forEachDish([this](const Course&, const Dish& dish, const Recipe& recipe) {
            for (const MethodChoice& choice : choicesOf(recipe)) {
                const auto fixed = dish.methods.find(choice.id);
                if (fixed == dish.methods.end()) {
                    continue;
                }
                for (const Method& method : choice.methods) {
                    if (method.id != fixed->second) {
                        add(TakeMethod{dish.id, choice.id, fixed->second, method.id});
                    }
                }
            }
        });
    }

    void addServings()
    {
        for (std::size_t course = 0; course < occasion_.courses.size(); ++course) {
            if (!concern_.courses.contains(occasion_.courses[course].id)) {
                continue;
            }
            for (const Minutes by : servingSteps) {
                add(servedLater(occasion_, formulation_.calendar, course, by));
            }
        }
    }

    void addJobs()
    {
        for (const HouseJob& job : occasion_.houseJobs) {
            const auto task = formulation_.taskById.find("job/" + job.id.text());
            const bool isConcerned =
                task != formulation_.taskById.end() &&
                (concern_.tasks.contains(task->second) || (concern_.hands && meets(job)));
            if (isConcerned) {
                add(JobEarlier{job.id, job.earliest, {addDays(job.earliest.date, -1), {16, 0}}});
                add(DropJob{job.id});
            }
        }
    }

    /// Whether the job may fall into the minutes of the clash.
    [[nodiscard]] bool meets(const HouseJob& job) const
    {
        if (!concern_.when) {
            return true;
        }
        const PlanCalendar& calendar = formulation_.calendar;
        return Interval{calendar.planTime(job.earliest), calendar.planTime(job.latest)}.overlaps(
            *concern_.when);
    }

    void addCooks()
    {
        if (!concern_.hands || occasion_.courses.empty()) {
            return;
        }
        const CivilDate date = concern_.when
                                   ? formulation_.calendar.civil(concern_.when->start).date
                                   : occasion_.courses.front().serving.date;
        for (const KitchenCook& cook : input_.kitchen->cooks) {
            addFreeTimes(cook, date);
            addFreeTimes(cook, addDays(date, -1));
        }
        addHelper(date);
    }

    /// Up to three hours before the cook comes, between, and until so long after they go; the whole
    /// afternoon where they are not there at all.
    void addFreeTimes(const KitchenCook& cook, const CivilDate& date)
    {
        std::vector<Hours> free = hoursOn(occasion_, cook, date);
        std::erase_if(free, [](const Hours& each) { return each.presence != Presence::Free; });
        if (free.empty()) {
            add(FreeCook{cook.id, {date, {16, 0}}, {date, {22, 0}}});
            return;
        }
        ClockTime until = free.front().from;
        const Minutes from = std::max(minuteOfDay(until) - 3 * hour, 7 * hour);
        if (clockAt(from) < until) {
            add(FreeCook{cook.id, {date, clockAt(from)}, {date, until}});
        }
        for (std::size_t i = 1; i < free.size(); ++i) {
            add(FreeCook{cook.id, {date, free[i - 1].to}, {date, free[i].from}});
        }
        until = clockAt(std::min(minuteOfDay(free.back().to) + 2 * hour, day));
        if (free.back().to < until) {
            add(FreeCook{cook.id, {date, free.back().to}, {date, until}});
        }
    }

    /// Around the clash, or in the hours up to the last course.
    void addHelper(const CivilDate& date)
    {
        const PlanCalendar& calendar = formulation_.calendar;
        const PlanTime last = calendar.planTime(occasion_.courses.back().serving);
        const PlanTime first = calendar.planTime(occasion_.courses.front().serving);
        const Interval when = concern_.when ? *concern_.when : Interval{first - 6 * hour, last};
        const CivilTime from = calendar.civil(when.start - hour);
        CivilTime to = calendar.civil(when.end + hour);
        if (from.date != date) {
            return;
        }
        if (to.date != date) {
            to = {date, {24, 0}};
        }
        add(Helper{from, to});
    }

    void addThings()
    {
        for (const CountIndex count : concern_.counts) {
            addThing(formulation_.counts[count], mostOf(count));
        }
        for (const PoolIndex pool : concern_.pools) {
            addThing(formulation_.pools[pool], sizeFor(pool));
        }
        if (!concern_.ovens) {
            return;
        }
        for (const KitchenOven& oven : input_.kitchen->ovens) {
            add(AddShelf{oven.id});
        }
        add(Borrow{ResourceKind::Oven, {}, 0});
    }

    void addThing(const ResourceSource& source, std::int64_t size)
    {
        if (source.kind == ResourceKind::Watch) {
            return;
        }
        const bool isNamed =
            source.kind == ResourceKind::Vessel || source.kind == ResourceKind::Appliance ||
            source.kind == ResourceKind::Oven; // with a grill or fan that no oven has
        add(Borrow{source.kind, isNamed ? source.name : std::string{}, size});
    }

    [[nodiscard]] std::int64_t mostOf(CountIndex count) const
    {
        std::int64_t most = 0;
        for (const Demand& demand : problem_.demands) {
            most = demand.count == count ? std::max(most, demand.amount) : most;
        }
        return most;
    }

    [[nodiscard]] std::int64_t sizeFor(PoolIndex pool) const
    {
        std::int64_t most = 0;
        for (const Demand& demand : problem_.demands) {
            most = demand.pool == pool ? std::max(most, demand.minSize) : most;
        }
        return most;
    }

    void addVariants()
    {
        forEachDish([this](const Course& course, const Dish& dish, const Recipe& recipe) {
            for (const MixEntry& entry : dish.mix) {
                for (const Variant& variant : recipe.variants) {
                    if (variant.id != entry.variant && entry.portions > Portions{0}) {
                        addVariant(course, dish, entry.variant, variant.id);
                    }
                }
            }
        });
    }

    void addVariant(const Course& course, const Dish& dish, const VariantId& from,
                    const VariantId& to)
    {
        if (concern_.guest) {
            if (eats(course, *concern_.guest, dish.id, from)) {
                add(GiveVariant{dish.id, *concern_.guest, from, to});
            }
            return;
        }
        add(TakeVariant{dish.id, from, to});
    }

    [[nodiscard]] bool eats(const Course& course, const GuestId& guest, const DishId& dish,
                            const VariantId& variant) const
    {
        std::map<RecipeId, const Recipe*> recipes;
        for (const auto& [id, recipe] : input_.recipes) {
            recipes.emplace(id, recipe.get());
        }
        return std::ranges::any_of(helpingsOf(occasion_, course, recipes, input_.ingredients),
                                   [&](const Helping& helping) {
                                       return helping.guest == guest && helping.dish == dish &&
                                              helping.variant == variant;
                                   });
    }

    void addAlternatives()
    {
        forEachDish([this](const Course& course, const Dish& dish, const Recipe&) {
            for (const Dish& other : course.dishes) {
                if (other.alternative != dish.alternative && portionsOf(other) == Portions{0} &&
                    input_.recipes.contains(other.recipe)) {
                    add(TakeAlternative{course.id, dish.id, other.id});
                }
            }
        });
    }

    void addForGuest()
    {
        if (concern_.guest) {
            for (EveningChange& change :
                 changesForGuest(input_, *concern_.guest, concern_.courses, concern_.dishes)) {
                add(std::move(change));
            }
        }
    }

    const PlanInput& input_;
    const Occasion& occasion_;
    const Formulation& formulation_;
    const Problem& problem_;
    const Plan* laidOut_;
    const Concern& concern_;
    std::vector<EveningChange> list_;
};

} // namespace

Concern concernOf(const Formulation& formulation, const Clash& clash)
{
    ConcernBuilder builder(formulation);
    for (const TaskIndex task : clash.tasks) {
        builder.add(task);
    }
    for (const Requirement& requirement : requirementsOf(formulation.problem, clash.broken)) {
        std::visit(builder, requirement);
    }
    Concern& concern = builder.concern();
    if (clash.count) {
        concern.counts.insert(*clash.count);
    }
    if (clash.pool) {
        concern.pools.insert(*clash.pool);
    }
    if (clash.dish) {
        concern.dishes.insert(*clash.dish);
    }
    if (clash.course) {
        concern.courses.insert(*clash.course);
    }
    concern.hands = concern.hands || clash.kind == ClashKind::Hands ||
                    clash.kind == ClashKind::CookNotFree || clash.kind == ClashKind::Unwatched;
    concern.ovens = concern.ovens || clash.oven.has_value() || clash.ovenDemands[0].has_value();
    concern.isFoodSafety = clash.kind == ClashKind::FoodSafety;
    if (clash.kind == ClashKind::UnwashedTool) {
        concern.tool = clash.demand;
        concern.dirtyThenClean = clash.tasks;
    }
    concern.guest = clash.guest;
    concern.when = clash.when;
    return std::move(concern);
}

Concern concernOf(const Formulation& formulation, const std::vector<std::string>& conflict)
{
    ConcernBuilder builder(formulation);
    for (const Requirement& requirement : requirementsOf(formulation.problem, conflict)) {
        for (const TaskIndex task : tasksOf(formulation.problem, requirement)) {
            builder.add(task);
        }
        std::visit(builder, requirement);
    }
    return std::move(builder.concern());
}

std::vector<EveningChange> candidatesFor(const PlanInput& input, const Formulation& formulation,
                                         const Plan* laidOut, const Concern& concern)
{
    return CandidateList(input, formulation, laidOut, concern).all();
}

ServeLater servedLater(const Occasion& occasion, const PlanCalendar& calendar, std::size_t course,
                       Minutes by)
{
    ServeLater change;
    std::optional<PlanTime> earliest; // for the next one
    for (std::size_t i = course; i < occasion.courses.size(); ++i) {
        const Course& served = occasion.courses[i];
        const PlanTime wanted = calendar.planTime(served.serving);
        const PlanTime at = i == course ? wanted + by : std::max(wanted, *earliest);
        change.moves.push_back({served.id, served.serving, calendar.civil(at)});
        if (i + 1 < occasion.courses.size()) {
            const Minutes apart = calendar.planTime(occasion.courses[i + 1].serving) - wanted;
            earliest = at + std::min(served.atTable, apart);
        }
    }
    return change;
}

std::int64_t leastPointsOf(const EveningChange& change)
{
    EveningChange least = change;
    if (auto* cook = std::get_if<FreeCook>(&least)) {
        cook->to = cook->from;
    } else if (auto* helper = std::get_if<Helper>(&least)) {
        helper->to = helper->from;
    }
    return pointsOf(least);
}

} // namespace suppertide
