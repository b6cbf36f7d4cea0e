#include "ui/print/page_furniture.h"

#include <algorithm>

#include "ui/print/paper_text.h"
#include "ui/print/sheet_signs.h"
#include "ui/print/sheet_times.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

constexpr double headRule = 1.6;
constexpr double columnInset = 8;
constexpr double gap = 8;

void writeLeft(PaperMarks& marks, const QPointF& at, const QString& text, const PaperFont& font)
{
    if (!text.isEmpty()) {
        marks.emplace_back(TextMark{at, text, font});
    }
}

void writeRight(PaperMarks& marks, const QPointF& at, const QString& text, const PaperFont& font)
{
    writeLeft(marks, {at.x() - textWidth(text, font), at.y()}, text, font);
}

QString dayHeading(const Sheet& sheet, std::size_t day)
{
    return day < sheet.plan.days.size() ? plainLine(sheet.plan.days[day].heading) : QString{};
}

QString cookName(const Sheet& sheet, std::size_t cook)
{
    return cook < sheet.plan.cookNames.size() ? plainLine(sheet.plan.cookNames[cook]) : QString{};
}

QString ovenName(const Sheet& sheet, OvenIndex oven)
{
    return oven.value() < sheet.plan.ovenNames.size()
               ? plainLine(sheet.plan.ovenNames[oven.value()])
               : QString{};
}

/// Whose sheet it is, where it is not everybody's.
QString sheetOwner(const Sheet& sheet)
{
    const bool isForAll = sheet.cooks.size() >= sheet.plan.cookNames.size();
    return isForAll ? QString{} : u"for "_s + cookName(sheet, sheet.cooks.front());
}

/// The font, smaller where the text would not fit, but not smaller than the foot's.
PaperFont fittingFont(const QString& text, PaperFont font, double room)
{
    constexpr double least = 9.5;
    const double width = textWidth(text, font);
    if (width > room) {
        font.size = std::max(least, font.size * room / width);
    }
    return font;
}

/// When a cook comes who is not there from the day's first hour on: "from 16:00".
QString arrivalOf(const Sheet& sheet, std::size_t cook, std::size_t day)
{
    const Formulation& formulation = *sheet.plan.plan->formulation;
    const bool isKnown = cook < formulation.problem.cooks.size() && day < sheet.plan.days.size() &&
                         !sheet.plan.days[day].hours.empty();
    if (!isKnown) {
        return {};
    }
    const PlanTime first = sheet.plan.days[day].hours.front().start;
    for (const Interval& free : formulation.problem.cooks[CookIndex{cook}].free) {
        if (free.end > first) {
            const bool isToday =
                formulation.calendar.civil(free.start).date == sheet.plan.days[day].date;
            return free.start > first && isToday
                       ? u"from "_s + plainLine(clockText(sheet.plan, free.start))
                       : QString{};
        }
    }
    return {};
}

/// The columns' names under a rule, below `top`; their foot.
double writeColumnNames(const Sheet& sheet, PaperMarks& marks, std::size_t day, double top)
{
    const SheetGeometry& page = sheet.page;
    const PaperFont& font = sheet.type.columnHead;
    marks.emplace_back(FillMark{{page.left, top, page.width(), headRule}, Ink::Black});
    const double height = lineHeight(font) + 7;
    const double base = top + headRule + (height + capHeight(font)) / 2;
    writeLeft(marks, {page.left, base}, u"Hour"_s, sheet.type.foot);
    for (const Strip& strip : page.strips) {
        const double room = strip.column.width() - 4;
        const PaperFont fitting = fittingFont(ovenName(sheet, strip.oven), font, room);
        writeLeft(marks, {strip.column.left + 1, base},
                  shortened(ovenName(sheet, strip.oven), fitting, room), fitting);
    }
    for (std::size_t i = 0; i < page.cooks.size(); ++i) {
        const Column& column = page.cooks[i];
        const QString arrival = arrivalOf(sheet, sheet.cooks[i], day);
        const double arrivalWidth = textWidth(arrival, sheet.type.detail);
        const double room = column.width() - 2 * columnInset - arrivalWidth;
        const QString name = shortened(cookName(sheet, sheet.cooks[i]), font, room);
        const double left = column.left + columnInset;
        writeLeft(marks, {left, base}, name, font);
        writeLeft(marks, {left + textWidth(name, font) + gap, base}, arrival, sheet.type.detail);
    }
    return top + headRule + height;
}

struct Sign
{
    PaperMarks marks;
    QString meaning;
};

std::vector<Sign> signsExplained()
{
    const QRectF box{QPointF{0, -noteSize.height()}, noteSize};
    std::vector<Sign> signs;
    for (const NoteShape shape :
         {NoteShape::Undivided, NoteShape::HandsOn, NoteShape::KeepAnEye, NoteShape::Unattended}) {
        signs.push_back({noteSign(shape, box), plainLine(nameOf(shape))});
    }
    signs.push_back({coldSign({2, -9}), u"out of or into the cold"_s});
    return signs;
}

PaperMark movedRight(PaperMark mark, double by)
{
    std::visit(
        [by](auto& it) {
            using Mark = std::decay_t<decltype(it)>;
            if constexpr (std::is_same_v<Mark, ShapeMark> || std::is_same_v<Mark, CurveMark>) {
                it.points.translate(by, 0);
            } else if constexpr (std::is_same_v<Mark, LineMark>) {
                it.from.rx() += by;
                it.to.rx() += by;
            } else if constexpr (std::is_same_v<Mark, TextMark>) {
                it.at.rx() += by;
            } else {
                it.area.translate(by, 0);
            }
        },
        mark);
    return mark;
}

/// A paragraph behind a sign at the left edge.
SheetBlock signedParagraph(const Sheet& sheet, const QString& text, const PaperFont& font)
{
    constexpr double sign = 13;
    constexpr int mostLines = 12;
    SheetBlock block;
    const double left = sheet.page.left + sign + gap;
    for (const QString& line : brokenLines(text, font, {sheet.page.right - left, 0, mostLines})) {
        block.marks.emplace_back(
            TextMark{{left, block.height + lineHeight(font) * 0.8}, line, font});
        block.height += lineHeight(font);
    }
    const PaperMarks triangle = cautionSign({sheet.page.left, 0.5}, sign);
    block.marks.insert(block.marks.end(), triangle.begin(), triangle.end());
    block.height = std::max(block.height, sign) + 4;
    return block;
}

SheetBlock headline(const Sheet& sheet, const QString& text)
{
    const PaperFont& font = sheet.type.columnHead;
    SheetBlock block;
    block.height = lineHeight(font) + 8;
    writeLeft(block.marks, {sheet.page.left, 5 + lineHeight(font) * 0.8},
              shortened(text, font, sheet.page.width()), font);
    return block;
}

/// Each dish's pattern with its name, in as many lines as they take.
SheetBlock dishKey(const Sheet& sheet)
{
    constexpr double barWidth = 16;
    const PaperFont& font = sheet.type.detail;
    const double line = lineHeight(font) + 3;
    SheetBlock block;
    double at = sheet.page.left;
    for (const DishId& dish : sheet.patterns.dishes()) {
        const QString name = shortened(plainLine(sheet.patterns.nameOf(dish)), font,
                                       sheet.page.width() - barWidth - gap);
        const double width = barWidth + 4 + textWidth(name, font);
        if (at > sheet.page.left && at + width > sheet.page.right) {
            at = sheet.page.left;
            block.height += line;
        }
        block.marks.emplace_back(PatternMark{{at, block.height + line / 2 - 5, barWidth, 10},
                                             sheet.patterns.find(dish).value_or(Pattern::Plain)});
        writeLeft(block.marks, {at + barWidth + 4, block.height + (line + capHeight(font)) / 2},
                  name, font);
        at += width + 2 * gap;
    }
    block.height += line + 4;
    return block;
}

} // namespace

SheetBlock layOutHead(const Sheet& sheet, std::size_t day)
{
    constexpr int mostTitleLines = 2;
    const SheetGeometry& page = sheet.page;
    const SheetType& type = sheet.type;
    SheetBlock head;
    head.day = day;
    const QString heading = shortened(dayHeading(sheet, day), type.day, page.width() / 2);
    const double dayWidth = textWidth(heading, type.day);
    double at = page.top;
    const double base = at + lineHeight(type.title) * 0.8;
    for (const QString& line :
         brokenLines(plainLine(sheet.plan.title), type.title,
                     {page.width() - dayWidth - 2 * gap, 0, mostTitleLines})) {
        writeLeft(head.marks, {page.left, at + lineHeight(type.title) * 0.8}, line, type.title);
        at += lineHeight(type.title);
    }
    at = std::max(at, page.top + lineHeight(type.title));
    writeRight(head.marks, {page.right, base}, heading, type.day);

    const QString owner = shortened(sheetOwner(sheet), type.day, page.width() / 2);
    const double ownerWidth = owner.isEmpty() ? 0 : textWidth(owner, type.day) + gap;
    at += lineHeight(type.subtitle);
    writeLeft(head.marks, {page.left, at},
              shortened(plainLine(sheet.plan.subtitle), type.subtitle, page.width() - ownerWidth),
              type.subtitle);
    writeRight(head.marks, {page.right, at}, owner, type.day);
    head.height = writeColumnNames(sheet, head.marks, day, at + 7);
    return head;
}

SheetBlock layOutFoot(const Sheet& sheet, const PageNumber& number)
{
    const SheetGeometry& page = sheet.page;
    const PaperFont& font = sheet.type.foot;
    SheetBlock foot;
    const double first = 5 + lineHeight(font);
    const double second = first + lineHeight(font) + 2;
    double at = page.left;
    for (const Sign& sign : signsExplained()) {
        for (const PaperMark& mark : sign.marks) {
            foot.marks.push_back(movedDown(movedRight(mark, at), first));
        }
        writeLeft(foot.marks, {at + noteSize.width() + 4, first}, sign.meaning, font);
        at += noteSize.width() + 4 + textWidth(sign.meaning, font) + gap * 1.5;
    }
    writeLeft(foot.marks, {page.left, second}, plainLine(localCodesPrevail), font);
    writeRight(foot.marks, {page.right, second}, u"Page %1 of %2"_s.arg(number.page).arg(number.of),
               font);
    foot.height = second + 3;
    return foot;
}

std::vector<SheetBlock> blocksBefore(const Sheet& sheet)
{
    std::vector<SheetBlock> blocks;
    if (!sheet.plan.clashes.empty()) {
        blocks.push_back(headline(sheet, plainLine(doesNotHold)));
        for (const std::string& clash : sheet.plan.clashes) {
            blocks.push_back(signedParagraph(sheet, plainLine(clash), sheet.type.caution));
            blocks.back().continues = true;
        }
    }
    if (!sheet.patterns.dishes().empty()) {
        blocks.push_back(dishKey(sheet));
    }
    return blocks;
}

std::vector<SheetBlock> blocksAfter(const Sheet& sheet)
{
    std::vector<SheetBlock> blocks;
    if (!sheet.plan.cautions.empty()) {
        blocks.push_back(headline(sheet, plainLine(throughout)));
        for (const std::string& caution : sheet.plan.cautions) {
            blocks.push_back(signedParagraph(sheet, plainLine(caution), sheet.type.detail));
            blocks.back().continues = true;
        }
    }
    return blocks;
}

SheetBlock layOutDayHeading(const Sheet& sheet, std::size_t day)
{
    const PaperFont& font = sheet.type.day;
    SheetBlock block;
    block.day = day;
    block.isDayHeading = true;
    block.height = lineHeight(font) + 8;
    block.marks.emplace_back(
        FillMark{{sheet.page.left, 0, sheet.page.width(), headRule}, Ink::Black});
    writeLeft(block.marks, {sheet.page.left, 4 + lineHeight(font) * 0.8},
              shortened(dayHeading(sheet, day), font, sheet.page.width()), font);
    return block;
}

} // namespace suppertide::ui
