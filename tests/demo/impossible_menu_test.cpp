// Why the supper's first idea cannot be cooked at Skerry Light, from its figures alone: at one and
// the same minute three dishes must be in an oven, whenever they are begun; no two of them accept
// a common temperature; and there are two ovens.
//
//                    19:00       19:30       20:00
//     gratin    |==============================|    140 to 160 °C
//     tartlets                |======|              170 to 190 °C
//     salmon                       |===========|    110 to 125 °C
#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "tests/demo/demo_files.h"

namespace suppertide::demo {
namespace {

/// Minutes of the Saturday in which a dish is in an oven for sure, and at what.
struct InOven
{
    Minutes from{0};
    Minutes until{0};
    Celsius low;
    Celsius high;
};

const OvenUse& ovenOf(const Step& one)
{
    return std::get<OvenUse>(*std::ranges::find_if(
        one.uses, [](const Use& use) { return std::holds_alternative<OvenUse>(use); }));
}

Minutes clock(const Course& course)
{
    return Minutes{course.serving.clock.hour * 60 + course.serving.clock.minute};
}

/// For a step that is out of the oven so long before serving at least and at most.
InOven surely(const Step& inOven, Minutes serving, Minutes least, Minutes most)
{
    const Minutes whole = inOven.ovenIn + inOven.duration.likely + inOven.ovenOut;
    const OvenUse& use = ovenOf(inOven);
    return {serving - least - whole, serving - most, use.low, use.high};
}

const Occasion& idea()
{
    return occasion("midsummer-supper-first-idea").occasion;
}

InOven tartlets()
{
    const ResolvedRecipe made = usual("baked-onion-tartlets");
    const Wait& hot = wait(made.part.waits, "hot");
    return surely(step(made.part.steps, "bake"), clock(course(idea(), "tartlets")), hot.least,
                  *hot.most);
}

InOven gratin()
{
    const ResolvedRecipe made = usual("potato-gratin");
    const Wait& sets = wait(made.part.waits, "sets");
    return surely(step(made.part.steps, "bake"), clock(course(idea(), "main")), sets.least,
                  *sets.most);
}

InOven salmon()
{
    const Course& main = course(idea(), "main");
    const auto dish = std::ranges::find_if(
        main.dishes, [](const Dish& each) { return each.id.text() == "salmon"; });
    const Recipe& recipeOfIt = recipe("slow-salmon");
    const ResolvedRecipe made = usual("slow-salmon");
    const Minutes plating =
        scaledDuration(step(made.part.steps, "plate"), recipeOfIt.portions, portionsOf(*dish))
            .likely;
    const Wait& rest = wait(made.part.waits, "rest");
    const Wait& stand = wait(made.part.waits, "stand");
    return surely(step(made.part.steps, "roast"), clock(main), rest.least + plating + stand.least,
                  *rest.most + plating + *stand.most);
}

/// Roasted by one of the methods that take an oven.
InOven roots(std::string_view roasting, std::string_view standing)
{
    const ResolvedRecipe made = usual("roast-roots");
    const std::vector<Wait> waits = allWaits(made);
    const Wait& stands = wait(waits, standing);
    const Wait& crisp = wait(waits, "crisp");
    const Minutes dishingUp = step(made.part.steps, "dish-up").duration.likely;
    const std::vector<Step> steps = allSteps(made);
    return surely(step(steps, roasting), clock(course(idea(), "main")),
                  stands.least + dishingUp + crisp.least, *stands.most + dishingUp + *crisp.most);
}

/// In one minute in different ovens, whenever they are begun.
void expectAnOvenForEach(const std::array<InOven, 3>& dishes)
{
    const Minutes from = std::ranges::max(dishes, {}, &InOven::from).from;
    const Minutes until = std::ranges::min(dishes, {}, &InOven::until).until;
    EXPECT_LT(from, until) << "there is a minute in which all three are in an oven";
    for (std::size_t i = 0; i < dishes.size(); ++i) {
        for (std::size_t j = i + 1; j < dishes.size(); ++j) {
            EXPECT_TRUE(dishes[i].high < dishes[j].low || dishes[j].high < dishes[i].low);
        }
    }
}

TEST(FirstIdea, WantsThreeTemperaturesAtOnceOfTwoOvens)
{
    expectAnOvenForEach({gratin(), tartlets(), salmon()});
    EXPECT_EQ(kitchen("skerry-light").ovens.size(), 2U);
}

TEST(SalmonMenu, LeavesNoOvenToTheRootsButThePan)
{
    expectAnOvenForEach({gratin(), salmon(), roots("roast", "roasted")});
    expectAnOvenForEach({gratin(), salmon(), roots("roast-still", "roasted-still")});
    const MethodChoice choice = usual("roast-roots").methods.front();
    ASSERT_EQ(choice.methods.size(), 3U);
    EXPECT_EQ(choice.methods.back().id, MethodId{"wide-pan"});
}

TEST(FirstIdea, IsForEverybodyWhatTheTestTakesItFor)
{
    for (const std::string_view id : {"onion-tartlets", "gratin", "salmon"}) {
        const bool isCooked = std::ranges::any_of(idea().courses, [id](const Course& each) {
            return std::ranges::any_of(each.dishes, [id](const Dish& dish) {
                return dish.id.text() == id && portionsOf(dish) > Portions{0};
            });
        });
        EXPECT_TRUE(isCooked) << id;
    }
}

} // namespace
} // namespace suppertide::demo
