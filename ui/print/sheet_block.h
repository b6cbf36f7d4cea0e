// Sheet block: something on a page that is never broken, as marks from its own top; and what all
// that lay blocks out have in common.
#pragma once

#include "ui/print/dish_patterns.h"
#include "ui/print/paper_marks.h"
#include "ui/print/sheet_geometry.h"
#include "ui/print/sheet_type.h"

namespace suppertide::ui {

struct SheetBlock
{
    double height = 0;
    PaperMarks marks; // from the block's top, x from the paper's left
    std::size_t day = 0;
    bool isDayHeading = false;
    bool continues = false; // the block before it
    PaperMarks atHead;      // also drawn if it is the first of a page
};

/// One sheet: the plan for the cooks whose columns it has.
struct Sheet
{
    const PerHourPlan& plan;
    const PageStyle& style;
    SheetCooks cooks;
    SheetType type;
    SheetGeometry page;
    DishPatterns patterns;
    double bodyHeight = 0; // of a page, between head and foot
};

/// Takes the marks of a part into the block, as far down as `top`.
void place(PaperMarks& into, const PaperMarks& marks, double top);

} // namespace suppertide::ui
