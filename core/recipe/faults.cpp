// What in a recipe cannot be, said with its place.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/recipe/tie_faults.h"

namespace suppertide {

namespace {

// The longest that a plan reaches back from serving.
constexpr Minutes longest{7 * 24 * 60};
// What is kept longer than a year is no part of one evening's plan.
constexpr Minutes longestKept{366 * 24 * 60};
constexpr Minutes longestHandling{60};
constexpr Minutes longestWashing{24 * 60};
// Portions are parts that a cook would share out; finer ones only make sums overflow.
constexpr std::int64_t finestPortion = 12;
// Far beyond any recipe; keeps what is done with each pair of steps in bounds.
constexpr std::size_t mostSteps = 500;
constexpr Celsius coldest = Celsius::degrees(-40);
constexpr Celsius hottest = Celsius::degrees(600);
constexpr Celsius hottestFood = Celsius::degrees(250);
constexpr Grams heaviest = grams(100'000);
constexpr Length thickest = centimetres(50);

using Faults = std::vector<RecipeFault>;

class FaultFinder
{
public:
    FaultFinder(Faults& faults, RecipeId recipe) : faults_(faults), recipe_(std::move(recipe)) {}

    void say(std::string place, std::string sentence)
    {
        faults_.push_back({std::move(place), std::move(sentence)});
    }

    /// Same ids in one list: the second is named.
    template <typename T>
    void checkIds(const std::vector<T>& list, const std::string& where, std::string_view what)
    {
        std::set<std::string> seen;
        for (const T& each : list) {
            if (each.id.empty()) {
                say(where, fmt::format("A {} has no id. Give it one.", what));
            } else if (!seen.insert(each.id.text()).second) {
                say(where, fmt::format("Two {}s have the id “{}”. Rename one of them.", what,
                                       each.id.text()));
            }
        }
    }

    void checkDuration(const DurationRange& duration, const std::string& place)
    {
        if (duration.least < Minutes{0}) {
            say(place, fmt::format("A step cannot take {} minutes. Give 0 or more.",
                                   duration.least.count()));
        } else if (duration.least > duration.likely || duration.likely > duration.most) {
            say(place, fmt::format("Least {}, likely {}, most {} minutes are not in rising order.",
                                   duration.least.count(), duration.likely.count(),
                                   duration.most.count()));
        } else if (duration.most > longest) {
            say(place, fmt::format("{} minutes is more than seven days. A plan reaches back seven "
                                   "days at most.",
                                   duration.most.count()));
        }
    }

    void checkUse(const Use& use, const std::string& place)
    {
        std::visit([this, &place](const auto& each) { checkOne(each, place); }, use);
    }

    void checkStep(const Step& step, const std::string& where)
    {
        const std::string place = where + "step “" + nameInFaults(step) + "”";
        checkDuration(step.duration, place + ", duration");
        if (step.attention < Attention::percent(0) || step.attention > Attention::percent(100)) {
            say(place, "Attention lies between 0 and 100 %.");
        }
        if (step.cooks < 1 || step.cooks > 20) {
            say(place, "A step takes between 1 and 20 cooks.");
        }
        if (step.portionsPerBatch && *step.portionsPerBatch <= Portions{0}) {
            say(place, "A batch holds more than 0 portions.");
        } else if (step.portionsPerBatch && *step.portionsPerBatch < Portions(1, 10)) {
            say(place, "A batch holds at least a tenth of a portion.");
        }
        checkHandling(step, place);
        checkOtherHeats(step, place);
        for (const Use& use : step.uses) {
            checkUse(use, place);
        }
        for (const ByProduct& left : step.leaves) {
            if (left.name.empty() || !isPossible(left.amount)) {
                say(place, "What it leaves has a name and an amount of 0 or more.");
            }
        }
    }

    void checkOtherHeats(const Step& step, const std::string& place)
    {
        const auto oven = std::ranges::find_if(
            step.uses, [](const Use& use) { return std::holds_alternative<OvenUse>(use); });
        if (!step.otherHeats.empty() && oven == step.uses.end()) {
            say(place, "It is given at several oven temperatures, but it uses no oven.");
            return;
        }
        constexpr std::size_t mostHeats = 8;
        if (step.otherHeats.size() > mostHeats) {
            say(place, "Eight other temperatures are the most.");
        }
        std::set<int> seen; // tenths
        for (const OtherHeat& other : step.otherHeats) {
            OvenUse use = std::get<OvenUse>(*oven);
            seen.insert(use.prefer.value_or(use.low).tenths());
            use.low = other.low;
            use.high = other.high;
            use.prefer = other.prefer;
            checkOne(use, place);
            checkDuration(other.duration, place + ", other temperature");
            if (other.cost < 0) {
                say(place, "A temperature's cost is 0 or more.");
            }
            if (!seen.insert(other.prefer.value_or(other.low).tenths()).second) {
                say(place, fmt::format("It is given twice at {} °C. Take one of the two away.",
                                       other.prefer.value_or(other.low).wholeDegrees()));
            }
        }
    }

    void checkHandling(const Step& step, const std::string& place)
    {
        if (step.ovenIn < Minutes{0} || step.ovenOut < Minutes{0} ||
            step.ovenIn > longestHandling || step.ovenOut > longestHandling) {
            say(place, "Putting in and taking out take between 0 minutes and an hour.");
        }
        if (step.turnAfter &&
            (*step.turnAfter < Minutes{0} || *step.turnAfter > step.duration.most)) {
            say(place, "The turn lies between the start and the end of the time in the oven.");
        }
    }

    void checkWait(const Wait& wait, const std::string& where)
    {
        const std::string place =
            where + "wait “" + (wait.text.empty() ? wait.id.text() : wait.text) + "”";
        if (wait.least < Minutes{0} || (wait.most && *wait.most < Minutes{0})) {
            say(place, "A wait cannot be shorter than 0 minutes.");
        } else if (wait.most && wait.least > *wait.most) {
            say(place, fmt::format("The least, {} minutes, is above the most, {}.",
                                   wait.least.count(), wait.most->count()));
        } else if (wait.least > longest) {
            say(place, "A wait of more than seven days does not fit in a plan.");
        } else if (wait.most && *wait.most > longestKept) {
            say(place, "What keeps for more than a year needs no most. Take it away.");
        }
        if (wait.setsFor < Minutes{0} || wait.setsFor > longest) {
            say(place, "It sets for 0 minutes to seven days.");
        }
        for (const KeepOption& keep : wait.keep) {
            if ((keep.most && *keep.most < wait.least) || keep.litres < Litres{} ||
                keep.lossPerHour < 0) {
                say(place,
                    "A place to keep it has a most below the wait's least, or a litre or loss "
                    "below 0.");
            }
        }
    }

    void checkLine(const IngredientLine& line, const std::string& where)
    {
        if (line.ingredient.empty() && !line.preparation) {
            say(where + "line “" + line.id.text() + "”", "The line names no ingredient.");
        }
        const std::string place = where + "line “" + line.ingredient + "”";
        if (!isPossible(line.amount) || (line.also && !isPossible(*line.also))) {
            say(place, "An amount cannot be below 0, and a range ends above where it begins.");
        }
        if (!isPossible(line.scaling)) {
            say(place, "With more portions: a power lies from 0 to 1, a batch is for more than 0 "
                       "portions, a mould has sides of 1 to 150 cm.");
        }
        if (line.preparation && *line.preparation == recipe_) {
            say(where + "line “" + (line.ingredient.empty() ? line.id.text() : line.ingredient) +
                    "”",
                "The recipe cannot be an ingredient of itself. Name another recipe.");
        }
    }

    void checkFood(const FollowedFood& food, const std::string& where)
    {
        const std::string place =
            where + "food “" + (food.name.empty() ? food.id.text() : food.name) + "”";
        if (food.mass < Grams{} || food.mass > heaviest) {
            say(place, "A food that is followed weighs between 0 g and 100 kg.");
        }
        if (food.thickness < Length{} || food.thickness > thickest) {
            say(place, "A food that is followed is at most 50 cm thick.");
        }
        if (!food.material.empty() && (food.mass.isZero() || food.thickness.isZero())) {
            say(place, "Say how much it weighs and how thick it is, or take its material away: "
                       "without them no temperature can be computed.");
        }
        for (const FoodTreatment& treatment : food.steps) {
            checkTreatment(treatment, place + ", step “" + treatment.step.text() + "”");
        }
    }

    void checkTreatment(const FoodTreatment& treatment, const std::string& place)
    {
        if (treatment.to && (*treatment.to < coldest || *treatment.to > hottestFood)) {
            say(place, "The middle of a food is between −40 and 250 °C.");
        }
        if (treatment.leaves < 1 || treatment.leaves > 100) {
            say(place, "Of what is reduced between 1 and 100 % is left.");
        }
        if (treatment.treatment == Treatment::Reduce && treatment.leaves == 100 &&
            treatment.setsDuration) {
            say(place, "Say how much is left, in percent: a reduction to all of it takes no time.");
        }
        if (treatment.setsDuration && !treatment.to &&
            (treatment.treatment == Treatment::Heat || treatment.treatment == Treatment::IceBath)) {
            say(place,
                "Say how warm its middle is to be at the end: else no time can be computed.");
        }
    }

    void checkPart(const RecipePart& part, const std::string& where)
    {
        checkIds(part.lines, where + "lines", "line");
        checkIds(part.steps, where + "steps", "step");
        checkIds(part.waits, where + "waits", "wait");
        checkIds(part.spans, where + "spans", "span");
        checkIds(part.foods, where + "foods", "food");
        for (const IngredientLine& line : part.lines) {
            checkLine(line, where);
        }
        for (const Step& step : part.steps) {
            checkStep(step, where);
        }
        for (const Wait& wait : part.waits) {
            checkWait(wait, where);
        }
        for (const Span& span : part.spans) {
            checkUse(span.use, where + "span “" + span.text + "”");
        }
        for (const FollowedFood& food : part.foods) {
            checkFood(food, where);
        }
    }

private:
    void checkOne(const OvenUse& use, const std::string& place)
    {
        if (use.low < coldest || use.high > hottest) {
            say(place, "An oven temperature lies between −40 and 600 °C.");
        } else if (use.low > use.high) {
            say(place,
                fmt::format("The oven's lowest temperature, {} °C, is above its highest, {} °C.",
                            use.low.wholeDegrees(), use.high.wholeDegrees()));
        } else if (use.prefer && (*use.prefer < use.low || *use.prefer > use.high)) {
            say(place, "The preferred oven temperature lies outside what is accepted.");
        }
        if (use.shelves < 0 || use.shelves > 20) {
            say(place, "An oven dish takes between 0 and 20 shelves.");
        }
    }
    void checkOne(const BurnerUse& use, const std::string& place)
    {
        if (use.pan < Length{} || use.pan > centimetres(100)) {
            say(place, "A pan is between 0 and 100 cm wide.");
        }
    }
    void checkOne(const ApplianceUse& use, const std::string& place)
    {
        if (use.kind.empty() || use.washing < Minutes{0} || use.washing > longestWashing) {
            say(place, "An appliance has a kind, and its washing takes 0 minutes to a day.");
        }
        checkFilling(use.filling, place);
    }
    void checkOne(const VesselUse& use, const std::string& place)
    {
        if (use.kind.empty() || use.count < 1 || use.volume < Litres{}) {
            say(place, "A vessel has a kind, a number of 1 or more, and a volume of 0 or more.");
        }
        if (use.washing < Minutes{0} || use.washing > longestWashing) {
            say(place, "Washing a vessel takes 0 minutes to a day.");
        }
        checkFilling(use.filling, place);
    }
    void checkFilling(const std::optional<Filling>& filling, const std::string& place)
    {
        if (filling && (filling->volume <= Litres{} || filling->volume > litres(1000))) {
            say(place, "What is filled in is more than 0 and at most 1000 l.");
        }
        if (filling && (filling->percent < 1 || filling->percent > 100)) {
            say(place, "A vessel is filled to between 1 and 100 % of what it holds.");
        }
    }

    Faults& faults_;
    RecipeId recipe_;
};

void checkPortions(const Recipe& recipe, FaultFinder& finder)
{
    if (recipe.portions <= Portions{0} || recipe.portions > Portions{500}) {
        finder.say("portions", "A recipe is for more than 0 and at most 500 portions.");
    } else if (recipe.portions.denominator() > finestPortion) {
        finder.say("portions", "Portions are shared out in twelfths at the finest.");
    }
    if (recipe.yields && recipe.yields->value <= Rational{0}) {
        finder.say("yield", "A preparation yields more than nothing.");
    }
}

void checkMethods(const Recipe& recipe, FaultFinder& finder)
{
    finder.checkIds(recipe.methods, "methods", "choice");
    for (const MethodChoice& choice : recipe.methods) {
        const std::string where = "method “" + choice.name + "”, ";
        if (choice.methods.empty()) {
            finder.say("method “" + choice.name + "”", "There is nothing to choose from.");
        }
        finder.checkIds(choice.methods, "method “" + choice.name + "”", "method");
        for (const Method& method : choice.methods) {
            finder.checkPart(method.part, where);
            if (method.cost < 0) {
                finder.say(where + method.name, "A method's cost is 0 or more.");
            }
        }
    }
}

std::size_t stepsIn(const Recipe& recipe)
{
    std::size_t count = recipe.common.steps.size();
    for (const Variant& variant : recipe.variants) {
        count += variant.adds.steps.size();
    }
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            count += method.part.steps.size();
        }
    }
    return count;
}

} // namespace

std::vector<RecipeFault> faultsOf(const Recipe& recipe)
{
    Faults faults;
    FaultFinder finder(faults, recipe.id);
    if (recipe.id.empty()) {
        finder.say("recipe", "The recipe has no id.");
    }
    if (recipe.name.empty()) {
        finder.say("recipe", "The recipe has no name. Give it one.");
    }
    checkPortions(recipe, finder);
    if (recipe.variants.empty()) {
        finder.say("variants", "A recipe has at least one variant.");
    }
    if (const std::size_t steps = stepsIn(recipe); steps > mostSteps) {
        finder.say("steps", fmt::format("There are {} steps; {} are the most of one recipe. Make "
                                        "preparations of some.",
                                        steps, mostSteps));
        return faults;
    }
    finder.checkPart(recipe.common, "");
    checkMethods(recipe, finder);
    finder.checkIds(recipe.variants, "variants", "variant");
    for (const Variant& variant : recipe.variants) {
        const std::string where = "variant “" + variant.name + "”, ";
        finder.checkPart(variant.adds, where);
        addDropFaults(recipe, variant, faults);
        if (const auto resolved = resolve(recipe, variant.id)) {
            // Said with the variant only where there are several to tell apart.
            const std::string at = recipe.variants.size() > 1 ? where : "";
            addTieFaults(*resolved, at, faults);
        }
    }
    return faults;
}

} // namespace suppertide
