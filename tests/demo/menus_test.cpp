// Four courses of three alternatives, and who can eat what.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

using testing::IsEmpty;
using testing::UnorderedElementsAre;

const Occasion& midsummer()
{
    return occasion("midsummer-supper").occasion;
}

/// Sides for everybody are no alternative to anything: they stand beside whatever leads.
std::size_t leadingAlternatives(const Course& course)
{
    return static_cast<std::size_t>(std::ranges::count_if(
        course.alternatives, [](const Alternative& each) { return !each.isForEverybody; }));
}

/// The variants of a dish that suit a guest.
bool hasSomethingFor(const Guest& guest, const Dish& dish)
{
    const Recipe& made = recipe(dish.recipe.text());
    return std::ranges::any_of(made.variants, [&](const Variant& variant) {
        const Contents contents = contentsOf(made, variant.id, recipes());
        const auto avoided = avoidedBy(guest);
        return std::ranges::none_of(avoided, [&contents](Substance substance) {
            return std::ranges::find(contents.contains, substance) != contents.contains.end();
        });
    });
}

TEST(MidsummerSupper, IsOnASaturdayInJuneForEightAtFourTimes)
{
    EXPECT_EQ(midsummer().name, "Midsummer supper at Skerry Light");
    EXPECT_EQ(midsummer().guests.size(), 8U);
    ASSERT_EQ(midsummer().courses.size(), 4U);
    const std::vector<ClockTime> times{{19, 30}, {19, 55}, {20, 30}, {21, 20}};
    for (std::size_t i = 0; i < times.size(); ++i) {
        EXPECT_EQ(midsummer().courses[i].serving, (CivilTime{{2027, 6, 19}, times[i]}));
    }
    EXPECT_EQ(weekdayOf({2027, 6, 19}), Weekday::Saturday);
}

TEST(MidsummerSupper, HasEightyOneMenus)
{
    std::size_t menus = 1;
    for (const Course& each : midsummer().courses) {
        menus *= leadingAlternatives(each);
        for (const Alternative& alternative : each.alternatives) {
            EXPECT_TRUE(std::ranges::any_of(each.dishes, [&alternative](const Dish& dish) {
                return dish.alternative == alternative.id;
            })) << alternative.id.text();
        }
    }
    EXPECT_EQ(menus, 81U);
}

TEST(MidsummerSupper, SuitsEverybodyAsItStands)
{
    for (const Course& each : midsummer().courses) {
        EXPECT_THAT(leftOut(midsummer(), each, recipes()), IsEmpty()) << each.name;
        for (const Helping& helping : helpingsOf(midsummer(), each, recipes())) {
            EXPECT_THAT(helping.unsuitable, IsEmpty())
                << helping.guest.text() << ": " << helping.dish.text();
            EXPECT_THAT(helping.unknown, IsEmpty());
        }
    }
}

TEST(MidsummerSupper, GivesEachGuestOneHelpingOfEachCourseAndOfEachSide)
{
    for (const Course& each : midsummer().courses) {
        const std::size_t dishes = each.id.text() == "main" ? 3 : 1; // the main with two sides
        EXPECT_EQ(helpingsOf(midsummer(), each, recipes()).size(),
                  midsummer().guests.size() * dishes)
            << each.name;
    }
}

TEST(MidsummerSupper, HasSomethingForEachGuestInEachCourse)
{
    for (const Course& each : midsummer().courses) {
        for (const Guest& guest : midsummer().guests) {
            EXPECT_TRUE(std::ranges::any_of(each.dishes,
                                            [&guest](const Dish& dish) {
                                                return dish.alternative.text() != "sides" &&
                                                       hasSomethingFor(guest, dish);
                                            }))
                << guest.name << ", " << each.name;
        }
    }
}

TEST(MidsummerSupper, KeepsItsGuestsDietsApart)
{
    const Course& tartlets = course(midsummer(), "tartlets");
    const Course& main = course(midsummer(), "main");
    const auto dish = [](const Course& where, std::string_view id) -> const Dish& {
        return *std::ranges::find_if(where.dishes,
                                     [id](const Dish& each) { return each.id.text() == id; });
    };
    const Contents wheat =
        contentsOf(recipe("smoked-trout-tartlets"), VariantId{"wheat-case"}, recipes());
    const Contents free =
        contentsOf(recipe("smoked-trout-tartlets"), VariantId{"gluten-free-case"}, recipes());
    EXPECT_TRUE(std::ranges::find(wheat.contains, Substance::Wheat) != wheat.contains.end());
    EXPECT_TRUE(std::ranges::find(free.contains, Substance::Wheat) == free.contains.end());
    EXPECT_EQ(portionsOf(dish(tartlets, "trout-tartlets")), Portions{6});
    EXPECT_EQ(portionsOf(dish(main, "shoulder")), Portions{7});
    EXPECT_EQ(portionsOf(dish(main, "squash")), Portions{1});
}

TEST(FirstIdea, HasAnAllergenAtFaysPlace)
{
    const Occasion& idea = occasion("midsummer-supper-first-idea").occasion;
    std::vector<std::string> places;
    for (const Helping& helping : helpingsOf(idea, course(idea, "soup"), recipes())) {
        if (!helping.unsuitable.empty()) {
            places.push_back(helping.guest.text());
            EXPECT_EQ(helping.unsuitable, std::vector{Substance::Hazelnut});
        }
    }
    EXPECT_THAT(places, UnorderedElementsAre("fay"));
}

TEST(SundayLunch, SuitsItsFourGuests)
{
    const Occasion& lunch = occasion("sunday-lunch").occasion;
    EXPECT_EQ(lunch.guests.size(), 4U);
    EXPECT_EQ(kitchen(lunch.kitchen.text()).ovens.size(), 1U);
    for (const Course& each : lunch.courses) {
        EXPECT_THAT(leftOut(lunch, each, recipes()), IsEmpty()) << each.name;
        for (const Helping& helping : helpingsOf(lunch, each, recipes())) {
            EXPECT_THAT(helping.unsuitable, IsEmpty())
                << helping.guest.text() << ": " << helping.dish.text();
        }
    }
}

constexpr std::array nuts{
    std::pair{Substance::Almond, "almond"},       std::pair{Substance::Hazelnut, "hazelnut"},
    std::pair{Substance::Walnut, "walnut"},       std::pair{Substance::Cashew, "cashew"},
    std::pair{Substance::Pecan, "pecan"},         std::pair{Substance::BrazilNut, "brazil nut"},
    std::pair{Substance::Pistachio, "pistachio"}, std::pair{Substance::Macadamia, "macadamia"},
    std::pair{Substance::PineNut, "pine nut"}};

TEST(DemoRecipes, HaveNutsOnlyInVariantsThatSaySo)
{
    int withNuts = 0;
    for (const Recipe& each : content().recipes) {
        for (const Variant& variant : each.variants) {
            const Contents contents = contentsOf(each, variant.id, recipes());
            for (const auto& [nut, name] : nuts) {
                if (std::ranges::find(contents.contains, nut) == contents.contains.end()) {
                    continue;
                }
                ++withNuts;
                EXPECT_NE(variant.note.find(name), std::string::npos)
                    << each.id.text() << " " << variant.id.text();
            }
        }
    }
    EXPECT_GE(withNuts, 8);
}

} // namespace
} // namespace suppertide::demo
