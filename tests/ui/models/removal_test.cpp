// Whatever row is taken away, nothing that is left points to it: the evening can still be judged.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/occasion/occasion.h"
#include "tests/support/demo_evening.h"
#include "ui/models/kitchen_outline.h"
#include "ui/models/menu_outline.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {
namespace {

/// What is wrong with any of the library's occasions, in a cook's words.
std::vector<std::string> faultsAfter(const LibraryState& library)
{
    std::map<RecipeId, const Recipe*> recipes;
    for (const auto& [id, recipe] : library.recipes) {
        recipes.emplace(id, recipe.get());
    }
    std::vector<std::string> said;
    for (const auto& [id, record] : library.occasions) {
        const Kitchen& kitchen = *library.kitchens.at(record->occasion.kitchen);
        for (const auto& fault : faultsOf(record->occasion, kitchen, recipes)) {
            said.push_back(fault.place + ": " + fault.sentence);
        }
    }
    return said;
}

/// Takes each row away that can be, each from the whole demo.
int expectAllRemovable(const Outline& outline, const LibraryState& library)
{
    int count = 0;
    for (const OutlineRow& row : outline.rows(library)) {
        const std::vector<RowCommand> commands = outline.commands(library, row.id);
        if (std::none_of(commands.begin(), commands.end(),
                         [](const RowCommand& command) { return command.key == "remove"; })) {
            continue;
        }
        const Result<Edit> edit = outline.run(library, row.id, "remove");
        if (edit) {
            EXPECT_EQ(faultsAfter(edit->next), std::vector<std::string>{}) << row.id;
            ++count;
        }
    }
    return count;
}

TEST(Removal, OfAnyRowOfTheMenuLeavesNothingDangling)
{
    const LibraryState library = test::demoLibrary();
    DishLooks looks;
    looks.see(openOccasion(library)->occasion);
    const FixedClock clock{TimeZone::utc().instant(CivilTime{{2027, 6, 1}, {12, 0}})};
    EXPECT_GT(expectAllRemovable(MenuOutline{looks, clock}, library), 30);
}

TEST(Removal, OfAnyRowOfTheKitchenLeavesNothingDangling)
{
    EXPECT_GT(expectAllRemovable(KitchenOutline{}, test::demoLibrary()), 20);
}

TEST(Removal, OfACookLeavesTheirWorkToAnybody)
{
    const LibraryState library = test::demoLibrary();
    const LibraryState left = withCookForgotten(library, KitchenId{"skerry-light"}, CookId{"jory"});
    EXPECT_FALSE(openOccasion(left)->occasion.hours.contains(CookId{"jory"}));
    EXPECT_EQ(openOccasion(library)->occasion.courses.size(),
              openOccasion(left)->occasion.courses.size());
    // The other kitchen's evening is not touched.
    const OccasionId lunch{"sunday-lunch"};
    EXPECT_EQ(library.occasions.at(lunch), left.occasions.at(lunch));
}

} // namespace
} // namespace suppertide::ui
