// LiveCheck: the answer of `check`, kept up to date while a schedule is edited. A change re-judges
// only the requirements that it touches, which makes it fit for every move of the mouse.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/check/check.h"

namespace suppertide {

/// A task gets another start, or none.
struct StartMove
{
    TaskIndex task;
    std::optional<PlanTime> start;
};

class LiveCheck
{
public:
    /// The problem must outlive this; the schedule's lists must be as long as the problem's.
    LiveCheck(const Problem& problem, Schedule schedule);
    ~LiveCheck();
    LiveCheck(LiveCheck&&) noexcept;
    LiveCheck& operator=(LiveCheck&&) noexcept;
    LiveCheck(const LiveCheck&) = delete;
    LiveCheck& operator=(const LiveCheck&) = delete;

    /// Only starts change; cooks, units, ovens, programs and options stay. Returns broken().
    const std::vector<Broken>& update(std::span<const StartMove> moves);
    /// Anything may change; what did is found by comparing. Returns broken().
    const std::vector<Broken>& update(Schedule next);

    /// The same list as check(problem, schedule()).
    [[nodiscard]] const std::vector<Broken>& broken() const;
    [[nodiscard]] const Schedule& schedule() const;
    /// How many requirements the last update judged again.
    [[nodiscard]] std::size_t judgedLast() const;

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide
