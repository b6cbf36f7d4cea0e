// FahrenheitFields: fields of temperatures for a user who reads °F. The model stays in °C, in
// tenths, so that what was entered is what is shown again.
#pragma once

#include <string>
#include <string_view>

#include "ui/models/outline.h"

namespace suppertide::ui {

/// In °F, if it is or tells a temperature; else as it is.
[[nodiscard]] Field inFahrenheit(Field field);
/// What was entered in whole °F, as the model takes it.
[[nodiscard]] FieldValue fromFahrenheit(std::int64_t fahrenheit);
/// What was entered into `field`, as shown by inFahrenheit, as the model takes it.
[[nodiscard]] FieldValue fromFahrenheit(const Field& field, const FieldValue& entered);

/// The line with " °F" after each figure, before a comma or the end, that has no unit of its own.
[[nodiscard]] std::string withFahrenheit(std::string_view line);

} // namespace suppertide::ui
