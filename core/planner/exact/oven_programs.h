// OvenPrograms: the cheapest program of an oven for what is in it and when, remembered, since a
// search comes back to the same stays again and again.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/assign/oven_pairs.h"
#include "core/problem/problem.h"
#include "core/problem/schedule.h"

namespace suppertide::exact {

struct KnownProgram
{
    std::optional<OvenProgram> program; // absent: none keeps the stays, as far as could be found
    std::int64_t cost = 0;              // of the program
    std::int64_t bound = 0;             // no program costs less
    bool isImpossible = false;          // proven: no program keeps the stays
    std::int64_t triedBelow = 0;        // programs that cost less have been looked for
    std::int64_t effort = 0;            // with so much effort
};

class OvenPrograms
{
public:
    /// The problem must outlive this.
    explicit OvenPrograms(const Problem& problem) : problem_(&problem), known_(problem.ovens.size())
    {}

    /// Looks further from now on, also for stays that it was asked for before. False: it does not.
    bool tryHarder();
    [[nodiscard]] bool canTryHarder() const;

    /// Stays in any order. Programs that cost less than `below` are looked for further than others.
    [[nodiscard]] KnownProgram of(OvenIndex oven, std::vector<OvenStay> stays, std::int64_t below);

private:
    [[nodiscard]] KnownProgram plain(OvenIndex oven, const std::vector<OvenStay>& stays) const;
    void improve(KnownProgram& known, OvenIndex oven, const std::vector<OvenStay>& stays,
                 std::int64_t below) const;

    const Problem* problem_;
    std::int64_t effort_ = 20'000; // states that the search for a cheapest program may look at
    IndexedVector<OvenIndex, std::map<std::vector<std::int64_t>, KnownProgram>> known_;
};

} // namespace suppertide::exact
