#include <QAbstractItemModelTester>

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/demo_evening.h"
#include "ui/models/batch_words.h"
#include "ui/models/menu_outline.h"
#include "ui/models/outline_items.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;

class MenuOutlineTest : public testing::Test
{
protected:
    MenuOutlineTest() { looks_.see(openOccasion(library_)->occasion); }

    [[nodiscard]] Edit ran(const std::string& row, const std::string& command) const
    {
        Result<Edit> edit = outline_.run(library_, row, command);
        if (!edit) {
            throw std::runtime_error(edit.error().forCook);
        }
        return *std::move(edit);
    }

    [[nodiscard]] static FieldValue findByKey(const std::vector<Field>& fields,
                                              const std::string& key)
    {
        const auto there = std::find_if(fields.begin(), fields.end(),
                                        [&](const Field& field) { return field.key == key; });
        return there == fields.end() ? FieldValue{std::string("no such field")} : there->value;
    }

    LibraryState library_ = demoLibrary();
    DishLooks looks_;
    FixedClock clock_{TimeZone::utc().instant(CivilTime{{2027, 6, 1}, {12, 0}})};
    MenuOutline outline_{looks_, clock_};
};

TEST_F(MenuOutlineTest, SaysHowMuchOfAStepTheKitchenTakesAtOnce)
{
    const Recipe& soup = *library_.recipes.at(RecipeId{"pea-and-mint-soup"});
    const Step* blend = findIn(soup.common.steps, StepId{"blend"});
    ASSERT_NE(blend, nullptr);
    // A jug of 2 l half full is 1 l; the soup is 1.8 l for eight.
    const QString words = batchWords(library_, soup, *blend);
    EXPECT_TRUE(words.contains(QStringLiteral("4¼ portions"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("2 batches"))) << words.toStdString();
    EXPECT_TRUE(batchWords(library_, soup, soup.common.steps.front()).isEmpty());
}

TEST_F(MenuOutlineTest, OffersAnotherTinWhereTheRecipeNamesOne)
{
    const std::string row = "course:dessert/dish:pavlova";
    const auto keys = [&] {
        std::set<std::string> all;
        for (const Field& field : outline_.fields(library_, row)) {
            all.insert(field.key);
        }
        return all;
    };
    EXPECT_FALSE(keys().contains("mould"));
    Recipe recipe = *library_.recipes.at(RecipeId{"rhubarb-pavlova"});
    recipe.common.lines.front().scaling = ByMould{RoundMould{24_cm}};
    library_.recipes.insert_or_assign(recipe.id, std::make_shared<const Recipe>(recipe));
    ASSERT_TRUE(keys().contains("mould"));
    EXPECT_FALSE(keys().contains("mould-filled"));
    const auto dish = [&]() -> const Dish& {
        return *findIn(openOccasion(library_)->occasion.courses[3].dishes, DishId{"pavlova"});
    };
    const auto enter = [&](const char* field, const std::string& value) {
        const auto edit = outline_.set(library_, row, field, value);
        ASSERT_TRUE(edit) << edit.error().forCook;
        library_ = edit->next;
    };
    enter("mould", "round 20 cm");
    EXPECT_EQ(dish().mould, (OtherMould{RoundMould{20_cm}, false}));
    enter("mould-filled", "same");
    EXPECT_EQ(dish().mould, (OtherMould{RoundMould{20_cm}, true}));
    EXPECT_FALSE(outline_.set(library_, row, "mould", std::string("round")));
    enter("mould", "");
    EXPECT_EQ(dish().mould, std::nullopt);
}

TEST_F(MenuOutlineTest, HasARowForEveryCourseDishMixAndGuest)
{
    std::set<std::string> ids;
    for (const OutlineRow& row : outline_.rows(library_)) {
        EXPECT_TRUE(ids.insert(row.id).second) << row.id;
        EXPECT_FALSE(row.title.isEmpty()) << row.id;
        EXPECT_TRUE(row.fault.isEmpty()) << row.fault.toStdString();
    }
    const Occasion& occasion = openOccasion(library_)->occasion;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            const RowPath path =
                RowPath().with("course", course.id.text()).with("dish", dish.id.text());
            EXPECT_TRUE(ids.contains(path.text())) << path.text();
            for (const MixEntry& mix : dish.mix) {
                EXPECT_TRUE(ids.contains(path.with("mix", mix.variant.text()).text()));
            }
        }
    }
    for (const Guest& guest : occasion.guests) {
        EXPECT_TRUE(ids.contains(RowPath().with("guest", guest.id.text()).text()));
    }
}

TEST_F(MenuOutlineTest, ReadsEachFieldBackAsItIsShown)
{
    std::size_t fields = 0;
    for (const OutlineRow& row : outline_.rows(library_)) {
        for (const Field& field : outline_.fields(library_, row.id)) {
            const Result<Edit> edit = outline_.set(library_, row.id, field.key, field.value);
            ASSERT_TRUE(edit) << row.id << " " << field.key << ": " << edit.error().forCook;
            // What is ticked is kept in the order of the ticks, whatever order it came in.
            EXPECT_TRUE(field.kind == FieldKind::Checks ||
                        differenceOf(library_, edit->next, {}).parts.empty())
                << row.id << " " << field.key;
            EXPECT_EQ(findByKey(outline_.fields(edit->next, row.id), field.key), field.value);
            EXPECT_FALSE(field.label.isEmpty()) << row.id << " " << field.key;
            ++fields;
        }
    }
    EXPECT_GT(fields, 60U);
}

TEST_F(MenuOutlineTest, SaysWhereMoreAreNamedForAVariantThanItIsMadeFor)
{
    const auto rows = outline_.rows(library_);
    const auto mix = std::find_if(rows.begin(), rows.end(), [](const OutlineRow& row) {
        return RowPath(row.id).kind() == "mix" && row.detail == QStringLiteral("8");
    });
    ASSERT_NE(mix, rows.end());
    const auto faultWith = [&](const char* portions) {
        const auto edit =
            outline_.set(library_, mix->id, "portions", std::string(portions)).value();
        const auto after = outline_.rows(edit.next);
        return std::find_if(after.begin(), after.end(),
                            [&](const OutlineRow& row) { return row.id == mix->id; })
            ->fault;
    };
    EXPECT_TRUE(faultWith("8").isEmpty());
    EXPECT_TRUE(faultWith("9").isEmpty()) << "one is left over";
    EXPECT_TRUE(faultWith("7 1/2").contains(QStringLiteral("eat 8")));
    EXPECT_TRUE(faultWith("0").contains(QStringLiteral("0 is made")));
}

TEST_F(MenuOutlineTest, SaysWhatCanBeTypedWhereItCannotReadAField)
{
    for (const OutlineRow& row : outline_.rows(library_)) {
        for (const Field& field : outline_.fields(library_, row.id)) {
            if (!field.key.starts_with("portions")) {
                continue;
            }
            const Result<Edit> edit =
                outline_.set(library_, row.id, field.key, std::string("a good few"));
            ASSERT_FALSE(edit) << row.id;
            EXPECT_FALSE(edit.error().forCook.empty());
        }
    }
}

TEST_F(MenuOutlineTest, DoesWhatItsCommandsSayAndShowsTheRowMade)
{
    for (const OutlineRow& row : outline_.rows(library_)) {
        for (const RowCommand& command : outline_.commands(library_, row.id)) {
            const Edit edit = ran(row.id, command.key);
            EXPECT_FALSE(differenceOf(library_, edit.next, {}).parts.empty())
                << row.id << " " << command.key;
            EXPECT_FALSE(edit.text.isEmpty());
            if (command.key == "remove") {
                EXPECT_TRUE(outline_.fields(edit.next, row.id).empty()) << row.id;
            } else {
                EXPECT_FALSE(outline_.fields(edit.next, edit.select).empty()) << edit.select;
            }
        }
    }
}

TEST_F(MenuOutlineTest, KeepsTheOrderOfVariantsWhenPortionsChange)
{
    const std::string row = "course:dessert/dish:pavlova";
    const Result<Edit> edit = outline_.set(library_, row, "portions:almond", std::string("6½"));
    ASSERT_TRUE(edit) << edit.error().forCook;
    const Dish& pavlova =
        *findIn(openOccasion(edit->next)->occasion.courses.back().dishes, DishId{"pavlova"});
    ASSERT_EQ(pavlova.mix.size(), 2U);
    EXPECT_EQ(pavlova.mix.front().variant, VariantId{"almond"});
    EXPECT_EQ(pavlova.mix.front().portions, (Portions{13, 2}));
}

TEST_F(MenuOutlineTest, IsEmptyWithoutAnOpenOccasion)
{
    const LibraryState none;
    EXPECT_TRUE(outline_.rows(none).empty());
    EXPECT_TRUE(outline_.fields(none, "occasion").empty());
    EXPECT_FALSE(outline_.set(none, "occasion", "name", std::string("Supper")));
    EXPECT_FALSE(outline_.run(none, "occasion", "add-guest"));
}

TEST_F(MenuOutlineTest, ShowsItsRowsAsATree)
{
    OutlineItems items;
    const QAbstractItemModelTester tester{&items,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal};
    items.setRows(outline_.rows(library_));
    for (const OutlineRow& row : outline_.rows(library_)) {
        const QModelIndex index = items.find(row.id);
        ASSERT_TRUE(index.isValid()) << row.id;
        EXPECT_EQ(items.idAt(index), row.id);
        EXPECT_TRUE(index.data(Qt::AccessibleTextRole).toString().contains(row.title));
    }
    const QModelIndex gone = items.find("course:main/dish:no-longer-there");
    EXPECT_EQ(items.idAt(gone), "course:main") << "the nearest part of its path";
    items.setRows({});
    EXPECT_EQ(items.rowCount({}), 0);
}

TEST_F(MenuOutlineTest, NotesAChildsPortionAndDislikes)
{
    const std::string row = RowPath().with("guest", "cal").text();
    const auto child = outline_.set(library_, row, "portion", std::string("½"));
    ASSERT_TRUE(child) << child.error().forCook;
    const auto picky = outline_.set(child->next, row, "dislikes", std::string(" dill , beetroot,"));
    ASSERT_TRUE(picky) << picky.error().forCook;
    for (const Guest& guest : openOccasion(picky->next)->occasion.guests) {
        if (guest.id == GuestId{"cal"}) {
            EXPECT_EQ(guest.portion, Portions(1, 2));
            EXPECT_EQ(guest.dislikes, (std::vector<std::string>{"dill", "beetroot"}));
        }
    }
    EXPECT_FALSE(outline_.set(library_, row, "portion", std::string("some")));
}

} // namespace
} // namespace suppertide::ui
