// The larder as rows and forms: each field reads back as it is shown, bad input is said in a
// sentence, and every change can be taken back.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "ui/models/larder_outline.h"

namespace suppertide::ui {
namespace {

LibraryState stocked()
{
    Larder larder;
    larder.stock = {
        {"salt", {}, std::nullopt, true, ""},
        {"flour", {Rational{3, 2}, Unit::Kilogram}, CivilDate{2027, 6, 30}, false, "x"}};
    larder.packs = {{"sugar", {Rational{500}, Unit::Gram}, 105, "bag", false}};
    OwnIngredient own;
    own.name = "dulse";
    own.synonyms = {"dillisk", "sea lettuce"};
    own.contains = {Substance::Fish, Substance::Sulphite};
    own.pieceWeighs = Grams::ofSmallest(2500);
    own.parts = {{IngredientPart::Juice, {Rational{45}, Unit::Millilitre}}};
    own.section = "cheese counter";
    own.keepsDays = 30;
    larder.ingredients = {own};
    larder.labels = {{"stock cube", {Substance::Celery}, CivilDate{2027, 5, 1}, "the new box"}};
    return withLarder({}, larder);
}

const LarderOutline outline;

TEST(LarderOutline, HasARowForEachThing)
{
    const LibraryState library = stocked();
    std::set<std::string> ids;
    for (const OutlineRow& row : outline.rows(library)) {
        EXPECT_TRUE(ids.insert(row.id).second) << row.id;
        EXPECT_FALSE(row.title.isEmpty());
        EXPECT_TRUE(row.fault.isEmpty()) << row.fault.toStdString();
    }
    for (const char* id : {"larder", "stock:0", "stock:1", "pack:0", "own:0", "label:0"}) {
        EXPECT_TRUE(ids.contains(id)) << id;
    }
}

TEST(LarderOutline, ReadsEachFieldBackAsItIsShown)
{
    const LibraryState library = stocked();
    int fields = 0;
    for (const OutlineRow& row : outline.rows(library)) {
        for (const Field& field : outline.fields(library, row.id)) {
            const auto edit = outline.set(library, row.id, field.key, field.value);
            ASSERT_TRUE(edit) << row.id << " " << field.key << ": " << edit.error().forCook;
            EXPECT_TRUE(differenceOf(library, edit->next, {}).parts.empty())
                << row.id << " " << field.key;
            ++fields;
        }
    }
    EXPECT_GT(fields, 25);
}

TEST(LarderOutline, TakesPricesInCoins)
{
    const LibraryState library = stocked();
    const auto dearer = outline.set(library, "pack:0", "price", std::string("1,2"));
    ASSERT_TRUE(dearer);
    EXPECT_EQ(larderOf(dearer->next).packs[0].price, 120);
    const auto none = outline.set(library, "pack:0", "price", std::string(" "));
    ASSERT_TRUE(none);
    EXPECT_EQ(larderOf(none->next).packs[0].price, std::nullopt);
    EXPECT_FALSE(outline.set(library, "pack:0", "price", std::string("dear")));
}

TEST(LarderOutline, SaysWhatCannotBe)
{
    const LibraryState library = stocked();
    EXPECT_FALSE(outline.set(library, "stock:1", "useBy", std::string("tomorrow")));
    EXPECT_FALSE(outline.set(library, "own:0", "keeps", std::string("a week")));
    EXPECT_FALSE(outline.set(library, "stock:7", "note", std::string("x")));
    const auto nameless = outline.set(library, "stock:1", "ingredient", std::string(" "));
    ASSERT_TRUE(nameless); // kept while it is being written, with its fault beside it
    const auto rows = outline.rows(nameless->next);
    const auto row = std::ranges::find(rows, "stock:1", &OutlineRow::id);
    ASSERT_NE(row, rows.end());
    EXPECT_FALSE(row->fault.isEmpty());
}

TEST(LarderOutline, SaysWhatIsNotMeasuredByVolumeAndKeepsIt)
{
    const auto help = [](const LibraryState& library, const std::string& row) {
        const auto fields = outline.fields(library, row);
        const auto field = std::ranges::find(fields, "amount", &Field::key);
        return field == fields.end() ? QStringLiteral("no such field") : field->help;
    };
    LibraryState library = stocked();
    EXPECT_TRUE(help(library, "stock:1").isEmpty());
    for (const auto& [key, value] : {std::pair{"ingredient", "egg"}, std::pair{"amount", "3 l"}}) {
        const auto edit = outline.set(library, "stock:1", key, std::string(value));
        ASSERT_TRUE(edit) << edit.error().forCook;
        library = edit->next;
    }
    EXPECT_EQ(larderOf(library).stock[1].amount, (Amount{Rational{3}, Unit::Litre}));
    EXPECT_TRUE(help(library, "stock:1").contains(QStringLiteral("3 l of egg")))
        << help(library, "stock:1").toStdString();
    const auto milk = outline.set(library, "stock:1", "ingredient", std::string("milk"));
    ASSERT_TRUE(milk);
    EXPECT_TRUE(help(milk->next, "stock:1").isEmpty()) << "its density is known";
}

TEST(LarderOutline, AddsAndDeletes)
{
    LibraryState library;
    for (const char* section : {"stock", "pack", "own", "label"}) {
        const auto added = outline.run(library, section, "add");
        ASSERT_TRUE(added);
        EXPECT_EQ(added->select, std::string(section) + ":0");
        EXPECT_FALSE(outline.fields(added->next, added->select).empty());
        const auto removed = outline.run(added->next, added->select, "remove");
        ASSERT_TRUE(removed);
        EXPECT_TRUE(larderOf(removed->next).empty());
    }
    EXPECT_FALSE(outline.run(library, "stock:0", "remove"));
}

} // namespace
} // namespace suppertide::ui
