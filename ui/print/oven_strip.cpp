#include "ui/print/oven_strip.h"

#include <algorithm>

#include "ui/print/paper_text.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

constexpr double tagPadding = 2;
constexpr double barWidth = 8;
constexpr double barInset = 2;
constexpr double barPitch = 19; // a bar with its name beside it
constexpr double curveWidth = 1.8;
constexpr double curveDotGap = 1.3;
constexpr double scaleDotGap = 4;
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

/// From top to bottom.
struct Extent
{
    double top = 0;
    double bottom = 0;

    [[nodiscard]] double height() const { return bottom - top; }
};

/// The highest part of `whole` that none of `taken`, by their tops, covers.
Extent largestFree(const Extent& whole, const std::vector<Extent>& taken)
{
    Extent best{whole.top, whole.top};
    double from = whole.top;
    const auto offer = [&](double to) {
        const Extent free{from, std::min(to, whole.bottom)};
        if (free.height() > best.height()) {
            best = free;
        }
    };
    for (const Extent& one : taken) {
        offer(one.top);
        from = std::max(from, one.bottom);
    }
    offer(whole.bottom);
    return best;
}

/// One strip within one stretch: minutes to heights, temperatures to widths.
class StripPainter
{
public:
    StripPainter(const Sheet& sheet, const OvenTrack& track, const Column& column,
                 const Stretch& stretch, const Extent& extent)
        : sheet_(&sheet), track_(&track), column_(column), stretch_(&stretch), extent_(extent),
          oven_(&sheet.plan.plan->formulation->problem.ovens[track.oven])
    {}

    [[nodiscard]] PaperMarks marks()
    {
        drawLevel();
        drawBars();
        drawTurns();
        return std::move(marks_);
    }

private:
    [[nodiscard]] double yAt(PlanTime time) const
    {
        const Interval& when = stretch_->when;
        if (when.empty()) {
            return extent_.top;
        }
        const auto passed = static_cast<double>((time - when.start).count());
        return extent_.top + extent_.height() * passed / static_cast<double>(when.length().count());
    }
    [[nodiscard]] double xAt(PlanTime time) const { return xOf(track_->curve.milliC(time)); }
    [[nodiscard]] double xOf(std::int64_t milliC) const
    {
        const double share = static_cast<double>(milliC) / (1000.0 * std::max(1, oven_->maxC));
        return column_.left + column_.width() * std::clamp(share, 0.0, 1.0);
    }

    [[nodiscard]] bool isWarm(PlanTime from, PlanTime to) const
    {
        const std::int64_t cold = std::int64_t{oven_->ambientC} * 1000 + warmMilliC;
        return track_->curve.setting(from).has_value() || track_->curve.milliC(from) > cold ||
               track_->curve.milliC(to) > cold;
    }

    void drawLevel()
    {
        PaperMarks lines;
        const std::vector<PlanTime> at = bendsOf(*track_, *oven_, stretch_->when);
        for (std::size_t i = 0; i + 1 < at.size(); ++i) {
            if (!isWarm(at[i], at[i + 1])) {
                continue;
            }
            const QPointF from{xAt(at[i]), yAt(at[i])};
            const QPointF to{xAt(at[i + 1]), yAt(at[i + 1])};
            marks_.emplace_back(ShapeMark{QPolygonF{{QPointF{column_.left, from.y()}, from, to,
                                                     QPointF{column_.left, to.y()}}},
                                          Ink::Grey});
            const bool isOn = track_->curve.setting(at[i]).has_value();
            lines.emplace_back(LineMark{from, to, curveWidth, isOn ? 0 : curveDotGap});
        }
        for (int celsius = 100; celsius < oven_->maxC; celsius += 100) {
            const double x = xOf(std::int64_t{celsius} * 1000);
            marks_.emplace_back(LineMark{{x, extent_.top}, {x, extent_.bottom}, 0.5, scaleDotGap});
        }
        marks_.insert(marks_.end(), lines.begin(), lines.end());
        marks_.emplace_back(
            LineMark{{column_.left, extent_.top}, {column_.left, extent_.bottom}, 0.8});
    }

    void drawBars()
    {
        for (const OvenBar& bar : track_->bars) {
            const Interval shown = bar.when.common(stretch_->when);
            const double left = column_.left + barInset + barPitch * static_cast<double>(bar.row);
            const double right = std::min(left + barWidth, column_.right - 1);
            if (shown.empty() || right <= left + 2) {
                continue;
            }
            const Extent extent{yAt(shown.start), yAt(shown.end)};
            marks_.emplace_back(
                PatternMark{{left, extent.top, right - left, extent.height()},
                            sheet_->patterns.find(bar.dish).value_or(Pattern::Rain)});
            // Once for a bar, where its middle is.
            if (bar.dish && stretch_->when.contains(bar.middle())) {
                nameBar(sheet_->patterns.nameOf(*bar.dish), right + 1.5, extent);
            }
        }
    }

    /// The dish's name, upright beside its bar, where the tags leave room.
    void nameBar(const std::string& name, double left, const Extent& bar)
    {
        constexpr double margin = 3;
        constexpr qsizetype leastLetters = 4;
        const PaperFont& font = sheet_->type.shelf;
        const double width = lineHeight(font);
        std::vector<Extent> tags;
        for (const auto& [turn, top] : placedTurns()) {
            tags.push_back({top, top + turnHeight(*sheet_)});
        }
        const Extent free = largestFree(bar, tags);
        const QString text = shortened(plainLine(name), font, free.height() - 2 * margin);
        if (text.size() < leastLetters || left + width > column_.right) {
            return;
        }
        const double length = textWidth(text, font);
        const double bottom = free.top + margin + length;
        // Where the curve would run through the letters, they stand on white.
        marks_.emplace_back(FillMark{{left, free.top + margin - 1, width - 1.5, length + 2},
                                     groundUpTo(left + width, bar)});
        marks_.emplace_back(TextMark{{left + width * 0.72, bottom}, text, font, Ink::Black, true});
    }

    [[nodiscard]] Ink groundUpTo(double right, const Extent& bar) const
    {
        for (const PlanTime at : bendsOf(*track_, *oven_, stretch_->when)) {
            const double y = yAt(at);
            if (y >= bar.top && y <= bar.bottom && xAt(at) < right + curveWidth) {
                return Ink::White;
            }
        }
        return Ink::Grey;
    }

    struct PlacedTurn
    {
        const SheetOvenTurn* turn;
        double top;
    };

    /// The tags of this oven with their tops: at their minute, but within the stretch and not on
    /// each other.
    [[nodiscard]] std::vector<PlacedTurn> placedTurns() const
    {
        std::vector<PlacedTurn> placed;
        double freeFrom = extent_.top;
        for (const SheetOvenTurn* turn : stretch_->turns) {
            if (turn->oven != track_->oven) {
                continue;
            }
            const double lowest = extent_.bottom - turnHeight(*sheet_);
            const double ideal = std::min(yAt(turn->at) - lineHeight(sheet_->type.knob), lowest);
            const double top = std::max(ideal, freeFrom);
            placed.push_back({turn, top});
            freeFrom = top + turnHeight(*sheet_);
        }
        return placed;
    }

    void drawTurns()
    {
        for (const auto& [turn, top] : placedTurns()) {
            drawTurn(*turn, top);
        }
    }

    void drawTurn(const SheetOvenTurn& turn, double top)
    {
        const PaperFont& font = sheet_->type.knob;
        const ReadingStyle& reading = sheet_->plan.style;
        // The row says whether it is am or pm.
        const std::string clock = clockText(sheet_->plan, turn.at);
        const QString time = plainLine(clock.substr(0, clock.find(' ')));
        const QString knob = plainLine(knobText(turn.setC, reading));
        const double width = std::max(textWidth(time, font), textWidth(knob, font) + 6) + 1;
        const double left = column_.left + 0.5;
        const double line = lineHeight(font);
        const double tag = tagHeight(*sheet_);
        marks_.emplace_back(FillMark{{left, top, width, line}, Ink::White});
        marks_.emplace_back(TextMark{{left + 0.5, top + line * 0.8}, time, font});
        marks_.emplace_back(FillMark{{left, top + line, width, tag}, Ink::Black});
        marks_.emplace_back(TextMark{
            {left + (width - textWidth(knob, font)) / 2, top + line + (tag + capHeight(font)) / 2},
            knob,
            font,
            Ink::White});
    }

    const Sheet* sheet_;
    const OvenTrack* track_;
    Column column_;
    const Stretch* stretch_;
    Extent extent_;
    const Oven* oven_;
    PaperMarks marks_;
};

} // namespace

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

PaperMarks stripMarks(const Sheet& sheet, const OvenTracks& tracks, const Stretch& stretch,
                      double top, double bottom)
{
    PaperMarks marks;
    for (std::size_t i = 0; i < tracks.size(); ++i) {
        const PaperMarks own = StripPainter{
            sheet, tracks[i], sheet.page.strips[i].column, stretch,
            Extent{top, bottom}}.marks();
        marks.insert(marks.end(), own.begin(), own.end());
    }
    return marks;
}

} // namespace suppertide::ui
