#include <QLabel>
#include <QListView>
#include <QPushButton>

#include <gtest/gtest.h>

#include "tests/gui/panels/reach.h"
#include "ui/clashes/ways_panel.h"

namespace suppertide::ui {
namespace {

WayRow way(const char* change, std::int64_t points)
{
    return {true, QString::fromLatin1(change), QStringLiteral("3 steps move."), points};
}

class WaysPanelTest : public testing::Test
{
protected:
    void SetUp() override
    {
        panel_.begin(QStringLiteral("Ways out of clash 1"));
        panel_.setReasons({QStringLiteral("The kitchen has no oven.")});
        panel_.add(way("Serve later.", 7));
        panel_.add(way("Borrow one.", 12));
        panel_.add(way("Arrange it anew.", 0));
        panel_.setProgress(QStringLiteral("4 of 9 changes tried"), true);
        panel_.resize(700, 200);
        ASSERT_TRUE(test::becomesActive(panel_));
        QObject::connect(&panel_, &WaysPanel::taken, [this](int number) { taken_ = number; });
        QObject::connect(&panel_, &WaysPanel::stopRequested, [this] { ++stops_; });
        QObject::connect(&panel_, &WaysPanel::closed, [this] { ++closes_; });
    }
    [[nodiscard]] QListView& view() const { return *panel_.findChild<QListView*>("ways"); }
    [[nodiscard]] QPushButton& take() const { return *panel_.findChild<QPushButton*>("takeWay"); }
    void choose(int row) { view().setCurrentIndex(view().model()->index(row, 0)); }

    WaysPanel panel_{makeTheme(Appearance::Light)};
    int taken_ = -1;
    int stops_ = 0;
    int closes_ = 0;
};

TEST_F(WaysPanelTest, NamesAllThatCanHaveTheFocusAndTabComesToIt)
{
    choose(1);
    EXPECT_EQ(test::withoutName(panel_), QStringList());
    EXPECT_EQ(test::notReachedByTab(panel_), QStringList());
}

TEST_F(WaysPanelTest, HasTheReasonsFirstAndThenTheCheapestWay)
{
    QStringList said;
    for (const WayRow& row : panel_.rows()) {
        said.push_back(row.change);
    }
    EXPECT_EQ(said, (QStringList{QStringLiteral("The kitchen has no oven."),
                                 QStringLiteral("Arrange it anew."), QStringLiteral("Serve later."),
                                 QStringLiteral("Borrow one.")}));
}

TEST_F(WaysPanelTest, TakesTheChosenWayWithEnterOrTheButton)
{
    view().setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view().hasFocus(); }));
    choose(2);
    QTest::keyClick(&view(), Qt::Key_Return);
    EXPECT_EQ(taken_, 1);
    choose(3);
    QTest::mouseClick(&take(), Qt::LeftButton);
    EXPECT_EQ(taken_, 2);
}

TEST_F(WaysPanelTest, DoesNotTakeAReason)
{
    choose(0);
    EXPECT_FALSE(take().isEnabled());
    QTest::keyClick(&view(), Qt::Key_Return);
    EXPECT_EQ(taken_, -1);
}

TEST_F(WaysPanelTest, StopsWithEscapeAndThenCloses)
{
    view().setFocus(Qt::TabFocusReason);
    QTest::keyClick(&view(), Qt::Key_Escape);
    EXPECT_EQ(stops_, 1);
    EXPECT_EQ(closes_, 0);
    panel_.setProgress({}, false);
    QTest::keyClick(&view(), Qt::Key_Escape);
    EXPECT_EQ(stops_, 1);
    EXPECT_EQ(closes_, 1);
}

} // namespace
} // namespace suppertide::ui
