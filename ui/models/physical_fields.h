// Fields for what is measured: temperatures, widths, rates. Shared by the forms of kitchens and
// recipes.
#pragma once

#include <fmt/format.h>

#include "core/science/valid_range.h"
#include "ui/models/comma_list.h"
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

/// A line with whole degrees, in either unit; empty: nobody has said it. `range` is °C.
template <typename Thing>
FieldList<Thing>& addDegreesOrNone(FieldList<Thing>& form, const char* key, const QString& label,
                                   std::optional<Celsius> Thing::*member,
                                   const std::optional<Celsius>& now, std::pair<int, int> range)
{
    Field field = FieldList<Thing>::plain(
        key, label, FieldKind::Line, now ? std::to_string(now->wholeDegrees()) : std::string());
    field.fahrenheit = now ? typedDegrees(*now, true) : std::string();
    return form.add(
        std::move(field), [member, range](Thing& thing, const FieldValue& value) -> Result<void> {
            const std::string_view text = trimmed(std::get<std::string>(value));
            const auto [least, most] = range;
            const auto degrees = readDegrees(text);
            if (text.empty()) {
                (thing.*member).reset();
            } else if (degrees && *degrees >= Celsius::degrees(least) &&
                       *degrees <= Celsius::degrees(most)) {
                thing.*member = *degrees;
            } else {
                return Failure{FailureKind::BadInput,
                               fmt::format("Write whole degrees from {} to {} °C ({} to {} °F), or "
                                           "nothing.",
                                           science::plainNumber(least), science::plainNumber(most),
                                           science::plainNumber(least * 1.8 + 32),
                                           science::plainNumber(most * 1.8 + 32)),
                               {}};
            }
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
