// The demo's files are what the program itself would accept from anybody.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

TEST(DemoFiles, AreAllReadWithoutAnError)
{
    for (const std::string_view subfolder : {"recipes", "kitchens", "occasions", "larder"}) {
        const auto files = filesIn(subfolder);
        EXPECT_FALSE(files.empty()) << subfolder;
        for (const auto& file : files) {
            const auto read = readExchangeFile(file);
            EXPECT_TRUE(read.has_value()) << file << (read ? "" : read.error().forCook);
        }
    }
}

TEST(DemoFiles, HoldOneThingEachAndAreNamedAfterIt)
{
    for (const auto& file : filesIn("recipes")) {
        const auto read = readExchangeFile(file);
        ASSERT_TRUE(read.has_value()) << file;
        ASSERT_EQ(read->recipes.size(), 1U) << file;
        EXPECT_EQ(read->recipes.front().id.text(), file.stem().string());
    }
    for (const auto& file : filesIn("occasions")) {
        const auto read = readExchangeFile(file);
        ASSERT_TRUE(read.has_value()) << file;
        ASSERT_EQ(read->occasions.size(), 1U) << file;
        EXPECT_EQ(read->occasions.front().occasion.id.text(), file.stem().string());
    }
}

TEST(DemoFiles, AreTheSameAfterBeingWrittenAndReadAgain)
{
    ExchangeContent sorted = content();
    std::ranges::sort(sorted.recipes, {}, &Recipe::id);
    std::ranges::sort(sorted.kitchens, {}, &Kitchen::id);
    std::ranges::sort(sorted.occasions, {},
                      [](const OccasionRecord& record) { return record.occasion.id; });
    const auto again = readExchange(writeExchange(sorted), "written again");
    ASSERT_TRUE(again.has_value()) << again.error().forCook;
    EXPECT_EQ(*again, sorted);
}

TEST(DemoFiles, HaveNoFaults)
{
    for (const Recipe& each : content().recipes) {
        for (const RecipeFault& fault : faultsOf(each)) {
            ADD_FAILURE() << each.id.text() << ", " << fault.place << ": " << fault.sentence;
        }
    }
    for (const Kitchen& each : content().kitchens) {
        for (const KitchenFault& fault : faultsOf(each)) {
            ADD_FAILURE() << each.id.text() << ", " << fault.place << ": " << fault.sentence;
        }
    }
    for (const OccasionRecord& each : content().occasions) {
        const Occasion& evening = each.occasion;
        for (const OccasionFault& fault :
             faultsOf(evening, kitchen(evening.kitchen.text()), recipes())) {
            ADD_FAILURE() << evening.id.text() << ", " << fault.place << ": " << fault.sentence;
        }
    }
}

TEST(DemoRecipes, AreEnoughToSearchIn)
{
    const auto preparations =
        std::ranges::count(content().recipes, RecipeKind::Preparation, &Recipe::kind);
    EXPECT_GE(preparations, 6);
    EXPECT_GE(std::ssize(content().recipes) - preparations, 18);
    for (const Recipe& each : content().recipes) {
        EXPECT_FALSE(each.note.empty()) << each.id.text();
        EXPECT_GE(each.keywords.size(), 2U) << each.id.text();
    }
}

TEST(DemoRecipes, TakeEachLineInExactlyOneStep)
{
    for (const Recipe& each : content().recipes) {
        for (const Variant& variant : each.variants) {
            const ResolvedRecipe whole = resolved(each.id.text(), variant.id.text());
            std::multiset<LineId> taken;
            for (const Step& one : allSteps(whole)) {
                taken.insert(one.lines.begin(), one.lines.end());
            }
            for (const IngredientLine& line : whole.part.lines) {
                EXPECT_EQ(taken.count(line.id), 1U)
                    << each.id.text() << " " << variant.id.text() << ": " << line.id.text();
            }
        }
    }
}

TEST(DemoRecipes, SayOfEveryIngredientWhatItContains)
{
    for (const Recipe& each : content().recipes) {
        for (const Variant& variant : each.variants) {
            EXPECT_EQ(contentsOf(each, variant.id, recipes()).unknown, std::vector<std::string>{})
                << each.id.text() << " " << variant.id.text();
        }
    }
}

TEST(DemoRecipes, SayOfAPreparationWhatItsOwnRecipeContains)
{
    for (const Recipe& each : content().recipes) {
        for (const IngredientLine& line : each.common.lines) {
            if (line.preparation) {
                const ResolvedRecipe made = usual(line.preparation->text());
                EXPECT_EQ(contentsOf({{{line}, {}, {}, {}}, {}}).contains,
                          contentsOf(made).contains)
                    << each.id.text() << ": " << line.id.text();
            }
        }
    }
}

TEST(DemoRecipes, FindTheirVesselsAndAppliancesInTheKitchen)
{
    const auto has = [](const Kitchen& place, const Use& use) {
        if (const auto* vessel = std::get_if<VesselUse>(&use)) {
            return std::ranges::any_of(place.vessels, [vessel](const Vessel& each) {
                return each.kind == vessel->kind && each.volume >= vessel->volume &&
                       each.count >= vessel->count;
            });
        }
        if (const auto* appliance = std::get_if<ApplianceUse>(&use)) {
            return std::ranges::any_of(place.appliances, [appliance](const Appliance& each) {
                return each.kind == appliance->kind;
            });
        }
        if (const auto* burner = std::get_if<BurnerUse>(&use)) {
            return std::ranges::any_of(
                place.burners, [burner](const Burner& each) { return each.size >= burner->pan; });
        }
        return true;
    };
    for (const OccasionRecord& record : content().occasions) {
        const Kitchen& place = kitchen(record.occasion.kitchen.text());
        for (const Course& each : record.occasion.courses) {
            for (const Dish& dish : each.dishes) {
                for (const Step& one : allSteps(usual(dish.recipe.text()))) {
                    for (const Use& use : one.uses) {
                        EXPECT_TRUE(has(place, use)) << dish.id.text() << ": " << one.id.text();
                    }
                }
                for (const Span& span : usual(dish.recipe.text()).part.spans) {
                    EXPECT_TRUE(has(place, span.use)) << dish.id.text() << ": " << span.text;
                }
            }
        }
    }
}

} // namespace
} // namespace suppertide::demo
