// Flag layout: the course flags that hang from the rail, on two levels alternately, flying left
// from their serving line. Too tight: the name goes, then the time; the number never. Pure.
#pragma once

#include <span>
#include <vector>

namespace suppertide::ui {

/// What a flag would need, in the order of time.
struct FlagNeed
{
    double mast = 0;      // x of the serving line
    double nameWidth = 0; // drawn widths of its texts
    double timeWidth = 0;
};

struct Flag
{
    double left = 0;
    double right = 0; // the mast
    int level = 0;    // 0 the upper, 1 the lower
    bool showsName = true;
    bool showsTime = true;

    friend bool operator==(const Flag&, const Flag&) = default;
};

/// Width of the black field with the number at the mast.
inline constexpr double flagNumberWidth = 14;

/// `leftEdge`: no flag's text reaches left of this.
[[nodiscard]] std::vector<Flag> layoutFlags(std::span<const FlagNeed> needs, double leftEdge);

} // namespace suppertide::ui
