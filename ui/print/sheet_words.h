// Sheet words: what the per-hour plan says of itself, on paper and read aloud alike.
#pragma once

#include <string_view>

#include "core/quantity/quantity.h"

namespace suppertide::ui {

inline constexpr std::string_view doesNotHold =
    "Not yet settled: this plan cannot be cooked as it stands.";
inline constexpr std::string_view throughout = "Throughout";
inline constexpr std::string_view localCodesPrevail =
    "Where local food-safety codes ask for more than this plan, they prevail.";

/// How a step is drawn: like accented, full, half and open notes.
enum class NoteShape
{
    Undivided, // 100 %
    HandsOn,   // 60 … 99 %
    KeepAnEye, // 1 … 59 %
    Unattended // 0 %
};

[[nodiscard]] constexpr NoteShape noteShapeOf(Attention attention)
{
    if (attention.percent() >= 100) {
        return NoteShape::Undivided;
    }
    if (attention.percent() >= 60) {
        return NoteShape::HandsOn;
    }
    return attention.percent() >= 1 ? NoteShape::KeepAnEye : NoteShape::Unattended;
}

[[nodiscard]] constexpr std::string_view nameOf(NoteShape shape)
{
    switch (shape) {
    case NoteShape::Undivided:
        return "undivided";
    case NoteShape::HandsOn:
        return "hands-on";
    case NoteShape::KeepAnEye:
        return "keep an eye";
    case NoteShape::Unattended:
        return "unattended";
    }
    return {};
}

} // namespace suppertide::ui
