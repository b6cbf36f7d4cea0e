#include "ui/timeline/block_label.h"

#include <algorithm>

#include "ui/timeline/time_words.h"

namespace suppertide::ui {

namespace {

std::string verbAndObject(const SceneBlock& block)
{
    return block.object.empty() ? block.verb : block.verb + " " + block.object;
}

bool fits(const BlockLabel& label, const LabelRequest& request)
{
    return !label.words.empty() && request.widthOf(label) <= request.room;
}

std::optional<BlockLabel> fittingLetter(const LabelRequest& request)
{
    // A letter's side bearings may reach a little beyond the room.
    constexpr double bearings = 2;
    const BlockLabel letter{request.letter, true};
    const bool hasRoom = request.room >= leastLetterRoom && !letter.words.empty() &&
                         request.widthOf(letter) <= request.room + bearings;
    return hasRoom ? std::optional{letter} : std::nullopt;
}

} // namespace

std::optional<BlockLabel> fittingLabel(const SceneBlock& block, const LabelRequest& request)
{
    if (request.stop != ZoomStop::Day) {
        const std::string both = verbAndObject(block);
        for (const std::string& words : {both + " " + lengthText(block.likely), both, block.verb}) {
            if (fits({words}, request)) {
                return BlockLabel{words};
            }
        }
    }
    return fittingLetter(request);
}

std::vector<BlockLabel> fittingLines(const SceneBlock& block, const std::string& times,
                                     const LabelRequest& request)
{
    std::vector<BlockLabel> lines;
    if (const BlockLabel both{verbAndObject(block)}; fits(both, request)) {
        lines.push_back(both);
    } else if (fits({block.verb}, request)) {
        lines.push_back({block.verb});
        if (fits({block.object}, request)) {
            lines.push_back({block.object});
        }
    }
    if (lines.empty()) {
        if (const auto letter = fittingLetter(request)) {
            lines.push_back(*letter);
        }
        return lines;
    }
    if (request.stop == ZoomStop::QuarterHours && fits({times}, request)) {
        lines.push_back({times});
    }
    return lines;
}

std::pair<double, double> labelRoom(double left, double right, double viewLeft,
                                    std::optional<double> now)
{
    constexpr double nowRoom = 5; // the now line and its ground
    double from = left + stemWidth + labelGap;
    // A block that begins left of the view keeps its label in view.
    if (left < viewLeft) {
        from = std::max(from, viewLeft + labelGap);
    }
    if (now && *now > from - nowRoom + 1 && *now < right) {
        const bool isRightWider = *now - from < right - *now;
        if (isRightWider) {
            from = std::max(from, *now + nowRoom);
        } else {
            right = *now - 3;
        }
    }
    return {from, right};
}

} // namespace suppertide::ui
