#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;

class OccasionEdits : public testing::Test
{
protected:
    [[nodiscard]] const Recipe& recipe(const char* id) const
    {
        return *library_.recipes.at(RecipeId{id});
    }
    [[nodiscard]] static const Course& courseOf(const Occasion& occasion, const char* id)
    {
        return *findIn(occasion.courses, CourseId{id});
    }

    LibraryState library_ = demoLibrary();
    Occasion occasion_ = openOccasion(library_)->occasion;
};

TEST_F(OccasionEdits, AddADishToItsCourseAndTakeItOutAgain)
{
    const Recipe& fennel = recipe("braised-fennel");
    const WithDish with =
        withDishAdded(occasion_, CourseId{"main"}, fennel, fennel.variants.front().id, Portions{8});
    const Dish* dish = findDish(with.occasion, with.dish);
    ASSERT_NE(dish, nullptr);
    EXPECT_EQ(dish->recipe, fennel.id);
    EXPECT_EQ(portionsOf(*dish), Portions{8});
    EXPECT_EQ(findCourse(with.occasion, with.dish)->id, CourseId{"main"});
    EXPECT_EQ(withDishRemoved(with.occasion, with.dish), occasion_);
}

TEST_F(OccasionEdits, GiveASecondDishOfOneRecipeInAnotherCourseAnIdOfItsOwn)
{
    const Recipe& roots = recipe("roast-roots");
    const WithDish with =
        withDishAdded(occasion_, CourseId{"soup"}, roots, roots.variants.front().id, Portions{8});
    const WithDish twice = withDishAdded(with.occasion, CourseId{"tartlets"}, roots,
                                         roots.variants.front().id, Portions{8});
    EXPECT_NE(with.dish, twice.dish);
    EXPECT_NE(with.dish, DishId{"roots"});
}

TEST_F(OccasionEdits, MakeADroppedVariantForThoseWhoAreNotServedYet)
{
    const Recipe& salmon = recipe("slow-salmon");
    Occasion some = occasion_;
    Course& main = *findIn(some.courses, CourseId{"main"});
    std::erase_if(main.dishes, [](const Dish& dish) { return dish.id != DishId{"shoulder"}; });
    EXPECT_EQ(portionsWanted(some, main, salmon), Portions{1}) << "seven of eight have shoulder";
    main.dishes.clear();
    EXPECT_EQ(portionsWanted(some, main, salmon), Portions{8});
    EXPECT_EQ(portionsWanted(occasion_, courseOf(occasion_, "main"), salmon), Portions{8})
        << "everybody is served: it is for all";
    some.guests.clear();
    EXPECT_EQ(portionsWanted(some, main, salmon), salmon.portions);
}

TEST_F(OccasionEdits, TakeAVariantOffTheMixAtNoPortions)
{
    const VariantId almond{"almond"};
    const Occasion none = withPortions(occasion_, DishId{"pavlova"}, almond, Portions{0});
    EXPECT_EQ(findDish(none, DishId{"pavlova"})->mix.size(), 1U);
    const Occasion again = withPortions(none, DishId{"pavlova"}, almond, Portions{3});
    EXPECT_EQ(portionsOf(*findDish(again, DishId{"pavlova"})), Portions{4});
    EXPECT_EQ(withPortions(none, DishId{"pavlova"}, almond, Portions{0}), none);
}

TEST_F(OccasionEdits, MoveEveryTimeWithTheDate)
{
    const CivilDate before = *dateOf(occasion_);
    const Occasion moved = movedTo(occasion_, addDays(before, 7));
    EXPECT_EQ(dateOf(moved), addDays(before, 7));
    for (std::size_t i = 0; i < moved.courses.size(); ++i) {
        EXPECT_EQ(moved.courses[i].serving.clock, occasion_.courses[i].serving.clock);
        EXPECT_EQ(daysBetween(occasion_.courses[i].serving.date, moved.courses[i].serving.date), 7);
    }
    ASSERT_FALSE(occasion_.trips.empty());
    EXPECT_EQ(daysBetween(occasion_.trips[0].earliest.date, moved.trips[0].earliest.date), 7);
    EXPECT_EQ(movedTo(moved, before), occasion_);
}

TEST_F(OccasionEdits, AddACourseHalfAnHourAfterTheLastAlsoPastMidnight)
{
    const CivilDate date = *dateOf(occasion_);
    const Occasion more = withCourseAdded(occasion_, "Cheese", date);
    EXPECT_EQ(more.courses.back().serving, (CivilTime{date, {21, 50}}));
    EXPECT_EQ(more.courses.back().alternatives.size(), 1U);
    Occasion late = occasion_;
    late.courses.back().serving.clock = {23, 45};
    EXPECT_EQ(withCourseAdded(late, "Cheese", date).courses.back().serving,
              (CivilTime{addDays(date, 1), {0, 15}}));
    Occasion none = occasion_;
    none.courses.clear();
    EXPECT_EQ(withCourseAdded(none, "Main", date).courses.back().serving,
              (CivilTime{date, {19, 30}}));
    EXPECT_EQ(dateOf(none), std::nullopt);
}

TEST_F(OccasionEdits, KeepCoursesInOrderOfServing)
{
    Occasion mixed = occasion_;
    std::swap(mixed.courses.front(), mixed.courses.back());
    EXPECT_EQ(sorted(mixed), occasion_);
}

TEST_F(OccasionEdits, BeginAnOccasionInAKitchenThatIsThereOrMade)
{
    const CivilDate date{2027, 8, 1};
    const LibraryState next = withNewOccasion(library_, "Harvest", date);
    EXPECT_EQ(next.open, OccasionId{"harvest"});
    const OccasionPtr open = openOccasion(next);
    EXPECT_EQ(open->occasion.kitchen, occasion_.kitchen);
    EXPECT_EQ(open->occasion.courses.size(), 1U);
    EXPECT_EQ(next.occasions.size(), library_.occasions.size() + 1);
    const LibraryState first = withNewOccasion({}, "Harvest", date);
    EXPECT_EQ(first.kitchens.size(), 1U);
    ASSERT_TRUE(planInputOf(first));
    EXPECT_TRUE(laidOutPlan(*planInputOf(first), 0)) << "a new occasion has no faults";
}

TEST_F(OccasionEdits, CopyAndRemoveTheOpenOccasion)
{
    const LibraryState copied = withOccasionCopied(library_);
    const OccasionPtr copy = openOccasion(copied);
    EXPECT_NE(copy->occasion.id, occasion_.id);
    EXPECT_EQ(copy->occasion.name, occasion_.name + " (copy)");
    EXPECT_EQ(copy->layout, openOccasion(library_)->layout);
    const LibraryState removed = withOccasionRemoved(copied, copy->occasion.id);
    EXPECT_EQ(removed.occasions, library_.occasions);
    EXPECT_TRUE(removed.open) << "another one is shown";
    EXPECT_EQ(withOpened(removed, occasion_.id), library_);
    LibraryState none = library_;
    for (const auto& [id, record] : library_.occasions) {
        none = withOccasionRemoved(none, id);
    }
    EXPECT_FALSE(none.open);
}

} // namespace
} // namespace suppertide::ui
