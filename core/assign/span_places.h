// SpanPlaces: stays of known length that last through several stretches of a box, two at a time at
// most, each with a place in which a walk through the stretches keeps how long it has lasted so
// far; and how long a stretch may be for their sake. Others are left out: without them a bound is
// only lower.
//
//     stretch      │ 0 │  1  │ 2 │  3  │
//     place 0      ├─ gratin ────┤
//     place 1          ├──── tart ─────┤
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/assign/oven_box.h"

namespace suppertide {

class SpanPlaces
{
public:
    static constexpr std::size_t count = 2;
    /// By place, minutes; of a walk forth since the stays began, of one back until they end.
    using Lasted = std::array<std::int64_t, count>;

    /// `open`: how long each stretch may be at all.
    SpanPlaces(const std::vector<OvenSpan>& spans, std::vector<StretchLengths> open);

    SpanPlaces(const SpanPlaces&) = delete; // its places point into it
    SpanPlaces& operator=(const SpanPlaces&) = delete;

    /// How long a stretch may be, of its own lengths, when so much has been walked before it.
    [[nodiscard]] StretchLengths lengthsForth(std::size_t stretch, const Lasted& lasted,
                                              StretchLengths own) const;
    [[nodiscard]] StretchLengths lengthsBack(std::size_t stretch, const Lasted& lasted,
                                             StretchLengths own) const;
    /// What has lasted after the stretch, or before it.
    [[nodiscard]] Lasted forth(std::size_t stretch, const Lasted& lasted,
                               std::int64_t length) const;
    [[nodiscard]] Lasted back(std::size_t stretch, const Lasted& lasted, std::int64_t length) const;
    /// Whether something lasts beyond the stretch, or began before it.
    [[nodiscard]] bool goesForth(std::size_t stretch) const;
    [[nodiscard]] bool goesBack(std::size_t stretch) const;
    /// Whether a walk forth and one back that meet as a stretch begins give the stays their
    /// lengths.
    [[nodiscard]] bool fit(std::size_t stretch, const Lasted& forth, const Lasted& back) const;

private:
    using Places = std::array<const OvenSpan*, count>;
    [[nodiscard]] StretchLengths within(const OvenSpan& span, std::int64_t lasted, std::size_t from,
                                        std::size_t to, StretchLengths own) const;

    std::vector<OvenSpan> spans_;
    std::vector<StretchLengths> open_;
    std::vector<Places> places_; // by stretch
};

} // namespace suppertide
