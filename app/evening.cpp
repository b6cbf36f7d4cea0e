#include "app/evening.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <system_error>

#include "app/library_paths.h"
#include "core/larder/ingredient_book.h"
#include "core/plan/lay_out.h"
#include "core/store/sqlite_library.h"

namespace suppertide::app {

namespace {

std::string namesOf(const LibraryState& state)
{
    std::string result;
    for (const auto& [id, record] : state.occasions) {
        result += fmt::format("{}“{}”", result.empty() ? "" : ", ", record->occasion.name);
    }
    return result.empty() ? "It holds none." : fmt::format("It holds {}.", result);
}

OccasionPtr findByName(const LibraryState& state, const std::string& name)
{
    for (const auto& [id, record] : state.occasions) {
        if (record->occasion.name == name || id.text() == name) {
            return record;
        }
    }
    return nullptr;
}

bool isFile(const std::string& word)
{
    std::error_code error;
    return std::filesystem::is_regular_file(word, error);
}

Result<Evening> eveningInFile(const CommandLine& line, const std::string& file)
{
    auto content = readExchangeFile(file);
    if (!content) {
        return content.error();
    }
    if (content->occasions.size() != 1) {
        return Failure{FailureKind::BadInput,
                       fmt::format("{} holds {} occasions; a command takes a file with one.", file,
                                   content->occasions.size()),
                       {}};
    }
    Evening result;
    result.isFromFile = true;
    // Recipes and kitchens that the file lacks are taken from the library, if there is one.
    if (auto library = openLibraryOf(line)) {
        if (auto state = (*library)->load()) {
            result.state = std::move(*state);
        }
        result.library = std::move(*library);
    } else if (line.library) {
        return library.error();
    }
    result.state = imported(std::move(result.state), *content);
    result.record = result.state.occasions.at(content->occasions.front().occasion.id);
    return result;
}

/// What the recipe's lines need, whichever variant and method is taken.
void followPreparations(const Recipe& recipe, std::vector<RecipeId>& open)
{
    const auto follow = [&open](const RecipePart& part) {
        for (const IngredientLine& line : part.lines) {
            if (line.preparation) {
                open.push_back(*line.preparation);
            }
        }
    };
    follow(recipe.common);
    for (const Variant& variant : recipe.variants) {
        follow(variant.adds);
    }
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            follow(method.part);
        }
    }
}

std::vector<RecipePtr> recipesOf(const LibraryState& state, const Occasion& occasion)
{
    std::vector<RecipeId> open;
    for (const Course& course : occasion.courses) {
        for (const Dish& dish : course.dishes) {
            open.push_back(dish.recipe);
        }
    }
    std::set<RecipeId> taken;
    std::vector<RecipePtr> result;
    while (!open.empty()) {
        const RecipeId id = open.back();
        open.pop_back();
        const auto recipe = state.recipes.find(id);
        if (recipe != state.recipes.end() && taken.insert(id).second) {
            result.push_back(recipe->second);
            followPreparations(*recipe->second, open);
        }
    }
    return result;
}

} // namespace

Result<std::unique_ptr<Library>> openLibraryOf(const CommandLine& line)
{
    if (line.library) {
        return openLibrary(*line.library, OpenMode::ReadWrite);
    }
    auto path = usersLibrary();
    if (!path) {
        return path.error();
    }
    return openLibrary(*path, OpenMode::CreateIfMissing);
}

Result<Evening> findEvening(const CommandLine& line, const std::string& occasion)
{
    if (isFile(occasion)) {
        return eveningInFile(line, occasion);
    }
    auto library = openLibraryOf(line);
    if (!library) {
        return library.error();
    }
    auto state = (*library)->load();
    if (!state) {
        return state.error();
    }
    Evening result;
    result.record = findByName(*state, occasion);
    if (!result.record) {
        return Failure{FailureKind::NotFound,
                       fmt::format("There is no occasion “{}” in the library, and no file of that "
                                   "name. {}",
                                   occasion, namesOf(*state)),
                       {}};
    }
    result.state = std::move(*state);
    result.library = std::move(*library);
    return result;
}

Result<PlanInput> planInputOf(const LibraryState& state, const OccasionPtr& record)
{
    const auto kitchen = state.kitchens.find(record->occasion.kitchen);
    if (kitchen == state.kitchens.end()) {
        return Failure{
            FailureKind::NotFound,
            fmt::format("The kitchen of “{}” is not in the library. Import it, or choose "
                        "another one on the kitchen page.",
                        record->occasion.name),
            record->occasion.kitchen.text()};
    }
    // Aliasing pointers: parts of a record live as long as the record.
    PlanInput input{std::shared_ptr<const Occasion>(record, &record->occasion), kitchen->second,
                    state.recipes, std::shared_ptr<const Layout>(record, &record->layout)};
    input.ingredients = ingredientBook(larderOf(state));
    return input;
}

Result<NamedEvening> namedEvening(const CommandLine& line)
{
    auto evening = findEvening(line, line.arguments.front());
    if (!evening) {
        return evening.error();
    }
    auto input = planInputOf(evening->state, evening->record);
    if (!input) {
        return input.error();
    }
    return NamedEvening{*std::move(evening), *std::move(input)};
}

Result<PlanPtr> laidOutPlan(const PlanInput& input)
{
    auto formulation = formulate(input);
    if (!formulation) {
        return formulation.error();
    }
    return judgePlan(*formulation, input, layOut(**formulation, *input.layout));
}

ExchangeContent contentWith(const LibraryState& state, OccasionRecord record)
{
    ExchangeContent result;
    for (const RecipePtr& recipe : recipesOf(state, record.occasion)) {
        result.recipes.push_back(*recipe);
    }
    if (const auto kitchen = state.kitchens.find(record.occasion.kitchen);
        kitchen != state.kitchens.end()) {
        result.kitchens.push_back(*kitchen->second);
    }
    result.occasions.push_back(std::move(record));
    return result;
}

} // namespace suppertide::app
