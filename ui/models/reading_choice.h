// ReadingChoice: °C or °F, and the measures of amounts, as the user has chosen them. Kept with the
// library's small settings, no part of undo: it changes what is read, not what is planned.
#pragma once

#include "core/wording/wording.h"
#include "ui/document/document.h"

namespace suppertide::ui {

[[nodiscard]] ReadingStyle readingStyle(const Document& document);
void keepReadingStyle(Document& document, const ReadingStyle& style);

} // namespace suppertide::ui
