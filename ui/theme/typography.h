// Typography: the few sizes of type that the program uses, as factors of the application font
// (nominally 11 px), so that everything grows with it.
#pragma once

#include <QFont>

namespace suppertide::ui {

enum class TypeRole
{
    Minute,        // the raised minutes of an hour numeral, 8
    Secondary,     // 10
    SecondaryBold, // 10 bold
    Label,         // 10.5
    LabelBold,     // 10.5 bold
    Control,       // 11
    ControlBold,   // 11 bold: the ruler
    LaneName,      // 11.5 bold, recipes too
    Heading,       // 13 bold
    Title,         // 17 bold, serif: the occasion's name
    Day            // 10.5 bold, serif: day names
};

/// The application font's size at which the design's figures hold.
inline constexpr double nominalFontSize = 11;

/// How large an application font is over the nominal size.
[[nodiscard]] double textScaleOf(const QFont& applicationFont);

/// A font of that role. Digits are of equal width, which columns of times rely on.
[[nodiscard]] QFont fontFor(TypeRole role, double textScale);

} // namespace suppertide::ui
