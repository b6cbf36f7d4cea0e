#include "ui/print/row_layout.h"

#include <algorithm>

#include "ui/print/entry_layout.h"
#include "ui/print/oven_strip.h"
#include "ui/print/paper_text.h"
#include "ui/print/serving_bar.h"
#include "ui/print/sheet_times.h"
#include "ui/print/stretch_cut.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

constexpr double ruleWidth = 0.8;
constexpr double padding = 5; // above the entries of a stretch
constexpr double entryGap = 7;
constexpr double leastStretch = 9;
constexpr double leastHour = 44; // so that a strip can be read
constexpr Minutes mostOfAnHour{45};
constexpr double tickLength = 5;
constexpr Minutes quarter{15};

/// What a page holds besides the entries of a stretch: rules, padding, mostly a serving bar too.
constexpr double roomBesideEntries = 60;

bool isBare(const Stretch& stretch)
{
    return stretch.turns.empty() && std::all_of(stretch.columns.begin(), stretch.columns.end(),
                                                [](const auto& column) { return column.empty(); });
}

/// Lays the parts of one row under each other.
class RowWriter
{
public:
    RowWriter(const Sheet& sheet, const OvenTracks& tracks, const SheetRow& row)
        : sheet_(&sheet), tracks_(&tracks), row_(&row)
    {}

    [[nodiscard]] std::vector<SheetBlock> write()
    {
        begin(false);
        for (const RowPart& part : row_->parts) {
            if (const auto* serving = std::get_if<const SheetServing*>(&part)) {
                writeServing(**serving);
            } else if (row_->isFold) {
                writeFold(std::get<Stretch>(part));
            } else {
                writeStretch(std::get<Stretch>(part));
            }
        }
        return std::move(blocks_);
    }

private:
    [[nodiscard]] SheetBlock& block() { return blocks_.back(); }

    void begin(bool continues)
    {
        SheetBlock fresh;
        fresh.day = row_->day;
        fresh.continues = continues;
        blocks_.push_back(std::move(fresh));
    }

    void writeServing(const SheetServing& serving)
    {
        const SheetBlock bar = layOutServing(*sheet_, serving);
        if (block().height > 0 && block().height + bar.height > sheet_->bodyHeight) {
            begin(true);
        }
        place(block().marks, bar.marks, block().height);
        block().height += bar.height;
    }

    void rule()
    {
        const double at = block().height;
        block().marks.emplace_back(
            LineMark{{sheet_->page.left, at}, {sheet_->page.right, at}, ruleWidth});
    }

    void writeStretch(const Stretch& stretch)
    {
        const auto heightOf = [this](const SheetEntry& entry, std::size_t column) {
            return layOutEntry(*sheet_, entry, column).height + entryGap;
        };
        for (const Stretch& part :
             cutToFit(stretch, heightOf, sheet_->bodyHeight - roomBesideEntries)) {
            const bool isRest = isBare(part) && hasNumeral_;
            if (block().height > 0 && !isRest) {
                begin(true);
            }
            if (!hasNumeral_) {
                rule();
            }
            writePart(part, isRest);
        }
    }

    void writePart(const Stretch& part, bool isRest)
    {
        const double top = block().height;
        PaperMarks entries;
        double bottom = top + std::max(leastStretch, leastStripHeight(*sheet_, part));
        for (std::size_t column = 0; column < part.columns.size(); ++column) {
            double at = top + padding;
            for (const SheetEntry& entry : part.columns[column]) {
                const SheetBlock laid = layOutEntry(*sheet_, entry, column);
                place(entries, laid.marks, at);
                at += laid.height + entryGap;
            }
            bottom = std::max(bottom, part.columns[column].empty() ? top : at);
        }
        const PaperMarks numeral = numeralMarks(part.when.start, top);
        if (!isRest) {
            for (const PaperMark& mark : numeral) {
                bottom = std::max(bottom, boundsOf(mark).bottom() + 1);
            }
        }
        if (part.when.length() >= mostOfAnHour) {
            bottom = std::max(bottom, top + leastHour);
        }
        drawGround(part, top, bottom);
        if (!hasNumeral_) {
            block().marks.insert(block().marks.end(), numeral.begin(), numeral.end());
        } else if (!isRest && top <= 0) {
            block().atHead = numeral;
            block().atHead.emplace_back(
                LineMark{{sheet_->page.left, 0}, {sheet_->page.right, 0}, ruleWidth});
        }
        hasNumeral_ = true;
        block().marks.insert(block().marks.end(), entries.begin(), entries.end());
        block().height = bottom;
    }

    [[nodiscard]] PaperMarks numeralMarks(PlanTime time, double top) const
    {
        const SheetType& type = sheet_->type;
        const ClockTime clock = sheet_->plan.plan->formulation->calendar.civil(time).clock;
        const HourNumeral numeral = hourNumeral(clock, sheet_->plan.style);
        const double base = top + padding + capHeight(type.hour) + 1;
        const double left = sheet_->page.left;
        PaperMarks marks{TextMark{{left, base}, plainLine(numeral.large), type.hour}};
        if (!numeral.small.empty()) {
            marks.emplace_back(TextMark{{left + 2, base + lineHeight(type.hourPart)},
                                        plainLine(numeral.small),
                                        type.hourPart});
        }
        return marks;
    }

    void writeFold(const Stretch& stretch)
    {
        const PaperFont& font = sheet_->type.detail;
        const Column& column = sheet_->page.cooks.front();
        const double bottom = lineHeight(font) + 4;
        rule();
        drawGround(stretch, 0, bottom);
        const QString text =
            u"%1 to %2: %3"_s.arg(plainLine(clockText(sheet_->plan, stretch.when.start)),
                                  plainLine(clockText(sheet_->plan, stretch.when.end)),
                                  row_->isBusy ? u"nothing new to begin"_s : u"nothing to do"_s);
        block().marks.emplace_back(
            TextMark{{column.left + 4, (bottom + capHeight(font)) / 2},
                     shortened(text, font, sheet_->page.right - column.left - 4),
                     font});
        block().height = bottom;
    }

    /// Strips, quarter ticks and the lines between the columns.
    void drawGround(const Stretch& stretch, double top, double bottom)
    {
        PaperMarks& marks = block().marks;
        const PaperMarks strips = stripMarks(*sheet_, *tracks_, stretch, top, bottom);
        marks.insert(marks.end(), strips.begin(), strips.end());
        for (const Column& column : sheet_->page.cooks) {
            marks.emplace_back(LineMark{{column.left, top}, {column.left, bottom}, ruleWidth});
        }
        if (row_->isFold) {
            return;
        }
        const double right = sheet_->page.hour.right;
        for (PlanTime at = row_->when.start + quarter; at < row_->when.end; at += quarter) {
            if (stretch.when.start < at && at < stretch.when.end) {
                const double share = static_cast<double>((at - stretch.when.start).count()) /
                                     static_cast<double>(stretch.when.length().count());
                const double y = top + (bottom - top) * share;
                marks.emplace_back(LineMark{{right - tickLength, y}, {right, y}, ruleWidth});
            }
        }
    }

    const Sheet* sheet_;
    const OvenTracks* tracks_;
    const SheetRow* row_;
    bool hasNumeral_ = false;
    std::vector<SheetBlock> blocks_;
};

} // namespace

std::vector<SheetBlock> layOutRow(const Sheet& sheet, const OvenTracks& tracks, const SheetRow& row)
{
    return RowWriter{sheet, tracks, row}.write();
}

} // namespace suppertide::ui
