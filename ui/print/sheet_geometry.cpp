#include "ui/print/sheet_geometry.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

constexpr double pointsPerMillimetre = 72.0 / 25.4;
constexpr double sideMargin = 15 * pointsPerMillimetre;
constexpr double headMargin = 12 * pointsPerMillimetre;
constexpr double footMargin = 8 * pointsPerMillimetre;
constexpr double hourWidth = 42;
constexpr double largeHourWidth = 56;
constexpr double firstStripWidth = 60;
constexpr double stripWidth = 44;

} // namespace

QSizeF sizeOf(PaperSize paper)
{
    switch (paper) {
    case PaperSize::A4:
        return {595, 842};
    case PaperSize::Letter:
        return {612, 792};
    }
    return {595, 842};
}

SheetGeometry sheetGeometry(const PageStyle& style, const std::vector<OvenIndex>& ovens,
                            std::size_t cooks)
{
    SheetGeometry page;
    page.paper = sizeOf(style.paper);
    page.left = sideMargin;
    page.right = page.paper.width() - sideMargin;
    page.top = headMargin;
    page.bottom = page.paper.height() - footMargin;
    const double hour = style.text == TextSize::Large ? largeHourWidth : hourWidth;
    page.hour = {page.left, page.left + hour};

    const double wanted =
        ovens.empty() ? 0 : firstStripWidth + stripWidth * static_cast<double>(ovens.size() - 1);
    const double room = page.width() / 2 - hour;
    const double shrink = wanted > room ? room / wanted : 1;
    double at = page.hour.right;
    for (const OvenIndex oven : ovens) {
        const double width = shrink * (page.strips.empty() ? firstStripWidth : stripWidth);
        page.strips.push_back({oven, {at, at + width}});
        at += width;
    }
    const double cookWidth =
        (page.right - at) / static_cast<double>(std::max<std::size_t>(1, cooks));
    for (std::size_t cook = 0; cook < cooks; ++cook) {
        page.cooks.push_back({at, at + cookWidth});
        at += cookWidth;
    }
    return page;
}

} // namespace suppertide::ui
