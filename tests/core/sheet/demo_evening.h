// The demo's evenings, laid out by hand or planned, so that the sheet is judged on real ones.
#pragma once

#include <string>

#include "core/plan/plan.h"

namespace suppertide::test {

struct DemoEvening
{
    PlanInput input;
    PlanPtr plan;
};

/// As its file lays it out.
[[nodiscard]] DemoEvening laidOut(const std::string& occasion);
/// As planned within a budget of steps: the same each time.
[[nodiscard]] DemoEvening planned(const std::string& occasion);

} // namespace suppertide::test
