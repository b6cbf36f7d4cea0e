// Why a step stands where it does: the requirement that holds it each way, or what it would cost.
#include <fmt/format.h>

#include <algorithm>

#include "core/wording/advice_wording.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

class WhyWords
{
public:
    WhyWords(const WhyHere& why, const Plan& plan, const Occasion& occasion,
             const ReadingStyle& style)
        : why_(why), formulation_(*plan.formulation), occasion_(occasion),
          reader_(plan, occasion, style)
    {}

    [[nodiscard]] std::string earlier() const
    {
        const Hold& hold = why_.earlier;
        const std::string because = reasons(hold, true);
        if (hold.free <= Minutes{0}) {
            return "It cannot start earlier: " + because + ".";
        }
        return fmt::format("It could start up to {} earlier, at {}{}; before that {}.",
                           durationText(hold.free), reader_.at(why_.start - hold.free),
                           costText(hold), because);
    }

    [[nodiscard]] std::string later() const
    {
        const Hold& hold = why_.later;
        const std::string because = reasons(hold, false);
        if (hold.free <= Minutes{0}) {
            return "It cannot start later: " + because + ".";
        }
        return fmt::format("It could start up to {} later, at {}{}; after that {}.",
                           durationText(hold.free), reader_.at(why_.start + hold.free),
                           costText(hold), because);
    }

private:
    [[nodiscard]] bool isOwn(TaskIndex task) const
    {
        return std::ranges::find(why_.group, task) != why_.group.end();
    }

    [[nodiscard]] std::string others(const Clash& clash) const
    {
        std::vector<std::string> deeds;
        for (const TaskIndex task : clash.tasks) {
            if (!isOwn(task)) {
                deeds.push_back(nameOf(task));
            }
        }
        return listed(deeds);
    }

    [[nodiscard]] std::string nameOf(TaskIndex task) const
    {
        const TaskSource& of = formulation_.tasks[task];
        return of.batches > 1 ? fmt::format("{} (batch {})", quoted(deedOf(of)), of.batch)
                              : quoted(deedOf(of));
    }

    [[nodiscard]] std::string reasons(const Hold& hold, bool isEarlier) const
    {
        if (why_.isPinned) {
            return "it is pinned here";
        }
        std::vector<std::string> each;
        for (const Clash& clash : hold.clashes) {
            if (clash.kind == ClashKind::Hands && comesInOrder(hold, clash)) {
                continue;
            }
            const std::string said = reason(hold, clash, isEarlier);
            if (std::ranges::find(each, said) == each.end()) {
                each.push_back(said);
            }
        }
        return each.empty() ? "nothing was found that holds it" : listed(each);
    }

    /// Whether some other clash says already that what the cook is busy with comes before or after.
    [[nodiscard]] bool comesInOrder(const Hold& hold, const Clash& hands) const
    {
        return std::ranges::any_of(hold.clashes, [&](const Clash& clash) {
            return clash.kind == ClashKind::WaitTooShort && !others(hands).empty() &&
                   others(clash) == others(hands);
        });
    }

    [[nodiscard]] std::string reason(const Hold& hold, const Clash& clash, bool isEarlier) const
    {
        const std::string with = others(clash);
        switch (clash.kind) {
        case ClashKind::Hands:
            return with.empty() ? "there are too few hands"
                                : fmt::format("{} busy with {}", cookIs(clash), with);
        case ClashKind::CookNotFree:
            return clash.cook ? fmt::format("{} is {}", formulation_.cookNames[*clash.cook],
                                            isAtTable(hold, clash) ? "at table" : "not free")
                              : "no cook is free";
        case ClashKind::OvenTemperature:
        case ClashKind::OvenSpace:
        case ClashKind::OvenRamp:
            return ovenReason(clash, with);
        case ClashKind::Burner:
            return "no burner is free" + (with.empty() ? with : ", because of " + with);
        case ClashKind::Appliance:
        case ClashKind::Vessel:
        case ClashKind::Utensils:
            return fmt::format("{} is wanted for {}", theThing(thingOf(clash)),
                               with.empty() ? "something else" : with);
        case ClashKind::ColdSpace:
            return fmt::format("{} is full", theThing(thingOf(clash)));
        case ClashKind::WaitTooShort:
        case ClashKind::WaitTooLong:
            return waitReason(clash, isEarlier);
        case ClashKind::LateForServing:
            return "it would be late for serving";
        case ClashKind::OutsideWindow:
            return windowReason(clash);
        case ClashKind::Unwatched:
            return "nobody would be awake at home";
        case ClashKind::NothingChosen:
        case ClashKind::Allergen:
        case ClashKind::GuestLeftOut:
        case ClashKind::ContentsUnknown:
        case ClashKind::FoodSafety:
        case ClashKind::UnwashedTool:
            break;
        }
        std::string said = sentence(*hold.beyond, occasion_, clash, reader_.style());
        said.pop_back();
        return said;
    }

    [[nodiscard]] bool isAtTable(const Hold& hold, const Clash& clash) const
    {
        const Timetable times(formulation_.problem, hold.beyond->schedule);
        const std::vector<Interval> table = times.atTable(formulation_.problem.cooks[*clash.cook]);
        return clash.when && std::ranges::any_of(table, [&](const Interval& each) {
                   return each.overlaps(*clash.when);
               });
    }

    [[nodiscard]] std::string cookIs(const Clash& clash) const
    {
        return clash.cook ? formulation_.cookNames[*clash.cook] + " is" : "all cooks are";
    }

    [[nodiscard]] std::string ovenReason(const Clash& clash, const std::string& with) const
    {
        const std::string oven =
            clash.oven ? theThing(formulation_.ovenNames[*clash.oven]) : "the oven";
        for (const auto& demand : clash.ovenDemands) {
            if (!demand || isOwn(formulation_.problem.ovenDemands[*demand].from.task)) {
                continue;
            }
            const OvenDemand& other = formulation_.problem.ovenDemands[*demand];
            const std::string dish = theThing(formulation_.ovenDemands[*demand].dishName);
            if (other.mode == modeOff) {
                return fmt::format("{} is switched off for {}", oven, dish);
            }
            return fmt::format(
                "{} is{} at {} for {}", oven,
                clash.kind == ClashKind::OvenRamp ? " still changing over from or to being" : "",
                temperatureText(other.prefer.value_or(other.acceptLow), reader_.style()), dish);
        }
        if (clash.kind == ClashKind::OvenSpace) {
            return fmt::format("{} has no shelf free{}", oven,
                               with.empty() ? with : ", because of " + with);
        }
        return fmt::format("{} would not be ready", oven);
    }

    [[nodiscard]] std::string thingOf(const Clash& clash) const
    {
        if (clash.pool) {
            return formulation_.pools[*clash.pool].name;
        }
        return clash.count ? formulation_.counts[*clash.count].name : "what it takes";
    }

    [[nodiscard]] std::string waitReason(const Clash& clash, bool isEarlier) const
    {
        if (!clash.lag) {
            return "a wait would not be kept";
        }
        const Lag& lag = formulation_.problem.lags[*clash.lag];
        const LagSource& source = formulation_.lags[*clash.lag];
        const TaskIndex other = isOwn(lag.from.task) ? lag.to.task : lag.from.task;
        const TaskSource& of = formulation_.tasks[other];
        const bool isServing = of.role == TaskRole::Serving;
        const std::string deed = isServing ? "serving " + theThing(of.dishName) : nameOf(other);
        const bool isLong = clash.kind == ClashKind::WaitTooLong;
        const std::string bound = durationText(Minutes{clash.allowed});
        if (!source.text.empty() && (isLong || clash.allowed > 0)) {
            return fmt::format("{} takes at {} {} {} {}", quoted(source.text),
                               isLong ? "most" : "least", bound,
                               isOwn(lag.from.task) ? "before" : "after", deed);
        }
        if (isLong) {
            return fmt::format("{} comes at most {} {}", deed, bound,
                               isOwn(lag.from.task) ? "after it" : "before it");
        }
        return isEarlier ? deed + " comes first" : deed + " comes after it";
    }

    [[nodiscard]] std::string windowReason(const Clash& clash) const
    {
        for (const TaskIndex task : clash.tasks) {
            if (!isOwn(task)) {
                return fmt::format("{} would move", quoted(deedOf(formulation_.tasks[task])));
            }
            const Task& of = formulation_.problem.tasks[task];
            const TaskSource& source = formulation_.tasks[task];
            if (source.role == TaskRole::Serving) {
                return fmt::format("{} is served at {}", theThing(source.dishName),
                                   reader_.at(of.window.start));
            }
            if (of.window.start > PlanTime{} || of.window.end < formulation_.problem.horizon) {
                return fmt::format("it is to be done from {}", reader_.range(of.window));
            }
        }
        return "the plan does not reach so far";
    }

    /// What it would cost, if that is what keeps it here: the part that grows most.
    [[nodiscard]] std::string costText(const Hold& hold) const
    {
        if (!hold.at) {
            return {};
        }
        const PlanFigures& now = why_.figures;
        const PlanFigures& then = *hold.at;
        // That it was put here before is no reason for somebody who asks whether to move it.
        if (then.cost.total() - then.cost.before <= now.cost.total() - now.cost.before) {
            return ", at no cost";
        }
        if (then.handsOnLastHour > now.handsOnLastHour &&
            then.cost.quiet - now.cost.quiet >= then.cost.loss - now.cost.loss) {
            return fmt::format(", but then {} more hands-on work falls in the last hour",
                               durationText(then.handsOnLastHour - now.handsOnLastHour));
        }
        if (then.cost.quiet > now.cost.quiet && then.handsOnAtTable > now.handsOnAtTable) {
            return fmt::format(", but then {} more hands-on work falls while guests are at table",
                               durationText(then.handsOnAtTable - now.handsOnAtTable));
        }
        if (then.cost.loss > now.cost.loss) {
            return ", but then it is less fresh when it is served";
        }
        if (then.cost.ovenChange > now.cost.ovenChange) {
            return ", but then the oven's setting changes more often";
        }
        if (then.cost.session > now.cost.session) {
            return ", but then there is one more working session";
        }
        if (then.cost.ovenOn > now.cost.ovenOn) {
            return fmt::format(", but then the oven is on for {} more",
                               durationText(then.ovenOn - now.ovenOn));
        }
        if (then.cost.quiet > now.cost.quiet) {
            return ", but then more work falls in the last hour before a course";
        }
        return ", but then the oven is further from what is best for what is in it";
    }

    const WhyHere& why_;
    const Formulation& formulation_;
    const Occasion& occasion_;
    TimeReader reader_;
};

} // namespace

std::string earlierSentence(const WhyHere& why, const Plan& plan, const Occasion& occasion,
                            const ReadingStyle& style)
{
    return WhyWords(why, plan, occasion, style).earlier();
}

std::string laterSentence(const WhyHere& why, const Plan& plan, const Occasion& occasion,
                          const ReadingStyle& style)
{
    return WhyWords(why, plan, occasion, style).later();
}

std::string alongSentence(const WhyHere& why)
{
    std::vector<std::string> ways;
    const auto add = [&](const Hold& hold, std::string_view way) {
        if (hold.along > hold.free) {
            ways.push_back(fmt::format("{}{} {}", hold.along >= furthestAlong ? "at least " : "",
                                       durationText(hold.along), way));
        }
    };
    add(why.earlier, "earlier");
    add(why.later, "later");
    return ways.empty() ? std::string{}
                        : fmt::format("With what is tied to it moving along: {}.", listed(ways));
}

} // namespace suppertide
