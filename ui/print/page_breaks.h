// Page breaks: which blocks stand on which page. Pure.
#pragma once

#include <cstddef>
#include <vector>

namespace suppertide::ui {

struct FlowItem
{
    double height = 0;
    /// Begins a section: left out at the head of a page (which names the section itself), and never
    /// the last item of one.
    bool isHeading = false;
    /// Goes with the item before it: parted from it only rather than leave much of a page empty.
    bool continues = false;
};

/// Items [first, last) of the flow; a heading that is left out is in none.
struct PageRange
{
    std::size_t first = 0;
    std::size_t last = 0;

    friend bool operator==(const PageRange&, const PageRange&) = default;
};

/// Items are never broken; one that is higher than a page has a page to itself. A section that fits
/// a page but not the rest of this one begins a new page; a longer one runs on if a third of the
/// page is left. So does an item with those that continue it if a quarter is. At least one page.
[[nodiscard]] std::vector<PageRange> breakIntoPages(const std::vector<FlowItem>& items,
                                                    double pageHeight);

} // namespace suppertide::ui
