// TiedPoints: where the two ends of a wait or span of a recipe lie in the problem, batch by batch:
// all pairs of points that have portions in common. Used by the rules for waits and spans.
#pragma once

#include <vector>

#include "core/plan/evening.h"

namespace suppertide {

/// One end: a batch of the making itself, its serving, or a batch that uses it.
struct Tied
{
    TaskPoint point;
    PortionShare share;
    std::optional<std::size_t> batch; // of the making itself

    friend bool operator==(const Tied&, const Tied&) = default;
};

struct TiedPair
{
    Tied from;
    Tied to;
    Portions portions; // that both have

    friend bool operator==(const TiedPair&, const TiedPair&) = default;
};

/// A wait or span as some of the variants have it in common.
template <typename T>
struct SharedTie
{
    T tie;
    std::optional<MethodKey> method; // in whose part it stands
    std::vector<std::size_t> variants;
};

[[nodiscard]] std::vector<SharedTie<Wait>> sharedWaits(const Making& making);
[[nodiscard]] std::vector<SharedTie<Span>> sharedSpans(const Making& making);

/// The places of `point` for the portions of these variants.
[[nodiscard]] std::vector<Tied> tiedTo(const Evening& evening, std::size_t making,
                                       const StepPoint& point,
                                       const std::vector<std::size_t>& variants);

[[nodiscard]] std::vector<TiedPair> tiedPairs(const Evening& evening, std::size_t making,
                                              const StepPoint& from, const StepPoint& to,
                                              const std::vector<std::size_t>& variants);

/// Whether the tie hangs on `method` though neither of its ends does: a mark in the method's option
/// at the time of `point` then stands for it. Else the point itself.
[[nodiscard]] TaskPoint conditional(Evening& evening, std::size_t making,
                                    const std::optional<MethodKey>& method, const TaskPoint& point,
                                    const TaskPoint& other);

} // namespace suppertide
