#include "tests/demo/demo_files.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

namespace suppertide::demo {

namespace {

namespace fs = std::filesystem;

// Large hen's egg: white 33 g, yolk 17 g (USDA SR26 01124, 01125); juice of a lemon 48 g (SR26
// 09152), of an orange 86 g (09206).
constexpr double whiteGrams = 33;
constexpr double yolkGrams = 17;
constexpr double lemonJuiceGrams = 48;
constexpr double orangeJuiceGrams = 86;

ExchangeContent readAll()
{
    ExchangeContent all;
    for (const std::string_view subfolder : {"recipes", "kitchens", "occasions", "larder"}) {
        for (const fs::path& file : filesIn(subfolder)) {
            auto read = readExchangeFile(file);
            if (!read) {
                throw std::runtime_error(read.error().forCook);
            }
            std::ranges::move(read->recipes, std::back_inserter(all.recipes));
            std::ranges::move(read->kitchens, std::back_inserter(all.kitchens));
            std::ranges::move(read->occasions, std::back_inserter(all.occasions));
            if (read->larder) {
                all.larder = std::move(read->larder);
            }
        }
    }
    return all;
}

/// The one of that id. Throws if there is none.
template <typename T, typename Projection>
const T& named(const std::vector<T>& list, std::string_view id, Projection projection)
{
    const auto found = std::ranges::find_if(
        list, [&](const T& each) { return std::invoke(projection, each).text() == id; });
    if (found == list.end()) {
        throw std::out_of_range("the demo has no “" + std::string(id) + "”");
    }
    return *found;
}

} // namespace

fs::path folder()
{
    return fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db";
}

std::vector<fs::path> filesIn(std::string_view subfolder)
{
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(folder() / subfolder)) {
        files.push_back(entry.path());
    }
    std::ranges::sort(files);
    return files;
}

const ExchangeContent& content()
{
    static const ExchangeContent all = readAll();
    return all;
}

const Recipe& recipe(std::string_view id)
{
    return named(content().recipes, id, &Recipe::id);
}

const Kitchen& kitchen(std::string_view id)
{
    return named(content().kitchens, id, &Kitchen::id);
}

const OccasionRecord& occasion(std::string_view id)
{
    return named(content().occasions, id,
                 [](const OccasionRecord& record) { return record.occasion.id; });
}

const Course& course(const Occasion& occasion, std::string_view id)
{
    return named(occasion.courses, id, &Course::id);
}

const std::map<RecipeId, const Recipe*>& recipes()
{
    static const auto byId = [] {
        std::map<RecipeId, const Recipe*> result;
        for (const Recipe& each : content().recipes) {
            result.emplace(each.id, &each);
        }
        return result;
    }();
    return byId;
}

PlanInput inputOf(Occasion occasion, Layout layout)
{
    PlanInput input;
    input.kitchen = std::make_shared<const Kitchen>(kitchen(occasion.kitchen.text()));
    input.occasion = std::make_shared<const Occasion>(std::move(occasion));
    for (const Recipe& each : content().recipes) {
        input.recipes.emplace(each.id, std::make_shared<const Recipe>(each));
    }
    input.layout = std::make_shared<const Layout>(std::move(layout));
    return input;
}

PlanInput inputOf(std::string_view id)
{
    const OccasionRecord& record = occasion(id);
    return inputOf(record.occasion, record.layout);
}

ResolvedRecipe resolved(std::string_view recipeId, std::string_view variant)
{
    auto result = resolve(recipe(recipeId), VariantId{std::string(variant)});
    if (!result) {
        throw std::out_of_range(result.error().forCook);
    }
    return std::move(*result);
}

ResolvedRecipe usual(std::string_view recipeId)
{
    return resolved(recipeId, recipe(recipeId).variants.front().id.text());
}

std::vector<Step> allSteps(const ResolvedRecipe& resolved)
{
    std::vector<Step> steps = resolved.part.steps;
    for (const MethodChoice& choice : resolved.methods) {
        for (const Method& method : choice.methods) {
            std::ranges::copy(method.part.steps, std::back_inserter(steps));
        }
    }
    return steps;
}

std::vector<Wait> allWaits(const ResolvedRecipe& resolved)
{
    std::vector<Wait> waits = resolved.part.waits;
    for (const MethodChoice& choice : resolved.methods) {
        for (const Method& method : choice.methods) {
            std::ranges::copy(method.part.waits, std::back_inserter(waits));
        }
    }
    return waits;
}

const Step& step(const std::vector<Step>& steps, std::string_view id)
{
    return named(steps, id, &Step::id);
}

const Wait& wait(const std::vector<Wait>& waits, std::string_view id)
{
    return named(waits, id, &Wait::id);
}

double massOf(const IngredientLine& line)
{
    const double value = line.amount.value.toDouble();
    const Dimension dimension = dimensionOf(line.amount.unit);
    if (dimension == Dimension::Mass || dimension == Dimension::Volume) {
        return value * sizeOf(line.amount.unit).toDouble();
    }
    if (line.amount.unit != Unit::Piece) {
        return 0;
    }
    switch (line.part) {
    case IngredientPart::White:
        return value * whiteGrams;
    case IngredientPart::Yolk:
        return value * yolkGrams;
    case IngredientPart::Juice:
        return value * (line.ingredient == "orange" ? orangeJuiceGrams : lemonJuiceGrams);
    default:
        return line.ingredient == "egg" ? value * (whiteGrams + yolkGrams) : 0;
    }
}

double massOf(const ResolvedRecipe& resolved, std::initializer_list<std::string_view> lines)
{
    double sum = 0;
    for (const IngredientLine& line : resolved.part.lines) {
        if (lines.size() == 0 || std::ranges::find(lines, line.id.text()) != lines.end()) {
            sum += massOf(line);
        }
    }
    return sum;
}

} // namespace suppertide::demo
