#include <fmt/format.h>

#include "core/exchange/line_scaling_json.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_reading.h"

namespace suppertide {

namespace {

OvenUse readOvenUse(JsonFields& fields)
{
    OvenUse use;
    take(fields, "shelves", use.shelves, readCount);
    use.low = readCelsius(fields.required("low"));
    use.high = readCelsius(fields.required("high"));
    take(fields, "prefer", use.prefer, readCelsius);
    take(fields, "mode", use.mode, readEnum<OvenMode>);
    return use;
}

BurnerUse readBurnerUse(JsonFields& fields)
{
    return {readLength(fields.required("pan"))};
}

Filling readFilling(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Filling filling;
        filling.volume = readLitres(fields.required("volume"));
        take(fields, "percent", filling.percent, readCount);
        return filling;
    });
}

ApplianceUse readApplianceUse(JsonFields& fields)
{
    ApplianceUse use;
    use.kind = readText(fields.required("kind"));
    take(fields, "washing", use.washing, readMinutes);
    take(fields, "filling", use.filling, readFilling);
    return use;
}

VesselUse readVesselUse(JsonFields& fields)
{
    VesselUse use;
    use.kind = readText(fields.required("kind"));
    take(fields, "volume", use.volume, readLitres);
    take(fields, "count", use.count, readCount);
    take(fields, "washing", use.washing, readMinutes);
    take(fields, "filling", use.filling, readFilling);
    return use;
}

Use readUse(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) -> Use {
        if (const auto oven = fields.optional("oven")) {
            return readObject(*oven, readOvenUse);
        }
        if (const auto burner = fields.optional("burner")) {
            return readObject(*burner, readBurnerUse);
        }
        if (const auto appliance = fields.optional("appliance")) {
            return readObject(*appliance, readApplianceUse);
        }
        if (const auto vessel = fields.optional("vessel")) {
            return readObject(*vessel, readVesselUse);
        }
        fields.fault("expected one of the keys “oven”, “burner”, “appliance”, “vessel”");
        return {};
    });
}

/// "bake.end"; "serve" keeps the edge of `serve`.
StepPoint readPoint(const JsonCursor& at, StepPoint serve)
{
    const std::string text = at.anyText();
    if (text == "serve") {
        return serve;
    }
    const std::size_t dot = text.rfind('.');
    if (dot != std::string::npos && dot > 0) {
        const std::string_view edge = std::string_view(text).substr(dot + 1);
        const StepId step{text.substr(0, dot)};
        if (edge == "start") {
            return {step, StepEdge::Start};
        }
        if (edge == "end") {
            return {step, StepEdge::End};
        }
    }
    if (at.isText()) {
        at.fault(fmt::format("“{}” is not a moment of a recipe. Write the id of a step with .start "
                             "or .end, like “bake.end”, or “serve”",
                             text));
    }
    return serve;
}

ByProduct readByProduct(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        ByProduct left;
        left.name = readText(fields.required("name"));
        take(fields, "amount", left.amount, readAmount);
        return left;
    });
}

IngredientLine readLine(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        IngredientLine line;
        takeOwnId(fields, line.id);
        take(fields, "ingredient", line.ingredient, readText);
        take(fields, "part", line.part, readEnum<IngredientPart>);
        take(fields, "amount", line.amount, readAmount);
        take(fields, "also", line.also, readAmount);
        take(fields, "scaling", line.scaling, readLineScaling);
        take(fields, "note", line.note, readText);
        take(fields, "contains", line.contains,
             [](const JsonCursor& list) { return readList(list, readSubstance); });
        take(fields, "preparation", line.preparation, readId<RecipeId>);
        take(fields, "by_product", line.byProduct, readText);
        return line;
    });
}

OtherHeat readOtherHeat(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OtherHeat other;
        other.low = readCelsius(fields.required("low"));
        other.high = readCelsius(fields.required("high"));
        take(fields, "prefer", other.prefer, readCelsius);
        other.duration = readDuration(fields.required("duration"));
        take(fields, "cost", other.cost, readPoints);
        return other;
    });
}

Step readStep(const JsonCursor& at, const std::optional<StepId>& before)
{
    return readObject(at, [&before](JsonFields& fields) {
        Step step;
        takeOwnId(fields, step.id);
        take(fields, "verb", step.verb, readText);
        take(fields, "text", step.text, readText);
        take(fields, "detail", step.detail, readText);
        if (before) {
            step.after = {*before};
        }
        takeList(fields, "after", step.after, readId<StepId>);
        take(fields, "duration", step.duration, readDuration);
        take(fields, "scaling", step.scaling, readEnum<Scaling>);
        take(fields, "portions_per_batch", step.portionsPerBatch, readPortions);
        take(fields, "attention", step.attention, readAttention);
        take(fields, "cooks", step.cooks, readCount);
        take(fields, "skill", step.skill, readText);
        take(fields, "at_table", step.atTable, readBool);
        take(fields, "may_run_unwatched", step.mayRunUnwatched, readBool);
        takeList(fields, "uses", step.uses, readUse);
        take(fields, "oven_in", step.ovenIn, readMinutes);
        take(fields, "oven_out", step.ovenOut, readMinutes);
        take(fields, "turn_after", step.turnAfter, readMinutes);
        takeList(fields, "lines", step.lines, readId<LineId>);
        takeList(fields, "leaves", step.leaves, readByProduct);
        takeList(fields, "cautions", step.cautions, readEnum<Caution>);
        takeList(fields, "other_heats", step.otherHeats, readOtherHeat);
        return step;
    });
}

std::vector<Step> readSteps(const JsonCursor& at)
{
    std::vector<Step> steps;
    at.forEachItem([&steps](const JsonCursor& item) {
        const auto before = steps.empty() ? std::nullopt : std::optional{steps.back().id};
        steps.push_back(readStep(item, before));
    });
    return steps;
}

KeepOption readKeepOption(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        KeepOption option;
        take(fields, "place", option.place, readEnum<KeepPlace>);
        take(fields, "most", option.most, readMinutes);
        take(fields, "litres", option.litres, readLitres);
        take(fields, "scaling", option.scaling, readEnum<Scaling>);
        take(fields, "loss_per_hour", option.lossPerHour, readPoints);
        take(fields, "warm_by", option.warmBy, readEnum<WarmBy>);
        return option;
    });
}

Wait readWait(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Wait wait;
        takeOwnId(fields, wait.id);
        take(fields, "text", wait.text, readText);
        wait.from = readPoint(fields.required("from"), wait.from);
        wait.to = readPoint(fields.required("to"), wait.to);
        take(fields, "least", wait.least, readMinutes);
        take(fields, "most", wait.most, readMinutes);
        takeList(fields, "keep", wait.keep, readKeepOption);
        take(fields, "chills_to", wait.chillsTo, readCelsius);
        take(fields, "sets_for", wait.setsFor, readMinutes);
        return wait;
    });
}

Span readSpan(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Span span;
        takeOwnId(fields, span.id);
        take(fields, "text", span.text, readText);
        span.from = readPoint(fields.required("from"), span.from);
        span.to = readPoint(fields.required("to"), span.to);
        span.use = readUse(fields.required("use"));
        return span;
    });
}

FoodTreatment readTreatment(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        FoodTreatment treatment;
        treatment.step = readId<StepId>(fields.required("step"));
        take(fields, "treatment", treatment.treatment, readEnum<Treatment>);
        take(fields, "to", treatment.to, readCelsius);
        take(fields, "leaves", treatment.leaves, readPercent);
        take(fields, "lid", treatment.isLid, readBool);
        take(fields, "water_bath", treatment.isInBath, readBool);
        take(fields, "sets_duration", treatment.setsDuration, readBool);
        take(fields, "reheats", treatment.isReheating, readBool);
        take(fields, "becomes", treatment.becomes, readFoodClass);
        return treatment;
    });
}

FollowedFood readFood(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        FollowedFood food;
        takeOwnId(fields, food.id);
        take(fields, "name", food.name, readText);
        take(fields, "class", food.kind.food, readFoodClass);
        takeList(fields, "facts", food.kind.facts, readRiskFact);
        take(fields, "material", food.material, readText);
        take(fields, "shape", food.shape, readEnum<FoodShape>);
        take(fields, "thickness", food.thickness, readLength);
        take(fields, "grams", food.mass, readGrams);
        take(fields, "scaling", food.scaling, readEnum<Scaling>);
        take(fields, "one_piece", food.isOnePiece, readBool);
        take(fields, "from", food.from, readEnum<KeepPlace>);
        takeList(fields, "steps", food.steps, readTreatment);
        return food;
    });
}

RecipePart takePart(JsonFields& fields)
{
    RecipePart part;
    takeList(fields, "lines", part.lines, readLine);
    take(fields, "steps", part.steps, readSteps);
    takeList(fields, "waits", part.waits, readWait);
    takeList(fields, "spans", part.spans, readSpan);
    takeList(fields, "foods", part.foods, readFood);
    return part;
}

Method readMethod(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Method method;
        takeOwnId(fields, method.id);
        take(fields, "name", method.name, readText);
        take(fields, "cost", method.cost, readPoints);
        method.part = takePart(fields);
        return method;
    });
}

MethodChoice readMethodChoice(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        MethodChoice choice;
        takeOwnId(fields, choice.id);
        take(fields, "name", choice.name, readText);
        takeList(fields, "methods", choice.methods, readMethod);
        return choice;
    });
}

Variant readVariant(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Variant variant;
        takeOwnId(fields, variant.id);
        take(fields, "name", variant.name, readText);
        take(fields, "note", variant.note, readText);
        variant.adds = takePart(fields);
        takeList(fields, "drop_lines", variant.dropLines, readId<LineId>);
        takeList(fields, "drop_steps", variant.dropSteps, readId<StepId>);
        takeList(fields, "drop_waits", variant.dropWaits, readId<WaitId>);
        takeList(fields, "drop_spans", variant.dropSpans, readId<SpanId>);
        takeList(fields, "drop_foods", variant.dropFoods, readId<FollowedFoodId>);
        return variant;
    });
}

} // namespace

Recipe readRecipeAt(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Recipe recipe;
        takeOwnId(fields, recipe.id);
        take(fields, "name", recipe.name, readText);
        take(fields, "kind", recipe.kind, readEnum<RecipeKind>);
        take(fields, "note", recipe.note, readText);
        takeList(fields, "keywords", recipe.keywords, readText);
        take(fields, "portions", recipe.portions, readPortions);
        take(fields, "yields", recipe.yields, readAmount);
        recipe.common = takePart(fields);
        takeList(fields, "methods", recipe.methods, readMethodChoice);
        takeList(fields, "variants", recipe.variants, readVariant);
        return recipe;
    });
}

} // namespace suppertide
