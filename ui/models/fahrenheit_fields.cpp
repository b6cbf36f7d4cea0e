#include "ui/models/fahrenheit_fields.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "ui/models/comma_list.h"

namespace suppertide::ui {

namespace {

constexpr double perTenth = 0.1;

std::int64_t fahrenheitOf(double celsius)
{
    return std::llround(celsius * 1.8 + 32);
}

/// "392" → "392 °F", "14 min to 392°" → "14 min to 392 °F".
std::string withUnit(std::string_view part)
{
    constexpr std::string_view degree = "°";
    std::string text(trimmed(part));
    if (text.ends_with(degree)) {
        text.resize(text.size() - degree.size());
    }
    const bool isFigure =
        !text.empty() && std::isdigit(static_cast<unsigned char>(text.back())) != 0;
    return isFigure ? text + " °F" : text;
}

} // namespace

Field inFahrenheit(Field field)
{
    if (!field.fahrenheitHelp.isEmpty()) {
        field.help = field.fahrenheitHelp;
    }
    if (field.fahrenheit) {
        field.value = *field.fahrenheit;
    }
    if (!field.celsius || field.kind != FieldKind::Whole) {
        return field;
    }
    field.value = fahrenheitOf(field.celsius->tenths() * perTenth);
    field.least = fahrenheitOf(static_cast<double>(field.least));
    field.most = fahrenheitOf(static_cast<double>(field.most));
    field.unit = QStringLiteral("°F");
    return field;
}

FieldValue fromFahrenheit(std::int64_t fahrenheit)
{
    const double celsius = static_cast<double>(fahrenheit - 32) / 1.8;
    return std::to_string(std::lround(celsius * 10));
}

FieldValue fromFahrenheit(const Field& field, const FieldValue& entered)
{
    const auto* degrees = std::get_if<std::int64_t>(&entered);
    if (degrees != nullptr && field.celsius) {
        return fromFahrenheit(*degrees);
    }
    const auto* line = std::get_if<std::string>(&entered);
    return line != nullptr && field.fahrenheit ? FieldValue{withFahrenheit(*line)} : entered;
}

std::string withFahrenheit(std::string_view line)
{
    std::string text;
    for (std::size_t from = 0; from <= line.size();) {
        const std::size_t comma = std::min(line.find(',', from), line.size());
        text += (from == 0 ? "" : ", ") + withUnit(line.substr(from, comma - from));
        from = comma + 1;
    }
    return text;
}

} // namespace suppertide::ui
