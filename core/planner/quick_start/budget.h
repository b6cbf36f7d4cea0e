// Budget: how much longer a run may go on: counted steps, the wall clock, the stop token.
#pragma once

#include <chrono>
#include <cstdint>
#include <stop_token>

#include "core/planner/planner.h"

namespace suppertide::quick_start {

class Budget
{
public:
    using Clock = std::chrono::steady_clock;

    Budget(const PlannerLimits& limits, std::stop_token stop, Clock::time_point started)
        : steps_(limits.steps), deadline_(started + limits.wallClock), stop_(std::move(stop))
    {}

    /// Counts work and says whether there may be more. Once false, it stays so.
    bool spend(std::int64_t steps)
    {
        taken_ += steps;
        if (!over_) {
            over_ = taken_ >= steps_ || stop_.stop_requested() || isLate(steps);
        }
        return !over_;
    }
    /// From now on so many steps in all.
    void allow(std::int64_t steps) { steps_ = steps; }
    /// No longer than until then.
    void allowUntil(Clock::time_point deadline) { deadline_ = deadline; }
    [[nodiscard]] bool isOver() const { return over_; }
    [[nodiscard]] std::int64_t taken() const { return taken_; }
    [[nodiscard]] Clock::time_point now() const { return Clock::now(); }

private:
    /// Reading the clock costs as much as some steps, so it is read now and then.
    bool isLate(std::int64_t steps)
    {
        sinceClock_ += steps;
        if (sinceClock_ < betweenClocks) {
            return false;
        }
        sinceClock_ = 0;
        return Clock::now() >= deadline_;
    }

    static constexpr std::int64_t betweenClocks = 64;
    std::int64_t steps_;
    Clock::time_point deadline_;
    std::stop_token stop_;
    std::int64_t taken_ = 0;
    std::int64_t sinceClock_ = betweenClocks;
    bool over_ = false;
};

} // namespace suppertide::quick_start
