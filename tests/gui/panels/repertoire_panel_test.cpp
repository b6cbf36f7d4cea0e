#include <QLineEdit>
#include <QPushButton>
#include <QTreeView>

#include <gtest/gtest.h>

#include "tests/gui/panels/reach.h"
#include "tests/support/demo_evening.h"
#include "ui/repertoire/repertoire_panel.h"

namespace suppertide::ui {
namespace {

class RepertoirePanelTest : public testing::Test
{
protected:
    void SetUp() override
    {
        DishLooks looks;
        looks.see(openOccasion(library_)->occasion);
        panel_.show(library_, looks);
        panel_.resize(260, 700);
        ASSERT_TRUE(test::becomesActive(panel_));
        QObject::connect(&panel_, &RepertoirePanel::variantActivated,
                         [this](const DraggedVariant& variant) { activated_.push_back(variant); });
    }
    template <typename Widget>
    [[nodiscard]] Widget& child(const char* name) const
    {
        auto* found = panel_.findChild<Widget*>(QLatin1String(name));
        if (found == nullptr) {
            throw std::runtime_error(name);
        }
        return *found;
    }

    LibraryState library_ = test::demoLibrary();
    RepertoirePanel panel_{makeTheme(Appearance::Light)};
    std::vector<DraggedVariant> activated_;
};

TEST_F(RepertoirePanelTest, NamesAllThatCanHaveTheFocusAndTabComesToIt)
{
    EXPECT_EQ(test::withoutName(panel_), QStringList());
    EXPECT_EQ(test::notReachedByTab(panel_), QStringList());
}

TEST_F(RepertoirePanelTest, SearchesAsIsTypedAndClearsAnEmptySearch)
{
    auto& view = child<QTreeView>("repertoire");
    panel_.focusSearch();
    QTest::keyClicks(&child<QLineEdit>("repertoireSearch"), "pavlova no nuts");
    ASSERT_EQ(view.model()->rowCount(), 1);
    EXPECT_EQ(view.model()->index(0, 0).data().toString(), "Rhubarb pavlova");
    QTest::keyClicks(&child<QLineEdit>("repertoireSearch"), " zzz");
    EXPECT_FALSE(view.isVisible());
    EXPECT_EQ(test::withoutName(panel_), QStringList());
    child<QLineEdit>("repertoireSearch").clear();
    EXPECT_TRUE(view.isVisible());
    EXPECT_EQ(view.model()->rowCount(), static_cast<int>(library_.recipes.size()));
}

TEST_F(RepertoirePanelTest, PutsAVariantInByKeysAlone)
{
    auto& view = child<QTreeView>("repertoire");
    panel_.choose("rhubarb-pavlova");
    view.setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view.hasFocus(); }));
    QTest::keyClick(&view, Qt::Key_Down);
    QTest::keyClick(&view, Qt::Key_Return);
    ASSERT_EQ(activated_.size(), 1U);
    EXPECT_EQ(activated_.front().recipe, "rhubarb-pavlova");
    EXPECT_FALSE(activated_.front().variant.isEmpty());
}

TEST_F(RepertoirePanelTest, KeepsTheChosenRecipeWhenTheLibraryChanges)
{
    panel_.choose("rhubarb-pavlova");
    LibraryState fewer = library_;
    fewer.recipes.erase(RecipeId{"apple-crumble"});
    panel_.show(fewer, {});
    EXPECT_EQ(panel_.chosenRecipe(), "rhubarb-pavlova");
}

} // namespace
} // namespace suppertide::ui
