#include <fmt/format.h>

#include <chrono>
#include <ostream>
#include <variant>

#include "app/planning.h"
#include "core/advice/ways_out.h"
#include "core/wording/advice_wording.h"
#include "core/wording/wording.h"

namespace suppertide::app {

namespace {

/// To see whether a change helps, and then to make its plan a good one.
constexpr std::chrono::milliseconds perChange{2000};
constexpr std::chrono::milliseconds perWayOut{1500};

/// Prints each way out as it is found.
void sayWaysOut(const PlanInput& input, const VerbContext& context)
{
    AdviceRequest request;
    request.input = input;
    request.first.wallClock = perChange;
    request.better.wallClock = perWayOut;
    context.err << "Looking for a way out…\n";
    int number = 0;
    const auto advice = findWaysOut(request, {}, [&](const AdviceProgress& progress) {
        if (progress.found != nullptr) {
            context.err << fmt::format("{}. {}\n   {}\n", ++number, changeSentence(*progress.found),
                                       effectSentence(*progress.found));
            context.err.flush();
        }
    });
    if (advice && advice->ways.empty()) {
        context.err << "None was found that helps.\n";
    }
}

Exit sayNoPlan(const PlanOutcome& outcome, const PlanInput& input, const VerbContext& context)
{
    const auto* none = std::get_if<NoPlan>(&outcome);
    if (none == nullptr) {
        context.err << "No plan was found in time. Give it more with --seconds, or move or drop "
                       "something that clashes.\n";
        return Exit::NoPlanInTime;
    }
    context.err << (none->isProven ? "This evening cannot be cooked as it stands.\n"
                                   : "No plan was found in time.\n");
    if (!none->conflict.empty()) {
        for (const std::string& said :
             conflictSentences(*none->formulation, *input.occasion, none->conflict)) {
            context.err << said << '\n';
        }
        sayWaysOut(input, context);
        return Exit::NoPlanInTime;
    }
    for (const Unplaced& unplaced : none->unplaced) {
        context.err << unplacedSentence(*none->formulation, unplaced.task, unplaced.because)
                    << '\n';
    }
    return Exit::NoPlanInTime;
}

/// Keeps the plan where the command says; a sentence of where that was.
Result<std::string> keep(const CommandLine& line, const Evening& evening, OccasionRecord record)
{
    if (line.out) {
        auto written = writeExchangeFile(contentWith(evening.state, std::move(record)), *line.out);
        if (!written) {
            return written.error();
        }
        return fmt::format("Kept in {}.", line.out->string());
    }
    if (evening.isFromFile) {
        return std::string("Not kept: name a file with --out to keep it.");
    }
    auto kept = keepRecord(*evening.library, evening.state, std::move(record), "Make plan");
    if (!kept) {
        return kept.error();
    }
    return std::string("Kept in the library.");
}

} // namespace

Exit runPlan(const CommandLine& line, const VerbContext& context)
{
    auto named = namedEvening(line);
    if (!named) {
        return say(named.error(), context);
    }
    const Evening& evening = named->evening;
    const PlanInput& input = named->input;
    auto outcome = planEvening(line, input);
    if (!outcome) {
        return say(outcome.error(), context);
    }
    const PlanPtr plan = planIn(*outcome);
    if (!plan) {
        return sayNoPlan(*outcome, input, context);
    }
    auto kept = keep(line, evening, withPlan(*evening.record, *plan));
    if (!kept) {
        return say(kept.error(), context);
    }
    const PlanFigures& figures = plan->figures;
    context.out << fmt::format(
        "Planned “{}”: {} hands-on in the last hour, oven on {}, {} setting change{}, {} working "
        "session{}.\n",
        evening.record->occasion.name, durationText(figures.handsOnLastHour),
        durationText(figures.ovenOn), figures.ovenChanges, figures.ovenChanges == 1 ? "" : "s",
        figures.sessions, figures.sessions == 1 ? "" : "s");
    for (const Clash& clash : plan->clashes) {
        context.out << "Still to settle: " << sentence(*plan, *input.occasion, clash) << '\n';
    }
    context.out << *kept << '\n';
    return Exit::Done;
}

} // namespace suppertide::app
