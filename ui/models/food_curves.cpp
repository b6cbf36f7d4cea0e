#include "ui/models/food_curves.h"

#include <QCoreApplication>

#include "ui/models/temperature_limits.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("FoodCurves", text);
}

/// The samples of a stay, level before the first and after the last.
std::vector<safety::TemperatureSample> samplesOf(const safety::HistoryPiece& piece)
{
    std::vector<safety::TemperatureSample> samples = piece.curve;
    if (samples.empty()) {
        return samples;
    }
    const auto from = static_cast<double>(minuteOf(piece.from));
    const auto to = static_cast<double>(minuteOf(piece.to));
    if (samples.front().minute > from) {
        samples.insert(samples.begin(), {from, samples.front().core, samples.front().surface});
    }
    if (samples.back().minute < to) {
        samples.push_back({to, samples.back().core, samples.back().surface});
    }
    return samples;
}

} // namespace

QString placeOf(const safety::HistoryPiece& piece, const ReadingStyle& style)
{
    const std::string_view name = safety::nameOf(piece.place);
    const QString place = QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
    return piece.place == safety::Place::Oven && piece.surroundings
               ? tr("%1 %2").arg(place, degreesText(*piece.surroundings, style))
               : place;
}

std::vector<TemperatureBar> placeBars(const safety::FoodHistory& history, const ReadingStyle& style)
{
    std::vector<TemperatureBar> bars;
    for (const safety::HistoryPiece& piece : history.pieces) {
        const QString label = placeOf(piece, style);
        const auto from = static_cast<double>(minuteOf(piece.from));
        const auto to = static_cast<double>(minuteOf(piece.to));
        if (!bars.empty() && bars.back().label == label && bars.back().to >= from) {
            bars.back().to = to;
            continue;
        }
        TemperatureBar bar;
        bar.from = from;
        bar.to = to;
        bar.label = label;
        bars.push_back(std::move(bar));
    }
    return bars;
}

std::vector<TemperatureCurve> curvesOf(const safety::FoodHistory& history)
{
    TemperatureCurve core{tr("middle"), false, {}};
    TemperatureCurve surface{tr("surface"), true, {}};
    bool goesOn = false;
    for (const safety::HistoryPiece& piece : history.pieces) {
        const std::vector<safety::TemperatureSample> samples = samplesOf(piece);
        if (samples.empty()) {
            goesOn = false;
            continue;
        }
        if (!goesOn) {
            core.runs.emplace_back();
            surface.runs.emplace_back();
        }
        for (const safety::TemperatureSample& sample : samples) {
            core.runs.back().push_back({sample.minute, sample.core});
            surface.runs.back().push_back({sample.minute, sample.surface});
        }
        goesOn = true;
    }
    return {std::move(core), std::move(surface)};
}

std::optional<CurvePoint> warmestOf(const TemperatureCurve& curve)
{
    std::optional<CurvePoint> warmest;
    for (const auto& run : curve.runs) {
        for (const CurvePoint& point : run) {
            if (!warmest || point.celsius > warmest->celsius) {
                warmest = point;
            }
        }
    }
    return warmest;
}

} // namespace suppertide::ui
