// The rows of a recipe's page, and what can be done with each.
#include <algorithm>

#include "core/wording/wording.h"
#include "ui/models/reading.h"
#include "ui/models/recipe_forms.h"
#include "ui/models/recipe_outline.h"
#include "ui/models/recipe_parts.h"
#include "ui/models/tin_rows.h"
#include "ui/models/usda_figures.h"

namespace suppertide::ui {

namespace {

constexpr const char* addLineKey = "add-line";
constexpr const char* addStepKey = "add-step";
constexpr const char* addWaitKey = "add-wait";
constexpr const char* addSpanKey = "add-span";
constexpr const char* addKeepKey = "add-keep";
constexpr const char* addFoodKey = "add-food";
constexpr const char* addTreatmentKey = "add-treatment";
constexpr const char* addVariantKey = "add-variant";
constexpr const char* addChoiceKey = "add-choice";
constexpr const char* addMethodKey = "add-method";
constexpr const char* copyKey = "copy";
constexpr const char* upKey = "up";
constexpr const char* downKey = "down";
constexpr const char* removeKey = "remove";

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

class RowBuilder
{
public:
    explicit RowBuilder(const Recipe& recipe) : recipe_(recipe) {}

    std::vector<OutlineRow> build()
    {
        add("recipe", 0, text(recipe_.name),
            RecipeOutline::tr("for %1").arg(text(fieldText(recipe_.portions))));
        addPart(recipe_.common, {}, 0);
        heading("methods", RecipeOutline::tr("Methods"));
        for (const MethodChoice& choice : recipe_.methods) {
            const RowPath path = RowPath().with("choice", choice.id.text());
            add(path.text(), 1, text(choice.name));
            for (const Method& method : choice.methods) {
                const RowPath inner = path.with("method", method.id.text());
                add(inner.text(), 2, text(method.name));
                addThings(method.part, inner, 3);
            }
        }
        heading("variants", RecipeOutline::tr("Variants"));
        for (const Variant& variant : recipe_.variants) {
            const RowPath path = RowPath().with("variant", variant.id.text());
            add(path.text(), 1, text(variant.name));
            addThings(variant.adds, path, 2);
        }
        markFaults();
        return std::move(rows_);
    }

private:
    OutlineRow& add(const std::string& id, int depth, const QString& title,
                    const QString& detail = {})
    {
        OutlineRow row;
        row.id = id;
        row.depth = depth;
        row.title = title;
        row.detail = detail;
        rows_.push_back(std::move(row));
        return rows_.back();
    }
    void heading(const char* id, const QString& title)
    {
        add(id, 0, title).kind = RowKind::Heading;
    }

    void addPart(const RecipePart& part, const RowPath& place, int depth)
    {
        heading("lines", RecipeOutline::tr("Ingredients"));
        addLines(part, place, depth + 1);
        heading("steps", RecipeOutline::tr("Steps"));
        addSteps(part, place, depth + 1);
        heading("waits", RecipeOutline::tr("Waits"));
        addWaits(part, place, depth + 1);
        heading("spans", RecipeOutline::tr("Held for longer"));
        addSpans(part, place, depth + 1);
        heading("foods", RecipeOutline::tr("Followed for food safety"));
        addFoods(part, place, depth + 1);
    }
    void addThings(const RecipePart& part, const RowPath& place, int depth)
    {
        addLines(part, place, depth);
        addSteps(part, place, depth);
        addWaits(part, place, depth);
        addSpans(part, place, depth);
        addFoods(part, place, depth);
    }
    void addLines(const RecipePart& part, const RowPath& place, int depth)
    {
        for (const IngredientLine& line : part.lines) {
            add(place.with("line", line.id.text()).text(), depth, text(line.ingredient),
                text(toText(line.amount)))
                .amount = line.amount;
        }
    }
    void addSteps(const RecipePart& part, const RowPath& place, int depth)
    {
        for (const Step& step : part.steps) {
            add(place.with("step", step.id.text()).text(), depth, recipe::nameOf(step),
                text(durationText(step.duration.likely)));
        }
    }
    void addWaits(const RecipePart& part, const RowPath& place, int depth)
    {
        for (const Wait& wait : part.waits) {
            const RowPath path = place.with("wait", wait.id.text());
            add(path.text(), depth, text(wait.text.empty() ? wait.id.text() : wait.text),
                bounds(wait));
            for (std::size_t i = 0; i < wait.keep.size(); ++i) {
                add(path.with("keep", std::to_string(i)).text(), depth + 1,
                    placeName(wait.keep[i].place));
            }
        }
    }
    void addSpans(const RecipePart& part, const RowPath& place, int depth)
    {
        for (const Span& span : part.spans) {
            add(place.with("span", span.id.text()).text(), depth,
                text(span.text.empty() ? span.id.text() : span.text));
        }
    }

    void addFoods(const RecipePart& part, const RowPath& place, int depth)
    {
        for (const FollowedFood& food : part.foods) {
            const RowPath path = place.with("food", food.id.text());
            add(path.text(), depth, text(food.name.empty() ? food.id.text() : food.name),
                text(std::string(nameOf(food.kind.food))));
            for (std::size_t i = 0; i < food.steps.size(); ++i) {
                add(path.with("treatment", std::to_string(i)).text(), depth + 1,
                    stepName(food.steps[i].step),
                    food.steps[i].setsDuration ? RecipeOutline::tr("sets how long") : QString());
            }
        }
    }
    [[nodiscard]] QString stepName(const StepId& id) const
    {
        for (const RecipePart* part : recipe::partsOf(recipe_)) {
            if (const Step* step = findIn(part->steps, id)) {
                return recipe::nameOf(*step);
            }
        }
        return text(id.text());
    }

    static QString bounds(const Wait& wait)
    {
        const QString least = text(durationText(wait.least));
        return wait.most ? RecipeOutline::tr("%1 to %2").arg(least, text(durationText(*wait.most)))
                         : RecipeOutline::tr("%1 or more").arg(least);
    }

    static QString placeName(KeepPlace place)
    {
        switch (place) {
        case KeepPlace::Nowhere:
            return RecipeOutline::tr("nowhere special");
        case KeepPlace::Counter:
            return RecipeOutline::tr("on the counter");
        case KeepPlace::Fridge:
            return RecipeOutline::tr("in the fridge");
        case KeepPlace::Freezer:
            return RecipeOutline::tr("in the freezer");
        case KeepPlace::Warm:
            return RecipeOutline::tr("kept warm");
        }
        return {};
    }

    /// A fault is shown at the row whose name its place has in quotes, else at the recipe.
    void markFaults()
    {
        for (const RecipeFault& fault : faultsOf(recipe_)) {
            OutlineRow* at = &rows_.front();
            for (OutlineRow& row : rows_) {
                if (row.kind == RowKind::Item && row.id != "recipe" && !row.title.isEmpty() &&
                    text(fault.place).contains(QStringLiteral("“%1”").arg(row.title))) {
                    at = &row;
                }
            }
            at->fault = text(fault.sentence);
        }
    }

    const Recipe& recipe_;
    std::vector<OutlineRow> rows_;
};

/// A thing of the list under a fresh id, with its row selected.
template <typename Thing>
RowPath append(std::vector<Thing>& list, Thing thing, const std::string& name, const RowPath& place,
               const char* kind)
{
    thing.id = freshIdIn(list, name);
    const RowPath path = place.with(kind, thing.id.text());
    list.push_back(std::move(thing));
    return path;
}

Step newStep(const RecipePart& part)
{
    Step step;
    step.verb = RecipeOutline::tr("Do").toStdString();
    step.text = RecipeOutline::tr("New step").toStdString();
    step.duration = {Minutes{5}, Minutes{10}, Minutes{15}};
    if (!part.steps.empty()) {
        step.after.push_back(part.steps.back().id);
    }
    return step;
}

IngredientLine newLine()
{
    IngredientLine line;
    line.ingredient = RecipeOutline::tr("new ingredient").toStdString();
    line.amount = {Rational{100}, Unit::Gram};
    return line;
}

Wait newWait(const RecipePart& around)
{
    Wait wait;
    wait.text = RecipeOutline::tr("waits").toStdString();
    if (!around.steps.empty()) {
        wait.from = {around.steps.back().id, StepEdge::End};
    }
    wait.keep.push_back({});
    return wait;
}

Span newSpan(const RecipePart& around)
{
    Span span;
    span.text = RecipeOutline::tr("pan held").toStdString();
    if (!around.steps.empty()) {
        span.from = {around.steps.front().id, StepEdge::Start};
        span.to = {around.steps.back().id, StepEdge::End};
    }
    span.use = VesselUse{RecipeOutline::tr("pan").toStdString(), {}, 1, Minutes{0}};
    return span;
}

FollowedFood newFood(const RecipePart& around)
{
    FollowedFood food;
    food.name = RecipeOutline::tr("food").toStdString();
    food.kind.food = FoodClass::CookedDish;
    for (const Step& step : around.steps) {
        food.steps.push_back({.step = step.id});
    }
    return food;
}

std::optional<RowPath> addTo(Recipe& recipe, const RowPath& path, const std::string& command)
{
    const recipe::Place place = recipe::placeOf(recipe, path);
    const RowPath where = recipe::pathOfPlace(path);
    if (command == addVariantKey) {
        Variant variant;
        variant.name = RecipeOutline::tr("another").toStdString();
        return append(recipe.variants, variant, variant.name, {}, "variant");
    }
    if (command == addChoiceKey) {
        MethodChoice choice;
        choice.name = RecipeOutline::tr("how it is done").toStdString();
        choice.methods.push_back(
            {MethodId{"one"}, RecipeOutline::tr("one way").toStdString(), 0, {}});
        return append(recipe.methods, choice, "choice", {}, "choice");
    }
    if (command == addMethodKey && place.choice != nullptr) {
        Method method;
        method.name = RecipeOutline::tr("another way").toStdString();
        return append(place.choice->methods, method, method.name,
                      RowPath().with("choice", place.choice->id.text()), "method");
    }
    if (place.part == nullptr) {
        return std::nullopt;
    }
    const RecipePart around = recipe::surroundingsOf(recipe, place);
    if (command == addLineKey) {
        return append(place.part->lines, newLine(), "line", where, "line");
    }
    if (command == addStepKey) {
        return append(place.part->steps, newStep(around), "step", where, "step");
    }
    if (command == addWaitKey) {
        return append(place.part->waits, newWait(around), "wait", where, "wait");
    }
    if (command == addSpanKey) {
        return append(place.part->spans, newSpan(around), "span", where, "span");
    }
    if (command == addFoodKey) {
        return append(place.part->foods, newFood(around), "food", where, "food");
    }
    FollowedFood* food = findIn(place.part->foods, FollowedFoodId{path.idOf("food")});
    if (command == addTreatmentKey && food != nullptr && !around.steps.empty()) {
        food->steps.push_back({.step = around.steps.back().id});
        return where.with("food", food->id.text())
            .with("treatment", std::to_string(food->steps.size() - 1));
    }
    Wait* wait = findIn(place.part->waits, WaitId{path.idOf("wait")});
    if (command == addKeepKey && wait != nullptr) {
        wait->keep.push_back({});
        return where.with("wait", wait->id.text())
            .with("keep", std::to_string(wait->keep.size() - 1));
    }
    return std::nullopt;
}

/// Calls `visitor(list)` with the list that a row's thing stands in.
template <typename Visitor>
bool visitListOf(Recipe& recipe, const RowPath& path, const Visitor& visitor)
{
    const recipe::Place place = recipe::placeOf(recipe, path);
    const std::string kind = path.kind();
    if (kind == "variant") {
        visitor(recipe.variants);
    } else if (kind == "choice") {
        visitor(recipe.methods);
    } else if (kind == "method" && place.choice != nullptr) {
        visitor(place.choice->methods);
    } else if (place.part == nullptr) {
        return false;
    } else if (kind == "line") {
        visitor(place.part->lines);
    } else if (kind == "step") {
        visitor(place.part->steps);
    } else if (kind == "wait") {
        visitor(place.part->waits);
    } else if (kind == "span") {
        visitor(place.part->spans);
    } else if (kind == "food") {
        visitor(place.part->foods);
    } else {
        return false;
    }
    return true;
}

std::optional<RowPath> change(Recipe& recipe, const RowPath& path, const std::string& command)
{
    std::optional<RowPath> select;
    if (path.kind() == "keep" && command == removeKey) {
        const recipe::Place place = recipe::placeOf(recipe, path);
        if (place.part != nullptr && recipe::keepOf(*place.part, path) != nullptr) {
            Wait* wait = findIn(place.part->waits, WaitId{path.idOf("wait")});
            wait->keep.erase(wait->keep.begin() + std::stol(path.id()));
            select = path.parent();
        }
        return select;
    }
    if (path.kind() == "treatment" && command == removeKey) {
        const recipe::Place place = recipe::placeOf(recipe, path);
        if (place.part != nullptr && recipe::treatmentOf(*place.part, path) != nullptr) {
            FollowedFood* food = findIn(place.part->foods, FollowedFoodId{path.idOf("food")});
            food->steps.erase(food->steps.begin() + std::stol(path.id()));
            select = path.parent();
        }
        return select;
    }
    visitListOf(recipe, path, [&](auto& list) {
        using Thing = typename std::decay_t<decltype(list)>::value_type;
        const auto at = std::ranges::find(list, decltype(Thing::id){path.id()}, &Thing::id);
        if (at == list.end()) {
            return;
        }
        select = path;
        if (command == removeKey) {
            list.erase(at);
            select = path.parent();
        } else if (command == upKey && at != list.begin()) {
            std::iter_swap(at, at - 1);
        } else if (command == downKey && at + 1 != list.end()) {
            std::iter_swap(at, at + 1);
        } else if (command == copyKey) {
            Thing copy = *at;
            copy.id = freshIdIn(list, path.id());
            select = path.parent().with(path.kind(), copy.id.text());
            list.insert(at + 1, std::move(copy));
        }
    });
    return select;
}

} // namespace

std::vector<OutlineRow> RecipeOutline::rows(const LibraryState& library) const
{
    const RecipePtr there = find(library);
    if (!there) {
        return {};
    }
    std::vector<OutlineRow> rows = RowBuilder(*there).build();
    const std::vector<OutlineRow> tins = tinRows(library, *there);
    rows.insert(rows.end(), tins.begin(), tins.end());
    return rows;
}

namespace {

/// The ingredient of a line's row; empty for other rows.
std::string ingredientAt(const Recipe& recipe, const RowPath& path)
{
    if (path.kind() != "line") {
        return {};
    }
    Recipe copy = recipe;
    const recipe::Place place = recipe::placeOf(copy, path);
    const auto* line =
        place.part == nullptr ? nullptr : findIn(place.part->lines, LineId{path.idOf("line")});
    return line == nullptr || line->preparation ? std::string() : line->ingredient;
}

} // namespace

std::vector<RowCommand> RecipeOutline::commands(const LibraryState& library,
                                                const std::string& row) const
{
    std::vector<RowCommand> result;
    if (!find(library)) {
        return result;
    }
    const RowPath path(row);
    const std::string kind = path.kind();
    if (isTinKind(kind)) {
        return {}; // to be read
    }
    if (kind == "variants") {
        return {{addVariantKey, tr("Add variant")}};
    }
    if (kind == "methods") {
        return {{addChoiceKey, tr("Add a choice of methods")}};
    }
    if (kind == "variant") {
        result.push_back({addVariantKey, tr("Add variant")});
    }
    if (kind == "choice" || kind == "method") {
        result.push_back({addMethodKey, tr("Add method")});
    }
    if (kind != "choice") {
        result.push_back({addLineKey, tr("Add ingredient")});
        result.push_back({addStepKey, tr("Add step")});
        result.push_back({addWaitKey, tr("Add wait")});
        result.push_back({addSpanKey, tr("Hold something")});
        result.push_back({addFoodKey, tr("Follow a food")});
    }
    if (kind == "food" || kind == "treatment") {
        result.push_back({addTreatmentKey, tr("Add what a step does to it")});
    }
    if (kind == "wait" || kind == "keep") {
        result.push_back({addKeepKey, tr("Add a place to keep it")});
    }
    const bool isThing = !path.id().empty();
    if (isThing && kind != "keep" && kind != "treatment") {
        result.push_back({copyKey, tr("Copy")});
        result.push_back({upKey, tr("Up")});
        result.push_back({downKey, tr("Down")});
    }
    if (isThing) {
        result.push_back({removeKey, tr("Delete")});
    }
    const std::vector<RowCommand> figures =
        usdaCommands(library, ingredientAt(*find(library), path));
    result.insert(result.end(), figures.begin(), figures.end());
    return result;
}

Result<Edit> RecipeOutline::run(const LibraryState& library, const std::string& row,
                                const std::string& command) const
{
    const RecipePtr there = find(library);
    const RowPath path(row);
    if (there) {
        if (auto figures = takeUsdaFigures(library, ingredientAt(*there, path), command)) {
            return *std::move(figures);
        }
        Recipe recipe = *there;
        const auto select = command.starts_with("add-") ? addTo(recipe, path, command)
                                                        : change(recipe, path, command);
        if (select) {
            QString what = tr("Change %1").arg(text(recipe.name));
            for (const RowCommand& each : commands(library, row)) {
                what = each.key == command
                           ? QStringLiteral("%1: %2").arg(text(recipe.name), each.text.toLower())
                           : what;
            }
            return Edit{withRecipe(library, std::move(recipe)), what, select->text()};
        }
    }
    return Failure{FailureKind::NotFound, "This is not there any more.", command};
}

} // namespace suppertide::ui
