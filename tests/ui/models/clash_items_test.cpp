#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/models/clash_items.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

class ClashItemsTest : public testing::Test
{
protected:
    [[nodiscard]] std::vector<ClashRow> rows() const
    {
        return clashRows(*first_.plan, first_.occasion(), {});
    }

    LaidOut first_{demoLibrary("midsummer-supper-first-idea")};
    ClashItems items_;
    QAbstractItemModelTester tester_{&items_,
                                     QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(ClashItemsTest, ListThePlansClashesNumberedWithTheirSentences)
{
    const auto all = rows();
    ASSERT_EQ(all.size(), first_.plan->clashes.size());
    ASSERT_FALSE(all.empty());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Clash& clash = first_.plan->clashes[i];
        EXPECT_EQ(all[i].number, static_cast<int>(i) + 1);
        EXPECT_EQ(all[i].severity, clash.severity);
        EXPECT_EQ(all[i].sentence.toStdString(), sentence(*first_.plan, first_.occasion(), clash));
        EXPECT_EQ(all[i].when, clash.when);
        EXPECT_EQ(all[i].firstTask.empty(), clash.tasks.empty());
    }
}

TEST_F(ClashItemsTest, SayNumberSeveritySentenceAndPlaceToWhoCannotSeeThem)
{
    items_.setRows(rows());
    for (int row = 0; row < items_.rowCount({}); ++row) {
        const QModelIndex index = items_.index(row);
        const QString spoken = index.data(Qt::AccessibleTextRole).toString();
        EXPECT_TRUE(spoken.startsWith(QStringLiteral("Clash %1, ").arg(row + 1)));
        EXPECT_TRUE(spoken.contains(index.data(Qt::DisplayRole).toString()));
        EXPECT_TRUE(spoken.contains(index.data(ClashItems::WhereRole).toString()));
    }
}

TEST_F(ClashItemsTest, KeepTheirRowsWhileOnlyTheirWordsChange)
{
    items_.setRows(rows());
    QSignalSpy reset(&items_, &QAbstractItemModel::modelReset);
    QSignalSpy changed(&items_, &QAbstractItemModel::dataChanged);
    items_.setRows(rows());
    EXPECT_EQ(changed.count(), 0);
    auto other = rows();
    other.front().sentence += QStringLiteral(" Still.");
    items_.setRows(other);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(reset.count(), 0);
    items_.setRows({});
    EXPECT_EQ(reset.count(), 1);
    EXPECT_EQ(items_.rowCount({}), 0);
}

} // namespace
} // namespace suppertide::ui
