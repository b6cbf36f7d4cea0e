#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include <gtest/gtest.h>

#include "ui/models/temperature_table.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

TemperatureView stockView(const QString& inTheMiddle)
{
    TemperatureView view;
    view.columns = {u"From"_s,
                    u"Place"_s,
                    u"Middle at its begin"_s,
                    u"Middle at its end"_s,
                    u"Surface at its end"_s,
                    u"To"_s};
    view.stays = {{u"17:00"_s, u"hob"_s, u"4 °C"_s, inTheMiddle, u"100 °C"_s, u"18:00"_s}};
    return view;
}

TEST(TemperatureTable, ListsStaysUnderWhatTheirFiguresAre)
{
    TemperatureTable table;
    const QAbstractItemModelTester tester(&table,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(table.rowCount(), 0);
    table.show(stockView(u"98 °C"_s));
    ASSERT_EQ(table.rowCount(), 1);
    ASSERT_EQ(table.columnCount(), 6);
    EXPECT_EQ(table.headerData(3, Qt::Horizontal, Qt::DisplayRole), u"Middle at its end"_s);
    EXPECT_EQ(table.index(0, 3).data(), u"98 °C"_s);
    EXPECT_EQ(table.index(0, 5).data(), u"18:00"_s);
    EXPECT_EQ(table.index(0, 1).data(Qt::AccessibleTextRole), u"Place: hob"_s);
    table.show({});
    EXPECT_EQ(table.rowCount(), 0);
}

TEST(TemperatureTable, KeepsItsRowsWhileOnlyTheirFiguresChange)
{
    TemperatureTable table;
    table.show(stockView(u"98 °C"_s));
    QSignalSpy reset(&table, &QAbstractItemModel::modelReset);
    QSignalSpy changed(&table, &QAbstractItemModel::dataChanged);
    table.show(stockView(u"98 °C"_s));
    EXPECT_EQ(changed.count(), 0);
    table.show(stockView(u"99 °C"_s));
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(reset.count(), 0);
    EXPECT_EQ(table.index(0, 3).data(), u"99 °C"_s);
}

} // namespace
} // namespace suppertide::ui
