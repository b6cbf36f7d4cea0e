// Block form: how a block is drawn by how much of a cook it takes, as notes are accented, full,
// half and open. Pure.
#pragma once

#include "core/quantity/quantity.h"

namespace suppertide::ui {

enum class BlockForm
{
    Undivided,
    HandsOn,
    KeepAnEye,
    Unattended
};

[[nodiscard]] constexpr BlockForm formOf(Attention attention)
{
    if (attention.percent() >= 100) {
        return BlockForm::Undivided;
    }
    if (attention.percent() >= 60) {
        return BlockForm::HandsOn;
    }
    return attention.percent() >= 1 ? BlockForm::KeepAnEye : BlockForm::Unattended;
}

/// Filled by the dish's hue; else an outline on paper.
[[nodiscard]] constexpr bool isSolid(BlockForm form)
{
    return form == BlockForm::Undivided || form == BlockForm::HandsOn;
}

inline constexpr double lowRow = 16.5; // rows up to this height have a lower foot band

/// How much of a block's foot its words keep off; in low rows the tails of letters may touch it.
[[nodiscard]] constexpr double footRoom(double blockHeight)
{
    return blockHeight <= lowRow ? 3 : 6;
}

/// Height of the band of hue along the foot of a block to keep an eye on.
[[nodiscard]] constexpr double footBandHeight(double blockHeight)
{
    return blockHeight <= lowRow ? 4 : 6;
}

} // namespace suppertide::ui
