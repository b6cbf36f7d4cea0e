// One sentence for each kind of clash: who or what, when, how much is asked and how much there is.
#include <fmt/format.h>

#include <algorithm>

#include "core/wording/clash_words.h"
#include "core/wording/food_safety_sentence.h"

namespace suppertide {

namespace {

/// "From 17:40 to 18:10 the oven…", "The oven…" where there is no time.
std::string begun(const ClashWords& words, const std::string& rest)
{
    return capitalised(words.fromTo() + rest);
}

/// Why one dish alone does not get the heat that it wants.
std::string whyNot(const ClashWords& words, OvenDemandIndex demand)
{
    const Problem& problem = words.formulation().problem;
    if (!words.clash().oven) {
        return "is not";
    }
    const Oven& oven = problem.ovens[*words.clash().oven];
    const OvenDemand& wanted = problem.ovenDemands[demand];
    const bool reaches = wanted.acceptLow <= oven.maxC && wanted.acceptHigh >= oven.minC;
    if (reaches || wanted.mode == modeOff) {
        return "is not";
    }
    return fmt::format("cannot be: it goes from {} to {}",
                       temperatureText(oven.minC, words.times().style()),
                       temperatureText(oven.maxC, words.times().style()));
}

std::string ovenTemperature(const ClashWords& words)
{
    const auto& [first, second] = words.clash().ovenDemands;
    if (first && second) {
        return begun(words, fmt::format("{} is wanted {} by {} and {} by {}.", words.oven(),
                                        words.wanted(*first), words.ovenDish(*first),
                                        words.wanted(*second), words.ovenDish(*second)));
    }
    if (first) {
        return begun(words, fmt::format("{} is wanted {} by {}, and {}.", words.oven(),
                                        words.wanted(*first), words.ovenDish(*first),
                                        whyNot(words, *first)));
    }
    const auto asked = static_cast<int>(words.clash().asked);
    const auto allowed = static_cast<int>(words.clash().allowed);
    return begun(words,
                 fmt::format("{} is wanted at {} and at {} by {}.", words.oven(),
                             temperatureText(asked, words.times().style()),
                             temperatureText(allowed, words.times().style()), words.dishes()));
}

std::string ovenSpace(const ClashWords& words)
{
    const Clash& clash = words.clash();
    return begun(words,
                 fmt::format("{} of {} {} wanted by {}; it has {}.",
                             counted(clash.asked, "shelf", "shelves"), words.oven(),
                             clash.asked == 1 ? "is" : "are", words.dishes(), clash.allowed));
}

/// From one dish's temperature to another's, or, if only one is named, up to that one's.
std::string ovenRamp(const ClashWords& words)
{
    const Clash& clash = words.clash();
    const auto& [first, second] = clash.ovenDemands;
    if (first && second) {
        const std::string time =
            clash.when && !clash.when->empty()
                ? fmt::format("has only {}, {},", durationText(clash.when->length()),
                              words.times().during(*clash.when))
                : fmt::format("has no time{}",
                              clash.when ? ", " + words.times().during(*clash.when) + "," : "");
        return capitalised(
            fmt::format("{} {} to change over: it is wanted {} by {} and then {} by {}.",
                        words.oven(), time, words.wanted(*first), words.ovenDish(*first),
                        words.wanted(*second), words.ovenDish(*second)));
    }
    const auto only = first ? first : second;
    return capitalised(fmt::format(
        "{} cannot be ready in time: {}it is wanted {} by {}.", words.oven(),
        clash.when ? words.times().during(*clash.when) + " " : "",
        only ? words.wanted(*only)
             : "at " + temperatureText(static_cast<int>(clash.asked), words.times().style()),
        only ? words.ovenDish(*only) : words.dishes()));
}

/// "there are 2", or, where the kitchen has more that are too small, "only 1 will do".
std::string thereAre(const ClashWords& words)
{
    const Clash& clash = words.clash();
    const bool areMore =
        clash.pool &&
        static_cast<std::int64_t>(words.formulation().problem.pools[*clash.pool].units.size()) >
            clash.allowed;
    if (areMore) {
        return fmt::format("only {} will do", clash.allowed);
    }
    return fmt::format("there {} {}", clash.allowed == 1 ? "is" : "are", clash.allowed);
}

std::string burner(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (clash.asked > clash.allowed) {
        return begun(
            words, fmt::format("{} {} wanted by {}; {}.", counted(clash.asked, "burner", "burners"),
                               clash.asked == 1 ? "is" : "are", words.dishes(), thereAre(words)));
    }
    return begun(words,
                 fmt::format("no burner that is wide enough is free for {}.", words.dishes()));
}

/// Appliances and vessels.
std::string thingShared(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (clash.asked > 1) {
        return begun(words, fmt::format("{} is wanted {} times at once, by {}; {}.",
                                        theThing(words.thing()), clash.asked, words.dishes(),
                                        thereAre(words)));
    }
    return begun(words,
                 fmt::format("no {} that will do is free for {}.", words.thing(), words.dishes()));
}

/// Tenths of a litre, as "4.5 l".
std::string litresText(std::int64_t tenths)
{
    return tenths % 10 == 0 ? fmt::format("{} l", tenths / 10)
                            : fmt::format("{}.{} l", tenths / 10, tenths % 10);
}

std::string coldSpace(const ClashWords& words)
{
    const Clash& clash = words.clash();
    return begun(words, fmt::format("{} is to hold {} for {}; there is room for {}.",
                                    theThing(words.thing()), litresText(clash.asked),
                                    words.dishes(), litresText(clash.allowed)));
}

std::string hands(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (words.cook().empty()) {
        return begun(words, fmt::format("there are too few hands for {}.", words.deeds()));
    }
    const std::size_t atOnce = words.mostAtOnce();
    if (clash.tasks.size() == 2 && atOnce == 2) {
        const auto& tasks = words.formulation().tasks;
        if (deedOf(tasks[clash.tasks[0]]) == deedOf(tasks[clash.tasks[1]])) {
            return begun(
                words, fmt::format("{} cannot do {} twice at once.", words.cook(), words.deeds()));
        }
        return begun(words,
                     fmt::format("{} cannot do both at once: {}.", words.cook(), words.deeds()));
    }
    if (atOnce < 2) {
        return begun(words, fmt::format("more is asked of {} than one cook can do: {}.",
                                        words.cook(), words.deeds()));
    }
    const bool areAll = atOnce == clash.tasks.size();
    return begun(words, fmt::format("more is asked of {} than one cook can do, {}{} things at "
                                    "once: {}.",
                                    words.cook(), areAll ? "" : "up to ", atOnce, words.deeds()));
}

bool isAtTable(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (!clash.cook || !clash.when) {
        return false;
    }
    const Timetable timetable(words.formulation().problem, words.plan().schedule);
    const std::vector<Interval> table =
        timetable.atTable(words.formulation().problem.cooks[*clash.cook]);
    return std::ranges::any_of(
        table, [&clash](const Interval& each) { return each.overlaps(*clash.when); });
}

/// Nobody in particular is not free: what it asks for, and whether anybody has it.
std::string nobodyFree(const ClashWords& words)
{
    const Formulation& formulation = words.formulation();
    std::string asksFor;
    std::vector<std::string> onlyBy;
    bool isAnybodyAble = true;
    for (const TaskIndex task : words.clash().tasks) {
        const std::optional<Hands>& hands = formulation.problem.tasks[task].hands;
        if (const auto& skill = formulation.tasks[task].skill) {
            asksFor = " asks for " + quoted(*skill);
        }
        onlyBy = formulation.tasks[task].onlyBy;
        isAnybodyAble =
            !hands || !hands->skill ||
            std::ranges::any_of(formulation.problem.cooks, [&](const Cook& cook) {
                return std::ranges::find(cook.skills, *hands->skill) != cook.skills.end();
            });
    }
    if (!isAnybodyAble && !onlyBy.empty()) {
        return begun(words, fmt::format("{} is given to {}, who cannot{}.", words.deeds(),
                                        listed(onlyBy), asksFor.empty() ? "" : ": it" + asksFor));
    }
    return begun(words, fmt::format("no cook {} {}{}.", isAnybodyAble ? "is free for" : "can do",
                                    words.deeds(), asksFor.empty() ? "" : ", which" + asksFor));
}

std::string cookNotFree(const ClashWords& words)
{
    const std::string cook = words.cook();
    if (cook.empty()) {
        return nobodyFree(words);
    }
    return begun(words, fmt::format("{} is {}, and is to do {}.", cook,
                                    isAtTable(words) ? "at table" : "not free", words.deeds()));
}

/// " (FDA, Food Code 2022, 3-501.19(B))": whose rule a wait's most is; empty if it is the recipe's.
std::string limitSource(const std::string& rule)
{
    if (rule.empty()) {
        return {};
    }
    safety::Finding finding;
    finding.rule = rule;
    const safety::FindingSource source = safety::sourceOf(finding);
    return fmt::format(" ({}, {})", source.source, source.section);
}

std::string wait(const ClashWords& words)
{
    const Clash& clash = words.clash();
    const bool isShort = clash.kind == ClashKind::WaitTooShort;
    const std::string bound =
        durationText(Minutes{clash.allowed}) + (isShort ? " at least" : " at most");
    if (!clash.lag) {
        return capitalised(fmt::format("{} waits {}; it should be {}.", words.dish(),
                                       durationText(Minutes{clash.asked}), bound));
    }
    const LagSource& source = words.formulation().lags[*clash.lag];
    const Lag& lag = words.formulation().problem.lags[*clash.lag];
    if (source.text.empty()) {
        const std::string before = quoted(deedOf(words.formulation().tasks[lag.from.task]));
        const std::string after = quoted(deedOf(words.formulation().tasks[lag.to.task]));
        if (isShort && clash.allowed <= 0) {
            return fmt::format("{} comes {} too early: first comes {}.", after,
                               durationText(Minutes{clash.allowed - clash.asked}), before);
        }
        return fmt::format("{} follows {} after {}; it should be {}.", after,
                           durationText(Minutes{clash.asked}), before, bound);
    }
    const auto gap = words.gapOf(lag);
    return capitalised(fmt::format("{} has {} for “{}”{}; it should be {}{}.", words.dish(),
                                   durationText(Minutes{clash.asked}), source.text,
                                   gap && gap->start <= gap->end ? ", " + words.times().during(*gap)
                                                                 : std::string{},
                                   bound, isShort ? std::string{} : limitSource(source.limitedBy)));
}

std::string late(const ClashWords& words)
{
    const Clash& clash = words.clash();
    const Course* course = words.findCourse();
    if (course == nullptr) {
        return capitalised(fmt::format("{} is {} late.", words.dishes(),
                                       durationText(Minutes{clash.asked - clash.allowed})));
    }
    const PlanTime target = words.formulation().calendar.planTime(course->serving);
    const Minutes late{clash.asked - clash.allowed};
    return capitalised(fmt::format("{} is to be served at {} and is {} late{}.", words.course(),
                                   words.times().at(target), durationText(late),
                                   clash.tasks.empty() ? "" : ": " + words.deeds()));
}

std::string outsideWindow(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (clash.tasks.empty()) {
        return "Something is outside the hours given for it.";
    }
    const TaskIndex task = clash.tasks.front();
    const auto when = words.intervalOf(task);
    const Interval& window = words.formulation().problem.tasks[task].window;
    return fmt::format("{} is {}, outside what is given for it: {}.", words.deeds(),
                       when ? words.times().during(*when) : "nowhere", words.times().range(window));
}

/// The name of the choice that the clash is about: "how the roots are cooked".
std::string choiceName(const ClashWords& words)
{
    const Formulation& formulation = words.formulation();
    for (const ChoiceIndex choice : formulation.choices.indices()) {
        const std::string name = "choice:" + formulation.problem.choices[choice].id;
        if (std::ranges::find(words.clash().broken, name) != words.clash().broken.end()) {
            return formulation.choices[choice].name;
        }
    }
    return {};
}

std::string nothingChosen(const ClashWords& words)
{
    const std::string name = choiceName(words);
    return fmt::format("For {} {} is not chosen yet.", words.dish(),
                       name.empty() ? "a method or place" : quoted(name));
}

std::string substances(const ClashWords& words)
{
    std::vector<std::string> names;
    for (const Substance substance : words.clash().substances) {
        names.emplace_back(nameOf(substance));
    }
    return names.empty() ? "some things" : listed(names);
}

std::string allergen(const ClashWords& words)
{
    return capitalised(fmt::format("{} is given {}, which contains {}: {} avoids that.",
                                   words.guest(), words.dish(), substances(words), words.guest()));
}

std::string guestLeftOut(const ClashWords& words)
{
    return capitalised(
        fmt::format("{} gets nothing in {} that suits.", words.guest(), words.course()));
}

std::string contentsUnknown(const ClashWords& words)
{
    const std::vector<std::string>& labels = words.clash().labels;
    std::vector<std::string> names;
    std::vector<std::string> labelled;
    for (const std::string& ingredient : words.clash().ingredients) {
        const bool isLabelled = std::ranges::find(labels, ingredient) != labels.end();
        (isLabelled ? labelled : names).push_back(quoted(ingredient));
    }
    std::string text;
    if (!names.empty() || labelled.empty()) {
        text = fmt::format("Nobody has said what {} in {} contains, and {} avoids {}.",
                           names.empty() ? "one thing" : listed(names), words.dish(), words.guest(),
                           substances(words));
    }
    if (!labelled.empty()) {
        text += fmt::format("{}Check the label of {} in {}: {} avoids {}. Then say in the recipe "
                            "what it contains.",
                            text.empty() ? "" : " ", listed(labelled), words.dish(), words.guest(),
                            substances(words));
    }
    return text;
}

std::string utensils(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (clash.allowed == 0) {
        return fmt::format("The kitchen has no {} for {}.", words.thing(), words.dishes());
    }
    return fmt::format("The kitchen has {} × {}; {} {} wanted at once for {}.", clash.allowed,
                       words.thing(), clash.asked, clash.asked == 1 ? "is" : "are", words.dishes());
}

/// With the rule and who prints it.
std::string unwashedTool(const ClashWords& words)
{
    const Clash& clash = words.clash();
    if (clash.tasks.size() < 2) {
        return "Something is used for ready food and was not washed after what came before it.";
    }
    const auto deed = [&](std::size_t index) {
        return quoted(deedOf(words.formulation().tasks[clash.tasks[index]]));
    };
    const std::string was = clash.substances.empty() ? "raw food" : substances(words);
    std::string text = fmt::format("{} is used for {} and not washed after {}, when there was {} "
                                   "in it",
                                   theThing(words.thing()), deed(1), deed(0), was);
    if (clash.when) {
        text = fmt::format("at {} {}", words.times().at(clash.when->start), text);
    }
    return capitalised(text + ruleAfter(clash) + ".");
}

std::string unwatched(const ClashWords& words)
{
    return begun(words,
                 fmt::format("nobody is awake at home while something is hot: {}.", words.deeds()));
}

} // namespace

std::string sentence(const Plan& plan, const Occasion& occasion, const Clash& clash,
                     const ReadingStyle& style)
{
    const ClashWords words(plan, occasion, clash, style);
    switch (clash.kind) {
    case ClashKind::OvenTemperature:
        return ovenTemperature(words);
    case ClashKind::OvenSpace:
        return ovenSpace(words);
    case ClashKind::OvenRamp:
        return ovenRamp(words);
    case ClashKind::Burner:
        return burner(words);
    case ClashKind::Appliance:
    case ClashKind::Vessel:
        return thingShared(words);
    case ClashKind::ColdSpace:
        return coldSpace(words);
    case ClashKind::Hands:
        return hands(words);
    case ClashKind::CookNotFree:
        return cookNotFree(words);
    case ClashKind::WaitTooShort:
    case ClashKind::WaitTooLong:
        return wait(words);
    case ClashKind::LateForServing:
        return late(words);
    case ClashKind::OutsideWindow:
        return outsideWindow(words);
    case ClashKind::NothingChosen:
        return nothingChosen(words);
    case ClashKind::Allergen:
        return allergen(words);
    case ClashKind::GuestLeftOut:
        return guestLeftOut(words);
    case ClashKind::ContentsUnknown:
        return contentsUnknown(words);
    case ClashKind::Utensils:
        return utensils(words);
    case ClashKind::Unwatched:
        return unwatched(words);
    case ClashKind::FoodSafety:
        return foodSafetySentence(words);
    case ClashKind::UnwashedTool:
        return unwashedTool(words);
    }
    return std::string(nameOf(clash.kind));
}

} // namespace suppertide
