#include "app/planning.h"

#include <chrono>
#include <variant>

namespace suppertide::app {

namespace {

constexpr int usualSeconds = 5;

} // namespace

Result<PlanOutcome> planEvening(const CommandLine& line, const PlanInput& input)
{
    PlanRequest request{input};
    request.limits.wallClock = std::chrono::seconds(line.seconds.value_or(usualSeconds));
    return makePlan(request);
}

PlanPtr planIn(const PlanOutcome& outcome)
{
    if (const auto* found = std::get_if<PlanFound>(&outcome)) {
        return found->plan;
    }
    if (const auto* stopped = std::get_if<Stopped>(&outcome)) {
        return stopped->best;
    }
    return nullptr;
}

OccasionRecord withPlan(const OccasionRecord& record, const Plan& plan)
{
    return {record.occasion, layoutOf(*plan.formulation, plan.schedule, record.layout)};
}

Result<void> keepRecord(Library& library, const LibraryState& state, OccasionRecord record,
                        const std::string& text)
{
    LibraryState next = state;
    const OccasionId id = record.occasion.id;
    next.occasions[id] = std::make_shared<const OccasionRecord>(std::move(record));
    return library.apply(differenceOf(state, next, text));
}

} // namespace suppertide::app
