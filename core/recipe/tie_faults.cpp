#include "core/recipe/tie_faults.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <string_view>

namespace suppertide {

namespace {

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
    TieChecker(const ResolvedRecipe& recipe, std::string where, std::vector<RecipeFault>& faults)
        : faults_(faults), where_(std::move(where))
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
    void say(const std::string& place, std::string sentence)
    {
        faults_.push_back({where_ + place, std::move(sentence)});
    }

    void checkTies(const RecipePart& part)
    {
        for (const Step& step : part.steps) {
            checkStep(step);
        }
        for (const Wait& wait : part.waits) {
            checkWait(wait);
        }
        for (const FollowedFood& food : part.foods) {
            for (const FoodTreatment& treatment : food.steps) {
                known(treatment.step, "food “" + food.name + "”");
            }
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
        const std::string place = "step “" + nameInFaults(step) + "”";
        for (const StepId& before : step.after) {
            tie(before, step.id, place);
        }
        for (const LineId& line : step.lines) {
            if (!lines_.contains(line)) {
                say(place, fmt::format("It takes the line “{}”, which is not there.", line.text()));
            }
        }
    }

    void checkWait(const Wait& wait)
    {
        const std::string place = "wait “" + (wait.text.empty() ? wait.id.text() : wait.text) + "”";
        if (!wait.from.step) {
            say(place, "A wait begins at a step, not at the serving.");
        } else if (!wait.to.step) {
            known(*wait.from.step, place);
        } else if (wait.from.edge == StepEdge::End && wait.to.edge == StepEdge::Start) {
            // A tie to what is not there is said; one from it would only repeat that.
            if (known(*wait.to.step, place)) {
                tie(*wait.from.step, *wait.to.step, place);
            }
        } else if (known(*wait.from.step, place)) {
            // Between other edges a wait may go either way: it orders nothing by itself.
            known(*wait.to.step, place);
        }
    }

    bool known(const StepId& step, const std::string& place)
    {
        if (!steps_.contains(step)) {
            say(place,
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
            names += fmt::format("“{}” before ", nameInFaults(*steps_.at(id)));
        }
        names += fmt::format("“{}”", nameInFaults(*steps_.at(circle.front())));
        say("waits", fmt::format("Steps wait for each other in a circle: {}. "
                                 "Take one of these ties away.",
                                 names));
    }

    std::vector<RecipeFault>& faults_;
    std::string where_;
    std::map<StepId, const Step*> steps_;
    std::set<LineId> lines_;
    std::map<StepId, std::vector<StepId>> followers_;
};

/// Methods of one choice may share an id, since only one of them is done; what stands beside each
/// other may not.
void checkApart(const ResolvedRecipe& recipe, const std::string& where,
                std::vector<RecipeFault>& faults)
{
    std::set<StepId> taken;
    for (const Step& step : recipe.part.steps) {
        taken.insert(step.id);
    }
    for (const MethodChoice& choice : recipe.methods) {
        std::set<StepId> own;
        for (const Method& method : choice.methods) {
            for (const Step& step : method.part.steps) {
                own.insert(step.id);
            }
        }
        for (const StepId& id : own) {
            if (!taken.insert(id).second) {
                faults.push_back(
                    {where + "method “" + choice.name + "”",
                     fmt::format("Its step “{}” has the id of a step outside it. Rename one "
                                 "of them.",
                                 id.text())});
            }
        }
    }
}

/// A drop that hits nothing is a slip of the pen, and what was to go (nuts, say) would stay.
template <typename T, typename IdType>
void checkDrops(const Recipe& recipe, const std::vector<IdType>& drops,
                std::vector<T> RecipePart::*list, std::string_view what, const std::string& place,
                std::vector<RecipeFault>& faults)
{
    const auto has = [&](const RecipePart& part, const IdType& id) {
        return std::ranges::find(part.*list, id, &T::id) != (part.*list).end();
    };
    for (const IdType& id : drops) {
        bool isThere = has(recipe.common, id);
        for (const MethodChoice& choice : recipe.methods) {
            for (const Method& method : choice.methods) {
                isThere = isThere || has(method.part, id);
            }
        }
        if (!isThere) {
            faults.push_back(
                {place, fmt::format("It drops the {} “{}”, which is not there.", what, id.text())});
        }
    }
}

} // namespace

std::string nameInFaults(const Step& step)
{
    return step.text.empty() ? step.id.text() : step.text;
}

void addTieFaults(const ResolvedRecipe& recipe, const std::string& where,
                  std::vector<RecipeFault>& faults)
{
    TieChecker(recipe, where, faults);
    checkApart(recipe, where, faults);
}

void addDropFaults(const Recipe& recipe, const Variant& variant, std::vector<RecipeFault>& faults)
{
    const std::string place = "variant “" + variant.name + "”";
    checkDrops(recipe, variant.dropLines, &RecipePart::lines, "line", place, faults);
    checkDrops(recipe, variant.dropSteps, &RecipePart::steps, "step", place, faults);
    checkDrops(recipe, variant.dropWaits, &RecipePart::waits, "wait", place, faults);
    checkDrops(recipe, variant.dropSpans, &RecipePart::spans, "span", place, faults);
    checkDrops(recipe, variant.dropFoods, &RecipePart::foods, "food", place, faults);
}

} // namespace suppertide
