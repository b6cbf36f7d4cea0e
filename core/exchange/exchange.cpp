#include "core/exchange/exchange.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/exchange/json_reader.h"
#include "core/exchange/print_json.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_writing.h"
#include "core/recipe/faults_of_preparations.h"

namespace suppertide {

namespace {

constexpr std::string_view formatName = "suppertide-exchange";
constexpr std::int64_t formatVersion = 1;
constexpr std::size_t mostFaultsShown = 20;

using RecipeMap = std::map<RecipeId, const Recipe*>;

/// Notes the faults of meaning of one thing that stands at `place`.
template <typename Faults>
void noteAll(const Faults& faults, const std::string& place, JsonFault& notes)
{
    for (const auto& fault : faults) {
        notes.note(fault.place.empty() ? place : fmt::format("{}, {}", place, fault.place),
                   fault.sentence);
    }
}

template <typename Thing>
std::string placeOf(std::string_view list, std::size_t index, const Thing& id)
{
    return fmt::format("{}[{}] ({})", list, index, id.text());
}

bool hasAllRecipes(const Occasion& occasion, const RecipeMap& recipes)
{
    return std::ranges::all_of(occasion.courses, [&](const Course& course) {
        return std::ranges::all_of(course.dishes,
                                   [&](const Dish& dish) { return recipes.contains(dish.recipe); });
    });
}

void noteMeaning(const ExchangeContent& content, JsonFault& notes)
{
    RecipeMap recipes;
    for (std::size_t i = 0; i < content.recipes.size(); ++i) {
        const Recipe& recipe = content.recipes[i];
        recipes.emplace(recipe.id, &recipe);
        noteAll(faultsOf(recipe), placeOf("recipes", i, recipe.id), notes);
    }
    std::map<KitchenId, const Kitchen*> kitchens;
    for (std::size_t i = 0; i < content.kitchens.size(); ++i) {
        const Kitchen& kitchen = content.kitchens[i];
        kitchens.emplace(kitchen.id, &kitchen);
        noteAll(faultsOf(kitchen), placeOf("kitchens", i, kitchen.id), notes);
    }
    if (content.larder) {
        noteAll(faultsOf(*content.larder), "larder", notes);
    }
    for (std::size_t i = 0; i < content.occasions.size(); ++i) {
        const Occasion& occasion = content.occasions[i].occasion;
        const std::string place = placeOf("occasions", i, occasion.id);
        const auto kitchen = kitchens.find(occasion.kitchen);
        if (kitchen != kitchens.end() && hasAllRecipes(occasion, recipes)) {
            noteAll(faultsOf(occasion, *kitchen->second, recipes), place, notes);
        } else if (const auto zone = TimeZone::find(occasion.zone); !zone) {
            notes.note(place + ".zone", zone.error().forCook);
        }
    }
}

Failure refusal(std::string_view name, const JsonFault& notes)
{
    const std::size_t count = notes.all().size();
    std::string text =
        fmt::format("“{}” was not taken in, since {} in it. Correct {}, and try again.", name,
                    count == 1       ? "one thing is wrong"
                    : notes.isFull() ? fmt::format("{} things and perhaps more are wrong", count)
                                     : fmt::format("{} things are wrong", count),
                    count == 1 ? "it" : "them");
    for (const std::string& note : notes.all()) {
        text += "\n" + note;
    }
    return {FailureKind::BadInput, std::move(text), {}};
}

/// Reads a list of things with ids of their own.
template <typename Thing, typename Read, typename IdOf>
void takeThings(JsonFields& top, std::string_view key, std::vector<Thing>& things, const Read& read,
                const IdOf& idOf)
{
    const auto list = top.optional(key);
    if (!list) {
        return;
    }
    std::set<std::string> ids;
    list->forEachItem([&](const JsonCursor& at) {
        things.push_back(read(at));
        const std::string& id = idOf(things.back()).text();
        if (!id.empty() && !ids.insert(id).second) {
            at.fault(fmt::format("the id “{}” stands twice in this list", id));
        }
    });
}

bool isOfLaterVersion(const JsonValue& tree)
{
    const auto* object = std::get_if<JsonValue::Object>(&tree.data);
    if (object == nullptr) {
        return false;
    }
    const auto version = std::ranges::find(*object, "version", &JsonMember::key);
    const auto format = std::ranges::find(*object, "format", &JsonMember::key);
    if (version == object->end() || format == object->end()) {
        return false;
    }
    const auto* number = std::get_if<std::int64_t>(&version->value.data);
    const auto* text = std::get_if<std::string>(&format->value.data);
    return number != nullptr && *number > formatVersion && text != nullptr && *text == formatName;
}

ExchangeContent readContent(const JsonValue& tree, JsonFault& notes)
{
    ExchangeContent content;
    const JsonCursor whole{tree, "", notes};
    JsonFields top = whole.fields();
    if (!whole.isObject()) {
        return content;
    }
    const JsonCursor format = top.required("format");
    if (format.isText() && format.anyText() != formatName) {
        format.fault(fmt::format("expected “{}”: this is not a file of recipes, kitchens and "
                                 "occasions of Suppertide",
                                 formatName));
    } else {
        static_cast<void>(format.anyText());
    }
    static_cast<void>(top.required("version").whole(formatVersion, formatVersion));
    takeThings(top, "recipes", content.recipes, readRecipeAt,
               [](const Recipe& recipe) -> const RecipeId& { return recipe.id; });
    takeThings(top, "kitchens", content.kitchens, readKitchenAt,
               [](const Kitchen& kitchen) -> const KitchenId& { return kitchen.id; });
    takeThings(
        top, "occasions", content.occasions, readOccasionAt,
        [](const OccasionRecord& record) -> const OccasionId& { return record.occasion.id; });
    if (const auto larder = top.optional("larder")) {
        content.larder = readLarderAt(*larder);
    }
    top.done();
    return content;
}

template <typename Thing, typename Read>
Result<Thing> readThing(std::string_view json, const Read& read)
{
    const auto tree = parseJson(json);
    if (!tree) {
        return tree.error();
    }
    JsonFault notes;
    Thing thing = read(JsonCursor{*tree, "", notes});
    if (!notes.isEmpty()) {
        return Failure{FailureKind::BadInput, *notes.first(), {}};
    }
    return thing;
}

} // namespace

Result<ExchangeContent> readExchange(std::string_view json, std::string_view name)
{
    const auto tree = parseJson(json);
    if (!tree) {
        return Failure{tree.error().kind,
                       fmt::format("“{}” was not taken in. {}", name, tree.error().forCook),
                       tree.error().forLog};
    }
    if (isOfLaterVersion(*tree)) {
        return Failure{FailureKind::TooNew,
                       fmt::format("“{}” was written by a later version of Suppertide. Bring this "
                                   "one up to date, then try again.",
                                   name),
                       {}};
    }
    JsonFault notes(mostFaultsShown);
    ExchangeContent content = readContent(*tree, notes);
    if (notes.isEmpty()) {
        noteMeaning(content, notes);
    }
    if (!notes.isEmpty()) {
        return refusal(name, notes);
    }
    std::ranges::sort(content.recipes, {}, &Recipe::id);
    std::ranges::sort(content.kitchens, {}, &Kitchen::id);
    std::ranges::sort(content.occasions, {},
                      [](const OccasionRecord& record) { return record.occasion.id; });
    return content;
}

std::string writeExchange(const ExchangeContent& content)
{
    JsonObject top;
    top.put("format", toJson(formatName));
    top.put("version", toJson(formatVersion));
    const auto thing = [](const auto& item) { return toJson(item); };
    top.putIfAny("recipes", content.recipes, thing);
    top.putIfAny("kitchens", content.kitchens, thing);
    top.putIfAny("occasions", content.occasions, thing);
    top.putIfAny("larder", content.larder);
    return printJson(top.take());
}

LibraryState imported(LibraryState state, const ExchangeContent& content)
{
    for (const Recipe& recipe : content.recipes) {
        state.recipes[recipe.id] = std::make_shared<const Recipe>(recipe);
    }
    for (const Kitchen& kitchen : content.kitchens) {
        state.kitchens[kitchen.id] = std::make_shared<const Kitchen>(kitchen);
    }
    for (const OccasionRecord& record : content.occasions) {
        state.occasions[record.occasion.id] = std::make_shared<const OccasionRecord>(record);
    }
    if (content.larder) {
        state.larder = std::make_shared<const Larder>(merged(larderOf(state), *content.larder));
    }
    return state;
}

Result<void> checkFit(const LibraryState& state, const ExchangeContent& content)
{
    const LibraryState after = imported(state, content);
    RecipeMap recipes;
    for (const auto& [id, recipe] : after.recipes) {
        recipes.emplace(id, recipe.get());
    }
    JsonFault notes(mostFaultsShown);
    for (const Recipe& recipe : content.recipes) {
        noteAll(faultsOfPreparations(recipe, recipes), fmt::format("recipe “{}”", recipe.name),
                notes);
    }
    for (const OccasionRecord& record : content.occasions) {
        const Occasion& occasion = record.occasion;
        const std::string place = fmt::format("occasion “{}”", occasion.name);
        const auto kitchen = after.kitchens.find(occasion.kitchen);
        if (kitchen == after.kitchens.end()) {
            notes.note(place, fmt::format("there is no kitchen “{}”", occasion.kitchen.text()));
        } else {
            noteAll(faultsOf(occasion, *kitchen->second, recipes), place, notes);
        }
    }
    if (content.larder && !areInOneCurrency(larderOf(state), *content.larder)) {
        notes.note("larder", fmt::format("its prices are in {}, those of the library in {}; write "
                                         "one of them anew, or leave its prices out",
                                         content.larder->currency, larderOf(state).currency));
    } else if (content.larder) {
        noteAll(faultsOf(*after.larder), "larder", notes);
    }
    if (!notes.isEmpty()) {
        return refusal(content.occasions.empty() ? "recipes" : "occasions", notes);
    }
    return {};
}

std::string writeRecipe(const Recipe& recipe)
{
    return printCompactJson(toJson(recipe));
}

std::string writeKitchen(const Kitchen& kitchen)
{
    return printCompactJson(toJson(kitchen));
}

std::string writeOccasion(const OccasionRecord& record)
{
    return printCompactJson(toJson(record));
}

std::string writeLarder(const Larder& larder)
{
    return printCompactJson(toJson(larder));
}

Result<Recipe> readRecipe(std::string_view json)
{
    return readThing<Recipe>(json, readRecipeAt);
}

Result<Kitchen> readKitchen(std::string_view json)
{
    return readThing<Kitchen>(json, readKitchenAt);
}

Result<OccasionRecord> readOccasion(std::string_view json)
{
    return readThing<OccasionRecord>(json, readOccasionAt);
}

Result<Larder> readLarder(std::string_view json)
{
    return readThing<Larder>(json, readLarderAt);
}

} // namespace suppertide
