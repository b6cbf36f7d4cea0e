#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/wording/diet_words.h"
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

void noteDoubts(const Occasion& occasion, const VerbContext& context)
{
    for (const Guest& guest : occasion.guests) {
        if (const std::string doubt = dietDoubtSentence(guest); !doubt.empty()) {
            context.out << "Note: " << doubt << '\n';
        }
    }
}

} // namespace

Exit runCheck(const CommandLine& line, const VerbContext& context)
{
    auto named = namedEvening(line);
    if (!named) {
        return say(named.error(), context);
    }
    const auto plan = laidOutPlan(named->input);
    if (!plan) {
        return say(plan.error(), context);
    }
    const Occasion& occasion = *named->input.occasion;
    const std::vector<Clash>& clashes = (*plan)->clashes;
    warnIfPast(**plan, context);
    noteDoubts(occasion, context);
    int number = 0;
    for (const Clash& clash : clashes) {
        context.out << fmt::format("{}. {}\n   {}: {}\n", ++number,
                                   sentence(**plan, occasion, clash), nameOf(clash.severity),
                                   placeAndTime(**plan, occasion, clash));
    }
    context.out << (clashes.empty()
                        ? "Nothing collides.\n"
                        : fmt::format("{} clash{}.\n", number, number == 1 ? "" : "es"));
    return clashes.empty() ? Exit::Done : Exit::Clashes;
}

} // namespace suppertide::app
