#include "ui/models/oven_temperatures.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

#include "core/problem/oven_curve.h"
#include "core/problem/timetable.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/temperature_limits.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr Minutes around{20}; // shown before the oven is on and after it is off

QString tr(const char* text)
{
    return QCoreApplication::translate("OvenTemperatures", text);
}

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

/// What is in the oven, and what it accepts.
struct OvenStayView
{
    Interval when;
    QString dish;
    double low = 0;
    double high = 0;
};

std::vector<OvenStayView> staysIn(const Plan& plan, OvenIndex oven)
{
    const Formulation& formulation = *plan.formulation;
    const Problem& problem = formulation.problem;
    const Timetable times(problem, plan.schedule);
    std::vector<OvenStayView> stays;
    for (const OvenDemandIndex demand : problem.ovenDemands.indices()) {
        const OvenDemand& asked = problem.ovenDemands[demand];
        if (plan.schedule.ovens[demand] != oven || asked.mode == modeOff) {
            continue;
        }
        if (const auto held = times.held(asked.from, asked.to)) {
            stays.push_back({*held, words(formulation.ovenDemands[demand].dishName),
                             static_cast<double>(asked.acceptLow),
                             static_cast<double>(asked.acceptHigh)});
        }
    }
    std::ranges::stable_sort(stays, {}, [](const OvenStayView& stay) { return stay.when; });
    return stays;
}

/// From knot to knot: on its way to the setting, then level.
std::vector<CurvePoint> curveOf(const Oven& oven, const OvenCurve& curve, const Interval& shown)
{
    const auto degrees = [](std::int64_t milliC) { return static_cast<double>(milliC) / 1000; };
    std::vector<CurvePoint> points;
    const auto put = [&points](double minute, double celsius) {
        if (points.empty() || minute > points.back().minute) {
            points.push_back({minute, celsius});
        }
    };
    const auto begin = static_cast<double>(minuteOf(shown.start));
    const auto end = static_cast<double>(minuteOf(shown.end));
    put(begin, degrees(curve.milliC(shown.start)));
    const auto& knots = curve.knots();
    for (std::size_t i = 0; i < knots.size(); ++i) {
        const OvenCurve::Knot& knot = knots[i];
        const auto at = static_cast<double>(minuteOf(knot.at));
        const double next =
            i + 1 < knots.size() ? static_cast<double>(minuteOf(knots[i + 1].at)) : end;
        if (at > begin && at < end) {
            put(at, degrees(knot.milliC));
        }
        const std::int64_t target = std::int64_t{knot.setC.value_or(oven.ambientC)} * 1000;
        const std::int64_t rate =
            target >= knot.milliC ? oven.heatMilliCPerMin : oven.coolMilliCPerMin;
        const double reached =
            at + static_cast<double>(std::abs(target - knot.milliC)) / static_cast<double>(rate);
        if (reached > begin && reached < std::min(next, end)) {
            put(reached, degrees(target));
        }
    }
    put(end, degrees(curve.milliC(shown.end)));
    return points;
}

/// The knob, while the oven is on.
std::vector<std::vector<CurvePoint>> settingsOf(const OvenCurve& curve, const Interval& shown)
{
    std::vector<std::vector<CurvePoint>> runs;
    const auto& knots = curve.knots();
    for (std::size_t i = 0; i < knots.size(); ++i) {
        if (!knots[i].setC) {
            continue;
        }
        const double set = *knots[i].setC;
        const auto from = static_cast<double>(minuteOf(std::max(knots[i].at, shown.start)));
        const auto to = static_cast<double>(
            minuteOf(i + 1 < knots.size() ? knots[i + 1].at : std::max(shown.start, shown.end)));
        if (to <= from) {
            continue;
        }
        const bool goesOn = !runs.empty() && runs.back().back().minute >= from;
        if (!goesOn) {
            runs.emplace_back();
        }
        runs.back().push_back({from, set});
        runs.back().push_back({to, set});
    }
    return runs;
}

Interval shownOf(const Plan& plan, OvenIndex oven, const std::vector<OvenStayView>& stays)
{
    std::optional<Interval> all;
    const auto add = [&all](PlanTime from, PlanTime to) {
        all =
            all ? Interval{std::min(all->start, from), std::max(all->end, to)} : Interval{from, to};
    };
    for (const OvenStayView& stay : stays) {
        add(stay.when.start, stay.when.end);
    }
    for (const ProgramEntry& entry : plan.schedule.programs[oven]) {
        add(entry.at, entry.at);
    }
    const Interval whole = all.value_or(interval(0, 1));
    return {std::max(planTime(0), whole.start - around), whole.end + around};
}

QString rangeText(const OvenStayView& stay, const ReadingStyle& style)
{
    return stay.low == stay.high
               ? degreesText(stay.low, style)
               : tr("%1 to %2").arg(degreesText(stay.low, style), degreesText(stay.high, style));
}

/// Each stay in the first row that has room for it.
std::vector<TemperatureBar> barsOf(const std::vector<OvenStayView>& stays,
                                   const ReadingStyle& style)
{
    std::vector<TemperatureBar> bars;
    std::vector<PlanTime> freeFrom;
    for (const OvenStayView& stay : stays) {
        const auto row = std::ranges::find_if(
            freeFrom, [&stay](PlanTime free) { return free <= stay.when.start; });
        TemperatureBar bar;
        bar.row = static_cast<int>(row - freeFrom.begin());
        if (row == freeFrom.end()) {
            freeFrom.push_back(stay.when.end);
        } else {
            *row = stay.when.end;
        }
        bar.from = static_cast<double>(minuteOf(stay.when.start));
        bar.to = static_cast<double>(minuteOf(stay.when.end));
        bar.label = tr("%1, %2").arg(stay.dish, rangeText(stay, style));
        bars.push_back(std::move(bar));
    }
    return bars;
}

void addSentences(const Plan& plan, const Occasion& occasion, OvenIndex oven,
                  const ReadingStyle& style, TemperatureView& view)
{
    for (const Clash& clash : plan.clashes) {
        const bool isHeat =
            clash.kind == ClashKind::OvenTemperature || clash.kind == ClashKind::OvenRamp;
        if (isHeat && clash.oven == oven) {
            view.sentences.push_back(words(sentence(plan, occasion, clash, style)));
        }
    }
    if (view.sentences.empty()) {
        view.sentences.push_back(tr("It keeps within what the dishes in it accept."));
    }
    view.sentences.push_back(tr("Computed from the settings of the plan and from what the kitchen "
                                "says of its heating and cooling. A thermometer in the oven tells "
                                "more."));
}

} // namespace

bool isOvenUsed(const Plan& plan, OvenIndex oven)
{
    return !staysIn(plan, oven).empty();
}

TemperatureView ovenView(const Plan& plan, const Occasion& occasion, OvenIndex index,
                         const ReadingStyle& style)
{
    const Formulation& formulation = *plan.formulation;
    const Oven& oven = formulation.problem.ovens[index];
    const OvenCurve curve(oven, plan.schedule.programs[index]);
    const std::vector<OvenStayView> stays = staysIn(plan, index);
    const Interval shown = shownOf(plan, index, stays);
    TemperatureView view;
    view.key = "oven:" + oven.id;
    view.title = words(formulation.ovenNames[index]);
    view.calendar = formulation.calendar;
    view.from = static_cast<double>(minuteOf(shown.start));
    view.to = static_cast<double>(minuteOf(shown.end));
    view.curves = {{tr("computed temperature"), false, {curveOf(oven, curve, shown)}},
                   {tr("setting"), true, settingsOf(curve, shown)}};
    view.bars = barsOf(stays, style);
    view.columns = {tr("From"),       tr("Dish"),     tr("At its begin"),
                    tr("At its end"), tr("Accepted"), tr("To")};
    const auto day = dateOf(occasion);
    const auto clock = [&](PlanTime time) {
        return words(timeText(formulation.calendar, time, day, style));
    };
    const auto degrees = [&](PlanTime time) {
        return degreesText(static_cast<double>(curve.milliC(time)) / 1000, style);
    };
    for (const OvenStayView& stay : stays) {
        view.bands.push_back({stay.low, stay.high, stay.dish, stay.when});
        view.stays.push_back({clock(stay.when.start), stay.dish, degrees(stay.when.start),
                              degrees(stay.when.end), rangeText(stay, style),
                              clock(stay.when.end)});
    }
    addSentences(plan, occasion, index, style, view);
    view.summary =
        tr("%1, from %2 to %3. %4")
            .arg(view.title, clock(shown.start), clock(shown.end), view.sentences.front());
    return view;
}

} // namespace suppertide::ui
