// What in a recipe cannot be, said with its place.
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "core/recipe/recipe.h"

namespace suppertide {

namespace {

// The longest that a plan reaches back from serving.
constexpr Minutes longest{7 * 24 * 60};
constexpr Celsius coldest = Celsius::degrees(-40);
constexpr Celsius hottest = Celsius::degrees(600);

using Faults = std::vector<RecipeFault>;

/// What to call a step: its deed, or its id where it has none.
std::string called(const Step& step)
{
    return step.text.empty() ? step.id.text() : step.text;
}

class FaultFinder
{
public:
    explicit FaultFinder(Faults& faults) : faults_(faults) {}

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
        const std::string place = where + "step “" + called(step) + "”";
        checkDuration(step.duration, place + ", duration");
        if (step.attention < Attention::percent(0) || step.attention > Attention::percent(100)) {
            say(place, "Attention lies between 0 and 100 %.");
        }
        if (step.cooks < 1 || step.cooks > 20) {
            say(place, "A step takes between 1 and 20 cooks.");
        }
        if (step.portionsPerBatch && *step.portionsPerBatch <= Portions{0}) {
            say(place, "A batch holds more than 0 portions.");
        }
        if (step.ovenIn < Minutes{0} || step.ovenOut < Minutes{0}) {
            say(place, "Putting in and taking out take 0 minutes or more.");
        }
        if (step.turnAfter && (*step.turnAfter < Minutes{0} || *step.turnAfter > longest)) {
            say(place, "The turn lies between the start and the end of the time in the oven.");
        }
        for (const Use& use : step.uses) {
            checkUse(use, place);
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
        if (line.amount.value < Rational{0}) {
            say(where + "line “" + line.ingredient + "”", "An amount cannot be below 0.");
        }
    }

    void checkPart(const RecipePart& part, const std::string& where)
    {
        checkIds(part.lines, where + "lines", "line");
        checkIds(part.steps, where + "steps", "step");
        checkIds(part.waits, where + "waits", "wait");
        checkIds(part.spans, where + "spans", "span");
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
        if (use.kind.empty() || use.washing < Minutes{0}) {
            say(place, "An appliance has a kind, and its washing takes 0 minutes or more.");
        }
    }
    void checkOne(const VesselUse& use, const std::string& place)
    {
        if (use.kind.empty() || use.count < 1 || use.volume < Litres{} ||
            use.washing < Minutes{0}) {
            say(place, "A vessel has a kind, a number of 1 or more, and a volume of 0 or more.");
        }
    }

    Faults& faults_;
};

/// All parts of one variant together: what its ties may refer to.
std::vector<const RecipePart*> partsOf(const ResolvedRecipe& recipe)
{
    std::vector<const RecipePart*> parts{&recipe.part};
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            parts.push_back(&method.part);
        }
    }
    return parts;
}

/// One variant's ties: to what is not there, and in a circle.
class TieChecker
{
public:
    TieChecker(const ResolvedRecipe& recipe, FaultFinder& finder, std::string where)
        : finder_(finder), where_(std::move(where))
    {
        for (const RecipePart* part : partsOf(recipe)) {
            for (const Step& step : part->steps) {
                steps_.emplace(step.id, &step);
            }
            for (const IngredientLine& line : part->lines) {
                lines_.insert(line.id);
            }
        }
        for (const RecipePart* part : partsOf(recipe)) {
            checkTies(*part);
        }
        checkCircles();
    }

private:
    void checkTies(const RecipePart& part)
    {
        for (const Step& step : part.steps) {
            checkStep(step);
        }
        for (const Wait& wait : part.waits) {
            checkWait(wait);
        }
        for (const Span& span : part.spans) {
            for (const StepPoint* point : {&span.from, &span.to}) {
                if (point->step) {
                    known(*point->step, "span “" + span.text + "”");
                }
            }
        }
    }

    void checkStep(const Step& step)
    {
        const std::string place = "step “" + called(step) + "”";
        for (const StepId& before : step.after) {
            tie(before, step.id, place);
        }
        for (const LineId& line : step.lines) {
            if (!lines_.contains(line)) {
                finder_.say(
                    where_ + place,
                    fmt::format("It takes the line “{}”, which is not there.", line.text()));
            }
        }
    }

    void checkWait(const Wait& wait)
    {
        const std::string place = "wait “" + (wait.text.empty() ? wait.id.text() : wait.text) + "”";
        if (!wait.from.step) {
            finder_.say(where_ + place, "A wait begins at a step, not at the serving.");
        } else if (!wait.to.step) {
            known(*wait.from.step, place);
        } else if (wait.from.edge == StepEdge::End && wait.to.edge == StepEdge::Start) {
            tie(*wait.from.step, *wait.to.step, place);
        } else if (known(*wait.from.step, place)) {
            // Between other edges a wait may go either way: it orders nothing by itself.
            known(*wait.to.step, place);
        }
    }

    bool known(const StepId& step, const std::string& place)
    {
        if (!steps_.contains(step)) {
            finder_.say(
                where_ + place,
                fmt::format("It is tied to the step “{}”, which is not there.", step.text()));
            return false;
        }
        return true;
    }

    void tie(const StepId& before, const StepId& after, const std::string& place)
    {
        if (known(before, place)) {
            followers_[before].push_back(after);
        }
    }

    void checkCircles()
    {
        std::set<StepId> done;
        std::vector<StepId> path;
        const std::function<bool(const StepId&)> visit = [&](const StepId& step) {
            const auto again = std::ranges::find(path, step);
            if (again != path.end()) {
                sayCircle({again, path.end()});
                return false;
            }
            if (!done.insert(step).second) {
                return true;
            }
            path.push_back(step);
            for (const StepId& next : followers_[step]) {
                if (!visit(next)) {
                    return false;
                }
            }
            path.pop_back();
            return true;
        };
        for (const auto& [id, step] : steps_) {
            path.clear();
            if (!visit(id)) {
                return;
            }
        }
    }

    void sayCircle(const std::vector<StepId>& circle)
    {
        std::string names;
        for (const StepId& id : circle) {
            names += fmt::format("“{}” before ", called(*steps_.at(id)));
        }
        names += fmt::format("“{}”", called(*steps_.at(circle.front())));
        finder_.say(where_ + "waits", fmt::format("Steps wait for each other in a circle: {}. "
                                                  "Take one of these ties away.",
                                                  names));
    }

    FaultFinder& finder_;
    std::string where_;
    std::map<StepId, const Step*> steps_;
    std::set<LineId> lines_;
    std::map<StepId, std::vector<StepId>> followers_;
};

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

} // namespace

std::vector<RecipeFault> faultsOf(const Recipe& recipe)
{
    Faults faults;
    FaultFinder finder(faults);
    if (recipe.id.empty()) {
        finder.say("recipe", "The recipe has no id.");
    }
    if (recipe.name.empty()) {
        finder.say("recipe", "The recipe has no name. Give it one.");
    }
    if (recipe.portions <= Portions{0} || recipe.portions > Portions{500}) {
        finder.say("portions", "A recipe is for more than 0 and at most 500 portions.");
    }
    if (recipe.variants.empty()) {
        finder.say("variants", "A recipe has at least one variant.");
    }
    finder.checkPart(recipe.common, "");
    checkMethods(recipe, finder);
    finder.checkIds(recipe.variants, "variants", "variant");
    for (const Variant& variant : recipe.variants) {
        const std::string where = "variant “" + variant.name + "”, ";
        finder.checkPart(variant.adds, where);
        if (const auto resolved = resolve(recipe, variant.id)) {
            // Said with the variant only where there are several to tell apart.
            TieChecker(*resolved, finder, recipe.variants.size() > 1 ? where : "");
        }
    }
    return faults;
}

} // namespace suppertide
