#include "ui/print/oven_strip.h"

#include <algorithm>

#include "core/problem/timetable.h"
#include "ui/print/paper_text.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

constexpr double tagPadding = 2;
constexpr double barWidth = 8;
constexpr double barPitch = 18; // with its label beside it
constexpr double curveWidth = 1.8;
/// An oven that is off is drawn until it is this much above the room.
constexpr std::int64_t warmMilliC = 5000;

double tagHeight(const Sheet& sheet)
{
    return lineHeight(sheet.type.knob) + tagPadding;
}

/// Time and tag together.
double turnHeight(const Sheet& sheet)
{
    return lineHeight(sheet.type.knob) + tagHeight(sheet);
}

/// Bars that share a minute get rows of their own.
void spreadOverRows(std::vector<OvenBar>& bars)
{
    std::sort(bars.begin(), bars.end(),
              [](const OvenBar& a, const OvenBar& b) { return a.when < b.when; });
    std::vector<PlanTime> freeFrom;
    for (OvenBar& bar : bars) {
        const auto row = std::find_if(freeFrom.begin(), freeFrom.end(),
                                      [&](PlanTime free) { return free <= bar.when.start; });
        bar.row = static_cast<std::size_t>(row - freeFrom.begin());
        if (row == freeFrom.end()) {
            freeFrom.push_back(bar.when.end);
        } else {
            *row = bar.when.end;
        }
    }
}

std::vector<OvenBar> barsOf(const Formulation& formulation, const Schedule& schedule,
                            const Timetable& times, OvenIndex oven)
{
    std::vector<OvenBar> bars;
    const Problem& problem = formulation.problem;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        const auto when = times.held(demand.from, demand.to);
        if (when && schedule.ovens[index] == oven) {
            bars.push_back({*when, formulation.ovenDemands[index].dish});
        }
    }
    spreadOverRows(bars);
    return bars;
}

/// One strip within one stretch: minutes to heights, temperatures to widths.
class StripPainter
{
public:
    StripPainter(const Sheet& sheet, const OvenTrack& track, const Column& column,
                 const Stretch& stretch, double top, double bottom)
        : sheet_(&sheet), track_(&track), column_(column), stretch_(&stretch), top_(top),
          bottom_(bottom), oven_(&sheet.plan.plan->formulation->problem.ovens[track.oven])
    {}

    [[nodiscard]] PaperMarks marks()
    {
        drawLevel();
        drawScale();
        drawBars();
        drawTurns();
        return std::move(marks_);
    }

private:
    [[nodiscard]] double yAt(PlanTime time) const
    {
        const Interval& when = stretch_->when;
        if (when.empty()) {
            return top_;
        }
        const auto passed = static_cast<double>((time - when.start).count());
        return top_ + (bottom_ - top_) * passed / static_cast<double>(when.length().count());
    }
    [[nodiscard]] double xAt(std::int64_t milliC) const
    {
        const double share = static_cast<double>(milliC) / (1000.0 * std::max(1, oven_->maxC));
        return column_.left + column_.width() * std::clamp(share, 0.0, 1.0);
    }

    /// Minutes at which the curve may bend, within the stretch.
    [[nodiscard]] std::vector<PlanTime> bends() const
    {
        std::vector<PlanTime> at = track_->curve.turningMinutes(stretch_->when);
        for (const OvenCurve::Knot& knot : track_->curve.knots()) {
            const std::int64_t target = std::int64_t{knot.setC.value_or(oven_->ambientC)} * 1000;
            const std::int64_t rate =
                target >= knot.milliC ? oven_->heatMilliCPerMin : oven_->coolMilliCPerMin;
            const std::int64_t minutes = (std::abs(target - knot.milliC) + rate - 1) / rate;
            const PlanTime reached = knot.at + Minutes{minutes};
            if (stretch_->when.contains(reached)) {
                at.push_back(reached);
            }
        }
        std::sort(at.begin(), at.end());
        at.erase(std::unique(at.begin(), at.end()), at.end());
        return at;
    }

    [[nodiscard]] bool isWarm(PlanTime from, PlanTime to) const
    {
        const std::int64_t cold = std::int64_t{oven_->ambientC} * 1000 + warmMilliC;
        return track_->curve.setting(from).has_value() || track_->curve.milliC(from) > cold ||
               track_->curve.milliC(to) > cold;
    }

    void drawLevel()
    {
        const std::vector<PlanTime> at = bends();
        for (std::size_t i = 0; i + 1 < at.size(); ++i) {
            if (!isWarm(at[i], at[i + 1])) {
                continue;
            }
            const QPointF from{xAt(track_->curve.milliC(at[i])), yAt(at[i])};
            const QPointF to{xAt(track_->curve.milliC(at[i + 1])), yAt(at[i + 1])};
            marks_.emplace_back(ShapeMark{QPolygonF{{QPointF{column_.left, from.y()}, from, to,
                                                     QPointF{column_.left, to.y()}}},
                                          Ink::Grey});
            if (track_->curve.setting(at[i])) {
                lines_.emplace_back(CurveMark{QPolygonF{{from, to}}, curveWidth});
            } else {
                lines_.emplace_back(LineMark{from, to, curveWidth, true});
            }
        }
    }

    void drawScale()
    {
        for (int celsius = 100; celsius < oven_->maxC; celsius += 100) {
            const double x = xAt(std::int64_t{celsius} * 1000);
            marks_.emplace_back(LineMark{{x, top_}, {x, bottom_}, 0.5, true});
        }
        marks_.insert(marks_.end(), lines_.begin(), lines_.end());
        marks_.emplace_back(LineMark{{column_.left, top_}, {column_.left, bottom_}, 0.8});
    }

    void drawBars()
    {
        for (const OvenBar& bar : track_->bars) {
            const Interval shown = bar.when.common(stretch_->when);
            const double left = column_.left + 2 + barPitch * static_cast<double>(bar.row);
            const double right = std::min(left + barWidth, column_.right - 1);
            if (shown.empty() || right <= left + 2) {
                continue;
            }
            const QRectF area{left, yAt(shown.start), right - left,
                              yAt(shown.end) - yAt(shown.start)};
            marks_.emplace_back(
                PatternMark{area, sheet_->patterns.find(bar.dish).value_or(Pattern::Rain)});
        }
    }

    void drawTurns()
    {
        double freeFrom = top_;
        for (const SheetOvenTurn* turn : stretch_->turns) {
            if (turn->oven != track_->oven) {
                continue;
            }
            const double line = lineHeight(sheet_->type.knob);
            const double lowest = bottom_ - turnHeight(*sheet_);
            const double ideal = std::min(yAt(turn->at) - line, lowest);
            const double top = std::max(ideal, freeFrom);
            drawTurn(*turn, top);
            freeFrom = top + turnHeight(*sheet_);
        }
    }

    void drawTurn(const SheetOvenTurn& turn, double top)
    {
        const PaperFont& font = sheet_->type.knob;
        ReadingStyle short24 = sheet_->style.reading;
        QString time = plainLine(clockText(sheet_->plan, turn.at, short24));
        time = time.section(QLatin1Char(' '), 0, 0); // the row says whether it is am or pm
        const QString knob = plainLine(knobText(turn.setC, sheet_->style.reading));
        const double width = std::max(textWidth(time, font), textWidth(knob, font) + 6);
        const double left = column_.left + 0.5;
        const double line = lineHeight(font);
        const double tag = tagHeight(*sheet_);
        marks_.emplace_back(FillMark{{left, top, width + 1, line}, Ink::White});
        marks_.emplace_back(TextMark{{left + 0.5, top + line * 0.8}, time, font});
        marks_.emplace_back(FillMark{{left, top + line, width + 1, tag}, Ink::Black});
        marks_.emplace_back(TextMark{{left + (width + 1 - textWidth(knob, font)) / 2,
                                      top + line + (tag + capHeight(font)) / 2},
                                     knob,
                                     font,
                                     Ink::White});
    }

    const Sheet* sheet_;
    const OvenTrack* track_;
    Column column_;
    const Stretch* stretch_;
    double top_;
    double bottom_;
    const Oven* oven_;
    PaperMarks marks_;
    PaperMarks lines_;
};

} // namespace

std::vector<OvenIndex> ovensUsed(const PerHourPlan& plan)
{
    const Schedule& schedule = plan.plan->schedule;
    std::vector<OvenIndex> used;
    for (const OvenIndex oven : plan.plan->formulation->problem.ovens.indices()) {
        const bool isSet = schedule.programs.contains(oven) && !schedule.programs[oven].empty();
        const bool isHeld =
            std::find(schedule.ovens.begin(), schedule.ovens.end(), oven) != schedule.ovens.end();
        if (isSet || isHeld) {
            used.push_back(oven);
        }
    }
    return used;
}

OvenStrips ovenStripsOf(const PerHourPlan& plan, const std::vector<OvenIndex>& ovens)
{
    const Formulation& formulation = *plan.plan->formulation;
    const Schedule& schedule = plan.plan->schedule;
    const Timetable times{formulation.problem, schedule};
    OvenStrips strips;
    for (const OvenIndex oven : ovens) {
        strips.push_back({oven, OvenCurve{formulation.problem.ovens[oven], schedule.programs[oven]},
                          barsOf(formulation, schedule, times, oven)});
    }
    return strips;
}

double leastStripHeight(const Sheet& sheet, const Stretch& stretch)
{
    double least = 0;
    for (const Strip& strip : sheet.page.strips) {
        const auto count =
            std::count_if(stretch.turns.begin(), stretch.turns.end(),
                          [&](const SheetOvenTurn* turn) { return turn->oven == strip.oven; });
        least = std::max(least, static_cast<double>(count) * turnHeight(sheet) + 2);
    }
    return least;
}

PaperMarks stripMarks(const Sheet& sheet, const OvenStrips& strips, const Stretch& stretch,
                      double top, double bottom)
{
    PaperMarks marks;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        const PaperMarks own =
            StripPainter{sheet, strips[i], sheet.page.strips[i].column, stretch, top, bottom}
                .marks();
        marks.insert(marks.end(), own.begin(), own.end());
    }
    return marks;
}

} // namespace suppertide::ui
