// What a drag lays over the lanes: the range in which the step may go, and the lanes where it may
// not, each with the reason why.
#include <algorithm>
#include <utility>
#include <vector>

#include "ui/timeline/paint_layers.h"

namespace suppertide::ui {

namespace {

constexpr double countdownRoom = 48; // left of a ghost

/// The first x from `left` on where words so wide cross no serving line; none before `right`.
std::optional<double> clearOfServings(const Layer& layer, double left, double right, double width)
{
    constexpr double room = 6; // the line is double
    for (const SceneServing& serving : layer.scene().servings) {
        const double x = layer.geometry().x(serving.time);
        if (left < x + room && x - room < left + width) {
            left = x + room;
        }
    }
    return left + width <= right ? std::optional{left} : std::nullopt;
}

/// Where the reason stands in a lane: in the row of blocks, since waits run under it.
std::optional<Box> placeOfReason(const Layer& layer, const LaneBox& box, const SceneLane& lane)
{
    if (!lane.refusal || box.rows.empty()) {
        return std::nullopt;
    }
    constexpr double fromLeft = 0.1; // of the clear stretch
    const double width = layer.canvas.widthOf(toText(*lane.refusal), TypeRole::Secondary);
    const auto [from, to] = widestClear(layer, layer.left(), layer.right());
    if (width + 16 > to - from) {
        return std::nullopt;
    }
    const Strip& row = box.rows.back();
    const double wanted = from + (to - from) * fromLeft;
    const double left =
        clearOfServings(layer, wanted, to, width).value_or(std::min(wanted, to - width - 8));
    return Box{left, row.top, left + width, row.bottom()};
}

/// The words of a range: one or two lines that begin at the same x.
struct RangeWords
{
    Box place;
    std::vector<QString> lines;
};

/// Where nothing else of its lane stands in the way; no words at all where there is no such place.
std::optional<RangeWords> placeOfWords(const Layer& layer, const AllowedRange& allowed,
                                       const LaneBox& box)
{
    std::vector<Box> taken;
    for (const BlockShape& shape : layer.geometry().blocks()) {
        if (shape.lane == box.lane) {
            const bool isGhost = layer.scene().blocks[shape.block].ghost.has_value();
            Box bounds = shape.bounds().grown(3);
            bounds.left -= isGhost ? countdownRoom : 0;
            taken.push_back(bounds);
        }
    }
    const double line = 13 * layer.in.theme.textScale;
    const double top = box.strip.top + 3;
    const double from = std::max(layer.geometry().x(allowed.when.start), layer.left()) + 9;
    const double to = std::min(layer.geometry().x(allowed.when.end), layer.right()) - 6;
    std::vector<QString> lines{toText(allowed.words), toText(allowed.second)};
    std::erase_if(lines, [](const QString& words) { return words.isEmpty(); });
    for (; !lines.empty(); lines.pop_back()) {
        double width = 0;
        for (const QString& words : lines) {
            width = std::max(width, layer.canvas.widthOf(words, TypeRole::Secondary));
        }
        const double bottom = top + line * static_cast<double>(lines.size());
        constexpr double step = 8;
        for (double left = from; bottom < box.strip.bottom() && left + width <= to; left += step) {
            const Box place{left, top, left + width, bottom};
            const bool isFree = std::none_of(taken.begin(), taken.end(), [&](const Box& other) {
                return other.overlaps(place);
            });
            if (isFree && clearOfServings(layer, left, to, width) == left) {
                return RangeWords{place, lines};
            }
        }
    }
    return std::nullopt;
}

/// The box of the range's lane, if it is drawn in this band.
const LaneBox* boxOfRange(const Layer& layer, const AllowedRange& allowed)
{
    const auto lane = findLane(layer.scene(), allowed.lane);
    const LaneBox* box = lane ? boxOfLane(layer.geometry().lanes(), *lane) : nullptr;
    return box != nullptr && box->band == layer.band ? box : nullptr;
}

} // namespace

/// The widest stretch of [left, right) without a fold and without the now line.
std::pair<double, double> widestClear(const Layer& layer, double left, double right)
{
    std::pair<double, double> best{left, left};
    double at = left;
    const auto consider = [&](double until) {
        if (until - at > best.second - best.first) {
            best = {at, until};
        }
    };
    std::vector<std::pair<double, double>> taken;
    layer.forEachFold(
        [&](const TimeAxis::Piece&, double x0, double x1) { taken.emplace_back(x0, x1); });
    if (const auto now = layer.scene().now) {
        taken.emplace_back(layer.geometry().x(*now) - 3, layer.geometry().x(*now) + 3);
    }
    std::sort(taken.begin(), taken.end());
    for (const auto& [x0, x1] : taken) {
        if (x1 > at && x0 < right) {
            consider(std::min(x0, right));
            at = std::max(at, x1);
        }
    }
    consider(right);
    return best;
}

void paintAllowed(const Layer& layer)
{
    const Fill& ok = layer.in.theme.role().ok;
    for (const AllowedRange& allowed : layer.scene().allowed) {
        const LaneBox* box = boxOfRange(layer, allowed);
        if (box == nullptr) {
            continue;
        }
        const Box area{layer.geometry().x(allowed.when.start), box->strip.top + 1,
                       layer.geometry().x(allowed.when.end), box->strip.bottom() - 1};
        layer.canvas.fill(area, layer.neutral().allowed);
        for (const double x : {area.left, area.right}) {
            const double inwards = x == area.left ? 5 : -5;
            layer.canvas.vLine(x, area.top, area.bottom, 2.2, ok.colour);
            for (const double y : {area.top + 1, area.bottom - 1}) {
                layer.canvas.hLine(std::min(x, x + inwards), std::max(x, x + inwards), y, 2.2,
                                   ok.colour);
            }
        }
        if (const auto words = placeOfWords(layer, allowed, *box)) {
            double baseline = words->place.top + 10 * layer.in.theme.textScale;
            for (const QString& line : words->lines) {
                const bool isFirst = &line == &words->lines.front();
                layer.canvas.text(words->place.left, baseline, line, TypeRole::Secondary,
                                  isFirst ? layer.neutral().ink : layer.neutral().ink2);
                baseline += 13 * layer.in.theme.textScale;
            }
        }
    }
}

void paintRefusals(const Layer& layer)
{
    QColor veil = layer.neutral().paper;
    veil.setAlphaF(0.6F);
    layer.forEachBox([&](const LaneBox& box, const SceneLane& lane) {
        if (!lane.refusal) {
            return;
        }
        const Strip& strip = box.strip;
        layer.canvas.fill({layer.left(), strip.top, layer.right(), strip.bottom() - 1}, veil);
        paintServingLines(layer, strip.top, strip.bottom() - 1);
        if (const auto place = placeOfReason(layer, box, lane)) {
            layer.canvas.haloText(
                place->left,
                layer.canvas.middleBaseline(place->top, place->bottom, TypeRole::Secondary),
                toText(*lane.refusal), TypeRole::Secondary, layer.neutral().ink2,
                layer.neutral().lane);
        }
    });
}

std::vector<Box> rangeWordPlaces(const Layer& layer)
{
    std::vector<Box> places;
    for (const AllowedRange& allowed : layer.scene().allowed) {
        const LaneBox* box = boxOfRange(layer, allowed);
        if (const auto words = box != nullptr ? placeOfWords(layer, allowed, *box) : std::nullopt) {
            places.push_back(words->place.grown(3));
        }
    }
    return places;
}

std::vector<Box> reasonPlaces(const Layer& layer)
{
    std::vector<Box> places;
    for (const LaneBox& box : layer.geometry().lanes().boxes) {
        if (box.band != layer.band) {
            continue;
        }
        if (const auto place = placeOfReason(layer, box, layer.scene().lanes[box.lane])) {
            places.push_back(place->grown(3));
        }
    }
    return places;
}

} // namespace suppertide::ui
