#include <QMimeData>

#include <gtest/gtest.h>

#include "ui/timeline/variant_mime.h"

namespace suppertide::ui {
namespace {

std::optional<DraggedVariant> read(const QByteArray& bytes)
{
    QMimeData data;
    data.setData(variantMimeType(), bytes);
    return variantIn(data);
}

TEST(VariantMime, BringsBackWhatWasDragged)
{
    const DraggedVariant squash{QStringLiteral("stuffed-squash"), QStringLiteral("vegetarian")};
    EXPECT_EQ(read(toMimeBytes(squash)), squash);
    const DraggedVariant plain{QStringLiteral("crème"), QString{}};
    EXPECT_EQ(read(toMimeBytes(plain)), plain);
}

TEST(VariantMime, RefusesWhatIsNoVariant)
{
    QMimeData text;
    text.setText(QStringLiteral("stuffed squash"));
    EXPECT_EQ(variantIn(text), std::nullopt);
    EXPECT_EQ(read({}), std::nullopt);
    EXPECT_EQ(read("\nvegetarian"), std::nullopt);
}

} // namespace
} // namespace suppertide::ui
