// What in a recipe cannot be, in a sentence that names its place.
#include <gmock/gmock.h>

#include <functional>

#include "tests/core/recipe/recipes.h"
#include "tests/support/content/any_content.h"
#include "tests/support/for_each_seed.h"

namespace suppertide {
namespace {

using test::gratin;
using test::line;
using test::step;
using test::wait;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

auto fault(const std::string& place, const std::string& words)
{
    return AllOf(Field("place", &RecipeFault::place, HasSubstr(place)),
                 Field("sentence", &RecipeFault::sentence, HasSubstr(words)));
}

/// The faults of the gratin after one change.
std::vector<RecipeFault> after(const std::function<void(Recipe&)>& change)
{
    Recipe recipe = gratin();
    change(recipe);
    return faultsOf(recipe);
}

TEST(RecipeFaults, AreNoneInAnyGoodRecipe)
{
    EXPECT_THAT(faultsOf(gratin()), IsEmpty());
    test::forEachSeed(200, [](test::Random& random) {
        EXPECT_THAT(faultsOf(test::anyRecipe(random, "any")), IsEmpty());
    });
}

TEST(RecipeFaults, NameWhatIsMissing)
{
    EXPECT_THAT(after([](Recipe& r) { r.id = {}; }), Contains(fault("recipe", "no id")));
    EXPECT_THAT(after([](Recipe& r) { r.name.clear(); }), Contains(fault("recipe", "no name")));
    EXPECT_THAT(after([](Recipe& r) { r.variants.clear(); }),
                ElementsAre(fault("variants", "at least one")));
    EXPECT_THAT(after([](Recipe& r) { r.common.lines[0].ingredient.clear(); }),
                ElementsAre(fault("line “potatoes”", "names no ingredient")));
}

TEST(RecipeFaults, NameIdsThatStandTwice)
{
    EXPECT_THAT(after([](Recipe& r) { r.common.lines.push_back(line("nuts")); }),
                ElementsAre(fault("lines", "Two lines have the id “nuts”")));
    EXPECT_THAT(after([](Recipe& r) { r.variants.push_back(r.variants[0]); }),
                Contains(fault("variants", "Two variants have the id “plain”")));
    const auto withMethodStep = [](const char* id) {
        return after([id](Recipe& r) {
            Method pan{MethodId{"pan"}, "in a pan", 0, {}};
            pan.part.steps = {step(id)};
            Method oven{MethodId{"oven"}, "in the oven", 0, {}};
            oven.part.steps = {step(id)};
            r.methods = {{MethodChoiceId{"how"}, "how", {pan, oven}}};
        });
    };
    EXPECT_THAT(withMethodStep("peel"),
                Contains(fault("method “how”", "“peel” has the id of a step outside it")));
    EXPECT_THAT(withMethodStep("fry"), IsEmpty());
}

TEST(RecipeFaults, NameDurationsThatCannotBe)
{
    const auto withDuration = [](Minutes least, Minutes likely, Minutes most) {
        return after([=](Recipe& r) { r.common.steps[2].duration = {least, likely, most}; });
    };
    EXPECT_THAT(withDuration(-5_min, 0_min, 0_min),
                ElementsAre(fault("step “Do bake”, duration", "cannot take -5 minutes")));
    EXPECT_THAT(withDuration(10_min, 5_min, 20_min),
                ElementsAre(fault("step “Do bake”, duration", "not in rising order")));
    EXPECT_THAT(withDuration(10_min, 20_min, 15_min),
                ElementsAre(fault("step “Do bake”, duration", "not in rising order")));
    EXPECT_THAT(withDuration(0_min, 0_min, 0_min), IsEmpty());
    EXPECT_THAT(withDuration(1_min, 1_min, Minutes{7 * 24 * 60}), IsEmpty());
    EXPECT_THAT(withDuration(1_min, 1_min, Minutes{7 * 24 * 60 + 1}),
                ElementsAre(fault("step “Do bake”, duration", "more than seven days")));
    constexpr Minutes absurd{std::numeric_limits<std::int64_t>::max()};
    EXPECT_THAT(withDuration(1_min, 1_min, absurd),
                ElementsAre(fault("step “Do bake”, duration", "more than seven days")));
}

TEST(RecipeFaults, NameWaitsThatCannotBe)
{
    const auto withWait = [](Minutes least, std::optional<Minutes> most) {
        return after([=](Recipe& r) {
            r.common.waits[1].least = least;
            r.common.waits[1].most = most;
        });
    };
    EXPECT_THAT(withWait(-1_min, {}), ElementsAre(fault("wait “rests”", "shorter than 0")));
    EXPECT_THAT(withWait(4_h, 3_h), ElementsAre(fault("wait “rests”", "above the most")));
    EXPECT_THAT(withWait(Minutes{8 * 24 * 60}, {}),
                ElementsAre(fault("wait “rests”", "more than seven days")));
    EXPECT_THAT(withWait(0_min, Minutes{std::numeric_limits<std::int64_t>::max()}),
                ElementsAre(fault("wait “rests”", "more than a year")));
    EXPECT_THAT(withWait(4_h, Minutes{30 * 24 * 60}), IsEmpty());
    EXPECT_THAT(after([](Recipe& r) { r.common.waits[0].from.step.reset(); }),
                Contains(fault("wait “stands”", "begins at a step")));
}

TEST(RecipeFaults, NameTiesToWhatIsNotThere)
{
    EXPECT_THAT(after([](Recipe& r) { r.common.steps[1].after = {StepId{"wash"}}; }),
                Contains(fault("step “Do slice”", "“wash”, which is not there")));
    EXPECT_THAT(after([](Recipe& r) { r.common.steps[1].lines = {LineId{"salt"}}; }),
                Contains(fault("step “Do slice”", "the line “salt”, which is not there")));
    EXPECT_THAT(after([](Recipe& r) { r.common.waits[0].to.step = StepId{"wash"}; }),
                Contains(fault("wait “stands”", "“wash”, which is not there")));
    EXPECT_THAT(after([](Recipe& r) { r.common.waits[0].from.step = StepId{"wash"}; }),
                Contains(fault("wait “stands”", "“wash”, which is not there")));
    EXPECT_THAT(after([](Recipe& r) {
                    r.common.waits[0].from.edge = StepEdge::Start;
                    r.common.waits[0].to.step = StepId{"wash"};
                }),
                Contains(fault("wait “stands”", "“wash”, which is not there")));
    EXPECT_THAT(
        after([](Recipe& r) {
            r.common.spans = {{SpanId{"pan"}, "pan", {StepId{"wash"}, {}}, {}, BurnerUse{}}};
        }),
        Contains(fault("span “pan”", "“wash”, which is not there")));
}

TEST(RecipeFaults, SayWhichVariantATieBreaksIn)
{
    const auto faults =
        after([](Recipe& r) { r.variants[1].adds.steps = {step("brown", {StepId{"grill"}})}; });
    EXPECT_THAT(faults, ElementsAre(fault("variant “other”, step “Do brown”", "“grill”")));
}

TEST(RecipeFaults, NameDropsThatHitNothing)
{
    // A slip of the pen in "without nuts" must not leave the nuts in.
    EXPECT_THAT(after([](Recipe& r) { r.variants[1].dropLines = {LineId{"nutz"}}; }),
                ElementsAre(fault("variant “other”", "drops the line “nutz”, which is not there")));
    EXPECT_THAT(after([](Recipe& r) { r.variants[1].dropSteps = {StepId{"x"}}; }),
                ElementsAre(fault("variant “other”", "drops the step “x”")));
    EXPECT_THAT(after([](Recipe& r) { r.variants[1].dropWaits = {WaitId{"x"}}; }),
                ElementsAre(fault("variant “other”", "drops the wait “x”")));
    EXPECT_THAT(after([](Recipe& r) { r.variants[1].dropSpans = {SpanId{"x"}}; }),
                ElementsAre(fault("variant “other”", "drops the span “x”")));
    EXPECT_THAT(after([](Recipe& r) { r.variants[1].dropLines = {LineId{"nuts"}}; }), IsEmpty());
}

TEST(RecipeFaults, NameTheStepsOfACircle)
{
    const auto faults = after([](Recipe& r) { r.common.steps[0].after = {StepId{"bake"}}; });
    ASSERT_FALSE(faults.empty());
    EXPECT_THAT(faults, Contains(fault("waits", "in a circle")));
    for (const char* deed : {"“Do peel”", "“Do slice”", "“Do bake”"}) {
        EXPECT_THAT(faults.front().sentence, HasSubstr(deed));
    }
    EXPECT_THAT(after([](Recipe& r) { r.common.steps[0].after = {StepId{"peel"}}; }),
                Contains(fault("waits", "“Do peel” before “Do peel”")));
    EXPECT_THAT(after([](Recipe& r) { r.common.waits.push_back(wait("back", "bake", "peel")); }),
                Contains(fault("waits", "in a circle")));
}

TEST(RecipeFaults, FindACircleWhereverItIsAndNoneWhereThereIsNone)
{
    // Steps tied only to earlier ones are never in a circle; one tie back to an ancestor closes it.
    test::forEachSeed(200, [](test::Random& random) {
        Recipe recipe = gratin();
        recipe.common.steps.clear();
        recipe.common.waits.clear();
        const std::int64_t count = random.between(2, 12);
        for (std::int64_t i = 0; i < count; ++i) {
            Step made = step("s" + std::to_string(i));
            if (i > 0) {
                made.after.push_back(StepId{"s" + std::to_string(random.between(0, i - 1))});
            }
            recipe.common.steps.push_back(made);
        }
        EXPECT_THAT(faultsOf(recipe), IsEmpty());
        const auto last = static_cast<std::size_t>(random.between(1, count - 1));
        StepId ancestor = recipe.common.steps[last].after.front();
        for (auto& each : recipe.common.steps) {
            if (each.id == ancestor) {
                each.after.push_back(recipe.common.steps[last].id);
            }
        }
        EXPECT_THAT(faultsOf(recipe), Contains(fault("waits", "in a circle")));
    });
}

TEST(RecipeFaults, NamePortionsThatCannotBe)
{
    const auto withPortions = [](const Portions& portions) {
        return after([&](Recipe& r) { r.portions = portions; });
    };
    EXPECT_THAT(withPortions(Portions{0}), ElementsAre(fault("portions", "more than 0")));
    EXPECT_THAT(withPortions(Portions{-4}), ElementsAre(fault("portions", "more than 0")));
    EXPECT_THAT(withPortions(Portions{501}), ElementsAre(fault("portions", "at most 500")));
    EXPECT_THAT(withPortions(Portions{500}), IsEmpty());
    EXPECT_THAT(withPortions(Portions(5, 2)), IsEmpty());
    EXPECT_THAT(withPortions(Portions(100, 997)), ElementsAre(fault("portions", "twelfths")));
    EXPECT_THAT(after([](Recipe& r) { r.yields = Amount{}; }),
                ElementsAre(fault("yield", "more than nothing")));
}

TEST(RecipeFaults, NameStepsThatCannotBe)
{
    const auto withStep = [](const std::function<void(Step&)>& change) {
        return after([&](Recipe& r) { change(r.common.steps[2]); });
    };
    const std::string place = "step “Do bake”";
    EXPECT_THAT(withStep([](Step& s) { s.attention = Attention::percent(101); }),
                ElementsAre(fault(place, "between 0 and 100 %")));
    EXPECT_THAT(withStep([](Step& s) { s.cooks = 0; }),
                ElementsAre(fault(place, "1 and 20 cooks")));
    EXPECT_THAT(withStep([](Step& s) { s.portionsPerBatch = Portions{0}; }),
                ElementsAre(fault(place, "more than 0 portions")));
    EXPECT_THAT(withStep([](Step& s) { s.portionsPerBatch = Portions(1, 1000); }),
                ElementsAre(fault(place, "a tenth of a portion")));
    EXPECT_THAT(withStep([](Step& s) { s.ovenIn = -1_min; }),
                ElementsAre(fault(place, "Putting in")));
    EXPECT_THAT(withStep([](Step& s) { s.ovenOut = 61_min; }),
                ElementsAre(fault(place, "Putting in")));
    EXPECT_THAT(withStep([](Step& s) { s.turnAfter = 11_min; }),
                ElementsAre(fault(place, "The turn")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.leaves = {{"", {}}};
                }),
                ElementsAre(fault(place, "What it leaves")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {OvenUse{1, 200_degC, 150_degC, {}, {}}};
                }),
                ElementsAre(fault(place, "lowest temperature, 200 °C, is above its highest")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {OvenUse{1, 150_degC, 200_degC, 210_degC, {}}};
                }),
                ElementsAre(fault(place, "preferred oven temperature")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {OvenUse{1, 150_degC, 700_degC, {}, {}}};
                }),
                ElementsAre(fault(place, "between −40 and 600 °C")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {OvenUse{-1, 150_degC, 200_degC, {}, {}}};
                }),
                ElementsAre(fault(place, "shelves")));
    EXPECT_THAT(withStep([](Step& s) { s.uses = {BurnerUse{101_cm}}; }),
                ElementsAre(fault(place, "100 cm")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {ApplianceUse{"", 0_min}};
                }),
                ElementsAre(fault(place, "An appliance has a kind")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {VesselUse{"pan", 2_l, 0, 0_min}};
                }),
                ElementsAre(fault(place, "A vessel")));
    EXPECT_THAT(withStep([](Step& s) {
                    s.uses = {VesselUse{"pan", 2_l, 1, 25_h}};
                }),
                ElementsAre(fault(place, "Washing a vessel")));
}

TEST(RecipeFaults, NameLinesThatCannotBe)
{
    EXPECT_THAT(after([](Recipe& r) { r.common.lines[0].amount.value = Rational{-1}; }),
                ElementsAre(fault("line “potatoes”", "below 0")));
    EXPECT_THAT(after([](Recipe& r) { r.common.lines[0].preparation = r.id; }),
                ElementsAre(fault("line “potatoes”", "ingredient of itself")));
}

TEST(RecipeFaults, KeepNamesOfAnyKindAsTheyAre)
{
    for (const char* name : {"Ada's “best”", "🥔 gratin", "גרטן", "{}", "%s"}) {
        const auto faults = after([name](Recipe& r) {
            r.common.steps[2].text = name;
            r.common.steps[2].duration = {-1_min, 0_min, 0_min};
            r.common.steps[0].after = {StepId{"bake"}};
        });
        EXPECT_THAT(faults, Contains(fault("step “" + std::string(name) + "”", "cannot take")));
        EXPECT_THAT(faults, Contains(fault("waits", "“" + std::string(name) + "”")));
    }
}

} // namespace
} // namespace suppertide
