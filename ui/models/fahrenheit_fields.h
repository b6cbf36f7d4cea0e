// FahrenheitFields: fields of temperatures for a user who reads °F. The model stays in °C, in
// tenths, so that what was entered is what is shown again.
#pragma once

#include "ui/models/outline.h"

namespace suppertide::ui {

/// In whole °F, if it is a temperature; else as it is.
[[nodiscard]] Field inFahrenheit(Field field);
/// What was entered in whole °F, as the model takes it.
[[nodiscard]] FieldValue fromFahrenheit(std::int64_t fahrenheit);

} // namespace suppertide::ui
