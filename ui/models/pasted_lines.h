// PastedLines: what is read of ingredient lines that a cook has pasted, line by line, to be seen
// before it is taken.
#pragma once

#include <QString>

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/kitchen_text.h"

namespace suppertide::ui {

struct PastedLine
{
    std::string written;
    std::string read;    // "250 g · plain flour · sifted"; empty if it will not be taken
    std::string notRead; // of a line that is taken, what stands in its note as it is written

    [[nodiscard]] bool isTaken() const { return !read.empty(); }
    friend bool operator==(const PastedLine&, const PastedLine&) = default;
};

/// The lines of a text that are not empty, as they are written.
[[nodiscard]] std::vector<std::string> linesIn(const std::string& text);
/// As `linesFrom` (core/recipe/read_lines) reads it in a text of that system.
[[nodiscard]] PastedLine pastedLine(const std::string& written, MeasureSystem system);
/// The lines in rich text: a tick and what was read, or a sign and why the line stays.
[[nodiscard]] QString previewHtml(const std::vector<PastedLine>& lines);

} // namespace suppertide::ui
