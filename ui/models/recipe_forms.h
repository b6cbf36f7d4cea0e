// The forms of the recipe page: one FieldList for each kind of row. `part` is where the thing
// stands with all that it may be tied to: the common part for common things, with the variant's or
// method's own for others.
#pragma once

#include "ui/models/field_list.h"

namespace suppertide::ui::recipe {

[[nodiscard]] FieldList<Recipe> recipeForm(const Recipe& recipe);
[[nodiscard]] FieldList<IngredientLine> lineForm(const LibraryState& library,
                                                 const IngredientLine& line);
/// `batches`: a sentence on how much of it goes in at once.
[[nodiscard]] FieldList<Step> stepForm(const Step& step, const RecipePart& part,
                                       const QString& batches);
[[nodiscard]] FieldList<Wait> waitForm(const Wait& wait, const RecipePart& part);
[[nodiscard]] FieldList<KeepOption> keepForm(const KeepOption& keep);
[[nodiscard]] FieldList<Span> spanForm(const Span& span, const RecipePart& part);
[[nodiscard]] FieldList<FollowedFood> foodForm(const FollowedFood& food);
[[nodiscard]] FieldList<FoodTreatment> treatmentForm(const FoodTreatment& treatment,
                                                     const RecipePart& part);
[[nodiscard]] FieldList<MethodChoice> choiceForm(const MethodChoice& choice);
[[nodiscard]] FieldList<Method> methodForm(const Method& method, const Recipe& recipe);
/// With which common lines and steps the variant drops.
[[nodiscard]] FieldList<Variant> variantForm(const Variant& variant, const RecipePart& common);

/// What a step is called in lists: its deed, else its verb, else its id.
[[nodiscard]] QString nameOf(const Step& step);

} // namespace suppertide::ui::recipe
