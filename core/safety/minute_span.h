// MinuteSpan: minutes of a food's history that count for a rule.
#pragma once

namespace suppertide::safety {

/// Minutes after the plan's origin, as far as they count.
struct MinuteSpan
{
    double from = 0;
    double to = 0;

    [[nodiscard]] double length() const { return to - from; }
    friend bool operator==(const MinuteSpan&, const MinuteSpan&) = default;
};

} // namespace suppertide::safety
