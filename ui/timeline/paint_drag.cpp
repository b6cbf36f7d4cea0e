// What a drag lays over the lanes: the range in which the step may go, and the lanes where it may
// not, each with the reason why.
#include <algorithm>
#include <utility>
#include <vector>

#include "ui/timeline/paint_layers.h"

namespace suppertide::ui {

namespace {

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
    const double left = std::min(from + (to - from) * fromLeft, to - width - 8);
    const Strip& row = box.rows.back();
    return Box{left, row.top, left + width, row.bottom()};
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
        const auto lane = findLane(layer.scene(), allowed.lane);
        const LaneBox* box = lane ? boxOfLane(layer.geometry().lanes(), *lane) : nullptr;
        if (box == nullptr || box->band != layer.band) {
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
        const double from = std::max(area.left, layer.left()) + 9;
        double baseline = area.top + 13;
        const auto line = [&](const std::string& text, const QColor& colour) {
            const QString label = toText(text);
            if (!label.isEmpty() && baseline < area.bottom - 1 &&
                from + layer.canvas.widthOf(label, TypeRole::Secondary) < area.right - 6) {
                layer.canvas.text(from, baseline, label, TypeRole::Secondary, colour);
                baseline += 13 * layer.in.theme.textScale;
            }
        };
        line(allowed.words, layer.neutral().ink);
        line(allowed.second, layer.neutral().ink2);
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
