// Judges a food's history by the rules of one book. Judged are: minutes in the danger zone added up
// over all stays off the heat and out of the cold, both stages of cooling, holding hot and cold,
// reheating, the core temperature or its equal in time, days kept, thawing, and what guests at
// higher risk should not eat. What was not computed is said to be unknown; nothing is taken for
// granted. No finding means that no rule known to this program is broken: local codes prevail.
#pragma once

#include <span>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/result.h"
#include "core/safety/finding.h"
#include "core/safety/food_history.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

/// By whose rules, for whom, and in which calendar (days of a date mark end at its midnights).
struct Judging
{
    RuleBook book = RuleBook::UsHome;
    std::vector<RiskGroup> guests; // at higher risk, who eat of it
    PlanCalendar calendar;

    friend bool operator==(const Judging&, const Judging&) = default;
};

/// Findings, unsafe before caution, then in the order in which their minutes begin. BadInput as
/// checkHistory. Linear in the number of samples.
[[nodiscard]] Result<std::vector<Finding>> judgeHistory(const FoodHistory& history,
                                                        const Judging& judging);

/// The minutes that a food has stood off the heat and out of the cold, as the book counts them,
/// before it goes into another at `until` (for MixedIn::stood), with what it took over itself.
/// BadInput as checkHistory.
[[nodiscard]] Result<std::vector<MinuteSpan>> stoodSoFar(const FoodHistory& history, PlanTime until,
                                                         RuleBook book);

} // namespace suppertide::safety
