#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/plan/lay_out.h"
#include "core/wording/wording.h"

namespace suppertide::app {

namespace {

/// A plan of an evening that is over is still looked at, but said to be so.
void warnIfPast(const Plan& plan, const VerbContext& context)
{
    const PlanCalendar& calendar = plan.formulation->calendar;
    for (const auto& [course, serving] : plan.formulation->servings) {
        const auto when = plan.interval(serving);
        if (when && calendar.instant(when->start) < context.clock.now()) {
            context.out << "Note: this occasion is in the past.\n";
            return;
        }
    }
}

} // namespace

Exit runCheck(const CommandLine& line, const VerbContext& context)
{
    auto evening = findEvening(line, line.arguments.front());
    if (!evening) {
        return say(evening.error(), context);
    }
    auto input = planInputOf(evening->state, evening->record);
    if (!input) {
        return say(input.error(), context);
    }
    auto formulation = formulate(*input);
    if (!formulation) {
        return say(formulation.error(), context);
    }
    const PlanPtr plan = judgePlan(*formulation, *input, layOut(**formulation, *input->layout));
    warnIfPast(*plan, context);
    int number = 0;
    for (const Clash& clash : plan->clashes) {
        context.out << fmt::format("{}. {}\n   {}: {}\n", ++number,
                                   sentence(*plan, *input->occasion, clash), nameOf(clash.severity),
                                   placeAndTime(*plan, *input->occasion, clash));
    }
    context.out << (plan->clashes.empty()
                        ? "Nothing collides.\n"
                        : fmt::format("{} clash{}.\n", number, number == 1 ? "" : "es"));
    return plan->clashes.empty() ? Exit::Done : Exit::Clashes;
}

} // namespace suppertide::app
