// The demo's evening on the night: laid out as its file has it, with reports of the cooks.
#pragma once

#include <string>

#include "core/night/rest_of_evening.h"
#include "core/propose/plan_rest.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::test {

struct Night
{
    PlanInput input;
    PlanPtr plan; // as laid out before anything happened
    Progress progress;
    Instant now;

    [[nodiscard]] TaskIndex task(const std::string& id) const;
    /// The time that the plan has for the task's start.
    [[nodiscard]] Instant planned(const std::string& id) const;
    /// All until then went as planned.
    void goTo(Instant at);
    [[nodiscard]] RestRequest request() const;
    /// Throws if the evening has faults.
    [[nodiscard]] RestOutcome carriedOn() const;
    [[nodiscard]] RestOutcome planned() const;
    [[nodiscard]] RestOfEvening rest(const RestOptions& options = {}) const;
    /// A time of the evening's day.
    [[nodiscard]] Instant at(int hour, int minute = 0) const;
};

/// "midsummer-supper".
[[nodiscard]] Night demoNight();

/// Reports as a careless cook makes them: some steps late, some not reported, some not done.
void reportAtRandom(Night& night, Random& random);

} // namespace suppertide::test
