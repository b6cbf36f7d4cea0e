#include "ui/print/page_breaks.h"

namespace suppertide::ui {

namespace {

constexpr double sectionRunsOn = 1.0 / 3; // share of the page that must be left
constexpr double itemRunsOn = 1.0 / 4;

using Items = std::vector<FlowItem>;

double sectionHeight(const Items& items, std::size_t heading)
{
    double height = items[heading].height;
    for (std::size_t i = heading + 1; i < items.size() && !items[i].isHeading; ++i) {
        height += items[i].height;
    }
    return height;
}

double groupHeight(const Items& items, std::size_t first)
{
    double height = items[first].height;
    for (std::size_t i = first + 1; i < items.size() && items[i].continues; ++i) {
        height += items[i].height;
    }
    return height;
}

bool itemFits(const FlowItem& item, double whole, double rest, double pageHeight)
{
    if (whole <= rest) {
        return true;
    }
    return item.height <= rest && (item.continues || rest >= pageHeight * itemRunsOn);
}

bool headingFits(const Items& items, std::size_t at, double rest, double pageHeight)
{
    const double section = sectionHeight(items, at);
    if (section <= rest) {
        return true;
    }
    const double afterIt = rest - items[at].height;
    const bool nextFits = at + 1 < items.size() &&
                          itemFits(items[at + 1], groupHeight(items, at + 1), afterIt, pageHeight);
    return section > pageHeight && rest >= pageHeight * sectionRunsOn && nextFits;
}

bool fits(const Items& items, std::size_t at, double rest, double pageHeight)
{
    return items[at].isHeading ? headingFits(items, at, rest, pageHeight)
                               : itemFits(items[at], groupHeight(items, at), rest, pageHeight);
}

} // namespace

std::vector<PageRange> breakIntoPages(const std::vector<FlowItem>& items, double pageHeight)
{
    std::vector<PageRange> pages;
    PageRange page;
    double used = 0;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool isEmpty = page.first == page.last;
        if (!isEmpty && !fits(items, i, pageHeight - used, pageHeight)) {
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
