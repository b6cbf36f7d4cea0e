#include "tests/support/content/any_content.h"

#include <array>
#include <string>

#include "core/exchange/enum_names.h"

namespace suppertide::test {

namespace {

/// True half of the time.
bool maybe(Random& random)
{
    return random.oneIn(2);
}

template <typename Options>
auto oneOf(Random& random, const Options& options)
{
    const auto last = static_cast<std::int64_t>(std::size(options)) - 1;
    return options[static_cast<std::size_t>(random.between(0, last))];
}

template <typename E>
E anyOf(Random& random)
{
    return oneOf(random, enumNames<E>).first;
}

std::string anyText(Random& random)
{
    static const std::array<std::string, 12> texts{"Slice the potatoes",
                                                   "O'Brien's \"best\" — 100 %",
                                                   "סלט סלק",
                                                   "🥕🍋 zest & juice",
                                                   "a\\b/c\td\nnext line",
                                                   "1/2 piece; DROP TABLE recipes; --",
                                                   "ﬁllet of Ærø, smørrebrød",
                                                   "ごはん",
                                                   "e\u0301 and é",
                                                   "\u202eturned round\u202c",
                                                   "{\"id\": null}",
                                                   "plain flour"};
    return oneOf(random, texts);
}

std::string idOf(std::string_view what, std::size_t number)
{
    return std::string(what) + "-" + std::to_string(number);
}

Minutes anyMinutes(Random& random)
{
    return Minutes{random.between(0, 500)};
}

Rational anyRational(Random& random)
{
    return Rational{random.between(1, 2000), oneOf(random, std::array{1, 1, 2, 3, 4, 8, 10, 1000})};
}

Portions anyPortions(Random& random)
{
    return Portions{random.between(1, 40), maybe(random) ? 1 : 2};
}

Amount anyAmount(Random& random)
{
    const Unit unit = oneOf(random, allUnits);
    if (unit == Unit::ToTaste) {
        return {Rational{0}, unit};
    }
    Amount amount{unit == Unit::Pinch && maybe(random) ? Rational{1} : anyRational(random), unit};
    if (random.oneIn(5)) {
        amount.upTo = amount.value + Rational{random.between(1, 5)};
    }
    return amount;
}

Mould anyMould(Random& random)
{
    const auto side = [&random] { return Length::ofSmallest(random.between(10, 1500)); };
    if (maybe(random)) {
        return RoundMould{side()};
    }
    return RectangularMould{side(), side()};
}

LineScaling anyLineScaling(Random& random)
{
    switch (random.between(0, 5)) {
    case 0:
        return SameForAny{};
    case 1:
        return EachBatch{};
    case 2:
        return EachBatch{anyPortions(random)};
    case 3:
        return ByPower{Rational{random.between(0, 4), 4}};
    case 4:
        return ByMould{anyMould(random)};
    default:
        return InProportion{};
    }
}

Celsius anyCelsius(Random& random, int low, int high)
{
    return Celsius::tenths(static_cast<int>(random.between(low * 10, high * 10)));
}

std::optional<Filling> someFilling(Random& random)
{
    if (!maybe(random)) {
        return std::nullopt;
    }
    return Filling{decilitres(random.between(1, 90)), static_cast<int>(random.between(1, 100))};
}

Use anyUse(Random& random)
{
    switch (random.between(0, 3)) {
    case 0: {
        OvenUse use;
        use.shelves = static_cast<int>(random.between(0, 3));
        use.low = anyCelsius(random, 30, 150);
        use.high = anyCelsius(random, 160, 280);
        use.prefer = maybe(random) ? std::optional{anyCelsius(random, 150, 160)} : std::nullopt;
        use.mode = anyOf<OvenMode>(random);
        return use;
    }
    case 1:
        return BurnerUse{millimetres(random.between(100, 320))};
    case 2:
        return ApplianceUse{anyText(random), anyMinutes(random), someFilling(random)};
    default:
        return VesselUse{anyText(random), decilitres(random.between(0, 90)),
                         static_cast<int>(random.between(1, 4)), anyMinutes(random),
                         someFilling(random)};
    }
}

DurationRange anyDuration(Random& random)
{
    const Minutes least = anyMinutes(random);
    if (maybe(random)) {
        return {least, least, least};
    }
    const Minutes likely = least + anyMinutes(random);
    return {least, likely, likely + anyMinutes(random)};
}

std::vector<Substance> someSubstances(Random& random)
{
    std::vector<Substance> result;
    for (const Substance substance : allSubstances) {
        if (random.oneIn(8)) {
            result.push_back(substance);
        }
    }
    return result;
}

IngredientLine anyLine(Random& random, const std::string& id)
{
    IngredientLine line;
    line.id = LineId{id};
    line.ingredient = anyText(random);
    line.part = anyOf<IngredientPart>(random);
    line.amount = anyAmount(random);
    line.scaling = anyLineScaling(random);
    if (random.oneIn(4)) {
        line.also = anyAmount(random);
    }
    if (maybe(random)) {
        line.note = anyText(random);
        line.contains = someSubstances(random);
    }
    if (random.oneIn(6)) {
        line.preparation = RecipeId{"stock"};
        line.byProduct = anyText(random);
    }
    return line;
}

Step anyStep(Random& random, const std::string& id, const std::vector<Step>& before,
             const std::vector<IngredientLine>& lines)
{
    Step step;
    step.id = StepId{id};
    step.verb = maybe(random) ? "Slice" : "";
    step.text = anyText(random);
    step.detail = maybe(random) ? anyText(random) : "";
    for (const Step& earlier : before) {
        if (maybe(random)) {
            step.after.push_back(earlier.id);
        }
    }
    step.duration = anyDuration(random);
    step.scaling = anyOf<Scaling>(random);
    step.attention = oneOf(
        random, std::array{undivided, handsOn, keepAnEye, unattended, Attention::percent(35)});
    if (maybe(random)) {
        step.portionsPerBatch = anyPortions(random);
        step.cooks = static_cast<int>(random.between(1, 3));
        step.skill = anyText(random);
        step.atTable = maybe(random);
        step.mayRunUnwatched = maybe(random);
        step.ovenIn = Minutes{random.between(0, 60)};
        step.ovenOut = Minutes{random.between(0, 60)};
        step.turnAfter = Minutes{random.between(0, step.duration.most.count())};
    }
    while (maybe(random)) {
        step.uses.push_back(anyUse(random));
        step.leaves.push_back({anyText(random), anyAmount(random)});
        step.cautions.push_back(anyOf<Caution>(random));
    }
    for (const IngredientLine& line : lines) {
        if (maybe(random)) {
            step.lines.push_back(line.id);
        }
    }
    const bool isInOven = std::ranges::any_of(
        step.uses, [](const Use& use) { return std::holds_alternative<OvenUse>(use); });
    if (isInOven && random.oneIn(3)) {
        step.otherHeats.push_back({anyCelsius(random, 251, 260), anyCelsius(random, 280, 290),
                                   std::nullopt, anyDuration(random),
                                   static_cast<int>(random.between(0, 9))});
    }
    return step;
}

Wait anyWait(Random& random, const std::string& id, const std::vector<Step>& steps)
{
    Wait wait;
    wait.id = WaitId{id};
    wait.text = maybe(random) ? anyText(random) : "";
    wait.from = {oneOf(random, steps).id, maybe(random) ? StepEdge::Start : StepEdge::End};
    wait.least = anyMinutes(random);
    wait.most = maybe(random) ? std::optional{wait.least + anyMinutes(random)} : std::nullopt;
    while (maybe(random)) {
        KeepOption keep;
        keep.place = anyOf<KeepPlace>(random);
        keep.most = maybe(random) ? std::optional{wait.least + anyMinutes(random)} : std::nullopt;
        keep.litres = decilitres(random.between(0, 60));
        keep.scaling = anyOf<Scaling>(random);
        keep.lossPerHour = static_cast<int>(random.between(0, 3));
        keep.warmBy = anyOf<WarmBy>(random);
        wait.keep.push_back(keep);
    }
    if (maybe(random)) {
        wait.chillsTo = anyCelsius(random, 0, 20);
        wait.setsFor = anyMinutes(random);
    }
    return wait;
}

FollowedFood anyFood(Random& random, const std::string& id, const std::vector<Step>& steps)
{
    FollowedFood food;
    food.id = FollowedFoodId{id};
    food.name = anyText(random);
    food.kind.food = oneOf(random, allFoodClasses);
    if (maybe(random)) {
        food.kind.facts = {oneOf(random, allRiskFacts)};
    }
    food.material = maybe(random) ? "beef, lean" : "";
    food.shape = anyOf<FoodShape>(random);
    food.thickness = millimetres(random.between(1, 300));
    food.mass = grams(random.between(1, 5000));
    food.scaling = anyOf<Scaling>(random);
    food.isOnePiece = maybe(random);
    food.from = anyOf<KeepPlace>(random);
    FoodTreatment treatment;
    treatment.step = oneOf(random, steps).id;
    treatment.treatment = anyOf<Treatment>(random);
    treatment.to = anyCelsius(random, 0, 100);
    treatment.leaves = static_cast<int>(random.between(1, 99));
    treatment.isLid = maybe(random);
    treatment.isInBath = maybe(random);
    treatment.setsDuration = maybe(random);
    treatment.isReheating = maybe(random);
    if (maybe(random)) {
        treatment.becomes = oneOf(random, allFoodClasses);
    }
    food.steps.push_back(treatment);
    return food;
}

RecipePart anyPart(Random& random, const std::string& prefix, std::int64_t size)
{
    RecipePart part;
    for (std::int64_t i = random.between(0, size); i > 0; --i) {
        part.lines.push_back(anyLine(random, idOf(prefix + "line", part.lines.size())));
    }
    for (std::int64_t i = random.between(0, size); i > 0; --i) {
        part.steps.push_back(
            anyStep(random, idOf(prefix + "step.a", part.steps.size()), part.steps, part.lines));
    }
    if (!part.steps.empty() && maybe(random)) {
        part.waits.push_back(anyWait(random, prefix + "wait", part.steps));
        part.spans.push_back({SpanId{prefix + "span"},
                              anyText(random),
                              {oneOf(random, part.steps).id, StepEdge::Start},
                              {},
                              anyUse(random)});
    }
    if (!part.steps.empty() && maybe(random)) {
        part.foods.push_back(anyFood(random, prefix + "food", part.steps));
    }
    return part;
}

/// The last of each list that has any.
void dropSome(const RecipePart& part, Variant& variant)
{
    const auto last = [](const auto& list, auto& drops) {
        if (!list.empty()) {
            drops.push_back(list.back().id);
        }
    };
    last(part.lines, variant.dropLines);
    last(part.steps, variant.dropSteps);
    last(part.waits, variant.dropWaits);
    last(part.spans, variant.dropSpans);
    last(part.foods, variant.dropFoods);
}

} // namespace

Recipe anyRecipe(Random& random, const std::string& id)
{
    const auto size = std::min<std::int64_t>(2 + static_cast<std::int64_t>(random.seed()) / 20, 7);
    Recipe recipe;
    recipe.id = RecipeId{id};
    recipe.name = anyText(random);
    recipe.kind = anyOf<RecipeKind>(random);
    recipe.note = maybe(random) ? anyText(random) : "";
    recipe.portions = anyPortions(random);
    recipe.common = anyPart(random, "", size);
    if (maybe(random)) {
        recipe.keywords = {anyText(random), anyText(random)};
        recipe.yields = Amount{anyRational(random), Unit::Gram};
    }
    if (maybe(random)) {
        MethodChoice choice{MethodChoiceId{"way"}, anyText(random), {}};
        for (std::size_t i = 0; i < 2; ++i) {
            choice.methods.push_back({MethodId{idOf("way", i)}, anyText(random),
                                      static_cast<int>(random.between(0, 9)),
                                      anyPart(random, idOf("m", i), 2)});
        }
        recipe.methods.push_back(std::move(choice));
    }
    recipe.variants.push_back({.id = VariantId{"plain"}, .name = anyText(random)});
    if (maybe(random)) {
        Variant variant{.id = VariantId{"other"}, .name = anyText(random)};
        variant.note = anyText(random);
        variant.adds = anyPart(random, "v-", 2);
        dropSome(recipe.common, variant);
        recipe.variants.push_back(std::move(variant));
    }
    return recipe;
}

Kitchen anyKitchen(Random& random, const std::string& id)
{
    Kitchen kitchen;
    kitchen.id = KitchenId{id};
    kitchen.name = anyText(random);
    for (std::int64_t i = random.between(0, 2); i > 0; --i) {
        const std::size_t n = kitchen.ovens.size();
        kitchen.ovens.push_back({KitchenItemId{idOf("oven", n)}, anyText(random),
                                 static_cast<int>(random.between(1, 4)), anyCelsius(random, 30, 60),
                                 anyCelsius(random, 200, 300), maybe(random), maybe(random),
                                 random.between(1, 20'000), random.between(1, 20'000)});
        for (std::int64_t at = random.between(0, 2); at > 0; --at) {
            std::vector<OvenWarming>& warming = kitchen.ovens.back().warming;
            const auto before = static_cast<int>(warming.size());
            warming.push_back({Minutes{10 * before + random.between(1, 9)},
                               anyCelsius(random, 100 * before + 50, 100 * before + 100)});
        }
        kitchen.burners.push_back({KitchenItemId{idOf("burner", n)}, anyText(random),
                                   millimetres(random.between(100, 300)),
                                   watts(random.between(500, 3000)), anyOf<BurnerKind>(random)});
        kitchen.appliances.push_back(
            {KitchenItemId{idOf("appliance", n)}, anyText(random), anyText(random),
             maybe(random) ? std::optional{decilitres(random.between(1, 90))} : std::nullopt});
        kitchen.vessels.push_back({KitchenItemId{idOf("vessel", n)}, anyText(random),
                                   anyText(random), decilitres(random.between(0, 90)),
                                   millimetres(random.between(0, 400)),
                                   static_cast<int>(random.between(1, 3))});
        kitchen.coldPlaces.push_back({KitchenItemId{idOf("cold", n)}, anyText(random),
                                      anyOf<ColdKind>(random), decilitres(random.between(0, 500)),
                                      std::nullopt});
        if (maybe(random)) {
            kitchen.coldPlaces.back().temperature = anyCelsius(random, -30, 10);
        }
        KitchenCook cook{CookId{idOf("cook", n)}, anyText(random), maybe(random), {}};
        if (maybe(random)) {
            cook.skills = {anyText(random)};
            cook.usualHours = {{{6, 5}, {12, 0}, Presence::AtHome}, {{12, 0}, {24, 0}}};
        } else if (maybe(random)) {
            cook.usualHours.clear();
        }
        kitchen.cooks.push_back(std::move(cook));
    }
    kitchen.roomTemperature = anyCelsius(random, 10, 30);
    kitchen.altitudeMetres = static_cast<int>(random.between(-400, 5000));
    if (maybe(random)) {
        kitchen.timesTaken.push_back({KitchenItemId{"time"},
                                      anyText(random),
                                      KitchenItemId{"oven"},
                                      {2027, 6, static_cast<unsigned>(random.between(1, 30))},
                                      Minutes{random.between(1, 100)},
                                      Minutes{random.between(1, 100)}});
    }
    return kitchen;
}

namespace {

std::optional<CookId> someCook(Random& random, const Kitchen& kitchen)
{
    return kitchen.cooks.empty() || maybe(random) ? std::nullopt
                                                  : std::optional{oneOf(random, kitchen.cooks).id};
}

Course anyCourse(Random& random, const std::string& id, const std::vector<Recipe>& recipes,
                 const Kitchen& kitchen)
{
    Course course;
    course.id = CourseId{id};
    course.name = anyText(random);
    course.serving = {{2027, 6, 19}, {19, 30}};
    course.atTable = anyMinutes(random);
    course.isServingPinned = maybe(random);
    course.alternatives = {{AlternativeId{"first"}, anyText(random), maybe(random)}};
    while (!recipes.empty() && maybe(random)) {
        const Recipe& recipe = recipes[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(recipes.size()) - 1))];
        Dish dish;
        dish.id = DishId{idOf(id + "-dish", course.dishes.size())};
        dish.recipe = recipe.id;
        dish.alternative = maybe(random) ? AlternativeId{"first"} : AlternativeId{};
        dish.mix = {{recipe.variants.back().id, anyPortions(random), {GuestId{"bea"}}}};
        dish.cook = someCook(random, kitchen);
        dish.methods = {{MethodChoiceId{"way"}, MethodId{"way-0"}}};
        if (const auto own = mouldOf(recipe); own && maybe(random)) {
            dish.mould =
                maybe(random) ? OtherMould{anyMould(random), false} : OtherMould{*own, true};
        }
        course.dishes.push_back(std::move(dish));
    }
    return course;
}

std::vector<DishId> firstDish(const Occasion& occasion)
{
    for (const Course& course : occasion.courses) {
        if (!course.dishes.empty()) {
            return {course.dishes.front().id};
        }
    }
    return {};
}

/// A text of one line, as ids are.
std::string anyKey(Random& random)
{
    std::string key = anyText(random);
    std::erase_if(key, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    return key;
}

Layout anyLayout(Random& random)
{
    const Instant origin{Minutes{30'000'000}}; // in 2027
    Layout layout;
    layout.starts = {{"soup/plain/1/bake", origin + anyMinutes(random)},
                     {anyKey(random), origin + anyMinutes(random)}};
    layout.options = {{anyKey(random), anyKey(random)}};
    layout.cooks = {{anyKey(random), {"maren", "tom"}}, {"none", {}}};
    layout.units = {{anyKey(random), "front left"}};
    layout.ovens = {{"demand", "oven-0"}};
    layout.pinned = {"demand", "way", "a"};
    layout.ovenSettings = {{"oven-0", origin, origin + anyMinutes(random), 180}};
    layout.washed = {"salad/*/dress:bowl", "demand"};
    layout.plannedFrom = {{"guests", "1f"}, {"recipe/roots", "a0"}};
    return layout;
}

Progress anyProgress(Random& random)
{
    const Instant origin{Minutes{30'000'000}};
    Progress progress;
    StepReport begun;
    begun.started = origin + anyMinutes(random);
    begun.longer = anyMinutes(random);
    begun.cooks = {"maren", anyKey(random)};
    begun.units = {{anyKey(random), "front left"}};
    begun.ovens = {{"demand", "oven-0"}};
    StepReport late;
    late.notBefore = origin + anyMinutes(random);
    StepReport left;
    left.isLeftOut = true;
    progress.steps = {{"soup/plain/1/bake", begun}, {anyKey(random), late}, {"none", left}};
    if (maybe(random)) {
        progress.steps["soup/plain/1/bake"].done = origin + anyMinutes(random);
        progress.ovens = {{"oven-0", origin, static_cast<int>(random.between(-20, 300))}};
        progress.givenUp = {"lag:" + anyKey(random), "window:job/receive"};
        progress.longerHours = anyMinutes(random);
        progress.cooks = {{anyKey(random), {"maren", "tom"}}, {"none", {}}};
    }
    return progress;
}

Bought anyBought(Random& random)
{
    Bought bought;
    while (maybe(random)) {
        bought.lines[anyKey(random)] = anyAmount(random);
    }
    return bought;
}

} // namespace

OccasionRecord anyOccasion(Random& random, const std::string& id,
                           const std::vector<Recipe>& recipes, const Kitchen& kitchen)
{
    OccasionRecord record;
    Occasion& occasion = record.occasion;
    occasion.id = OccasionId{id};
    occasion.name = anyText(random);
    occasion.zone = oneOf(random, std::array<std::string, 2>{"Europe/London", "Asia/Kathmandu"});
    occasion.kitchen = kitchen.id;
    occasion.guests = {
        {GuestId{"bea"}, anyText(random), {Diet::Coeliac, Diet::NoAlcohol}, {}, {}},
        {GuestId{"ivo"}, "", {}, someSubstances(random), {oneOf(random, allRiskGroups)}}};
    if (maybe(random)) {
        occasion.guests.back().portion = Portions{random.between(1, 12), 12};
        occasion.guests.back().dislikes = {anyText(random), anyText(random)};
    }
    occasion.courses = {anyCourse(random, "soup", recipes, kitchen),
                        anyCourse(random, "main", recipes, kitchen)};
    const CivilTime noon{{2027, 6, 18}, {12, 0}};
    const CivilTime evening{{2027, 6, 18}, {20, 15}};
    if (maybe(random)) {
        occasion.houseJobs = {{HouseJobId{"table"}, anyText(random), anyMinutes(random), keepAnEye,
                               noon, evening, someCook(random, kitchen)}};
        occasion.trips = {{HouseJobId{"market"}, anyText(random), anyMinutes(random), noon, evening,
                           firstDish(occasion), anyMinutes(random),
                           decilitres(random.between(0, 300)), someCook(random, kitchen)}};
    }
    if (const auto cook = someCook(random, kitchen)) {
        occasion.hours = {
            {*cook, {{{2027, 6, 19}, {{{8, 0}, {9, 30}, Presence::AtHome}}}, {{2027, 6, 20}, {}}}}};
    }
    occasion.preferences = {static_cast<int>(random.between(0, 100)),
                            anyOf<Wish>(random),
                            anyOf<Wish>(random),
                            anyOf<Wish>(random),
                            anyOf<CautionLevel>(random),
                            anyOf<safety::RuleBook>(random)};
    occasion.note = maybe(random) ? anyText(random) : "";
    if (maybe(random)) {
        record.layout = anyLayout(random);
    }
    if (maybe(random)) {
        record.progress = anyProgress(random);
    }
    record.bought = anyBought(random);
    return record;
}

namespace {

Amount anyAmountToBuy(Random& random)
{
    Amount amount = anyAmount(random);
    while (amount.unit == Unit::ToTaste) {
        amount = anyAmount(random);
    }
    return amount;
}

OwnIngredient anyOwnIngredient(Random& random, std::size_t number)
{
    OwnIngredient own;
    own.name = idOf(anyText(random), number);
    if (maybe(random)) {
        own.synonyms = {idOf("also " + anyText(random), number)};
        own.contains = someSubstances(random);
        own.litreWeighs = Grams::ofSmallest(random.between(1, 2'000'000));
        own.keepsDays = static_cast<int>(random.between(0, 400));
    }
    if (maybe(random)) {
        own.pieceWeighs = Grams::ofSmallest(random.between(1, 3'000'000));
        own.ediblePercent = static_cast<int>(random.between(1, 100));
        own.parts[anyOf<IngredientPart>(random)] = anyAmountToBuy(random);
        own.section = anyText(random);
        own.source = anyText(random);
    }
    return own;
}

} // namespace

Larder anyLarder(Random& random)
{
    const CivilDate day{2027, 6, static_cast<unsigned>(random.between(1, 30))};
    Larder larder;
    while (maybe(random)) {
        larder.ingredients.push_back(anyOwnIngredient(random, larder.ingredients.size()));
    }
    while (maybe(random)) {
        larder.stock.push_back({anyText(random), anyAmount(random), std::nullopt, maybe(random),
                                maybe(random) ? anyText(random) : ""});
        larder.packs.push_back({anyText(random), anyAmountToBuy(random), std::nullopt,
                                maybe(random) ? anyText(random) : "", maybe(random)});
        larder.labels.push_back({anyText(random), someSubstances(random), std::nullopt,
                                 maybe(random) ? anyText(random) : ""});
        if (maybe(random)) {
            larder.stock.back().useBy = day;
            larder.packs.back().price = random.between(0, 10'000);
            larder.labels.back().read = day;
        }
    }
    if (maybe(random)) {
        larder.currency = "JPY";
        larder.sections = {anyText(random), anyText(random)};
    }
    return larder;
}

ExchangeContent anyContent(Random& random)
{
    ExchangeContent content;
    const auto count = static_cast<std::size_t>(random.between(0, 3));
    for (std::size_t i = 0; i < count; ++i) {
        content.recipes.push_back(anyRecipe(random, idOf("recipe", i)));
        content.kitchens.push_back(anyKitchen(random, idOf("kitchen", i)));
        content.occasions.push_back(
            anyOccasion(random, idOf("occasion", i), content.recipes, content.kitchens.back()));
    }
    if (maybe(random)) {
        content.larder = anyLarder(random);
    }
    return content;
}

} // namespace suppertide::test
