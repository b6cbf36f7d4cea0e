#include "ui/print/sheet_block.h"

namespace suppertide::ui {

void place(PaperMarks& into, const PaperMarks& marks, double top)
{
    into.reserve(into.size() + marks.size());
    for (const PaperMark& mark : marks) {
        into.push_back(movedDown(mark, top));
    }
}

} // namespace suppertide::ui
