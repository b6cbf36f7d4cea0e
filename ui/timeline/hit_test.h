// Hit testing: what of the timeline lies under a point. Every target is at least 24 by 24 px: a
// thin block is hit from around it too, half-way to its neighbour. Pure.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "ui/timeline/flag_layout.h"
#include "ui/timeline/geometry.h"

namespace suppertide::ui {

struct BlockTarget
{
    std::string id;
    std::string lane;
    friend bool operator==(const BlockTarget&, const BlockTarget&) = default;
};
struct FlagTarget
{
    int course = 0;
    friend bool operator==(const FlagTarget&, const FlagTarget&) = default;
};
struct PleatTarget
{
    PlanTime start;
    friend bool operator==(const PleatTarget&, const PleatTarget&) = default;
};
struct TagTarget
{
    int clash = 0;
    friend bool operator==(const TagTarget&, const TagTarget&) = default;
};
struct LaneTarget
{
    std::string lane;
    bool isHeader = false;
    friend bool operator==(const LaneTarget&, const LaneTarget&) = default;
};

/// What may be hovered, focused or clicked.
using Target =
    std::variant<std::monostate, BlockTarget, FlagTarget, PleatTarget, TagTarget, LaneTarget>;

/// Where the tags of clashes stand; the painter draws them there.
struct TagPlace
{
    int clash = 0;
    ClashSeverity severity = ClashSeverity::Impossible;
    double x = 0; // of its middle
    double y = 0;
    LaneBand band = LaneBand::Scrolling;

    friend bool operator==(const TagPlace&, const TagPlace&) = default;
};

inline constexpr double leastTarget = 24;

/// Tags of all places of all clashes that are in a lane that is drawn.
[[nodiscard]] std::vector<TagPlace> placeTags(const Scene& scene, const Geometry& geometry);

/// `flags` as drawn on the rail, in the order of Scene::servings.
[[nodiscard]] Target targetAt(const Scene& scene, const Geometry& geometry,
                              const std::vector<Flag>& flags, double x, double y);

} // namespace suppertide::ui
