// Paper text: how wide words are on paper and where their lines break, in points. Type is measured
// at ten times its size and without hinting, so that lines break alike on every device.
#pragma once

#include <QFont>
#include <QString>
#include <QStringList>

#include <string>
#include <string_view>

#include "ui/print/paper_marks.h"

namespace suppertide::ui {

/// Fonts are made this much larger than they are drawn: Qt's pixel sizes are whole numbers.
inline constexpr double fontMagnification = 10;

/// The font at `fontMagnification` times its size.
[[nodiscard]] QFont magnifiedFont(const PaperFont& font);

/// From one base line to the next.
[[nodiscard]] double lineHeight(const PaperFont& font);
[[nodiscard]] double capHeight(const PaperFont& font);
[[nodiscard]] double textWidth(const QString& text, const PaperFont& font);

/// One line without breaks or runs of blanks; a number stays with its unit.
[[nodiscard]] QString plainLine(std::string_view text);

/// How a paragraph is set: its width, how far in its first line begins (after a time that stands
/// before it), and after how many lines it ends in "…".
struct Measure
{
    double width = 0;
    double firstIndent = 0;
    int mostLines = 1;
};

/// Lines of at least one word; words that are too long for a line break within. At most
/// `mostLines`, the last one shortened if there is more. None if there is no text.
[[nodiscard]] QStringList brokenLines(const QString& text, const PaperFont& font,
                                      const Measure& measure);
/// The text, its end replaced by "…" if it is wider.
[[nodiscard]] QString shortened(const QString& text, const PaperFont& font, double width);

} // namespace suppertide::ui
