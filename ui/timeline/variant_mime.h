// How a dragged variant travels from the repertoire to the timeline.
#pragma once

#include <QByteArray>
#include <QString>

#include <optional>

class QMimeData;

namespace suppertide::ui {

/// "application/x-suppertide-variant": two lines of UTF-8, the recipe's id and the variant's (which
/// may be empty).
[[nodiscard]] QString variantMimeType();

struct DraggedVariant
{
    QString recipe;
    QString variant;

    friend bool operator==(const DraggedVariant&, const DraggedVariant&) = default;
};

[[nodiscard]] QByteArray toMimeBytes(const DraggedVariant& variant);
/// None if the data holds no variant, or one without a recipe.
[[nodiscard]] std::optional<DraggedVariant> variantIn(const QMimeData& data);

} // namespace suppertide::ui
