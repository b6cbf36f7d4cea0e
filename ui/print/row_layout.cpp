#include "ui/print/row_layout.h"

#include <algorithm>

#include "ui/print/entry_layout.h"
#include "ui/print/paper_text.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

constexpr double ruleWidth = 0.8;
constexpr double servingFoot = 2.4;
constexpr double padding = 5; // above and below the entries of a stretch
constexpr double entryGap = 7;
constexpr double leastStretch = 9;
constexpr double leastHour = 44; // so that a strip can be read
constexpr double tickLength = 5;
constexpr Minutes quarter{15};

QString servingText(const Sheet& sheet, const SheetServing& serving)
{
    return plainLine(clockText(sheet.plan, serving.at, sheet.style.reading)) + u"  "_s +
           plainLine(serving.text);
}

QString helpingsText(const SheetServing& serving)
{
    QStringList helpings;
    for (const std::string& helping : serving.helpings) {
        helpings.append(plainLine(helping));
    }
    return helpings.join(u" · ");
}

/// Lays the parts of one row under each other.
class RowWriter
{
public:
    RowWriter(const Sheet& sheet, const OvenStrips& strips, const SheetRow& row)
        : sheet_(&sheet), strips_(&strips), row_(&row)
    {
        block_.day = row.day;
    }

    [[nodiscard]] SheetBlock write()
    {
        const auto isServing = [](const RowPart& part) {
            return std::holds_alternative<const SheetServing*>(part);
        };
        if (row_->parts.empty() || !isServing(row_->parts.front())) {
            rule(0);
        }
        bool hasNumeral = row_->isFold;
        for (const RowPart& part : row_->parts) {
            if (const auto* serving = std::get_if<const SheetServing*>(&part)) {
                writeServing(**serving);
                continue;
            }
            const auto& stretch = std::get<Stretch>(part);
            row_->isFold ? writeFold(stretch) : writeStretch(stretch, !hasNumeral);
            hasNumeral = true;
        }
        return std::move(block_);
    }

private:
    void rule(double at)
    {
        block_.marks.emplace_back(
            LineMark{{sheet_->page.left, at}, {sheet_->page.right, at}, ruleWidth});
    }

    void writeStretch(const Stretch& stretch, bool hasNumeral)
    {
        const double top = block_.height;
        PaperMarks entries;
        double lowest = top + leastStretch;
        for (std::size_t column = 0; column < stretch.columns.size(); ++column) {
            double at = top + padding;
            for (const SheetEntry& entry : stretch.columns[column]) {
                const SheetBlock laid = layOutEntry(*sheet_, entry, column);
                place(entries, laid.marks, at);
                at += laid.height + entryGap;
            }
            lowest = std::max(lowest, stretch.columns[column].empty() ? top : at);
        }
        lowest = std::max(lowest, top + leastStripHeight(*sheet_, stretch));
        if (hasNumeral) {
            lowest = std::max(lowest, top + leastNumeral());
        }
        if (stretch.when.length() >= Minutes{45}) {
            lowest = std::max(lowest, top + leastHour);
        }
        drawGround(stretch, top, lowest);
        if (hasNumeral) {
            drawNumeral(top);
        }
        block_.marks.insert(block_.marks.end(), entries.begin(), entries.end());
        block_.height = lowest;
    }

    void writeFold(const Stretch& stretch)
    {
        const PaperFont& font = sheet_->type.detail;
        const double top = block_.height;
        const double bottom = top + lineHeight(font) + 4;
        drawGround(stretch, top, bottom);
        const ReadingStyle& reading = sheet_->style.reading;
        const QString text =
            plainLine(clockText(sheet_->plan, stretch.when.start, reading)) + u" to "_s +
            plainLine(clockText(sheet_->plan, stretch.when.end, reading)) + u": nothing to do"_s;
        const Column& column = sheet_->page.cooks.front();
        block_.marks.emplace_back(
            TextMark{{column.left + 4, (top + bottom + capHeight(font)) / 2},
                     shortened(text, font, sheet_->page.right - column.left - 4),
                     font});
        block_.height = bottom;
    }

    [[nodiscard]] double leastNumeral() const
    {
        const HourNumeral numeral = hourNumeral(row_->clock, sheet_->style.reading);
        return lineHeight(sheet_->type.hour) + 4 +
               (numeral.small.empty() ? 0 : lineHeight(sheet_->type.hourPart));
    }

    void drawNumeral(double top)
    {
        const HourNumeral numeral = hourNumeral(row_->clock, sheet_->style.reading);
        const SheetType& type = sheet_->type;
        const double base = top + padding + capHeight(type.hour) + 1;
        block_.marks.emplace_back(
            TextMark{{sheet_->page.left, base}, plainLine(numeral.large), type.hour});
        if (!numeral.small.empty()) {
            block_.marks.emplace_back(
                TextMark{{sheet_->page.left + 2, base + lineHeight(type.hourPart)},
                         plainLine(numeral.small),
                         type.hourPart});
        }
    }

    /// Strips, quarter ticks and the lines between the columns.
    void drawGround(const Stretch& stretch, double top, double bottom)
    {
        const PaperMarks strips = stripMarks(*sheet_, *strips_, stretch, top, bottom);
        block_.marks.insert(block_.marks.end(), strips.begin(), strips.end());
        for (const Column& column : sheet_->page.cooks) {
            block_.marks.emplace_back(
                LineMark{{column.left, top}, {column.left, bottom}, ruleWidth});
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
                block_.marks.emplace_back(LineMark{{right - tickLength, y}, {right, y}, ruleWidth});
            }
        }
    }

    void writeServing(const SheetServing& serving)
    {
        constexpr double gap = 8;
        const SheetType& type = sheet_->type;
        const SheetGeometry& page = sheet_->page;
        const double top = block_.height;
        const double barHeight = lineHeight(type.serving) + 3;
        const QString number = QString::number(serving.number);
        const double box = std::max(barHeight, textWidth(number, type.serving) + 8);
        const double left = page.left + box + gap;
        rule(top);
        block_.marks.emplace_back(FillMark{{page.left, top, box, barHeight}, Ink::Black});
        const double base = top + (barHeight + capHeight(type.serving)) / 2;
        block_.marks.emplace_back(
            TextMark{{page.left + (box - textWidth(number, type.serving)) / 2, base},
                     number,
                     type.serving,
                     Ink::White});
        double bottom = top;
        double lineWidth = 0;
        const QStringList lines =
            brokenLines(servingText(*sheet_, serving), type.serving, {page.right - left, 0, 3});
        for (const QString& line : lines) {
            block_.marks.emplace_back(TextMark{{left, base + (bottom - top)}, line, type.serving});
            lineWidth = textWidth(line, type.serving);
            bottom += bottom == top ? barHeight : lineHeight(type.serving);
        }
        bottom = std::max(bottom, top + barHeight);
        block_.height = writeHelpings(serving, {left + lineWidth + gap, base}, bottom, left);
        block_.marks.emplace_back(
            FillMark{{page.left, block_.height, page.width(), servingFoot}, Ink::Black});
        block_.height += servingFoot;
    }

    /// Who gets what: at the right of the bar if there is room, else under it. Its bottom.
    double writeHelpings(const SheetServing& serving, const QPointF& beside, double bottom,
                         double left)
    {
        constexpr int mostLines = 6;
        const PaperFont& font = sheet_->type.helpings;
        const QString text = helpingsText(serving);
        const double width = textWidth(text, font);
        const double right = sheet_->page.right;
        if (beside.x() + width <= right) {
            block_.marks.emplace_back(TextMark{{right - width, beside.y()}, text, font});
            return bottom;
        }
        for (const QString& line : brokenLines(text, font, {right - left, 0, mostLines})) {
            block_.marks.emplace_back(
                TextMark{{left, bottom + lineHeight(font) * 0.75}, line, font});
            bottom += lineHeight(font);
        }
        return bottom + 2;
    }

    const Sheet* sheet_;
    const OvenStrips* strips_;
    const SheetRow* row_;
    SheetBlock block_;
};

} // namespace

SheetBlock layOutRow(const Sheet& sheet, const OvenStrips& strips, const SheetRow& row)
{
    return RowWriter{sheet, strips, row}.write();
}

} // namespace suppertide::ui
