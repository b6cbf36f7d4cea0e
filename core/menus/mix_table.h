// MixTable: the mix of each course as it is now, the other way about than PlaceTable: a row for
// each variant that could be given, a column for each guest, so that a portion can be moved from
// one variant to another. Values; withHelping (place_table.h) carries out a move.
#pragma once

#include <vector>

#include "core/menus/place_table.h"

namespace suppertide::menus {

struct MixCell
{
    bool isTheirs = false; // the guest gets this
    Suitability suitability;

    friend bool operator==(const MixCell&, const MixCell&) = default;
};

struct MixRow
{
    std::size_t column = 0; // of the places
    GivenHelping helping;
    Portions portions;          // that are cooked, whoever they are for
    std::vector<MixCell> cells; // by guest

    friend bool operator==(const MixRow&, const MixRow&) = default;
};

struct MixTable
{
    PlaceTable places;
    std::vector<MixRow> rows; // by column of the places; the row of nothing last

    friend bool operator==(const MixTable&, const MixTable&) = default;
};

[[nodiscard]] MixTable mixTableOf(const PlanInput& input);

/// Why the guest's portion cannot be moved from one row to another, whatever is in it.
enum class MoveFault
{
    None,
    NoPortion,  // the guest has none in that row
    OtherCourse // the rows are not of one column
};

[[nodiscard]] MoveFault moveFault(const MixTable& table, std::size_t guest, std::size_t from,
                                  std::size_t to);

} // namespace suppertide::menus
