#include "ui/print/sheet_geometry.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

constexpr double pointsPerMillimetre = 72.0 / 25.4;
constexpr double sideMargin = 15 * pointsPerMillimetre;
constexpr double headMargin = 12 * pointsPerMillimetre;
constexpr double footMargin = 8 * pointsPerMillimetre;
struct Widths
{
    double hour;
    double firstStrip;
    double furtherStrip;
};
constexpr Widths normalWidths{42, 60, 44};
constexpr Widths largeWidths{56, 66, 52};

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
    const Widths& widths = style.text == TextSize::Large ? largeWidths : normalWidths;
    page.hour = {page.left, page.left + widths.hour};

    const double wanted =
        ovens.empty()
            ? 0
            : widths.firstStrip + widths.furtherStrip * static_cast<double>(ovens.size() - 1);
    const double room = page.width() / 2 - widths.hour;
    const double shrink = wanted > room ? room / wanted : 1;
    double at = page.hour.right;
    for (const OvenIndex oven : ovens) {
        const double width =
            shrink * (page.strips.empty() ? widths.firstStrip : widths.furtherStrip);
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
