// CookRoster: which cooks can take a piece of work in a trial, and who has to sit at table.
#pragma once

#include <vector>

#include "core/planner/quick_start/trial.h"

namespace suppertide::quick_start {

class CookRoster
{
public:
    explicit CookRoster(const Instance& instance);

    struct Choice
    {
        std::vector<CookIndex> cooks; // empty: nobody can
        std::int64_t cost = 0;        // about what the sessions cost
    };
    /// Picks the cooks with least penalty, then least cost, and enters the work as theirs.
    [[nodiscard]] Choice choose(Trial& trial, WorkIndex work) const;

    /// Clears what cooks would do while an event of the trial's block has them at table. Absent:
    /// done; else the work that cannot go.
    [[nodiscard]] std::optional<WorkIndex> seat(Trial& trial, std::size_t seating) const;

private:
    struct Candidate
    {
        CookIndex cook;
        std::int64_t penalty = 0;
        std::int64_t cost = 0;
    };
    [[nodiscard]] bool take(Trial& trial, const Work& work, CookIndex cook) const;
    [[nodiscard]] bool isThere(Trial& trial, const Work& work, CookIndex cook,
                               const Span& span) const;
    [[nodiscard]] std::int64_t sessionsAdded(const Trial& trial, CookIndex cook,
                                             const Span& span) const;

    const Instance* instance_;
    std::vector<std::vector<Span>> free_;  // by cook
    std::vector<std::vector<Span>> table_; // by cook
};

} // namespace suppertide::quick_start
