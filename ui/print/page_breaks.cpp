#include "ui/print/page_breaks.h"

namespace suppertide::ui {

namespace {

constexpr double leastShareToRunOn = 1.0 / 3;

double sectionHeight(const std::vector<FlowItem>& items, std::size_t heading)
{
    double height = items[heading].height;
    for (std::size_t i = heading + 1; i < items.size() && !items[i].isHeading; ++i) {
        height += items[i].height;
    }
    return height;
}

bool fitsHere(const std::vector<FlowItem>& items, std::size_t at, double used, double pageHeight)
{
    const double rest = pageHeight - used;
    if (!items[at].isHeading) {
        return items[at].height <= rest;
    }
    const double section = sectionHeight(items, at);
    const double next = at + 1 < items.size() ? items[at + 1].height : 0;
    if (section <= rest) {
        return true;
    }
    return section > pageHeight && rest >= pageHeight * leastShareToRunOn &&
           items[at].height + next <= rest;
}

} // namespace

std::vector<PageRange> breakIntoPages(const std::vector<FlowItem>& items, double pageHeight)
{
    std::vector<PageRange> pages;
    PageRange page;
    double used = 0;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool isEmpty = page.first == page.last;
        if (!isEmpty && !fitsHere(items, i, used, pageHeight)) {
            pages.push_back(page);
            page = {i, i};
            used = 0;
        }
        if (page.first == page.last && items[i].isHeading) {
            page = {i + 1, i + 1};
            continue;
        }
        used += items[i].height;
        page.last = i + 1;
    }
    if (page.first != page.last || pages.empty()) {
        pages.push_back(page);
    }
    return pages;
}

} // namespace suppertide::ui
