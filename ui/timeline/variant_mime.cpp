#include "ui/timeline/variant_mime.h"

#include <QList>
#include <QMimeData>

namespace suppertide::ui {

QString variantMimeType()
{
    return QStringLiteral("application/x-suppertide-variant");
}

QByteArray toMimeBytes(const DraggedVariant& variant)
{
    return variant.recipe.toUtf8() + '\n' + variant.variant.toUtf8();
}

std::optional<DraggedVariant> variantIn(const QMimeData& data)
{
    const QList<QByteArray> lines = data.data(variantMimeType()).split('\n');
    if (lines.isEmpty() || lines.front().isEmpty()) {
        return std::nullopt;
    }
    return DraggedVariant{QString::fromUtf8(lines.front()),
                          lines.size() > 1 ? QString::fromUtf8(lines.at(1)) : QString{}};
}

} // namespace suppertide::ui
