// Paper sizes that home printers take.
#pragma once

namespace suppertide::ui {

enum class PaperSize
{
    A4,
    Letter
};

} // namespace suppertide::ui
