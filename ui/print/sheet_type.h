// Sheet type: the sizes of type on the per-hour plan, in points. Anything needed at the stove is
// read at 1 m by an eye of 6/12: capitals of at least 10 minutes of arc, 11.5 pt in DejaVu Sans.
// Only head and foot go below.
#pragma once

#include "ui/print/page_style.h"
#include "ui/print/paper_marks.h"

namespace suppertide::ui {

struct SheetType
{
    PaperFont title{17, true, true};
    PaperFont day{13, true};
    PaperFont subtitle{10.5};
    PaperFont columnHead{12.5, true};
    PaperFont hour{25, true};
    PaperFont hourPart{13, true}; // ":30", "pm"
    PaperFont time{13, true};
    PaperFont deed{12};
    PaperFont detail{11.5};
    PaperFont caution{11.5, true};
    PaperFont serving{15, true};
    PaperFont helpings{12};
    PaperFont knob{10.5, true};
    PaperFont shelf{9.5};
    PaperFont foot{10};
};

[[nodiscard]] inline SheetType sheetTypeFor(TextSize size)
{
    SheetType type;
    if (size == TextSize::Large) {
        type.columnHead.size = 18;
        type.hour.size = 34;
        type.hourPart.size = 18;
        type.time.size = 18;
        type.deed.size = 18;
        type.detail.size = 16;
        type.caution.size = 16;
        type.serving.size = 20;
        type.helpings.size = 16;
        type.knob.size = 13;
        type.shelf.size = 12;
    }
    return type;
}

} // namespace suppertide::ui
