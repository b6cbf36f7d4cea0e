#include "core/wording/night_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// More than these are counted, not named.
constexpr std::size_t mostNamed = 3;

class ChangeWords
{
public:
    ChangeWords(const RestOfEvening& rest, const Plan& plan, const ReadingStyle& style)
        : formulation_(*plan.formulation), plan_(plan), style_(style),
          today_(formulation_.calendar.civil(planTime(0)).date)
    {
        for (const NightMove& move : movesOf(rest, plan.schedule)) {
            const bool isServing = formulation_.tasks[move.task].role == TaskRole::Serving;
            (isServing ? servings_ : steps_).push_back(move);
        }
        for (const TaskIndex whole : rest.whole->problem.tasks.indices()) {
            const auto left = rest.inRest[whole];
            if (left && rest.facts.steps[whole].state == StepState::ToCome &&
                plan.schedule.cooks[*left] != rest.planned.cooks[whole]) {
                handedOver_.push_back(handedOver(*left));
            }
        }
    }

    [[nodiscard]] std::string text() const
    {
        std::string text = steps();
        for (const NightMove& move : servings_) {
            text += (text.empty() ? "" : " ") + fmt::format("{}: served at {}, {}.",
                                                            formulation_.tasks[move.task].dishName,
                                                            clock(move.to), shift(move));
        }
        for (const std::string& handed : handedOver_) {
            text += " " + handed;
        }
        if (const std::string stays = staying(); !stays.empty()) {
            text += (text.empty() ? "" : " ") + stays;
        }
        return text;
    }

private:
    [[nodiscard]] std::string clock(Instant at) const
    {
        return timeText(formulation_.calendar, formulation_.calendar.planTime(at), today_, style_);
    }

    /// "“Tidy the kitchen” is for Jory now."
    [[nodiscard]] std::string handedOver(TaskIndex task) const
    {
        std::vector<std::string> names;
        for (const CookIndex cook : plan_.schedule.cooks[task]) {
            names.push_back(formulation_.cookNames[cook]);
        }
        return fmt::format("{} is for {} now.", quoted(deedOf(formulation_.tasks[task])),
                           names.empty() ? "nobody" : listed(names));
    }

    static std::string shift(const NightMove& move)
    {
        const Minutes by = move.to - move.from;
        return by > Minutes{0} ? durationText(by) + " later" : durationText(-by) + " earlier";
    }

    [[nodiscard]] std::string steps() const
    {
        if (steps_.empty()) {
            return "No step moves.";
        }
        std::vector<std::string> named;
        for (std::size_t i = 0; i < std::min(steps_.size(), mostNamed); ++i) {
            named.push_back(fmt::format("{} at {}, {}",
                                        quoted(deedOf(formulation_.tasks[steps_[i].task])),
                                        clock(steps_[i].to), shift(steps_[i])));
        }
        std::string text;
        for (const std::string& each : named) {
            text += (text.empty() ? "" : "; ") + each;
        }
        if (steps_.size() > mostNamed) {
            text += "; " + counted(static_cast<std::int64_t>(steps_.size() - mostNamed),
                                   "more step moves", "more steps move");
        }
        return text + ".";
    }

    /// "Serving stays 19:30, 20:15 and 21:00."
    [[nodiscard]] std::string staying() const
    {
        std::vector<PlanTime> times;
        for (const auto& [course, event] : formulation_.servings) {
            const bool isMoved = std::ranges::any_of(
                servings_, [event = event](const NightMove& move) { return move.task == event; });
            if (plan_.schedule.starts[event] && !isMoved) {
                times.push_back(*plan_.schedule.starts[event]);
            }
        }
        std::ranges::sort(times);
        std::vector<std::string> clocks;
        std::ranges::transform(times, std::back_inserter(clocks), [&](PlanTime time) {
            return timeText(formulation_.calendar, time, today_, style_);
        });
        return clocks.empty() ? std::string{} : fmt::format("Serving stays {}.", listed(clocks));
    }

    const Formulation& formulation_;
    const Plan& plan_;
    ReadingStyle style_;
    CivilDate today_;
    std::vector<NightMove> steps_;
    std::vector<NightMove> servings_;
    std::vector<std::string> handedOver_;
};

std::string waitName(const LagSource& wait, const TaskSource& from)
{
    const std::string what = from.dishName.empty() ? "" : " (" + theThing(from.dishName) + ")";
    return quoted(wait.text.empty() ? "wait" : wait.text) + what;
}

/// "“chills” (the soup) is not kept to: at least 4 h, at most 2 days." for "lag:…"; for hours:
/// "“Receive the guests” is done outside its hours."
std::string missed(const Formulation& whole, const std::string& name)
{
    for (const TaskIndex index : whole.problem.tasks.indices()) {
        if (name == "window:" + whole.problem.tasks[index].id) {
            return fmt::format("{} is done outside its hours.", quoted(deedOf(whole.tasks[index])));
        }
    }
    for (const LagIndex index : whole.problem.lags.indices()) {
        const Lag& lag = whole.problem.lags[index];
        const LagSource& wait = whole.lags[index];
        if (name != "lag:" + lag.id) {
            continue;
        }
        std::string bounds = "at least " + durationText(wait.least);
        if (wait.most) {
            bounds += ", at most " + durationText(*wait.most);
        }
        return fmt::format("{} is not kept to: {}. Look at the food before you serve it; where it "
                           "matters for safety, leave it out.",
                           capitalised(waitName(wait, whole.tasks[lag.from.task])), bounds);
    }
    return {};
}

} // namespace

std::string changesText(const RestOfEvening& rest, const Plan& plan, const ReadingStyle& style)
{
    return ChangeWords(rest, plan, style).text();
}

std::string givingWayText(const Formulation& whole, const RestOptions& givingWay)
{
    if (givingWay.isNone()) {
        return {};
    }
    std::vector<std::string> ways;
    if (givingWay.servingLater > Minutes{0}) {
        ways.emplace_back("courses are served later than set");
    }
    if (givingWay.cooksLonger > Minutes{0}) {
        ways.emplace_back("somebody stays up longer than planned");
    }
    if (givingWay.mayChoose) {
        ways.emplace_back("another method or place is taken");
    }
    std::string text;
    if (!ways.empty()) {
        text = fmt::format("It fits if {}.", listed(ways));
    }
    for (const std::string& name : givingWay.givenUp) {
        text += (text.empty() ? "" : " ") + missed(whole, name);
    }
    return "What is left does not fit as it was. " + text;
}

std::string passedText(const RestOfEvening& rest, const ReadingStyle& style)
{
    const Formulation& whole = *rest.whole;
    const CivilDate today = whole.calendar.civil(rest.facts.now).date;
    std::string text;
    for (const Passed& passed : rest.passed) {
        const TaskSource& task = whole.tasks[passed.task];
        const PlanTime end = whole.problem.tasks[passed.task].window.end;
        std::string sentence;
        switch (passed.kind) {
        case PassedKind::Wait:
            sentence = fmt::format(
                "{} lasts longer than {}: look at the food before you go on.",
                capitalised(waitName(whole.lags[*passed.lag],
                                     whole.tasks[whole.problem.lags[*passed.lag].from.task])),
                durationText(whole.lags[*passed.lag].most.value_or(Minutes{0})));
            break;
        case PassedKind::Window:
            sentence = fmt::format("{} was to be done by {}.", quoted(deedOf(task)),
                                   timeText(whole.calendar, end, today, style));
            break;
        case PassedKind::Serving:
            sentence =
                fmt::format("{} was to be served by {}.", capitalised(theThing(task.dishName)),
                            timeText(whole.calendar, end, today, style));
            break;
        }
        text += (text.empty() ? "" : " ") + sentence;
    }
    return text;
}

} // namespace suppertide
