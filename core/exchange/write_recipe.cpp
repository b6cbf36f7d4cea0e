#include "core/exchange/line_scaling_json.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_writing.h"

namespace suppertide {

namespace {

JsonValue inUse(std::string_view kind, JsonObject use)
{
    JsonObject result;
    result.put(kind, use.take());
    return result.take();
}

void putFilling(JsonObject& json, const std::optional<Filling>& filling)
{
    if (filling) {
        JsonObject what;
        what.put("volume", toJson(filling->volume));
        what.putUnless(Filling{}.percent, "percent", filling->percent);
        json.put("filling", what.take());
    }
}

struct UseToJson
{
    JsonValue operator()(const OvenUse& use) const
    {
        const OvenUse usual;
        JsonObject json;
        json.putUnless(usual.shelves, "shelves", use.shelves);
        json.put("low", toJson(use.low));
        json.put("high", toJson(use.high));
        json.putIfAny("prefer", use.prefer);
        json.putUnless(usual.mode, "mode", use.mode);
        return inUse("oven", std::move(json));
    }
    JsonValue operator()(const BurnerUse& use) const
    {
        JsonObject json;
        json.put("pan", toJson(use.pan));
        return inUse("burner", std::move(json));
    }
    JsonValue operator()(const ApplianceUse& use) const
    {
        const ApplianceUse usual;
        JsonObject json;
        json.put("kind", toJson(use.kind));
        json.putUnless(usual.washing, "washing", use.washing);
        putFilling(json, use.filling);
        return inUse("appliance", std::move(json));
    }
    JsonValue operator()(const VesselUse& use) const
    {
        const VesselUse usual;
        JsonObject json;
        json.put("kind", toJson(use.kind));
        json.putUnless(usual.volume, "volume", use.volume);
        json.putUnless(usual.count, "count", use.count);
        json.putUnless(usual.washing, "washing", use.washing);
        putFilling(json, use.filling);
        return inUse("vessel", std::move(json));
    }
};

JsonValue useToJson(const Use& use)
{
    return std::visit(UseToJson{}, use);
}

JsonValue pointToJson(const StepPoint& point)
{
    if (!point.step) {
        return toJson(std::string_view("serve"));
    }
    return toJson(point.step->text() + (point.edge == StepEdge::Start ? ".start" : ".end"));
}

JsonValue byProductToJson(const ByProduct& left)
{
    JsonObject json;
    json.put("name", toJson(left.name));
    json.putUnless(ByProduct{}.amount, "amount", left.amount);
    return json.take();
}

JsonValue lineToJson(const IngredientLine& line)
{
    const IngredientLine usual;
    JsonObject json;
    json.put("id", toJson(line.id));
    json.putUnless(usual.ingredient, "ingredient", line.ingredient);
    json.putUnless(usual.part, "part", line.part);
    json.putUnless(usual.amount, "amount", line.amount);
    json.putIfAny("also", line.also);
    if (line.scaling != usual.scaling) {
        json.put("scaling", toJson(line.scaling));
    }
    json.putUnless(usual.note, "note", line.note);
    if (line.contains) {
        json.putList("contains", *line.contains,
                     [](Substance substance) { return toJson(substance); });
    }
    json.putIfAny("preparation", line.preparation);
    json.putIfAny("by_product", line.byProduct);
    return json.take();
}

JsonValue otherHeatToJson(const OtherHeat& other)
{
    JsonObject json;
    json.put("low", toJson(other.low));
    json.put("high", toJson(other.high));
    json.putIfAny("prefer", other.prefer);
    json.put("duration", toJson(other.duration));
    json.putUnless(0, "cost", other.cost);
    return json.take();
}

/// `usualAfter`: what the step comes after if nothing is said.
JsonValue stepToJson(const Step& step, const std::vector<StepId>& usualAfter)
{
    const Step usual;
    JsonObject json;
    json.put("id", toJson(step.id));
    json.putUnless(usual.verb, "verb", step.verb);
    json.putUnless(usual.text, "text", step.text);
    json.putUnless(usual.detail, "detail", step.detail);
    if (step.after != usualAfter) {
        json.putList("after", step.after, [](const StepId& id) { return toJson(id); });
    }
    json.putUnless(usual.duration, "duration", step.duration);
    json.putUnless(usual.scaling, "scaling", step.scaling);
    json.putIfAny("portions_per_batch", step.portionsPerBatch);
    json.putUnless(usual.attention, "attention", step.attention);
    json.putUnless(usual.cooks, "cooks", step.cooks);
    json.putIfAny("skill", step.skill);
    json.putIfAny("at_table", step.atTable);
    json.putUnless(usual.mayRunUnwatched, "may_run_unwatched", step.mayRunUnwatched);
    json.putIfAny("uses", step.uses, useToJson);
    json.putUnless(usual.ovenIn, "oven_in", step.ovenIn);
    json.putUnless(usual.ovenOut, "oven_out", step.ovenOut);
    json.putIfAny("turn_after", step.turnAfter);
    json.putIfAny("lines", step.lines);
    json.putIfAny("leaves", step.leaves, byProductToJson);
    json.putIfAny("cautions", step.cautions);
    json.putIfAny("other_heats", step.otherHeats, otherHeatToJson);
    return json.take();
}

JsonValue keepToJson(const KeepOption& option)
{
    const KeepOption usual;
    JsonObject json;
    json.putUnless(usual.place, "place", option.place);
    json.putIfAny("most", option.most);
    json.putUnless(usual.litres, "litres", option.litres);
    json.putUnless(usual.scaling, "scaling", option.scaling);
    json.putUnless(usual.lossPerHour, "loss_per_hour", option.lossPerHour);
    json.putUnless(usual.warmBy, "warm_by", option.warmBy);
    return json.take();
}

JsonValue waitToJson(const Wait& wait)
{
    const Wait usual;
    JsonObject json;
    json.put("id", toJson(wait.id));
    json.putUnless(usual.text, "text", wait.text);
    json.put("from", pointToJson(wait.from));
    json.put("to", pointToJson(wait.to));
    json.putUnless(usual.least, "least", wait.least);
    json.putIfAny("most", wait.most);
    json.putIfAny("keep", wait.keep, keepToJson);
    json.putIfAny("chills_to", wait.chillsTo);
    json.putUnless(usual.setsFor, "sets_for", wait.setsFor);
    return json.take();
}

JsonValue spanToJson(const Span& span)
{
    const Span usual;
    JsonObject json;
    json.put("id", toJson(span.id));
    json.putUnless(usual.text, "text", span.text);
    json.put("from", pointToJson(span.from));
    json.put("to", pointToJson(span.to));
    json.put("use", useToJson(span.use));
    return json.take();
}

JsonValue treatmentToJson(const FoodTreatment& treatment)
{
    const FoodTreatment usual;
    JsonObject json;
    json.put("step", toJson(treatment.step));
    json.putUnless(usual.treatment, "treatment", treatment.treatment);
    json.putIfAny("to", treatment.to);
    json.putUnless(usual.leaves, "leaves", treatment.leaves);
    json.putUnless(usual.isLid, "lid", treatment.isLid);
    json.putUnless(usual.isInBath, "water_bath", treatment.isInBath);
    json.putUnless(usual.setsDuration, "sets_duration", treatment.setsDuration);
    json.putUnless(usual.isReheating, "reheats", treatment.isReheating);
    json.putIfAny("becomes", treatment.becomes);
    return json.take();
}

JsonValue foodToJson(const FollowedFood& food)
{
    const FollowedFood usual;
    JsonObject json;
    json.put("id", toJson(food.id));
    json.putUnless(usual.name, "name", food.name);
    json.putUnless(usual.kind.food, "class", food.kind.food);
    json.putIfAny("facts", food.kind.facts);
    json.putUnless(usual.material, "material", food.material);
    json.putUnless(usual.shape, "shape", food.shape);
    json.putUnless(usual.thickness, "thickness", food.thickness);
    json.putUnless(usual.mass, "grams", food.mass);
    json.putUnless(usual.scaling, "scaling", food.scaling);
    json.putUnless(usual.isOnePiece, "one_piece", food.isOnePiece);
    json.putUnless(usual.from, "from", food.from);
    json.putIfAny("steps", food.steps, treatmentToJson);
    return json.take();
}

void putPart(JsonObject& json, const RecipePart& part)
{
    json.putIfAny("lines", part.lines, lineToJson);
    std::vector<StepId> before;
    json.putIfAny("steps", part.steps, [&before](const Step& step) {
        JsonValue result = stepToJson(step, before);
        before = {step.id};
        return result;
    });
    json.putIfAny("waits", part.waits, waitToJson);
    json.putIfAny("spans", part.spans, spanToJson);
    json.putIfAny("foods", part.foods, foodToJson);
}

JsonValue methodToJson(const Method& method)
{
    const Method usual;
    JsonObject json;
    json.put("id", toJson(method.id));
    json.putUnless(usual.name, "name", method.name);
    json.putUnless(usual.cost, "cost", method.cost);
    putPart(json, method.part);
    return json.take();
}

JsonValue choiceToJson(const MethodChoice& choice)
{
    JsonObject json;
    json.put("id", toJson(choice.id));
    json.putUnless(std::string(), "name", choice.name);
    json.putIfAny("methods", choice.methods, methodToJson);
    return json.take();
}

JsonValue variantToJson(const Variant& variant)
{
    JsonObject json;
    json.put("id", toJson(variant.id));
    json.putUnless(std::string(), "name", variant.name);
    json.putUnless(std::string(), "note", variant.note);
    putPart(json, variant.adds);
    json.putIfAny("drop_lines", variant.dropLines);
    json.putIfAny("drop_steps", variant.dropSteps);
    json.putIfAny("drop_waits", variant.dropWaits);
    json.putIfAny("drop_spans", variant.dropSpans);
    json.putIfAny("drop_foods", variant.dropFoods);
    return json.take();
}

} // namespace

JsonValue toJson(const Recipe& recipe)
{
    const Recipe usual;
    JsonObject json;
    json.put("id", toJson(recipe.id));
    json.putUnless(usual.name, "name", recipe.name);
    json.putUnless(usual.kind, "kind", recipe.kind);
    json.putUnless(usual.note, "note", recipe.note);
    json.putIfAny("keywords", recipe.keywords);
    json.putUnless(usual.portions, "portions", recipe.portions);
    json.putIfAny("yields", recipe.yields);
    putPart(json, recipe.common);
    json.putIfAny("methods", recipe.methods, choiceToJson);
    json.putIfAny("variants", recipe.variants, variantToJson);
    return json.take();
}

} // namespace suppertide
