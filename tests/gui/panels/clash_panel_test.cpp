#include <QLabel>
#include <QListView>

#include <gtest/gtest.h>

#include "tests/gui/panels/reach.h"
#include "tests/support/demo_evening.h"
#include "ui/clashes/clash_panel.h"

namespace suppertide::ui {
namespace {

class ClashPanelTest : public testing::Test
{
protected:
    void SetUp() override
    {
        const test::LaidOut first(test::demoLibrary("midsummer-supper-first-idea"));
        rows_ = clashRows(*first.plan, first.occasion(), {});
        ASSERT_GE(rows_.size(), 2U);
        panel_.setRows(rows_, {});
        panel_.resize(900, 200);
        ASSERT_TRUE(test::becomesActive(panel_));
        QObject::connect(&panel_, &ClashPanel::clashActivated,
                         [this](int number) { activated_.push_back(number); });
        QObject::connect(&panel_, &ClashPanel::clashPointedAt,
                         [this](int number) { pointed_ = number; });
    }
    [[nodiscard]] QListView& view() const { return *panel_.findChild<QListView*>("clashes"); }

    ClashPanel panel_{makeTheme(Appearance::Light)};
    std::vector<ClashRow> rows_;
    std::vector<int> activated_;
    int pointed_ = 0;
};

TEST_F(ClashPanelTest, NamesAllThatCanHaveTheFocusAndTabComesToIt)
{
    EXPECT_EQ(test::withoutName(panel_), QStringList());
    EXPECT_EQ(test::notReachedByTab(panel_), QStringList());
}

TEST_F(ClashPanelTest, GoesToAClashByKeysAlone)
{
    view().setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view().hasFocus(); }));
    panel_.showClash(1);
    QTest::keyClick(&view(), Qt::Key_Down);
    EXPECT_EQ(pointed_, 2);
    QTest::keyClick(&view(), Qt::Key_Return);
    EXPECT_EQ(activated_, (std::vector<int>{2}));
}

TEST_F(ClashPanelTest, GoesToTheClashThatIsClicked)
{
    const QModelIndex second = view().model()->index(1, 0);
    view().scrollTo(second);
    QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, view().visualRect(second).center());
    EXPECT_EQ(activated_, (std::vector<int>{2}));
}

TEST_F(ClashPanelTest, SaysSoWhereNothingCollides)
{
    panel_.setRows({}, "Nothing collides.");
    EXPECT_FALSE(view().isVisible());
    auto* quiet = panel_.findChild<QLabel*>("noClashes");
    ASSERT_NE(quiet, nullptr);
    EXPECT_TRUE(quiet->isVisible());
    EXPECT_EQ(quiet->text(), "Nothing collides.");
    panel_.setRows(rows_, {});
    EXPECT_TRUE(view().isVisible());
    EXPECT_FALSE(quiet->isVisible());
}

} // namespace
} // namespace suppertide::ui
