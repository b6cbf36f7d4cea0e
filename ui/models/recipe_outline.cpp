// What rows of a recipe's page show and change. Paths: "recipe"; "line:x", "step:x", "wait:x",
// "wait:x/keep:0", "span:x" in the common part; "choice:c", "choice:c/method:m" and "variant:v"
// with the same below them.
#include "ui/models/recipe_outline.h"

#include "ui/models/batch_words.h"
#include "ui/models/recipe_forms.h"
#include "ui/models/recipe_parts.h"

namespace suppertide::ui {

namespace {

Failure gone()
{
    return {FailureKind::NotFound,
            "This is not there any more; it was removed or undone. Choose another row.", ""};
}

/// Calls `visitor` with the thing of a row and its form; false if the row stands for nothing.
template <typename Visitor>
bool visitRow(const LibraryState& library, Recipe& recipe, const RowPath& path,
              const Visitor& visitor)
{
    const std::string kind = path.kind();
    if (kind == "recipe") {
        visitor(recipe, recipe::recipeForm(recipe));
        return true;
    }
    const recipe::Place place = recipe::placeOf(recipe, path);
    if (kind == "variant" && place.variant != nullptr) {
        visitor(*place.variant, recipe::variantForm(*place.variant, recipe.common));
        return true;
    }
    if (kind == "choice" && place.choice != nullptr) {
        visitor(*place.choice, recipe::choiceForm(*place.choice));
        return true;
    }
    if (kind == "method" && place.method != nullptr) {
        visitor(*place.method, recipe::methodForm(*place.method, recipe));
        return true;
    }
    if (place.part == nullptr) {
        return false;
    }
    const RecipePart around = recipe::surroundingsOf(recipe, place);
    if (auto* line = findIn(place.part->lines, LineId{path.idOf("line")}); line && kind == "line") {
        visitor(*line, recipe::lineForm(library, *line));
    } else if (auto* step = findIn(place.part->steps, StepId{path.idOf("step")});
               step && kind == "step") {
        visitor(*step, recipe::stepForm(*step, around, batchWords(library, recipe, *step)));
    } else if (auto* span = findIn(place.part->spans, SpanId{path.idOf("span")});
               span && kind == "span") {
        visitor(*span, recipe::spanForm(*span, around));
    } else if (auto* wait = findIn(place.part->waits, WaitId{path.idOf("wait")});
               wait && kind == "wait") {
        visitor(*wait, recipe::waitForm(*wait, around));
    } else if (auto* food = findIn(place.part->foods, FollowedFoodId{path.idOf("food")});
               food && kind == "food") {
        visitor(*food, recipe::foodForm(*food));
    } else if (FoodTreatment* treatment = recipe::treatmentOf(*place.part, path);
               treatment && kind == "treatment") {
        visitor(*treatment, recipe::treatmentForm(*treatment, around));
    } else if (KeepOption* keep = recipe::keepOf(*place.part, path); keep && kind == "keep") {
        visitor(*keep, recipe::keepForm(*keep));
    } else {
        return false;
    }
    return true;
}

} // namespace

RecipePtr RecipeOutline::find(const LibraryState& library) const
{
    const auto found = library.recipes.find(recipe_);
    return found == library.recipes.end() ? nullptr : found->second;
}

std::vector<Field> RecipeOutline::fields(const LibraryState& library, const std::string& row) const
{
    const RecipePtr there = find(library);
    std::vector<Field> result;
    if (there) {
        Recipe recipe = *there;
        visitRow(library, recipe, RowPath(row),
                 [&result](const auto& /*thing*/, const auto& form) { result = form.fields(); });
    }
    return result;
}

Result<Edit> RecipeOutline::set(const LibraryState& library, const std::string& row,
                                const std::string& field, const FieldValue& value) const
{
    const RecipePtr there = find(library);
    if (!there) {
        return gone();
    }
    Recipe recipe = *there;
    std::optional<Failure> failure = gone();
    QString what;
    visitRow(library, recipe, RowPath(row), [&](auto& thing, const auto& form) {
        auto changed = form.with(field, value);
        if (!changed) {
            failure = changed.error();
            return;
        }
        what = form.labelOf(field).toLower();
        // `thing` may be the recipe itself: the form holds a copy of its own.
        thing = std::move(*changed);
        failure.reset();
    });
    if (failure) {
        return *failure;
    }
    const QString name = QString::fromStdString(recipe.name);
    return Edit{withRecipe(library, std::move(recipe)), tr("Change %1: %2").arg(name, what), {}};
}

Recipe emptyRecipe(const LibraryState& library, const std::string& name)
{
    Recipe recipe;
    recipe.name = name;
    recipe.id = RecipeId{freshId(name, [&library](const std::string& id) {
        return library.recipes.contains(RecipeId{id});
    })};
    Step step;
    step.id = StepId{"make"};
    step.verb = RecipeOutline::tr("Make").toStdString();
    step.text = RecipeOutline::tr("Make it").toStdString();
    step.duration = {Minutes{15}, Minutes{20}, Minutes{30}};
    recipe.common.steps.push_back(std::move(step));
    recipe.variants.push_back(
        {VariantId{"plain"}, RecipeOutline::tr("plain").toStdString(), {}, {}, {}, {}, {}, {}});
    return recipe;
}

Recipe copyOfRecipe(const LibraryState& library, const Recipe& recipe)
{
    Recipe copy = recipe;
    copy.name =
        RecipeOutline::tr("%1 (copy)").arg(QString::fromStdString(recipe.name)).toStdString();
    copy.id = RecipeId{freshId(copy.name, [&library](const std::string& id) {
        return library.recipes.contains(RecipeId{id});
    })};
    return copy;
}

QString usersOfRecipe(const LibraryState& library, const RecipeId& recipe)
{
    QStringList users;
    for (const auto& [id, record] : library.occasions) {
        for (const Course& course : record->occasion.courses) {
            for (const Dish& dish : course.dishes) {
                const QString name = QString::fromStdString(record->occasion.name);
                if (dish.recipe == recipe && !users.contains(name)) {
                    users.push_back(name);
                }
            }
        }
    }
    for (const auto& [id, other] : library.recipes) {
        for (const RecipePart* part : recipe::partsOf(*other)) {
            const bool needs =
                std::ranges::any_of(part->lines, [&recipe](const IngredientLine& line) {
                    return line.preparation == recipe;
                });
            const QString name = QString::fromStdString(other->name);
            if (needs && !users.contains(name)) {
                users.push_back(name);
            }
        }
    }
    return users.isEmpty() ? QString()
                           : RecipeOutline::tr("It is used by %1. Take it off there first.")
                                 .arg(users.join(QStringLiteral(", ")));
}

} // namespace suppertide::ui
