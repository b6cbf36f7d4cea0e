#include "tests/core/night/demo_night.h"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "core/exchange/exchange.h"
#include "core/plan/lay_out.h"
#include "core/propose/make_plan.h"

namespace suppertide::test {

namespace {

namespace fs = std::filesystem;

const LibraryState& demo()
{
    static const LibraryState state = [] {
        LibraryState all;
        for (const char* folder : {"recipes", "kitchens", "occasions"}) {
            for (const auto& entry :
                 fs::directory_iterator(fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db" / folder)) {
                const auto content = readExchangeFile(entry.path());
                if (!content) {
                    throw std::runtime_error(content.error().forCook);
                }
                all = imported(std::move(all), *content);
            }
        }
        return all;
    }();
    return state;
}

} // namespace

Night demoNight()
{
    static const Night night = [] {
        const OccasionRecord& record = *demo().occasions.at(OccasionId{"midsummer-supper"});
        PlanRequest request;
        request.input.occasion = std::make_shared<const Occasion>(record.occasion);
        request.input.kitchen = demo().kitchens.at(record.occasion.kitchen);
        request.input.recipes = {demo().recipes.begin(), demo().recipes.end()};
        request.input.layout = std::make_shared<const Layout>(record.layout);
        request.limits.wallClock = std::chrono::minutes(5);
        request.limits.steps = 20'000;
        const auto outcome = makePlan(request);
        if (!outcome) {
            throw std::runtime_error(outcome.error().forCook);
        }
        const Plan& found = *std::get<PlanFound>(*outcome).plan;
        Night planned{request.input, nullptr, {}, {}};
        planned.input.layout = std::make_shared<const Layout>(
            layoutOf(*found.formulation, found.schedule, record.layout));
        const auto formulation = formulate(planned.input);
        planned.plan =
            judgePlan(*formulation, planned.input, layOut(**formulation, *planned.input.layout));
        return planned;
    }();
    return night;
}

TaskIndex Night::task(const std::string& id) const
{
    return plan->formulation->taskById.at(id);
}

Instant Night::planned(const std::string& id) const
{
    return plan->formulation->calendar.instant(plan->interval(task(id))->start);
}

void Night::goTo(Instant at)
{
    now = at;
    progress = asPlannedUntil(std::move(progress), *plan, at);
}

RestRequest Night::request() const
{
    RestRequest request{input, progress, now, {}, 0};
    request.limits.wallClock = std::chrono::minutes(5);
    request.limits.steps = 20'000;
    return request;
}

RestOutcome Night::carriedOn() const
{
    auto outcome = carryOn(request());
    if (!outcome) {
        throw std::runtime_error(outcome.error().forCook);
    }
    return *std::move(outcome);
}

RestOutcome Night::planned() const
{
    auto outcome = planRest(request());
    if (!outcome) {
        throw std::runtime_error(outcome.error().forCook);
    }
    return *std::move(outcome);
}

RestOfEvening Night::rest(const RestOptions& options) const
{
    auto rest = restOfEvening(input, progress, now, options);
    if (!rest) {
        throw std::runtime_error(rest.error().forCook);
    }
    return *std::move(rest);
}

Instant Night::at(int hour, int minute) const
{
    return plan->formulation->calendar.zone.instant(
        {input.occasion->courses.front().serving.date, {hour, minute}});
}

void reportAtRandom(Night& night, Random& random)
{
    const Formulation& formulation = *night.plan->formulation;
    std::vector<TaskIndex> begun;
    for (const TaskIndex task : formulation.problem.tasks.indices()) {
        const auto when = night.plan->interval(task);
        if (when && isReportable(formulation.tasks[task]) &&
            formulation.calendar.instant(when->start) <= night.now) {
            begun.push_back(task);
        }
    }
    std::ranges::stable_sort(begun, {},
                             [&](TaskIndex task) { return night.plan->interval(task)->start; });
    for (const TaskIndex task : begun) {
        const auto when = *night.plan->interval(task);
        const Instant start = formulation.calendar.instant(when.start);
        const Instant end = formulation.calendar.instant(when.end);
        const Instant late = std::min(end + Minutes{random.between(0, 15)}, night.now);
        switch (random.between(0, 11)) {
        case 0:
            break; // forgotten
        case 1:
            night.progress = withLate(std::move(night.progress), *night.plan, task,
                                      Minutes{random.between(1, 30)}, night.now);
            break;
        case 2:
            night.progress = withStarted(std::move(night.progress), *night.plan, task, start);
            break;
        default:
            if (end <= night.now) {
                night.progress =
                    withDone(withStarted(std::move(night.progress), *night.plan, task, start),
                             *night.plan, task, late);
            } else {
                night.progress = withStarted(std::move(night.progress), *night.plan, task, start);
            }
            break;
        }
    }
    if (random.oneIn(3)) {
        const auto any = static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(formulation.problem.tasks.size()) - 1));
        if (isReportable(formulation.tasks[TaskIndex{any}])) {
            night.progress = withLeftOut(std::move(night.progress), *night.plan, TaskIndex{any});
        }
    }
}

} // namespace suppertide::test
