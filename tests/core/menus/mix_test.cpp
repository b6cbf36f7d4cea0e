// Who gets what: the leading dish for all whom it suits, and for the others what takes the fewest
// extra steps.
#include <gmock/gmock.h>

#include <algorithm>
#include <limits>

#include "core/plan/making.h"
#include "core/wording/menu_words.h"
#include "tests/core/menus/courses.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::menus {
namespace {

using test::mixOfLast;
using test::offer;
using test::recipeOf;
using test::Supper;
using test::variantWith;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// Lamb, or a squash with or without cheese; lamb has no variant for who eats no meat.
Supper lambOrSquash()
{
    Supper supper;
    offer(supper, recipeOf("lamb", {variantWith("herbs", {Substance::Meat})}));
    offer(supper, recipeOf("squash", {variantWith("cheese", {Substance::Milk}, {"Grate"}),
                                      variantWith("plain", {})}));
    supper.addGuest("Ada");
    supper.addGuest("Cal");
    return supper;
}

std::vector<std::string> eaters(const CourseMix& mix, const std::string& dish)
{
    std::vector<std::string> names;
    for (const Plate& plate : mix.plates) {
        if (plate.dish.text() == dish) {
            names.push_back(plate.guest.text());
        }
    }
    return names;
}

Portions portions(const CourseMix& mix, const std::string& dish, const std::string& variant)
{
    for (const Dish& each : mix.dishes) {
        for (const MixEntry& entry : each.mix) {
            if (each.id.text() == dish && entry.variant.text() == variant) {
                return entry.portions;
            }
        }
    }
    return Portions{0};
}

TEST(Mix, GivesEverybodyWhatLeadsIfItSuits)
{
    const CourseMix mix = mixOfLast(lambOrSquash(), "lamb");
    EXPECT_THAT(eaters(mix, "lamb"), ElementsAre("ada", "cal"));
    EXPECT_EQ(portions(mix, "lamb", "herbs"), Portions{2});
    EXPECT_THAT(eaters(mix, "squash"), IsEmpty());
    EXPECT_EQ(mix.extraSteps, 0);
    EXPECT_TRUE(mix.suitsEverybody());
}

TEST(Mix, GivesWhoeverItDoesNotSuitTheVariantWithTheFewestExtraSteps)
{
    Supper supper = lambOrSquash();
    supper.addGuest("Dov").diets = {Diet::Vegetarian};
    const CourseMix mix = mixOfLast(supper, "lamb");
    EXPECT_THAT(eaters(mix, "lamb"), ElementsAre("ada", "cal"));
    EXPECT_THAT(eaters(mix, "squash"), ElementsAre("dov"));
    EXPECT_EQ(portions(mix, "squash", "plain"), Portions{1}) << "grating cheese is one step more";
    EXPECT_EQ(mix.extraSteps, 1);
}

TEST(Mix, MakesOneThingForTwoGuestsRatherThanTwo)
{
    // Alone Dov would be best off with cheese in no more steps; with Bea, both eat the plain one.
    Supper supper = lambOrSquash();
    supper.recipes.at(RecipeId{"squash"}) =
        recipeOf("squash", {variantWith("cheese", {Substance::Milk}, {"Grate"}),
                            variantWith("plain", {}, {"Oil"})});
    supper.addGuest("Dov").diets = {Diet::Vegetarian};
    supper.addGuest("Bea").diets = {Diet::Vegan};
    const CourseMix mix = mixOfLast(supper, "lamb");
    EXPECT_EQ(portions(mix, "squash", "plain"), Portions{2});
    EXPECT_EQ(portions(mix, "squash", "cheese"), Portions{0});
}

TEST(Mix, CountsAChildsPortionAsHalf)
{
    Supper supper = lambOrSquash();
    supper.addGuest("Nan").portion = Portions{1, 2};
    EXPECT_EQ(portions(mixOfLast(supper, "lamb"), "lamb", "herbs"), (Portions{5, 2}));
}

TEST(Mix, PutsADislikeUpWithFewerStepsThanItWeighs)
{
    Supper supper = lambOrSquash();
    supper.recipes.at(RecipeId{"lamb"}).common.lines = {test::ingredient("Chestnut mushrooms", {})};
    Guest& jo = supper.addGuest("Jo");
    jo.dislikes = {"mushroom"};
    EXPECT_THAT(eaters(mixOfLast(supper, "lamb"), "squash"), ElementsAre("jo"));
    Recipe& squash = supper.recipes.at(RecipeId{"squash"});
    for (int i = 0; i < stepsPerDislike; ++i) {
        squash.common.steps.push_back(test::step("Fuss " + std::to_string(i), Minutes{5}));
    }
    EXPECT_THAT(eaters(mixOfLast(supper, "lamb"), "squash"), IsEmpty())
        << "too much work for a dislike";
}

TEST(Mix, TakesWhatIsKnownToSuitBeforeWhatNobodyKnows)
{
    Supper supper = lambOrSquash();
    Guest& fay = supper.addGuest("Fay", {Substance::Walnut});
    supper.recipes.at(RecipeId{"lamb"}).common.lines = {test::ingredient("Stock cube", {})};
    supper.recipes.at(RecipeId{"lamb"}).common.lines.front().contains.reset();
    const CourseMix other = mixOfLast(supper, "lamb");
    EXPECT_THAT(eaters(other, "squash"), ElementsAre(fay.id.text()));
    EXPECT_TRUE(other.suitsEverybody());
    supper.recipes.at(RecipeId{"squash"}).common.lines = {
        test::ingredient("Walnuts", {Substance::Walnut})};
    const CourseMix unknown = mixOfLast(supper, "lamb");
    EXPECT_THAT(eaters(unknown, "lamb"), SizeIs(3));
    EXPECT_FALSE(unknown.suitsEverybody());
    EXPECT_THAT(unknown.unsure(), ElementsAre(GuestId{"fay"}));
}

TEST(Mix, KeepsRawEggFromGuestsAtRisk)
{
    Supper supper = lambOrSquash();
    FollowedFood mousse;
    mousse.id = FollowedFoodId{"egg"};
    mousse.name = "egg";
    mousse.kind = {FoodClass::RawEggDessert, {RiskFact::RawEgg}};
    mousse.steps = {{.step = StepId{"cook-lamb"}}};
    supper.recipes.at(RecipeId{"lamb"}).common.foods = {mousse};
    supper.addGuest("Zoe").risks = {RiskGroup::Pregnant};
    EXPECT_THAT(eaters(mixOfLast(supper, "lamb"), "squash"), ElementsAre("zoe"));
}

TEST(Mix, NamesAGuestWithoutASafeDishAndHowAVariantWouldBecomeOne)
{
    Supper supper = lambOrSquash();
    Variant nuts = variantWith("nuts", {Substance::Walnut});
    nuts.adds.lines.push_back(test::ingredient("Butter", {Substance::Milk}));
    nuts.adds.lines.back().id = LineId{"fat"};
    Variant oil = variantWith("oil", {Substance::Sesame});
    oil.adds.lines.push_back(test::ingredient("Olive oil", {}));
    oil.adds.lines.back().id = LineId{"fat"};
    supper.recipes.at(RecipeId{"squash"}) = recipeOf("squash", {nuts, oil});
    Guest& dov = supper.addGuest("Dov", {Substance::Milk, Substance::Sesame});
    dov.diets = {Diet::Vegetarian};
    const CourseMix mix = mixOfLast(supper, "lamb");
    ASSERT_THAT(mix.notServed, SizeIs(1));
    EXPECT_EQ(mix.notServed[0].guest, dov.id);
    ASSERT_FALSE(mix.notServed[0].ways.empty());
    EXPECT_EQ(mix.notServed[0].ways[0].variant, VariantId{"nuts"});
    EXPECT_EQ(mix.notServed[0].ways[0].substitutions,
              (std::vector{Substitution{"Butter", "Olive oil", VariantId{"oil"}}}));
    EXPECT_FALSE(mix.suitsEverybody());
    const PlanInput input = supper.input();
    const std::string said = notServedSentence(*input.occasion, input.occasion->courses.back(),
                                               recipeTable(input), mix.notServed[0]);
    EXPECT_THAT(said, HasSubstr("Dov gets nothing of “"));
    EXPECT_THAT(said, HasSubstr("Olive oil instead of Butter"));
}

TEST(Mix, GivesSidesToEverybodyWhomTheySuit)
{
    Supper supper = lambOrSquash();
    offer(supper,
          recipeOf("gratin", {variantWith("cream", {Substance::Milk}),
                              variantWith("stock", {Substance::Meat})}),
          true);
    Guest& bea = supper.addGuest("Bea");
    bea.diets = {Diet::Vegan};
    supper.addGuest("Eli", {Substance::Milk});
    const CourseMix mix = mixOfLast(supper, "lamb");
    EXPECT_EQ(portions(mix, "gratin", "cream"), Portions{2});
    EXPECT_EQ(portions(mix, "gratin", "stock"), Portions{1});
    EXPECT_THAT(mix.without, ElementsAre(GoesWithout{bea.id, DishId{"gratin"}}));
    EXPECT_TRUE(mix.suitsEverybody());
}

// Everything that could be served, tried.

struct RandomCourse
{
    Supper supper;
    CourseOffer offered;
    PlanInput input;
};

constexpr std::array avoidable{Substance::Milk, Substance::Wheat, Substance::Walnut};

Supper anyCourse(test::Random& random)
{
    Supper supper;
    const auto dishes = random.between(1, 3);
    for (std::int64_t d = 0; d < dishes; ++d) {
        std::vector<Variant> variants;
        const auto count = random.between(1, 3);
        for (std::int64_t v = 0; v < count; ++v) {
            std::vector<Substance> contains;
            for (const Substance each : avoidable) {
                if (random.oneIn(3)) {
                    contains.push_back(each);
                }
            }
            std::vector<std::string> steps;
            for (std::int64_t s = random.between(0, 2); s > 0; --s) {
                steps.push_back("Do " + std::to_string(random.between(0, 2)));
            }
            std::ranges::sort(steps);
            const auto rest = std::ranges::unique(steps);
            steps.erase(rest.begin(), rest.end());
            variants.push_back(variantWith("v" + std::to_string(v), contains, steps));
        }
        offer(supper, recipeOf("dish" + std::to_string(d), variants));
    }
    const auto guests = random.between(1, 5);
    for (std::int64_t g = 0; g < guests; ++g) {
        std::vector<Substance> avoids;
        for (const Substance each : avoidable) {
            if (random.oneIn(3)) {
                avoids.push_back(each);
            }
        }
        Guest& guest = supper.addGuest("G" + std::to_string(g), avoids);
        if (random.oneIn(4)) {
            guest.dislikes = {"v0"};
        }
    }
    return supper;
}

/// The least that steps and dislikes can come to, by trying all that the rules allow.
class EveryWay
{
public:
    EveryWay(const PlanInput& input, const CourseOffer& offered, std::size_t leading)
        : occasion_(*input.occasion), offered_(offered), leading_(leading), counter_(input, offered)
    {}

    int least()
    {
        std::set<MadeVariant> made;
        descend(0, made, 0);
        return best_;
    }

    [[nodiscard]] std::vector<MadeVariant> allowed(const Guest& guest) const
    {
        std::vector<MadeVariant> fine;
        for (std::size_t d = 0; d < offered_.dishes.size(); ++d) {
            for (std::size_t v = 0; v < offered_.dishes[d].variants.size(); ++v) {
                const auto& contains = offered_.dishes[d].variants[v].nature.contents.contains;
                const bool suits = std::ranges::none_of(guest.allergies, [&](Substance each) {
                    return std::ranges::find(contains, each) != contains.end();
                });
                const bool isUsual = d == leading_ && v == 0;
                if (suits && isUsual && penalty(guest, v) == 0) {
                    return {{d, v}};
                }
                if (suits) {
                    fine.emplace_back(d, v);
                }
            }
        }
        return fine;
    }

private:
    /// "v0" is what is disliked, and the first variant's only ingredient.
    static int penalty(const Guest& guest, std::size_t variant)
    {
        return !guest.dislikes.empty() && variant == 0 ? stepsPerDislike : 0;
    }

    void descend(std::size_t guest, const std::set<MadeVariant>& made, int penalties)
    {
        if (guest == occasion_.guests.size()) {
            best_ = std::min(best_, counter_.count(made) + penalties);
            return;
        }
        const auto options = allowed(occasion_.guests[guest]);
        if (options.empty()) {
            descend(guest + 1, made, penalties);
        }
        for (const MadeVariant& option : options) {
            std::set<MadeVariant> more = made;
            more.insert(option);
            descend(guest + 1, more, penalties + penalty(occasion_.guests[guest], option.second));
        }
    }

    const Occasion& occasion_;
    const CourseOffer& offered_;
    std::size_t leading_;
    StepCounter counter_;
    int best_ = std::numeric_limits<int>::max();
};

TEST(Mix, IsSafeAndCostsNoMoreThanAnyOther)
{
    test::forEachSeed(150, [](test::Random& random) {
        const Supper supper = anyCourse(random);
        const PlanInput input = supper.input();
        const CourseOffer offered = offerOf(input, input.occasion->courses.back());
        for (std::size_t lead = 0; lead < offered.alternatives.size(); ++lead) {
            const CourseMix mix = mixOf(input, offered, offered.alternatives[lead]);
            EveryWay every(input, offered, lead);
            int dislikes = 0;
            for (const Guest& guest : input.occasion->guests) {
                const auto plate = std::ranges::find(mix.plates, guest.id, &Plate::guest);
                ASSERT_EQ(plate == mix.plates.end(), every.allowed(guest).empty());
                if (plate != mix.plates.end()) {
                    EXPECT_TRUE(plate->suitability.suits());
                    dislikes += !guest.dislikes.empty() && plate->variant.text() == "v0" ? 1 : 0;
                }
            }
            EXPECT_EQ(mix.steps + dislikes * stepsPerDislike, every.least());
        }
    });
}

TEST(Mix, AppliedGivesTheHelpingsThatItPromises)
{
    test::forEachSeed(60, [](test::Random& random) {
        Supper supper = anyCourse(random);
        const PlanInput input = supper.input();
        const Course& course = input.occasion->courses.back();
        const CourseOffer offered = offerOf(input, course);
        const CourseMix mix = mixOf(input, offered, offered.alternatives.back());
        const Course mixed = withMix(course, mix);
        const auto helpings = helpingsOf(*input.occasion, mixed, recipeTable(input));
        EXPECT_EQ(helpings.size(), mix.plates.size());
        for (const Helping& helping : helpings) {
            EXPECT_THAT(helping.unsuitable, IsEmpty());
        }
        std::vector<GuestId> notServed;
        for (const NotServed& each : mix.notServed) {
            notServed.push_back(each.guest);
        }
        if (notServed.size() < input.occasion->guests.size()) {
            EXPECT_EQ(leftOut(*input.occasion, mixed, recipeTable(input)), notServed);
        }
    });
}

} // namespace
} // namespace suppertide::menus
