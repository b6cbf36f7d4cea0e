#include "ui/print/entry_layout.h"

#include <algorithm>

#include "ui/print/paper_text.h"
#include "ui/print/sheet_signs.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

constexpr double barInset = 4;
constexpr double barWidth = 6.5;
constexpr double boxInset = 14.5;
constexpr double textGap = 5.5; // from the tick box to the text
constexpr double rightInset = 4;
constexpr double wordGap = 6;
// Together they stay below the height of a Letter page, in the large type too.
constexpr int mostDeedLines = 4;
constexpr int mostDetailLines = 9;
constexpr int mostAmountLines = 8;
constexpr int mostAfterLines = 3;
constexpr int mostCautionLines = 14;

/// Writes lines of text downwards from a left edge.
class Writer
{
public:
    Writer(PaperMarks& marks, double left, double width, double top = 0)
        : marks_(&marks), left_(left), width_(width), at_(top)
    {}

    /// A paragraph, its first line after what stands there already.
    void write(const QString& text, const PaperFont& font, int mostLines, double indent = 0)
    {
        bool isFirst = true;
        for (const QString& line : brokenLines(text, font, {width_, indent, mostLines})) {
            const double base = at_ + lineHeight(font) * baseShare;
            marks_->emplace_back(TextMark{{left_ + (isFirst ? indent : 0), base}, line, font});
            at_ += lineHeight(font);
            isFirst = false;
        }
    }

    /// A bold time and what is done then.
    void writeTimed(const QString& time, const QString& deed, const SheetType& type)
    {
        const double base = at_ + lineHeight(type.time) * baseShare;
        marks_->emplace_back(TextMark{{left_, base}, time, type.time});
        const double indent = textWidth(time, type.time) + wordGap;
        // Both stand on one base line, whatever their sizes.
        at_ = base - lineHeight(type.deed) * baseShare;
        write(deed, type.deed, mostDeedLines, indent);
        at_ = std::max(at_, base + lineHeight(type.time) * (1 - baseShare));
    }

    [[nodiscard]] double bottom() const { return at_; }

private:
    static constexpr double baseShare = 0.8; // of the line height above the base line

    PaperMarks* marks_;
    double left_;
    double width_;
    double at_;
};

double tickBoxSize(const Sheet& sheet)
{
    return sheet.style.text == TextSize::Large ? 15 : 11;
}

QSizeF noteSizeOf(const Sheet& sheet)
{
    return noteSize * (tickBoxSize(sheet) / 11);
}

double textLeft(const Sheet& sheet, const Column& column)
{
    return column.left + boxInset + tickBoxSize(sheet) + textGap;
}

QString joined(const std::vector<std::string>& parts, QStringView between)
{
    QStringList list;
    for (const std::string& part : parts) {
        list.append(plainLine(part));
    }
    return list.join(between);
}

/// "300 g smoked trout" stays on one line, unless that is much of a line.
QString amountText(const std::string& amount)
{
    constexpr qsizetype mostUnbroken = 24;
    QString text = plainLine(amount);
    return text.size() <= mostUnbroken ? text.replace(u' ', QChar::Nbsp) : text;
}

QString amountsText(const SheetStep& step)
{
    QStringList amounts;
    for (const std::string& amount : step.amounts) {
        amounts.append(amountText(amount));
    }
    return amounts.join(u", ");
}

/// The other cooks who do the step too: "with Jory".
QString companyOf(const Sheet& sheet, const SheetStep& step, std::size_t column)
{
    std::vector<std::string> others;
    const std::size_t cook = sheet.cooks[column];
    for (const std::string& name : step.cooks) {
        if (cook < sheet.plan.cookNames.size() && name != sheet.plan.cookNames[cook]) {
            others.push_back(name);
        }
    }
    return others.empty() ? QString{} : u"with "_s + joined(others, u", ");
}

SheetBlock layOutStep(const Sheet& sheet, const SheetStep& step, std::size_t columnIndex)
{
    const Column& column = sheet.page.cooks[columnIndex];
    const double box = tickBoxSize(sheet);
    const double left = textLeft(sheet, column);
    SheetBlock block;
    Writer writer{block.marks, left, column.right - rightInset - left};
    writer.writeTimed(plainLine(clockText(sheet.plan, step.start)), plainLine(step.deed),
                      sheet.type);
    QStringList details{companyOf(sheet, step, columnIndex), plainLine(step.detail)};
    details.removeAll(QString{});
    writer.write(details.join(u" · "), sheet.type.detail, mostDetailLines);
    writer.write(amountsText(step), sheet.type.detail, mostAmountLines);
    writer.write(plainLine(step.after), sheet.type.detail, mostAfterLines);

    const double boxTop = 2;
    const double noteTop = boxTop + box + 3;
    block.marks.push_back(tickBox({column.left + boxInset, boxTop}, box));
    const QSizeF noteBox = noteSizeOf(sheet);
    const double noteLeft = column.left + boxInset + (box - noteBox.width()) / 2;
    const PaperMarks note =
        noteSign(noteShapeOf(step.attention), {QPointF{noteLeft, noteTop}, noteBox});
    block.marks.insert(block.marks.end(), note.begin(), note.end());
    block.height = std::max(writer.bottom(), noteTop + noteBox.height());
    if (const auto pattern = sheet.patterns.find(step.dish)) {
        block.marks.emplace_back(PatternMark{
            {column.left + barInset, boxTop, barWidth, block.height - boxTop}, *pattern});
    }
    return block;
}

SheetBlock layOutFetch(const Sheet& sheet, const SheetFetch& fetch, std::size_t columnIndex)
{
    const Column& column = sheet.page.cooks[columnIndex];
    const double box = tickBoxSize(sheet);
    const double left = textLeft(sheet, column);
    SheetBlock block;
    Writer writer{block.marks, left, column.right - rightInset - left};
    writer.writeTimed(plainLine(clockText(sheet.plan, fetch.at)), plainLine(fetch.text),
                      sheet.type);
    const double boxTop = 2;
    block.marks.push_back(tickBox({column.left + boxInset, boxTop}, box));
    const PaperMarks cold = coldSign({column.left + barInset - 0.5, boxTop + 0.5});
    block.marks.insert(block.marks.end(), cold.begin(), cold.end());
    block.height = writer.bottom();
    return block;
}

SheetBlock layOutNote(const Sheet& sheet, const SheetNote& note, std::size_t columnIndex)
{
    constexpr double inset = 5;
    constexpr double frame = 1.8;
    const Column& column = sheet.page.cooks[columnIndex];
    const double sign = sheet.style.text == TextSize::Large ? 22 : 17;
    const double boxLeft = column.left + barInset;
    const double boxRight = column.right - rightInset;
    const double left = boxLeft + inset + sign + inset;
    SheetBlock block;
    Writer writer{block.marks, left, boxRight - inset - left};
    writer.write(plainLine(note.text), sheet.type.caution, mostCautionLines);
    block.height = std::max(writer.bottom(), sign) + 2 * inset - 2;
    const double down = (block.height - writer.bottom()) / 2;
    for (PaperMark& mark : block.marks) {
        mark = movedDown(std::move(mark), down);
    }
    const PaperMarks triangle =
        cautionSign({boxLeft + inset, (block.height - sign * 0.9) / 2}, sign);
    block.marks.insert(block.marks.end(), triangle.begin(), triangle.end());
    block.marks.emplace_back(FrameMark{{boxLeft, 0, boxRight - boxLeft, block.height}, frame});
    return block;
}

SheetBlock layOutTable(const Sheet& sheet, const SheetTable& table, std::size_t columnIndex)
{
    constexpr double inset = 5;
    const Column& column = sheet.page.cooks[columnIndex];
    const QString text = u"At table to "_s + plainLine(clockText(sheet.plan, table.when.end));
    const double left = column.left + barInset;
    const double width = column.width() - barInset - rightInset;
    const PaperFont& font = sheet.type.detail;
    SheetBlock block;
    block.height = lineHeight(font) + 4;
    block.marks.emplace_back(FillMark{{left, 0, width, block.height}, Ink::Grey});
    block.marks.emplace_back(TextMark{{left + inset, (block.height + capHeight(font)) / 2},
                                      shortened(text, font, width - 2 * inset),
                                      font});
    return block;
}

} // namespace

SheetBlock layOutEntry(const Sheet& sheet, const SheetEntry& entry, std::size_t column)
{
    if (const auto* step = std::get_if<const SheetStep*>(&entry)) {
        return layOutStep(sheet, **step, column);
    }
    if (const auto* note = std::get_if<const SheetNote*>(&entry)) {
        return layOutNote(sheet, **note, column);
    }
    if (const auto* fetch = std::get_if<const SheetFetch*>(&entry)) {
        return layOutFetch(sheet, **fetch, column);
    }
    return layOutTable(sheet, *std::get<const SheetTable*>(entry), column);
}

} // namespace suppertide::ui
