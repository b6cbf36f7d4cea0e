#include "ui/models/edit.h"

#include <cctype>

namespace suppertide::ui {

LibraryState withLayout(const LibraryState& library, Layout layout)
{
    const OccasionPtr record = openOccasion(library);
    expects(record != nullptr, "an open occasion");
    OccasionRecord next = *record;
    next.layout = std::move(layout);
    return withRecord(library, std::move(next));
}

LibraryState withRecord(const LibraryState& library, OccasionRecord record)
{
    LibraryState state = library;
    const OccasionId id = record.occasion.id;
    state.occasions[id] = std::make_shared<const OccasionRecord>(std::move(record));
    return state;
}

LibraryState withRecipe(const LibraryState& library, Recipe recipe)
{
    LibraryState state = library;
    const RecipeId id = recipe.id;
    state.recipes[id] = std::make_shared<const Recipe>(std::move(recipe));
    return state;
}

LibraryState withKitchen(const LibraryState& library, Kitchen kitchen)
{
    LibraryState state = library;
    const KitchenId id = kitchen.id;
    state.kitchens[id] = std::make_shared<const Kitchen>(std::move(kitchen));
    return state;
}

std::string freshId(const std::string& name, const std::function<bool(const std::string&)>& isTaken)
{
    std::string stem;
    for (const char letter : name) {
        const auto code = static_cast<unsigned char>(letter);
        if (code < 128 && std::isalnum(code) != 0) {
            stem += static_cast<char>(std::tolower(code));
        } else if (!stem.empty() && stem.back() != '-') {
            stem += '-';
        }
    }
    while (!stem.empty() && stem.back() == '-') {
        stem.pop_back();
    }
    if (stem.empty()) {
        stem = "dish";
    }
    std::string id = stem;
    for (int number = 2; isTaken(id); ++number) {
        id = stem + "-" + std::to_string(number);
    }
    return id;
}

} // namespace suppertide::ui
