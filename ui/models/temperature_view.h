// TemperatureView: what the page of temperatures shows of one food or one oven, ready to be drawn,
// read aloud and listed: curves, limits, stays and what breaks a rule. Times are minutes after the
// plan's origin, temperatures °C. Values only.
#pragma once

#include <QString>
#include <QStringList>

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/plan/plan.h"

namespace suppertide::ui {

struct CurvePoint
{
    double minute = 0;
    double celsius = 0;

    friend bool operator==(const CurvePoint&, const CurvePoint&) = default;
};

/// A line of the chart. Where nothing is known of the temperature it has a gap.
struct TemperatureCurve
{
    QString name; // "middle"
    bool isDashed = false;
    std::vector<std::vector<CurvePoint>> runs; // rising in time, not touching each other

    friend bool operator==(const TemperatureCurve&, const TemperatureCurve&) = default;
};

/// A temperature that a rule names.
struct LimitLine
{
    double celsius = 0;
    QString label; // "kept hot: at least 63 °C"

    friend bool operator==(const LimitLine&, const LimitLine&) = default;
};

/// Temperatures between two limits: for all of the time, or of what an oven's dish accepts while it
/// is in.
struct LimitBand
{
    double low = 0;
    double high = 0;
    QString label;
    std::optional<Interval> when;

    friend bool operator==(const LimitBand&, const LimitBand&) = default;
};

enum class BarKind
{
    Place,   // where a food is, or which dish is in an oven
    Finding, // the minutes that count against a rule
};

/// A stretch of time with words above the curves. Bars of one row do not overlap.
struct TemperatureBar
{
    double from = 0;
    double to = 0;
    QString label;
    BarKind kind = BarKind::Place;
    int row = 0;
    Severity severity = Severity::Unsafe; // of a finding, as the number of its clash
    int clash = 0;                        // 0: none

    friend bool operator==(const TemperatureBar&, const TemperatureBar&) = default;
};

/// One stay of a food, or stretch of an oven, in words and figures.
struct TemperatureStay
{
    QString from; // "Sat 19 June 17:40"
    QString place;
    QString first; // of the middle, or the oven, at its begin: "62 °C"; "not known"
    QString last;
    QString surface; // at its end
    QString to;

    friend bool operator==(const TemperatureStay&, const TemperatureStay&) = default;
};

struct TemperatureView
{
    std::string key; // of its subject
    QString title;
    PlanCalendar calendar;
    double from = 0; // of all that is shown
    double to = 0;
    std::vector<TemperatureCurve> curves;
    std::vector<LimitLine> limits;
    std::vector<LimitBand> bands;
    std::vector<TemperatureBar> bars;
    std::vector<TemperatureStay> stays;
    QStringList columns;       // what the six members of a stay are called
    QStringList sentences;     // what breaks a rule, with its source; or that nothing known does
    bool isFahrenheit = false; // how the axis is read; the figures of curves are °C all the same
    QString summary;           // all of it in a few sentences, for who does not see the chart

    friend bool operator==(const TemperatureView&, const TemperatureView&) = default;
};

/// A food or an oven that can be chosen.
struct TemperatureSubject
{
    std::string key;               // "food:stock/*/stock", "oven:oven"
    QString name;                  // "Lamb stock: stock"
    std::optional<Severity> worst; // of the clashes about it
    int clash = 0;                 // the number of the worst; 0: none

    friend bool operator==(const TemperatureSubject&, const TemperatureSubject&) = default;
};

} // namespace suppertide::ui
