// OvenOrder: what heating costs at least for stays of which no two can be in an oven at once: the
// cheapest order of them, each heated for from as hot as the one before it can leave the oven, and
// no sooner than their times allow.
//
//     start (20°) ──► bread (230°) ──► gratin (160°) ──► bread (220°)
//             16 on           2 on             0 on            9 on
//
// Where switching on costs too, an oven is left on between two stays or switched on anew, whichever
// is cheaper. Of several ovens together: each stay from the best that any other can leave.
// Source: M. Held, R. Karp, A dynamic programming approach to sequencing problems (1962).
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/assign/least_heat.h"
#include "core/assign/oven_heat.h"
#include "core/assign/oven_program.h"
#include "core/planner/engine/engine.h"
#include "core/planner/exact/start_differences.h"

namespace suppertide::exact {

/// A stay that may be in the oven.
struct PossibleStay
{
    engine::Term from;
    engine::Term to;
    engine::Literal inside; // in this oven, and something is held
    OvenStay stay;          // its times are not looked at
    std::int64_t shelves = 0;
    std::int64_t length = 0; // at least
    std::string mode;        // of heating; empty: goes with any
};

/// Being off when a stay begins costs at least as much as being on for that minute does.
void beOnWhereItPays(LeastHeat& heat, const OvenProgramStyle& style);

class OvenOrder
{
public:
    OvenOrder(const std::vector<Oven>& ovens, const std::vector<PossibleStay>& stays,
              const OvenProgramStyle& style,
              std::shared_ptr<const StartDifferences> differences = nullptr);

    /// What minutes on and switching on cost, for stays that are surely in, by their positions.
    [[nodiscard]] std::int64_t least(const std::vector<std::size_t>& inside,
                                     const engine::Trail& trail);
    /// What of their times the cost last asked for follows from.
    [[nodiscard]] engine::Literals because(const engine::Trail& trail) const;
    /// Rises whenever the stays or their times differ from those asked for before.
    [[nodiscard]] std::int64_t looks() const { return looks_; }

private:
    static constexpr std::size_t most = 8; // stays that are put in order
    static constexpr std::int64_t never = -1;

    [[nodiscard]] bool canMeet(std::size_t one, std::size_t other) const;
    [[nodiscard]] std::vector<std::size_t> chosenOf(const std::vector<std::size_t>& inside);
    [[nodiscard]] std::int64_t costWhileIn(std::size_t stay);
    /// From the end of one stay (or from the start, where there is none) to that of the next.
    [[nodiscard]] std::int64_t costBetween(std::size_t oven, std::size_t before, std::size_t after,
                                           std::int64_t gap);
    [[nodiscard]] std::int64_t costOfMinutes(std::size_t oven, std::size_t before,
                                             std::size_t after, std::int64_t gap);
    /// The same by gap in minutes, whether it is that long or longer; with what switching on costs.
    [[nodiscard]] const std::vector<std::int64_t>&
    costsBySwitching(std::size_t oven, std::size_t before, std::size_t after);
    [[nodiscard]] const OvenHeat& heatFor(std::size_t oven, std::size_t stay);
    [[nodiscard]] std::int64_t leastBetween(std::size_t before, std::size_t after,
                                            std::int64_t gap);
    [[nodiscard]] std::int64_t hottestAfter(std::size_t oven, std::size_t stay) const;
    [[nodiscard]] bool knowsDifferences() const;
    [[nodiscard]] std::int64_t gap(std::size_t before, std::size_t after,
                                   const engine::Trail& trail) const;
    void readGaps(const engine::Trail& trail);
    [[nodiscard]] engine::Literals byDifferences() const;
    [[nodiscard]] engine::Literals byTheClock(const engine::Trail& trail) const;
    [[nodiscard]] std::int64_t ofOneOven();
    [[nodiscard]] std::int64_t ofSeveral();

    using PairOfStays = std::array<std::size_t, 3>; // oven, before, after

    std::vector<Oven> ovens_;
    std::vector<PossibleStay> stays_;
    OvenProgramStyle style_;
    std::shared_ptr<const StartDifferences> differences_; // may be absent
    std::int64_t shelves_ = 1;                            // of the largest
    std::int64_t forgets_ = 0;                            // longer gaps are not told apart
    std::vector<LeastHeat> heats_;
    std::map<std::vector<std::int64_t>, std::int64_t> between_;
    std::map<std::pair<std::size_t, std::size_t>, OvenHeat> heatFor_; // by oven and stay
    std::map<PairOfStays, std::vector<std::int64_t>> bySwitching_;
    std::vector<std::size_t> inside_;
    std::vector<std::size_t> chosen_;
    std::vector<std::int64_t> gaps_; // from each chosen one to each; `never`: the other is first
    std::vector<std::int64_t> lastGaps_;
    std::int64_t cost_ = 0;
    std::int64_t looks_ = 0;
};

} // namespace suppertide::exact
