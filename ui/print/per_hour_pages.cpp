#include "ui/print/per_hour_pages.h"

#include <QPainter>

#include <algorithm>

#include "core/base/contracts.h"
#include "ui/print/page_breaks.h"
#include "ui/print/page_furniture.h"
#include "ui/print/paint_marks.h"
#include "ui/print/row_layout.h"

namespace suppertide::ui {

namespace {

/// The blocks of one sheet in order, each day's rows after its heading.
std::vector<SheetBlock> flowOf(const Sheet& sheet, const OvenTracks& tracks)
{
    std::vector<SheetBlock> flow = blocksBefore(sheet);
    const std::vector<SheetRow> rows = sheetRowsOf(sheet.plan, sheet.cooks);
    for (SheetBlock& block : flow) {
        block.day = rows.empty() ? 0 : rows.front().day;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i > 0 && rows[i].day != rows[i - 1].day) {
            flow.push_back(layOutDayHeading(sheet, rows[i].day));
        }
        for (SheetBlock& block : layOutRow(sheet, tracks, rows[i])) {
            flow.push_back(std::move(block));
        }
    }
    for (SheetBlock& block : blocksAfter(sheet)) {
        block.day = rows.empty() ? 0 : rows.back().day;
        flow.push_back(std::move(block));
    }
    return flow;
}

/// A page without its foot, which says how many pages there are.
struct OpenPage
{
    std::size_t sheet = 0;
    PaperMarks marks;
};

std::vector<OpenPage> pagesOf(const Sheet& sheet, std::size_t index)
{
    const OvenTracks tracks = ovenTracksOf(sheet.plan, ovensUsed(sheet.plan));
    const std::vector<SheetBlock> flow = flowOf(sheet, tracks);
    std::vector<FlowItem> items;
    for (const SheetBlock& block : flow) {
        items.push_back({block.height, block.isDayHeading, block.continues});
    }
    const double top = layOutHead(sheet, 0).height;
    std::vector<OpenPage> pages;
    for (const PageRange& range : breakIntoPages(items, sheet.bodyHeight)) {
        const std::size_t day = range.first < flow.size() ? flow[range.first].day : 0;
        OpenPage page{index, layOutHead(sheet, day).marks};
        if (range.first < range.last) {
            place(page.marks, flow[range.first].atHead, top);
        }
        double at = top;
        for (std::size_t i = range.first; i < range.last; ++i) {
            place(page.marks, flow[i].marks, at);
            at += flow[i].height;
        }
        page.marks.emplace_back(LineMark{{sheet.page.left, at}, {sheet.page.right, at}, 0.8});
        pages.push_back(std::move(page));
    }
    return pages;
}

std::vector<Sheet> sheetsFor(const PerHourPlan& plan, const PageStyle& style)
{
    const std::vector<OvenIndex> ovens = ovensUsed(plan);
    std::vector<Sheet> sheets;
    for (const SheetCooks& cooks : sheetsOf(plan, style.text == TextSize::Large)) {
        sheets.push_back({plan, style, cooks, sheetTypeFor(style.text),
                          sheetGeometry(style, ovens, cooks.size()),
                          DishPatterns{plan, style.looks}});
        Sheet& sheet = sheets.back();
        const double around = layOutHead(sheet, 0).height + layOutFoot(sheet, {}).height;
        sheet.bodyHeight = sheet.page.bottom - around;
    }
    return sheets;
}

} // namespace

PerHourPages layOutPages(const PerHourPlan& plan, const PageStyle& style)
{
    expects(plan.plan != nullptr && plan.plan->formulation != nullptr, "a sheet of a plan");
    const std::vector<Sheet> sheets = sheetsFor(plan, style);
    const double footHeight = layOutFoot(sheets.front(), {}).height;
    std::vector<OpenPage> open;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        std::vector<OpenPage> own = pagesOf(sheets[i], i);
        std::move(own.begin(), own.end(), std::back_inserter(open));
    }
    PerHourPages result{sizeOf(style.paper), {}};
    for (std::size_t i = 0; i < open.size(); ++i) {
        const Sheet& sheet = sheets[open[i].sheet];
        place(open[i].marks, layOutFoot(sheet, {i + 1, open.size()}).marks,
              sheet.page.bottom - footHeight);
        result.pages.push_back(std::move(open[i].marks));
    }
    return result;
}

void paintPage(QPainter& painter, const PerHourPages& pages, std::size_t page)
{
    expects(page < pages.pages.size(), "a page that there is");
    paintMarks(painter, pages.pages[page]);
}

} // namespace suppertide::ui
