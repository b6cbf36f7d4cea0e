// A conflict in a cook's words: what each dish needs, in order of time, then where it fails.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>

#include "core/advice/conflict_story.h"
#include "core/wording/advice_wording.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

constexpr std::array<std::string_view, 7> smallNumbers{"none", "one",  "two", "three",
                                                       "four", "five", "six"};

std::string number(std::size_t count)
{
    return count < smallNumbers.size() ? std::string(smallNumbers.at(count))
                                       : std::to_string(count);
}

class StoryWords
{
public:
    StoryWords(const Formulation& formulation, const Occasion& occasion,
               const std::vector<std::string>& conflict, const ReadingStyle& style)
        : formulation_(formulation), problem_(formulation.problem),
          story_(storyOf(formulation, conflict)), reader_(formulation, occasion, style)
    {}

    std::vector<std::string> tell()
    {
        if (story_.deadline) {
            tellTime();
        } else {
            tellNeeds();
            tellTogether();
        }
        for (const ChoiceIndex choice : story_.choices) {
            tellChoice(choice);
        }
        if (lines_.empty()) {
            lines_.emplace_back("What this evening asks for contradicts itself.");
        }
        return std::move(lines_);
    }

private:
    [[nodiscard]] const TaskSource& source(TaskIndex task) const
    {
        return formulation_.tasks[task];
    }

    void say(const std::string& text) { lines_.push_back(capitalised(text) + "."); }

    /// The dish, job or course that a task belongs to.
    [[nodiscard]] std::string subject(TaskIndex task) const
    {
        const TaskSource& of = source(task);
        return of.dishName.empty() ? quoted(deedOf(of)) : theThing(of.dishName);
    }

    [[nodiscard]] std::string cooksText(const std::vector<CookIndex>& cooks) const
    {
        std::vector<std::string> names;
        std::ranges::transform(cooks, std::back_inserter(names),
                               [this](CookIndex cook) { return formulation_.cookNames[cook]; });
        return listed(names);
    }

    // Too little time.

    void tellTime()
    {
        const TaskIndex last = story_.legs.back().task;
        const PlanTime ready = story_.legs.back().earliest;
        if (ready >= problem_.horizon) {
            say(fmt::format("no cook is ever free long enough for {}",
                            quoted(deedOf(source(story_.legs.front().task)))));
            return;
        }
        std::vector<std::string> parts = beginning();
        for (std::size_t i = 1; i < story_.legs.size(); ++i) {
            addTie(parts, i);
        }
        say(fmt::format("{}; that makes {} at the earliest", fmt::join(parts, ", then "),
                        reader_.at(ready)));
        const TaskSource& of = source(last);
        const std::string end =
            of.role == TaskRole::Serving
                ? fmt::format("{} is to be served at {}", theThing(of.dishName),
                              reader_.at(*story_.deadline))
                : fmt::format("{} must begin at {}", nameOf(last), reader_.at(*story_.deadline));
        say(fmt::format("{}: {} too late", end, durationText(ready - *story_.deadline)));
    }

    /// Of the parts of one step (into the oven, in it, out of it) what the cook calls it.
    [[nodiscard]] std::string nameOf(TaskIndex index) const
    {
        const TaskSource& of = source(index);
        if (of.step && of.role != TaskRole::Step) {
            for (const TaskSource& other : formulation_.tasks) {
                if (other.role == TaskRole::Step && isSameStep(of, other)) {
                    return quoted(deedOf(other));
                }
            }
        }
        return quoted(deedOf(of));
    }

    [[nodiscard]] static bool isSameStep(const TaskSource& one, const TaskSource& other)
    {
        return one.step && one.step == other.step && one.recipe == other.recipe &&
               one.dish == other.dish && one.batch == other.batch && one.variants == other.variants;
    }

    /// From when on, and why not before.
    [[nodiscard]] std::vector<std::string> beginning() const
    {
        const StoryLeg& leg = story_.legs.front();
        const std::string deed = nameOf(leg.task);
        if (leg.why == StoryLeg::Why::Hours) {
            return {
                fmt::format("{} cannot begin before {}, when {}", deed, reader_.at(leg.earliest),
                            leg.cooks.empty() ? "a cook is free"
                                              : fmt::format("{} {} free", cooksText(leg.cooks),
                                                            leg.cooks.size() == 1 ? "is" : "are"))};
        }
        return {leg.earliest > PlanTime{}
                    ? windowText(leg, deed)
                    : fmt::format("{} cannot begin before the plan does, at {}", deed,
                                  reader_.at(leg.earliest))};
    }

    [[nodiscard]] std::string windowText(const StoryLeg& leg, const std::string& deed) const
    {
        const TaskSource& of = source(leg.task);
        if (of.role == TaskRole::Serving) {
            return fmt::format("{} is served at {}", theThing(of.dishName),
                               reader_.at(leg.earliest));
        }
        if (of.rule == Rule::Pins) {
            return fmt::format("{} is pinned at {}", deed, reader_.at(leg.earliest));
        }
        return fmt::format("{} begins at {} at the earliest", deed, reader_.at(leg.earliest));
    }

    /// The time from one leg to the next: the step's own length, its parts taken together, and a
    /// wait if it is one.
    void addTie(std::vector<std::string>& parts, std::size_t index) const
    {
        const StoryLeg& leg = story_.legs[index];
        const StoryLeg& before = story_.legs[index - 1];
        const Lag& lag = problem_.lags[*leg.lag];
        const LagSource& of = formulation_.lags[*leg.lag];
        if (lag.from.task != before.task) {
            // A most: what comes first cannot be much before what follows.
            parts.push_back(fmt::format("{} comes at most {} before {}", nameOf(leg.task),
                                        durationText(lag.max.value_or(Minutes{0})),
                                        nameOf(before.task)));
            return;
        }
        const bool goesOn = isSameStep(source(leg.task), source(before.task));
        if (lag.from.edge == Edge::End && !goesOn) {
            const Minutes length = lengthUpTo(index - 1);
            if (length > Minutes{0}) {
                const std::string deed = nameOf(before.task);
                const bool isSaid = deed == nameOf(story_.legs.front().task);
                parts.push_back(
                    fmt::format("{} takes {}", isSaid ? "it" : deed, durationText(length)));
            }
        }
        if (lag.min && *lag.min > Minutes{0}) {
            parts.push_back(of.text.empty() ? fmt::format("{} pass", durationText(*lag.min))
                                            : fmt::format("{} for at least {}", quoted(of.text),
                                                          durationText(*lag.min)));
        }
    }

    /// Of the parts of one step up to this leg.
    [[nodiscard]] Minutes lengthUpTo(std::size_t index) const
    {
        const TaskIndex last = story_.legs[index].task;
        std::size_t first = index;
        while (first > 0 && isSameStep(source(story_.legs[first - 1].task), source(last))) {
            --first;
        }
        return story_.legs[index].earliest + problem_.tasks[last].duration -
               story_.legs[first].earliest;
    }

    // Too much at once.

    void tellNeeds()
    {
        std::vector<Need> needs;
        for (const StoryItem& item : story_.items) {
            if (source(item.task).role == TaskRole::Watch) {
                continue;
            }
            const std::string text = needText(item);
            const auto alike = std::ranges::find(needs, text, &Need::text);
            if (alike == needs.end()) {
                needs.push_back({{itemSubject(item)}, text});
            } else {
                alike->subjects.push_back(itemSubject(item));
            }
        }
        for (const Need& need : needs) {
            say(fmt::format("{}: {}{}", listed(need.subjects),
                            need.subjects.size() > 1 ? "each " : "", need.text));
        }
        for (const StoryItem& item : story_.items) {
            if (source(item.task).role == TaskRole::Watch) {
                say(fmt::format("{} nobody is awake at home",
                                reader_.during(problem_.tasks[item.task].window)));
            }
        }
    }

    /// What some dishes or steps need alike.
    struct Need
    {
        std::vector<std::string> subjects;
        std::string text;
    };

    /// "92 min on a shelf of an oven at 140 °C to 160 °C, “sets” for 15 to 25 min, serving the main
    /// at 20:30; so, whenever it is begun, from 19:02 to 20:05".
    [[nodiscard]] std::string needText(const StoryItem& item) const
    {
        std::vector<std::string> parts{whatFor(item)};
        for (const LagIndex lag : item.waits) {
            parts.push_back(waitText(lag));
        }
        if (item.serving) {
            parts.push_back(fmt::format("serving {} at {}",
                                        theThing(source(*item.serving).dishName),
                                        reader_.at(problem_.tasks[*item.serving].window.start)));
        }
        return fmt::format("{}{}", fmt::join(parts, ", "), surelyText(item));
    }

    [[nodiscard]] std::string surelyText(const StoryItem& item) const
    {
        const bool isPinned = source(item.task).rule == Rule::Pins;
        if (item.surely) {
            return fmt::format("; {} {}", isPinned ? "pinned" : "so, whenever it is begun,",
                               reader_.during(*item.surely));
        }
        if (item.dated && item.earliest < item.latest) {
            return fmt::format("; so between {} and {}", reader_.at(item.earliest),
                               reader_.at(item.latest));
        }
        return {};
    }

    [[nodiscard]] std::string itemSubject(const StoryItem& item) const
    {
        const std::string& dish = item.oven    ? formulation_.ovenDemands[*item.oven].dishName
                                  : item.thing ? formulation_.demands[*item.thing].dishName
                                               : std::string{};
        const std::string& variant = source(item.task).variantName;
        std::string text = dish.empty() ? quoted(deedOf(source(item.task))) : theThing(dish);
        if (!item.options.empty()) {
            return text + fmt::format(" “{}”", fmt::join(item.options, "”, “"));
        }
        return variant.empty() ? text : text + " (" + variant + ")";
    }

    [[nodiscard]] std::string whatFor(const StoryItem& item) const
    {
        const std::string length =
            item.length > Minutes{0} ? durationText(item.length) + " " : std::string{};
        if (item.oven) {
            return fmt::format("{}{} {}", length, ovenPlace(*item.oven), band(*item.oven));
        }
        return length + (item.thing ? thingText(*item.thing) : handsNeeded(item.task));
    }

    /// "on a shelf of the oven with its fan", where only some ovens will do; "of an oven" else.
    [[nodiscard]] std::string ovenPlace(OvenDemandIndex index) const
    {
        const OvenDemand& demand = problem_.ovenDemands[index];
        std::vector<std::string> ovens;
        for (const OvenIndex oven : demand.ovens.value_or(std::vector<OvenIndex>{})) {
            ovens.push_back(theThing(formulation_.ovenNames[oven]));
        }
        std::string text = ovens.empty() ? "an oven" : listed(ovens);
        if (demand.shelves > 0) {
            text = fmt::format(
                "on {} of {}",
                demand.shelves == 1 ? "a shelf" : fmt::format("{} shelves", demand.shelves), text);
        } else {
            text = "in " + text;
        }
        if (demand.mode && *demand.mode != modeOff) {
            text += fmt::format(" on “{}”", *demand.mode);
        }
        return text;
    }

    [[nodiscard]] std::string handsNeeded(TaskIndex task) const
    {
        const std::optional<Hands>& hands = problem_.tasks[task].hands;
        const auto& onlyBy = source(task).onlyBy;
        if (!onlyBy.empty()) {
            return "of " + listed(onlyBy);
        }
        return hands && hands->cooks > 1 ? fmt::format("of {} cooks", hands->cooks) : "of a cook";
    }

    [[nodiscard]] std::string thingText(DemandIndex index) const
    {
        const Demand& demand = problem_.demands[index];
        const DemandSource& of = formulation_.demands[index];
        const ResourceKind kind = demand.count ? formulation_.counts[*demand.count].kind
                                               : formulation_.pools[*demand.pool].kind;
        switch (kind) {
        case ResourceKind::Fridge:
        case ResourceKind::Freezer:
            return fmt::format("with {}.{} l of the {}", demand.amount / 10, demand.amount % 10,
                               of.thing);
        case ResourceKind::Watch:
            return "with somebody awake at home";
        case ResourceKind::Oven:
        case ResourceKind::Burner:
        case ResourceKind::Appliance:
        case ResourceKind::Vessel:
        case ResourceKind::Cook:
            break;
        }
        return demand.amount > 1 ? fmt::format("with {} × {}", demand.amount, of.thing)
                                 : fmt::format("with a {}", of.thing);
    }

    [[nodiscard]] std::string band(OvenDemandIndex index) const
    {
        const OvenDemand& demand = problem_.ovenDemands[index];
        if (demand.mode == modeOff) {
            return "switched off";
        }
        const ReadingStyle& style = reader_.style();
        return demand.acceptLow == demand.acceptHigh
                   ? "at " + temperatureText(demand.acceptLow, style)
                   : fmt::format("at {} to {}", temperatureText(demand.acceptLow, style),
                                 temperatureText(demand.acceptHigh, style));
    }

    [[nodiscard]] std::string waitText(LagIndex index) const
    {
        const Lag& lag = problem_.lags[index];
        const std::string& text = formulation_.lags[index].text;
        const std::string what = text.empty() ? "a wait" : quoted(text);
        const Minutes least = lag.min.value_or(Minutes{0});
        if (!lag.max) {
            return fmt::format("{} for at least {}", what, durationText(least));
        }
        if (least <= Minutes{0}) {
            return fmt::format("{} for at most {}", what, durationText(*lag.max));
        }
        return least == *lag.max ? fmt::format("{} for {}", what, durationText(least))
                                 : fmt::format("{} for {} to {}", what, durationText(least),
                                               durationText(*lag.max));
    }

    /// Where it fails: what there is, and what all of them together would be.
    void tellTogether()
    {
        if (story_.items.empty()) {
            return;
        }
        const std::string have = whatThereIs();
        if (story_.together) {
            say(fmt::format("{} that is all of it at once{}", reader_.during(*story_.together),
                            have.empty() ? "" : ", but " + have));
        } else if (!have.empty()) {
            say(story_.items.size() == 1 ? have : fmt::format("That does not fit: {}", have));
        }
    }

    [[nodiscard]] std::string whatThereIs() const
    {
        std::vector<std::string> parts;
        const auto any = [&](auto has) { return std::ranges::any_of(story_.items, has); };
        if (any([](const StoryItem& item) { return item.oven.has_value(); })) {
            parts.push_back(ovensText() + temperaturesText());
        }
        for (const StoryItem& item : story_.items) {
            if (item.thing) {
                parts.push_back(stockText(*item.thing));
            }
        }
        if (any([](const StoryItem& item) { return item.hands; })) {
            parts.push_back(handsText());
        }
        return listed(parts);
    }

    [[nodiscard]] std::string ovensText() const
    {
        std::vector<std::string> names;
        for (const OvenIndex oven : problem_.ovens.indices()) {
            names.push_back(fmt::format("{} with {}", theThing(formulation_.ovenNames[oven]),
                                        counted(problem_.ovens[oven].shelves, "shelf", "shelves")));
        }
        if (names.empty()) {
            return "the kitchen has no oven";
        }
        return names.size() == 1 ? "there is only " + names.front()
                                 : fmt::format("there are only {} ovens, {}", number(names.size()),
                                               listed(names));
    }

    /// Where those in the conflict never accept one temperature.
    [[nodiscard]] std::string temperaturesText() const
    {
        std::optional<int> low;
        std::optional<int> high;
        std::size_t count = 0;
        for (const StoryItem& item : story_.items) {
            if (item.oven && problem_.ovenDemands[*item.oven].mode != modeOff) {
                const OvenDemand& demand = problem_.ovenDemands[*item.oven];
                low = std::max(low.value_or(demand.acceptLow), demand.acceptLow);
                high = std::min(high.value_or(demand.acceptHigh), demand.acceptHigh);
                ++count;
            }
        }
        return count > 1 && *low > *high ? ", and no temperature suits all of it" : "";
    }

    [[nodiscard]] std::string stockText(DemandIndex index) const
    {
        const Demand& demand = problem_.demands[index];
        const DemandSource& of = formulation_.demands[index];
        if (demand.count) {
            const ResourceSource& resource = formulation_.counts[*demand.count];
            const std::int64_t capacity = problem_.counts[*demand.count].capacity;
            switch (resource.kind) {
            case ResourceKind::Fridge:
            case ResourceKind::Freezer:
                return fmt::format("the {} has room for {}.{} l", of.thing, capacity / 10,
                                   capacity % 10);
            case ResourceKind::Watch:
                return "heat needs somebody awake at home";
            case ResourceKind::Oven:
            case ResourceKind::Burner:
            case ResourceKind::Appliance:
            case ResourceKind::Vessel:
            case ResourceKind::Cook:
                return stock(of.thing, static_cast<std::size_t>(capacity));
            }
        }
        const auto& units = problem_.pools[*demand.pool].units;
        const auto fit = std::ranges::count_if(
            units, [&](const PoolUnit& unit) { return unit.size >= demand.minSize; });
        return stock(of.thing, static_cast<std::size_t>(fit));
    }

    [[nodiscard]] static std::string stock(const std::string& thing, std::size_t count)
    {
        return count == 0   ? fmt::format("the kitchen has no {} that will do", thing)
               : count == 1 ? fmt::format("there is one {}", thing)
                            : fmt::format("there are {} × {}", count, thing);
    }

    /// Who there is at the minutes that count, or on that day.
    [[nodiscard]] std::string handsText() const
    {
        if (story_.together) {
            return onlyThen(*story_.together);
        }
        const PlanTime last = std::ranges::max(story_.items, {}, &StoryItem::latest).latest;
        const CivilDate day = formulation_.calendar.civil(last).date;
        const PlanTime begins = formulation_.calendar.planTime(CivilTime{day, {}});
        const PlanTime ends = formulation_.calendar.planTime(CivilTime{addDays(day, 1), {}});
        std::vector<std::string> each;
        for (const CookIndex cook : problem_.cooks.indices()) {
            std::vector<std::string> times;
            for (const Interval& free : problem_.cooks[cook].free) {
                if (free.overlaps({begins, ends})) {
                    times.push_back(reader_.range(free));
                }
            }
            const std::string& name = formulation_.cookNames[cook];
            each.push_back(times.empty() ? name + " is not there"
                                         : fmt::format("{} is free {}", name, listed(times)));
        }
        return listed(each);
    }

    [[nodiscard]] std::string onlyThen(const Interval& when) const
    {
        std::vector<CookIndex> there;
        for (const CookIndex cook : problem_.cooks.indices()) {
            if (std::ranges::any_of(problem_.cooks[cook].free,
                                    [&](const Interval& free) { return free.contains(when); })) {
                there.push_back(cook);
            }
        }
        return there.empty() ? "no cook is free then"
                             : fmt::format("only {} {} free then", cooksText(there),
                                           there.size() == 1 ? "is" : "are");
    }

    void tellChoice(ChoiceIndex index)
    {
        const ChoiceSource& of = formulation_.choices[index];
        std::vector<std::string> names;
        for (const std::string& name : of.optionNames) {
            names.push_back(quoted(name));
        }
        say(fmt::format("nothing is left for “{}” of {}: not {}", of.name, theThing(of.dishName),
                        fmt::join(names, ", not ")));
    }

    const Formulation& formulation_;
    const Problem& problem_;
    ConflictStory story_;
    TimeReader reader_;
    std::vector<std::string> lines_;
};

} // namespace

std::vector<std::string> conflictSentences(const Formulation& formulation, const Occasion& occasion,
                                           const std::vector<std::string>& conflict,
                                           const ReadingStyle& style)
{
    return StoryWords(formulation, occasion, conflict, style).tell();
}

} // namespace suppertide
