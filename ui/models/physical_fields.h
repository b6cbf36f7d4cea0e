// Fields for what is measured: temperatures, widths, rates. Shared by the forms of kitchens and
// recipes.
#pragma once

#include "ui/models/field_list.h"

namespace suppertide::ui {

/// Whole degrees Celsius.
template <typename Thing>
FieldList<Thing>& addCelsius(FieldList<Thing>& form, const char* key, const QString& label,
                             Celsius now, const std::function<void(Thing&, Celsius)>& set)
{
    Field field =
        FieldList<Thing>::plain(key, label, FieldKind::Whole, std::int64_t{now.wholeDegrees()});
    field.least = -40;
    field.most = 600;
    field.unit = QStringLiteral("°C");
    field.celsius = now;
    return form.add(std::move(field), [set](Thing& thing, const FieldValue& value) -> Result<void> {
        const auto* tenths = std::get_if<std::string>(&value);
        set(thing, tenths != nullptr
                       ? Celsius::tenths(std::stoi(*tenths))
                       : Celsius::degrees(static_cast<int>(std::get<std::int64_t>(value))));
        return {};
    });
}

/// Whole centimetres.
template <typename Thing>
FieldList<Thing>& addCentimetres(FieldList<Thing>& form, const char* key, const QString& label,
                                 Length now, const std::function<void(Thing&, Length)>& set)
{
    Field field = FieldList<Thing>::plain(key, label, FieldKind::Whole, (now.smallest() + 5) / 10);
    field.most = 100;
    field.unit = QStringLiteral("cm");
    return form.add(std::move(field), [set](Thing& thing, const FieldValue& value) -> Result<void> {
        set(thing, centimetres(std::get<std::int64_t>(value)));
        return {};
    });
}

} // namespace suppertide::ui
