// planRest: on the night, what is left of the evening planned anew with the least change: the plan
// goes on as it is if that still holds; else the planner moves what it must; if nothing holds, ways
// to give way are tried and the first that does is offered. Runs on a worker thread; what it calls
// a plan has been checked by core/check.
#pragma once

#include <stop_token>
#include <variant>

#include "core/night/rest_of_evening.h"
#include "core/planner/planner.h"

namespace suppertide {

struct RestRequest
{
    PlanInput input;
    Progress progress;
    Instant now;
    PlannerLimits limits; // of each attempt
    std::uint64_t revision = 0;
};

struct RestPlan
{
    RestOfEvening rest;
    PlanPtr plan; // of the rest; it holds
    /// As it was laid out, with nothing moved but what is late and what is tied to that.
    bool isCarriedOn = false;
    RestOptions givingWay; // what it would not have fitted without
};

/// Nothing that was tried holds.
struct NoRest
{
    RestOfEvening rest;
    PlanPtr plan; // of the rest as laid out, with its clashes
    std::vector<Unplaced> unplaced;
    std::vector<std::string> conflict;
};

using RestOutcome = std::variant<RestPlan, NoRest, std::monostate>; // monostate: stopped

/// Only whether the plan goes on as it is, without planning anew: RestPlan or NoRest, in some
/// milliseconds.
[[nodiscard]] Result<RestOutcome> carryOn(const RestRequest& request);

/// Failure only for faulty input (see formulate).
[[nodiscard]] Result<RestOutcome> planRest(const RestRequest& request,
                                           const std::stop_token& stop = {});

} // namespace suppertide
