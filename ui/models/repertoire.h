// Repertoire: the recipes as cards, and the search over them. A search is words that all must
// occur (in the name, keywords, variants or ingredients), and wishes such as "no nuts" or "vegan",
// which keep only the variants that are known to fulfil them.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ui/document/state.h"
#include "ui/models/dish_looks.h"

namespace suppertide::ui {

struct VariantRow
{
    VariantId id;
    std::string name;
    std::string portions; // on the open occasion's menu; empty: none

    friend bool operator==(const VariantRow&, const VariantRow&) = default;
};

struct RecipeCard
{
    RecipeId id;
    std::string name;
    std::string meta;        // "25 min hands-on, 4 h 30 in all"
    std::optional<int> look; // of its dish, if it is on the menu
    std::vector<VariantRow> variants;

    friend bool operator==(const RecipeCard&, const RecipeCard&) = default;
};

struct RepertoireSearch
{
    std::vector<std::string> words;
    std::vector<Substance> without; // sorted, each once

    /// "tart no nuts" → the word "tart", without the nuts.
    [[nodiscard]] static RepertoireSearch parse(std::string_view text);
    [[nodiscard]] bool empty() const { return words.empty() && without.empty(); }
    friend bool operator==(const RepertoireSearch&, const RepertoireSearch&) = default;
};

/// What a wish rules out: "nuts", "gluten", "dairy", "meat", a diet or a substance; empty if it is
/// no such thing.
[[nodiscard]] std::vector<Substance> ruledOutBy(std::string_view wish);

/// Hands-on time, and the longest way from the first step to serving, for the first variant.
struct RecipeLength
{
    Minutes handsOn{0};
    Minutes inAll{0};

    friend bool operator==(const RecipeLength&, const RecipeLength&) = default;
};
[[nodiscard]] RecipeLength lengthOf(const Recipe& recipe);

/// Keeps what it has worked out for recipes that did not change.
class Repertoire
{
public:
    /// Dishes on the menu first, in order of their letters, then the others by name.
    [[nodiscard]] std::vector<RecipeCard> cards(const LibraryState& library, const DishLooks& looks,
                                                const RepertoireSearch& search);

private:
    struct Facts
    {
        RecipePtr recipe; // holds it, so that its address stays its own
        std::string searched;
        std::string meta;
        std::vector<Contents> contents; // parallel to the variants
    };
    void readLarder(const LibraryState& library);
    [[nodiscard]] const Facts& factsOf(const RecipePtr& recipe);

    LarderPtr larder_; // that `ingredients_` and `facts_` were made with
    IngredientBook ingredients_;
    std::map<RecipeId, Facts> facts_;
};

} // namespace suppertide::ui
