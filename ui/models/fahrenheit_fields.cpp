#include "ui/models/fahrenheit_fields.h"

#include <cmath>

namespace suppertide::ui {

namespace {

std::int64_t fahrenheitOf(double celsius)
{
    return std::llround(celsius * 1.8 + 32);
}

} // namespace

Field inFahrenheit(Field field)
{
    if (!field.celsius || field.kind != FieldKind::Whole) {
        return field;
    }
    constexpr double perTenth = 0.1;
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

} // namespace suppertide::ui
