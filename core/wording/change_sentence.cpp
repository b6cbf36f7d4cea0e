// Ways out in sentences: the change itself, before and after.
#include <fmt/format.h>

#include <algorithm>

#include "core/recipe/temperature_methods.h"
#include "core/wording/advice_wording.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

const Dish* findDish(const Occasion& occasion, const DishId& id)
{
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            if (dish.id == id) {
                return &dish;
            }
        }
    }
    return nullptr;
}

template <typename List, typename Key>
std::string nameIn(const List& list, const Key& id)
{
    const auto found =
        std::ranges::find_if(list, [&](const auto& thing) { return thing.id == id; });
    return found == list.end() ? id.text() : found->name;
}

/// Looks names up in the evening as it was.
class ChangeWords
{
public:
    ChangeWords(const WayOut& way, const ReadingStyle& style)
        : way_(way), occasion_(*way.before.occasion), style_(style)
    {}

    std::string operator()(const PlanAnew&) const
    {
        return "let the planner arrange it anew, with what there is";
    }
    std::string operator()(const Unpin& change) const
    {
        if (change.setting >= 0) {
            const auto& pin =
                way_.before.layout->ovenSettings[static_cast<std::size_t>(change.setting)];
            return fmt::format("let go of the oven's setting of {}",
                               temperatureText(pin.setC, style_));
        }
        return "unpin " + deedOfId(change.id);
    }
    std::string operator()(const MoveStep& change) const
    {
        switch (change.why) {
        case MoveStep::Why::ShorterWait:
            return fmt::format("do {} {} later, so that what follows waits no longer than it must",
                               deedOfId(change.task), durationText(change.to - change.from));
        case MoveStep::Why::DayBefore:
            return fmt::format("do {} the day before, at {}", deedOfId(change.task),
                               clockOf(change.to));
        case MoveStep::Why::CleanFirst:
            return fmt::format("do {} at {}, in the other order, so that the tool is clean",
                               deedOfId(change.task), clockOf(change.to));
        case MoveStep::Why::DayLater:
            return fmt::format("do {} a day later, at {}", deedOfId(change.task),
                               clockOf(change.to));
        }
        return {};
    }
    std::string operator()(const TakeOption& change) const
    {
        const Formulation* formulation = way_.laidOut ? way_.laidOut->formulation.get() : nullptr;
        if (formulation != nullptr) {
            for (const ChoiceIndex index : formulation->problem.choices.indices()) {
                if (formulation->problem.choices[index].id == change.choice) {
                    return option(*formulation, index, change);
                }
            }
        }
        return fmt::format("take “{}” instead of “{}”", change.to, change.from);
    }
    std::string operator()(const TakeMethod& change) const
    {
        const Recipe* recipe = recipeOf(change.dish);
        std::string from = change.from.text();
        std::string to = change.to.text();
        if (recipe != nullptr) {
            for (const MethodChoice& choice : choicesOf(*recipe)) {
                if (choice.id == change.choice) {
                    from = nameIn(choice.methods, change.from);
                    to = nameIn(choice.methods, change.to);
                }
            }
        }
        return fmt::format("make {} by “{}” instead of “{}”", dish(change.dish),
                           inStyle(to, style_), inStyle(from, style_));
    }
    std::string operator()(const UseOther& change) const
    {
        return fmt::format("use the {} for {} instead of the {}", unit(change.demand, change.to),
                           deedOfId(change.task), unit(change.demand, change.from));
    }
    std::string operator()(const WashBefore& change) const
    {
        return fmt::format("wash the {} before {}", change.tool, deedOfId(change.task));
    }
    std::string operator()(const ShareTemperature& change) const
    {
        return fmt::format("set the oven to {} instead of {}, which all that is in it accepts",
                           temperatureText(change.toC, style_),
                           temperatureText(change.fromC, style_));
    }
    std::string operator()(const ServeLater& change) const
    {
        std::vector<std::string> each;
        for (const ServingMove& move : change.moves) {
            each.push_back(fmt::format("{} at {} instead of {}",
                                       theThing(nameIn(occasion_.courses, move.course)),
                                       clock(move.to), clock(move.from)));
        }
        return "serve " + listed(each);
    }
    std::string operator()(const PlanLikely&) const
    {
        return "plan with the times that steps are likely to take, with nothing to spare";
    }
    std::string operator()(const DropJob& change) const
    {
        return fmt::format("leave out {}", quoted(nameIn(occasion_.houseJobs, change.job)));
    }
    std::string operator()(const JobEarlier& change) const
    {
        return fmt::format("do {} the day before", quoted(nameIn(occasion_.houseJobs, change.job)));
    }
    std::string operator()(const FreeCook& change) const
    {
        return fmt::format("have {} free {}, {} to {}",
                           nameIn(way_.before.kitchen->cooks, change.cook), day(change.from),
                           clock(change.from), clock(change.to));
    }
    std::string operator()(const Helper& change) const
    {
        return fmt::format("find another pair of hands for {}, {}, {} to {}",
                           durationText(lengthOf(change)), day(change.from), clock(change.from),
                           clock(change.to));
    }
    std::string operator()(const Borrow& change) const
    {
        switch (change.kind) {
        case ResourceKind::Oven:
            return change.name.empty() ? "use one more oven, perhaps a neighbour's"
                                       : "borrow an " + change.name;
        case ResourceKind::Burner:
            return "borrow one more burner";
        case ResourceKind::Fridge:
        case ResourceKind::Freezer:
            return fmt::format("find room for {}.{} l more in a {}, a neighbour's or a cold box",
                               change.size / 10, change.size % 10,
                               change.kind == ResourceKind::Fridge ? "fridge" : "freezer");
        case ResourceKind::Appliance:
        case ResourceKind::Vessel:
        case ResourceKind::Watch:
        case ResourceKind::Cook:
            break;
        }
        return fmt::format("borrow one more {}", change.name);
    }
    std::string operator()(const AddShelf& change) const
    {
        return fmt::format("find one more shelf for {}",
                           theThing(nameIn(way_.before.kitchen->ovens, change.oven)));
    }
    std::string operator()(const TakeVariant& change) const
    {
        return fmt::format("make {} “{}” instead of “{}”", dish(change.dish),
                           variant(change.dish, change.to), variant(change.dish, change.from));
    }
    std::string operator()(const GiveVariant& change) const
    {
        return fmt::format("give {} {} “{}” instead of “{}”",
                           nameIn(occasion_.guests, change.guest), dish(change.dish),
                           variant(change.dish, change.to), variant(change.dish, change.from));
    }
    std::string operator()(const ServeGuest& change) const
    {
        const std::string guest = nameIn(occasion_.guests, change.guest);
        if (!change.to) {
            return fmt::format("let {} go without {}", guest,
                               change.from ? dish(*change.from) : std::string("it"));
        }
        const std::string given = fmt::format("give {} {} “{}”", guest, dish(change.to->first),
                                              variant(change.to->first, change.to->second));
        return change.from ? given + " instead of " + dish(*change.from) : given;
    }
    std::string operator()(const Substitute& change) const
    {
        std::vector<std::string> swaps;
        for (const LineSwap& swap : change.swaps) {
            swaps.push_back(fmt::format("{} instead of {}", swap.instead, swap.ingredient));
        }
        return fmt::format("make a portion of {} “{}” for {} with {}", dish(change.dish),
                           variant(change.dish, change.variant),
                           nameIn(occasion_.guests, change.guest), listed(swaps));
    }
    std::string operator()(const TakeAlternative& change) const
    {
        return fmt::format("make {} instead of {}", dish(change.to), dish(change.from));
    }

private:
    static Minutes lengthOf(const Helper& change)
    {
        const auto minutes = [](const ClockTime& time) { return time.hour * 60 + time.minute; };
        return Minutes{minutes(change.to.clock) - minutes(change.from.clock)};
    }

    [[nodiscard]] std::string option(const Formulation& formulation, ChoiceIndex index,
                                     const TakeOption& change) const
    {
        const ChoiceSource& source = formulation.choices[index];
        const auto name = [&](const std::string& id) {
            const auto& options = formulation.problem.choices[index].options;
            for (const OptionIndex each : options.indices()) {
                if (options[each].id == id) {
                    return source.optionNames[each.value()];
                }
            }
            return id;
        };
        return fmt::format("for {}, {}: take “{}” instead of “{}”", theThing(source.dishName),
                           source.name, inStyle(name(change.to), style_),
                           inStyle(name(change.from), style_));
    }

    [[nodiscard]] std::string clock(const CivilTime& time) const
    {
        // 24:00 is the next day's midnight.
        const PlanCalendar calendar{TimeZone::utc().instant({time.date, {}}), TimeZone::utc()};
        return timeText(calendar, planTime(std::int64_t{time.clock.hour} * 60 + time.clock.minute),
                        {}, style_);
    }
    [[nodiscard]] std::string clockOf(Instant instant) const
    {
        const PlanCalendar& calendar = way_.plan->formulation->calendar;
        return timeText(calendar, calendar.planTime(instant), {}, style_);
    }
    [[nodiscard]] std::string day(const CivilTime& time) const
    {
        const bool isDayOfDinner =
            !occasion_.courses.empty() && occasion_.courses.front().serving.date == time.date;
        return isDayOfDinner ? "on the day" : "on " + dayText(time.date);
    }
    [[nodiscard]] const Recipe* recipeOf(const DishId& id) const
    {
        const Dish* dish = findDish(occasion_, id);
        const auto recipe =
            dish == nullptr ? way_.before.recipes.end() : way_.before.recipes.find(dish->recipe);
        return recipe == way_.before.recipes.end() ? nullptr : recipe->second.get();
    }
    [[nodiscard]] std::string dish(const DishId& id) const
    {
        const Recipe* recipe = recipeOf(id);
        return theThing(recipe == nullptr ? id.text() : recipe->name);
    }
    [[nodiscard]] std::string variant(const DishId& dish, const VariantId& id) const
    {
        const Recipe* recipe = recipeOf(dish);
        return recipe == nullptr ? id.text() : nameIn(recipe->variants, id);
    }
    /// What the kitchen calls it: "Second bowl".
    [[nodiscard]] std::string unit(const std::string& demand, const std::string& id) const
    {
        const Formulation& formulation = *way_.plan->formulation;
        for (const DemandIndex index : formulation.problem.demands.indices()) {
            const Demand& each = formulation.problem.demands[index];
            if (each.id != demand || !each.pool) {
                continue;
            }
            const auto& units = formulation.problem.pools[*each.pool].units;
            for (const UnitIndex of : units.indices()) {
                const auto& names = formulation.pools[*each.pool].unitNames;
                if (units[of].id == id && of.value() < names.size()) {
                    return quoted(names[of.value()]);
                }
            }
        }
        return quoted(id);
    }
    [[nodiscard]] std::string deedOfId(const std::string& id) const
    {
        for (const PlanPtr& plan : {way_.plan, way_.laidOut}) {
            if (!plan) {
                continue;
            }
            const Formulation& formulation = *plan->formulation;
            const auto task = formulation.taskById.find(id);
            if (task != formulation.taskById.end()) {
                return quoted(deedOf(formulation.tasks[task->second]));
            }
            for (const ChoiceIndex choice : formulation.problem.choices.indices()) {
                if (formulation.problem.choices[choice].id == id) {
                    const ChoiceSource& source = formulation.choices[choice];
                    return fmt::format("{} of {}", quoted(source.name), theThing(source.dishName));
                }
            }
        }
        return quoted(id);
    }

    const WayOut& way_;
    const Occasion& occasion_;
    const ReadingStyle& style_;
};

} // namespace

std::string changeSentence(const WayOut& way, const ReadingStyle& style)
{
    std::vector<std::string> each;
    for (const EveningChange& change : way.changes) {
        each.push_back(std::visit(ChangeWords(way, style), change));
    }
    std::string text = each.front();
    for (std::size_t i = 1; i < each.size(); ++i) {
        text += "; and " + each[i];
    }
    return capitalised(text) + ".";
}

std::string changeTitle(const WayOut& way)
{
    std::string text = changeSentence(way);
    text.pop_back();
    return text;
}

} // namespace suppertide
