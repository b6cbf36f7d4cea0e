// What a library keeps: the state, the history, the settings, across closing and opening.
#include "tests/core/store/store_fixture.h"
#include "tests/support/content/any_content.h"

namespace suppertide {

namespace {

using test::areAlike;
using test::historyOf;
using test::loaded;
using test::step;
using test::withRecipe;

class LibraryFile : public test::StoreTest
{};

TEST_F(LibraryFile, IsEmptyWhenItIsNew)
{
    const auto library = open();
    EXPECT_EQ(library->readOnlyReason(), "");
    EXPECT_TRUE(areAlike(loaded(*library), {}));
    EXPECT_TRUE(historyOf(*library).changes.empty());
}

TEST_F(LibraryFile, KeepsWhateverThereIs)
{
    test::forEachSeed(40, [this](test::Random& random) {
        std::filesystem::remove(file());
        LibraryState kept;
        {
            const auto library = open();
            for (int i = 0; i < 3; ++i) {
                LibraryState next = imported(kept, test::anyContent(random));
                if (random.oneIn(2) && !next.recipes.empty()) {
                    next.recipes.erase(next.recipes.begin());
                }
                if (!next.occasions.empty()) {
                    next.open = next.occasions.begin()->first;
                }
                step(*library, kept, next);
            }
        }
        const auto again = open();
        EXPECT_TRUE(areAlike(loaded(*again), kept));
        EXPECT_EQ(loaded(*again).open, kept.open);
    });
}

TEST_F(LibraryFile, KeepsNamesInAnyScript)
{
    LibraryState kept;
    int number = 0;
    for (const std::string& name :
         {std::string("Robert'); DROP TABLE recipes; --"), std::string("סלט סלק"),
          std::string("🥕🍋"), std::string("\"quoted\" 100 %"), std::string(300, 'x')}) {
        kept = withRecipe(std::move(kept), name, name + std::to_string(++number));
    }
    {
        const auto library = open();
        LibraryState state;
        step(*library, state, kept);
    }
    EXPECT_TRUE(areAlike(loaded(*open()), kept));
}

TEST_F(LibraryFile, UndoesAndRedoesAcrossARestart)
{
    LibraryState state;
    const LibraryState first = withRecipe({}, "soup", "Soup");
    LibraryState second = withRecipe(first, "soup", "Cold soup");
    second = withRecipe(second, "roots", "Roots");
    {
        const auto library = open();
        step(*library, state, first, "New recipe");
        step(*library, state, second, "Rename soup");
        ASSERT_TRUE(library->undo());
        EXPECT_TRUE(areAlike(loaded(*library), first));
    }
    {
        const auto library = open();
        const History history = historyOf(*library);
        ASSERT_EQ(history.changes.size(), 2U);
        EXPECT_EQ(history.done, 1U);
        EXPECT_EQ(history.changes[1].text, "Rename soup");
        EXPECT_TRUE(areAlike(applied(loaded(*library), history.changes[1]), second));
        ASSERT_TRUE(library->redo());
        EXPECT_TRUE(areAlike(loaded(*library), second));
        ASSERT_TRUE(library->undo());
        ASSERT_TRUE(library->undo());
    }
    EXPECT_TRUE(areAlike(loaded(*open()), {}));
}

TEST_F(LibraryFile, SaysWhenThereIsNothingToUndoOrRedo)
{
    const auto library = open();
    EXPECT_EQ(library->undo().error().kind, FailureKind::NotFound);
    EXPECT_EQ(library->redo().error().kind, FailureKind::NotFound);
}

TEST_F(LibraryFile, ForgetsWhatCouldBeRedoneWhenSomethingNewIsDone)
{
    const auto library = open();
    LibraryState state;
    step(*library, state, withRecipe({}, "soup", "Soup"));
    step(*library, state, withRecipe({}, "soup", "Cold soup"));
    ASSERT_TRUE(library->undo());
    state = loaded(*library);
    step(*library, state, withRecipe({}, "soup", "Hot soup"), "Hotter");
    const History history = historyOf(*library);
    ASSERT_EQ(history.changes.size(), 2U);
    EXPECT_EQ(history.changes.back().text, "Hotter");
    EXPECT_EQ(library->redo().error().kind, FailureKind::NotFound);
}

TEST_F(LibraryFile, KeepsTheLastHundredChanges)
{
    const auto library = open();
    LibraryState state;
    for (int i = 0; i < 105; ++i) {
        step(*library, state, withRecipe({}, "soup", "Soup " + std::to_string(i)),
             std::to_string(i));
    }
    const History history = historyOf(*library);
    ASSERT_EQ(history.changes.size(), 100U);
    EXPECT_EQ(history.changes.front().text, "5");
    for (int i = 0; i < 100; ++i) {
        ASSERT_TRUE(library->undo());
    }
    EXPECT_FALSE(library->undo());
    EXPECT_TRUE(areAlike(loaded(*library), withRecipe({}, "soup", "Soup 4")));
}

TEST_F(LibraryFile, SharesEqualThingsOfStateAndHistory)
{
    LibraryState state;
    const auto library = open();
    step(*library, state, withRecipe({}, "soup", "Soup"));
    const LibraryState now = loaded(*library);
    const History history = historyOf(*library);
    EXPECT_EQ(std::get<RecipeChange>(history.changes[0].parts[0]).after,
              now.recipes.begin()->second);
}

TEST_F(LibraryFile, KeepsSettingsApartFromUndo)
{
    {
        const auto library = open();
        EXPECT_EQ(*library->setting("window.geometry"), std::nullopt);
        ASSERT_TRUE(library->keepSetting("window.geometry", "800x600"));
        ASSERT_TRUE(library->keepSetting("window.geometry", ""));
        ASSERT_TRUE(library->keepSetting("theme", "dark 🌒"));
        EXPECT_FALSE(library->undo());
    }
    const auto library = open();
    EXPECT_EQ(*library->setting("window.geometry"), "");
    EXPECT_EQ(*library->setting("theme"), "dark 🌒");
}

TEST_F(LibraryFile, RefusesWhatWouldNotReadBackAndChangesNothing)
{
    const auto library = open();
    LibraryState state;
    step(*library, state, withRecipe({}, "soup", "Soup"));
    Recipe fine;
    fine.id = RecipeId{"fine"};
    fine.name = "Too fine";
    IngredientLine line;
    line.id = LineId{"salt"};
    line.amount = {Rational{1, 100'000}, Unit::Gram};
    fine.common.lines = {line};
    LibraryState next = withRecipe(state, "soup", "Cold soup");
    next.recipes[fine.id] = std::make_shared<const Recipe>(fine);
    const auto kept = library->apply(differenceOf(state, next, "Both"));
    ASSERT_FALSE(kept);
    EXPECT_EQ(kept.error().kind, FailureKind::BadInput);
    EXPECT_NE(kept.error().forCook.find("“Too fine”"), std::string::npos);
    EXPECT_TRUE(areAlike(loaded(*library), state));
    EXPECT_EQ(historyOf(*library).changes.size(), 1U);
}

TEST_F(LibraryFile, KeepsARecipeThatIsStillBeingWritten)
{
    const auto library = open();
    LibraryState state;
    step(*library, state, withRecipe({}, "new", ""));
    EXPECT_EQ(loaded(*library).recipes.size(), 1U);
}

} // namespace

} // namespace suppertide
