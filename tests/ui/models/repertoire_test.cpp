#include <QAbstractItemModelTester>
#include <QMimeData>

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/demo_evening.h"
#include "ui/models/repertoire_items.h"
#include "ui/timeline/variant_mime.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;

class RepertoireTest : public testing::Test
{
protected:
    RepertoireTest() { looks_.see(openOccasion(library_)->occasion); }

    [[nodiscard]] std::vector<RecipeCard> found(const char* text)
    {
        return repertoire_.cards(library_, looks_, RepertoireSearch::parse(text));
    }
    [[nodiscard]] static const RecipeCard* cardOf(const std::vector<RecipeCard>& cards,
                                                  const char* id)
    {
        return findIn(cards, RecipeId{id});
    }

    LibraryState library_ = demoLibrary();
    DishLooks looks_;
    Repertoire repertoire_;
};

TEST_F(RepertoireTest, ShowsEveryRecipeTheMenusDishesFirstInOrderOfTheirLetters)
{
    const auto cards = found("");
    EXPECT_EQ(cards.size(), library_.recipes.size());
    const auto firstOther =
        std::find_if(cards.begin(), cards.end(), [](const RecipeCard& card) { return !card.look; });
    ASSERT_NE(firstOther, cards.begin());
    EXPECT_TRUE(std::is_sorted(cards.begin(), firstOther,
                               [](const auto& a, const auto& b) { return *a.look < *b.look; }));
    EXPECT_TRUE(std::none_of(firstOther, cards.end(),
                             [](const RecipeCard& card) { return card.look.has_value(); }));
}

TEST_F(RepertoireTest, SaysThePortionsThatAreOnTheMenu)
{
    const auto cards = found("");
    const RecipeCard* pavlova = cardOf(cards, "rhubarb-pavlova");
    ASSERT_NE(pavlova, nullptr);
    EXPECT_EQ(findIn(pavlova->variants, VariantId{"almond"})->portions, "7");
    EXPECT_EQ(findIn(pavlova->variants, VariantId{"without-nuts"})->portions, "1");
    const RecipeCard* chicken = cardOf(cards, "roast-chicken");
    ASSERT_NE(chicken, nullptr);
    EXPECT_TRUE(chicken->variants.front().portions.empty());
}

TEST_F(RepertoireTest, FindsAllWordsInNamesKeywordsVariantsAndIngredients)
{
    EXPECT_NE(cardOf(found("rhubarb"), "rhubarb-pavlova"), nullptr);
    EXPECT_NE(cardOf(found("RHUBARB pavl"), "rhubarb-pavlova"), nullptr);
    EXPECT_EQ(cardOf(found("rhubarb pavl"), "rhubarb-compote"), nullptr);
    EXPECT_NE(cardOf(found("vegetarian oven"), "stuffed-squash"), nullptr) << "keywords";
    EXPECT_NE(cardOf(found("barley"), "stuffed-squash"), nullptr) << "variant";
    EXPECT_TRUE(found("zzz").empty());
}

TEST_F(RepertoireTest, KeepsOnlyVariantsKnownToFulfilAWish)
{
    const auto cards = found("pavlova no nuts");
    const RecipeCard* pavlova = cardOf(cards, "rhubarb-pavlova");
    ASSERT_NE(pavlova, nullptr);
    EXPECT_EQ(findIn(pavlova->variants, VariantId{"almond"}), nullptr);
    EXPECT_NE(findIn(pavlova->variants, VariantId{"without-nuts"}), nullptr);
    EXPECT_EQ(cardOf(found("no meat"), "braised-shoulder"), nullptr);
    EXPECT_NE(cardOf(found("vegetarian"), "stuffed-squash"), nullptr);
    EXPECT_EQ(cardOf(found("vegetarian"), "roast-chicken"), nullptr);
}

TEST(RepertoireSearchTest, ReadsWordsAndWishes)
{
    const RepertoireSearch search = RepertoireSearch::parse(" Tart  no NUTS ");
    EXPECT_EQ(search.words, (std::vector<std::string>{"tart"}));
    EXPECT_EQ(search.without, ruledOutBy("nuts"));
    EXPECT_EQ(RepertoireSearch::parse("no gluten"), RepertoireSearch::parse("without gluten"));
    EXPECT_TRUE(RepertoireSearch::parse("  ").empty());
    EXPECT_EQ(RepertoireSearch::parse("no idea").words, (std::vector<std::string>{"no idea"}));
    EXPECT_EQ(RepertoireSearch::parse("no").words, (std::vector<std::string>{"no"}));
}

TEST(RepertoireSearchTest, RulesOutPeanutsWithNuts)
{
    const auto nuts = ruledOutBy("nuts");
    EXPECT_TRUE(std::binary_search(nuts.begin(), nuts.end(), Substance::Peanut));
    EXPECT_TRUE(std::binary_search(nuts.begin(), nuts.end(), Substance::Walnut));
    EXPECT_FALSE(std::binary_search(nuts.begin(), nuts.end(), Substance::Milk));
    EXPECT_TRUE(ruledOutBy("colour").empty());
}

class RepertoireItemsTest : public RepertoireTest
{
protected:
    RepertoireItems items_;
    QAbstractItemModelTester tester_{&items_,
                                     QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(RepertoireItemsTest, StandsUpToEverySearch)
{
    for (const char* text : {"", "no nuts", "zzz", "rhubarb", ""}) {
        items_.setCards(found(text));
        EXPECT_EQ(items_.rowCount({}), static_cast<int>(items_.cards().size()));
    }
}

TEST_F(RepertoireItemsTest, GivesADraggedVariantToTheTimeline)
{
    items_.setCards(found(""));
    const QModelIndex pavlova = items_.find("rhubarb-pavlova");
    ASSERT_TRUE(pavlova.isValid());
    const std::unique_ptr<QMimeData> first{items_.mimeData({pavlova})};
    const std::unique_ptr<QMimeData> second{items_.mimeData({items_.index(1, 0, pavlova)})};
    EXPECT_EQ(variantIn(*first)->recipe, "rhubarb-pavlova");
    EXPECT_EQ(variantIn(*first)->variant,
              items_.index(0, 0, pavlova).data(RepertoireItems::VariantRole).toString());
    EXPECT_NE(variantIn(*second)->variant, variantIn(*first)->variant);
    EXPECT_EQ(items_.mimeData({}), nullptr);
}

TEST_F(RepertoireItemsTest, ReadsEveryRowAloud)
{
    items_.setCards(found(""));
    for (int row = 0; row < items_.rowCount({}); ++row) {
        const QModelIndex card = items_.index(row, 0, {});
        const QString name = card.data(Qt::DisplayRole).toString();
        EXPECT_TRUE(card.data(Qt::AccessibleTextRole).toString().startsWith(name));
        for (int variant = 0; variant < items_.rowCount(card); ++variant) {
            EXPECT_TRUE(items_.index(variant, 0, card)
                            .data(Qt::AccessibleTextRole)
                            .toString()
                            .startsWith(name));
        }
    }
}

} // namespace
} // namespace suppertide::ui
