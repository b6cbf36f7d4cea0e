#include "ui/print/serving_bar.h"

#include <algorithm>

#include "ui/print/paper_text.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

constexpr double headRule = 0.8;
constexpr double footRule = 2.4;
constexpr double gap = 8;
constexpr int mostTitleLines = 3;
constexpr int mostHelpingLines = 6;

QString titleOf(const Sheet& sheet, const SheetServing& serving)
{
    return plainLine(clockText(sheet.plan, serving.at)) + u"  "_s + plainLine(serving.text);
}

QString helpingsOf(const SheetServing& serving)
{
    QStringList helpings;
    for (const std::string& helping : serving.helpings) {
        helpings.append(plainLine(helping));
    }
    return helpings.join(u" · ");
}

/// Who gets what: at the right of the title's last line if there is room, else under it.
void writeHelpings(const Sheet& sheet, SheetBlock& bar, const QString& text,
                   const QPointF& titleEnd, double left)
{
    const PaperFont& font = sheet.type.helpings;
    const double width = textWidth(text, font);
    const double right = sheet.page.right;
    if (titleEnd.x() + gap + width <= right) {
        bar.marks.emplace_back(TextMark{{right - width, titleEnd.y()}, text, font});
        return;
    }
    for (const QString& line : brokenLines(text, font, {right - left, 0, mostHelpingLines})) {
        bar.marks.emplace_back(TextMark{{left, bar.height + lineHeight(font) * 0.75}, line, font});
        bar.height += lineHeight(font);
    }
    bar.height += 2;
}

} // namespace

SheetBlock layOutServing(const Sheet& sheet, const SheetServing& serving)
{
    const SheetGeometry& page = sheet.page;
    const PaperFont& font = sheet.type.serving;
    const double lineOne = lineHeight(font) + 3;
    const QString number = QString::number(serving.number);
    const double numberWidth = textWidth(number, font);
    const double box = std::max(lineOne, numberWidth + 8);
    const double base = (lineOne + capHeight(font)) / 2;
    const double left = page.left + box + gap;

    SheetBlock bar;
    bar.marks.emplace_back(LineMark{{page.left, 0}, {page.right, 0}, headRule});
    bar.marks.emplace_back(FillMark{{page.left, 0, box, lineOne}, Ink::Black});
    bar.marks.emplace_back(
        TextMark{{page.left + (box - numberWidth) / 2, base}, number, font, Ink::White});
    QPointF end{left, base};
    bar.height = lineOne;
    for (const QString& line :
         brokenLines(titleOf(sheet, serving), font, {page.right - left, 0, mostTitleLines})) {
        const bool isFirst = end.x() <= left;
        end = {left + textWidth(line, font), isFirst ? base : end.y() + lineHeight(font)};
        bar.height += isFirst ? 0 : lineHeight(font);
        bar.marks.emplace_back(TextMark{{left, end.y()}, line, font});
    }
    writeHelpings(sheet, bar, helpingsOf(serving), end, left);
    bar.marks.emplace_back(FillMark{{page.left, bar.height, page.width(), footRule}, Ink::Black});
    bar.height += footRule;
    return bar;
}

} // namespace suppertide::ui
