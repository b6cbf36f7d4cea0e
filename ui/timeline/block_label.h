// Block label: which words of a block fit into its shape. A label that does not fit is shortened
// by whole parts, then goes; it is never cut within a word. Pure: the widths of words are asked of
// whoever can measure them.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ui/timeline/scene.h"
#include "ui/timeline/zoom.h"

namespace suppertide::ui {

inline constexpr double stemWidth = 9;
inline constexpr double labelGap = 4;        // between stem and label
inline constexpr double leastLetterRoom = 8; // for the letter alone
inline constexpr double leastLabelled = 24;  // a narrower block is filled by its stem's pattern

struct BlockLabel
{
    std::string words;
    bool isLetter = false; // the dish's letter alone, drawn bold

    friend bool operator==(const BlockLabel&, const BlockLabel&) = default;
};

/// Drawn width in px.
using LabelWidth = std::function<double(const BlockLabel&)>;

struct LabelRequest
{
    std::string letter; // of the block's dish; empty: a house job or a trip
    ZoomStop stop = ZoomStop::Hours;
    double room = 0; // px
    LabelWidth widthOf;
};

/// Verb, object and length; then verb and object; verb; letter; nothing. In the day's zoom there
/// is but the letter.
[[nodiscard]] std::optional<BlockLabel> fittingLabel(const SceneBlock& block,
                                                     const LabelRequest& request);

/// The lines in a cook's lane: verb and object on one line or on two, and in the quarter hours'
/// zoom `times` under them; else the letter; else none.
[[nodiscard]] std::vector<BlockLabel>
fittingLines(const SceneBlock& block, const std::string& times, const LabelRequest& request);

/// From and to: the stretch of [left, right) in which a label may stand: right of the stem, right
/// of the view's left edge, and on the wider side of the now line (none: no such line).
[[nodiscard]] std::pair<double, double> labelRoom(double left, double right, double viewLeft,
                                                  std::optional<double> now);

} // namespace suppertide::ui
