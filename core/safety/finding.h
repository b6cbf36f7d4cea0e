// Finding: a rule that a food's history breaks, with the figure that breaks it, the minutes that
// count, and what could help. No finding means that no rule known to this program is broken, and
// nothing more: local food codes and licensed practice prevail.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/safety/minute_span.h"
#include "core/safety/rules.h"

namespace suppertide::safety {

enum class Measure
{
    None,
    Minutes,
    Days,
    Times,
    Celsius,
    Fahrenheit
};

/// "min", "days", "°F".
[[nodiscard]] std::string_view unitOf(Measure measure);

/// What could help; whether it does is found by planning and judging again.
enum class Remedy
{
    IceBath,      // cool it in one
    SplitShallow, // divide it into shallow containers
    DayLater,     // make it a day later
    EatSooner,    // serve it earlier, or let it stand shorter
    Fridge,       // put it there in between
    ColderFridge,
    Freeze,
    KeepHotter,
    CookTo,   // to the limit's temperature
    ReheatTo, // likewise
    ReheatOnce,
    RestLonger,
    HotterOven,
    Pasteurised, // take pasteurised egg or cheese
    FrozenFish,  // freeze it first, or buy it so
    ThawInFridge,
    CookAtOnce,
    AnotherPortion, // for the guests at higher risk
    WashBetween,
    ReadyFirst, // do what is ready, or free of something, first
    RawBelow,   // on a lower shelf of the fridge
    Measure,    // with a thermometer
};

struct Finding
{
    std::string rule; // an id of safety_rules.tsv, or "storage/" and one of storage_days.tsv
    Weight weight = Weight::Caution;
    Measure measure = Measure::None;
    double measured = 0;
    double limit = 0;
    std::vector<MinuteSpan> counts; // in order, not overlapping
    std::vector<Remedy> remedies;   // the likeliest first
    std::vector<RiskGroup> guests;  // at higher risk, where that is why
    std::string equivalent; // a table of time_temperature.tsv that the history meets all the same

    friend bool operator==(const Finding&, const Finding&) = default;
};

/// What stands behind a finding, for screen and paper.
struct FindingSource
{
    std::string says;
    std::string source;
    std::string section;
    Strength strength = Strength::ConsumerAdvice;
    RowStatus status = RowStatus::Confirmed;
};
/// Requires a finding of this library.
[[nodiscard]] FindingSource sourceOf(const Finding& finding);

} // namespace suppertide::safety
