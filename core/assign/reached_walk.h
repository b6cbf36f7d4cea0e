// ReachedWalk: through the stretches of an oven's box from the first to the last: what each moment
// at which one begins can have been reached with (reached_levels.h), apart by how long stays have
// lasted by then.
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "core/assign/oven_box.h"
#include "core/assign/reached_heat.h"
#include "core/assign/reached_levels.h"
#include "core/assign/span_places.h"

namespace suppertide {

/// `Levels`: ReachedLevels, or ReachedHeat.
template <typename Levels>
class ReachedWalk
{
public:
    using Row = typename Levels::Row;
    using Paths = std::map<SpanPlaces::Lasted, Row>;

    /// What is not told apart: costs from `below` on. `open`: how long each stretch may become. All
    /// but `box` and `open` must outlive this.
    ReachedWalk(const Oven& oven, const Levels& reached, const SpanPlaces& places,
                const OvenBox& box, const std::vector<StretchLengths>& open, std::int64_t below);

    /// False: it would take too long, nothing is known.
    [[nodiscard]] bool isDone() const { return isDone_; }
    /// To the beginning of a stretch, or the end of the last.
    [[nodiscard]] const Paths& to(std::size_t stretch) const { return paths_[stretch]; }
    /// What that costs at least, if less than `below`.
    [[nodiscard]] std::int64_t leastTo(std::size_t stretch) const;

private:
    [[nodiscard]] Row whenCold();
    struct Stretch
    {
        std::size_t number = 0;
        const OvenStretch* asks = nullptr;
        std::int64_t highAtEnd = 0; // no higher
    };
    struct Beginning
    {
        std::int64_t minutes = 0; // to go
        Row row;
    };
    using Beginnings = std::vector<Beginning>;
    [[nodiscard]] bool through(const Stretch& stretch);
    [[nodiscard]] bool alone(const Stretch& stretch, const SpanPlaces::Lasted& lasted,
                             StretchLengths lengths, Row here);
    [[nodiscard]] bool together(const Stretch& stretch, const SpanPlaces::Lasted& lasted,
                                Beginnings beginnings);
    [[nodiscard]] bool step(const Stretch& stretch, std::int64_t left, bool begins, Row& row);
    void endAt(const Stretch& stretch, const SpanPlaces::Lasted& lasted, Row row);
    void add(Paths& paths, const SpanPlaces::Lasted& lasted, const Row& row) const;

    const Oven* oven_;
    const Levels* reached_;
    const SpanPlaces* places_;
    std::int64_t below_;
    std::vector<Paths> paths_;
    std::int64_t steps_ = 0;
    bool isDone_ = true;
};

extern template class ReachedWalk<ReachedHeat>;
extern template class ReachedWalk<ReachedLevels>;

/// What heating costs at least up to the beginning of each stretch, and up to the end; empty: it
/// would take too long. `work`: raised by the levels found.
[[nodiscard]] std::vector<std::int64_t> leastHeatUpTo(const Oven& oven,
                                                      const OvenProgramStyle& style,
                                                      const OvenBox& box, std::int64_t below,
                                                      std::int64_t& work);

} // namespace suppertide
