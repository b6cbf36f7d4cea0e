// Page style: how the user wants the per-hour plan on paper.
#pragma once

#include <map>

#include "core/occasion/occasion.h"

namespace suppertide::ui {

enum class PaperSize
{
    A4,
    Letter
};

enum class TextSize
{
    Normal,
    Large // read from further away; one cook a sheet
};

struct PageStyle
{
    PaperSize paper = PaperSize::A4;
    TextSize text = TextSize::Normal;

    std::map<DishId, int> looks; // as on the timeline (0 = A); dishes not here take the next free
};

} // namespace suppertide::ui
