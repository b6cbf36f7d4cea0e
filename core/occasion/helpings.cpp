// Who eats what: portions shared out to guests by maximum bipartite matching (augmenting paths; H.
// W. Kuhn, The Hungarian method for the assignment problem, 1955, for the unweighted case).
#include <algorithm>
#include <iterator>
#include <set>

#include "core/occasion/occasion.h"

namespace suppertide {

namespace {

using Recipes = std::map<RecipeId, const Recipe*>;

/// Portions of one variant of one dish that are still to be given.
struct Serving
{
    const Dish* dish = nullptr;
    const MixEntry* entry = nullptr;
    Contents contents;
    std::size_t left = 0;              // whole portions
    std::vector<std::size_t> takers{}; // guests, by index
};

std::vector<Substance> unsuitableFor(const Guest& guest, const Contents& contents)
{
    const std::vector<Substance> avoided = avoidedBy(guest);
    std::vector<Substance> result;
    std::ranges::set_intersection(avoided, contents.contains, std::back_inserter(result));
    return result;
}

class SharingOut
{
public:
    SharingOut(const Occasion& occasion, std::vector<Serving> servings)
        : guests_(occasion.guests), servings_(std::move(servings)), has_(guests_.size(), false)
    {}

    /// Guests named in the mix take their portion first, whether it suits or not.
    void giveNamed()
    {
        for (Serving& serving : servings_) {
            for (const GuestId& id : serving.entry->guests) {
                const auto guest = std::ranges::find(guests_, id, &Guest::id);
                if (guest != guests_.end()) {
                    const auto index = static_cast<std::size_t>(guest - guests_.begin());
                    named_.emplace_back(index, &serving);
                    has_[index] = true;
                    serving.left -= serving.left > 0 ? 1 : 0;
                }
            }
        }
    }

    /// As many guests as can be get something that suits; who has fewest ways to be served first.
    void matchTheRest()
    {
        std::vector<std::size_t> order;
        for (std::size_t guest = 0; guest < guests_.size(); ++guest) {
            if (!has_[guest]) {
                order.push_back(guest);
            }
        }
        std::ranges::stable_sort(order, {}, [this](std::size_t guest) { return waysFor(guest); });
        for (const std::size_t guest : order) {
            std::set<std::size_t> visited;
            has_[guest] = augment(guest, visited);
        }
    }

    /// What is left goes to those who have nothing yet, though it does not suit them.
    void giveWhatIsLeft()
    {
        for (std::size_t guest = 0; guest < guests_.size(); ++guest) {
            for (Serving& serving : servings_) {
                if (!has_[guest] && serving.takers.size() < serving.left) {
                    serving.takers.push_back(guest);
                    has_[guest] = true;
                }
            }
        }
    }

    void write(std::vector<Helping>& helpings) const
    {
        for (const auto& [guest, serving] : named_) {
            helpings.push_back(helping(guest, *serving));
        }
        for (const Serving& serving : servings_) {
            for (const std::size_t guest : serving.takers) {
                helpings.push_back(helping(guest, serving));
            }
        }
    }

private:
    [[nodiscard]] bool suits(std::size_t guest, const Serving& serving) const
    {
        return unsuitableFor(guests_[guest], serving.contents).empty();
    }

    [[nodiscard]] std::size_t waysFor(std::size_t guest) const
    {
        return static_cast<std::size_t>(std::ranges::count_if(
            servings_, [&](const Serving& serving) { return suits(guest, serving); }));
    }

    bool augment(std::size_t guest, std::set<std::size_t>& visited)
    {
        for (std::size_t i = 0; i < servings_.size(); ++i) {
            Serving& serving = servings_[i];
            if (!suits(guest, serving) || !visited.insert(i).second) {
                continue;
            }
            if (serving.takers.size() < serving.left) {
                serving.takers.push_back(guest);
                return true;
            }
            for (std::size_t& taker : serving.takers) {
                if (augment(taker, visited)) {
                    taker = guest;
                    return true;
                }
            }
        }
        return false;
    }

    [[nodiscard]] Helping helping(std::size_t guest, const Serving& serving) const
    {
        return {guests_[guest].id,        serving.dish->id,
                serving.entry->variant,   unsuitableFor(guests_[guest], serving.contents),
                serving.contents.unknown, serving.contents.checkLabel};
    }

    const std::vector<Guest>& guests_;
    std::vector<Serving> servings_;
    std::vector<bool> has_;
    std::vector<std::pair<std::size_t, const Serving*>> named_;
};

std::vector<Serving> servingsOf(const Dish& dish, const Recipes& recipes,
                                const IngredientBook& ingredients)
{
    std::vector<Serving> result;
    const auto recipe = recipes.find(dish.recipe);
    for (const MixEntry& entry : dish.mix) {
        if (entry.portions <= Portions{0}) {
            continue;
        }
        // A half portion is a child's whole helping, so what is begun counts.
        const auto portions = static_cast<std::size_t>(entry.portions.ceiled());
        Contents contents;
        if (recipe != recipes.end()) {
            contents = contentsOf(*recipe->second, entry.variant, recipes, ingredients);
        }
        result.push_back({&dish, &entry, std::move(contents), portions});
    }
    return result;
}

/// Those that are cooked; sides for everybody are no course, unless there is nothing else.
std::set<DishId> dishesToHaveOneOf(const Course& course)
{
    std::set<DishId> mains;
    std::set<DishId> all;
    for (const Dish& dish : course.dishes) {
        if (portionsOf(dish) <= Portions{0}) {
            continue;
        }
        all.insert(dish.id);
        const auto alternative =
            std::ranges::find(course.alternatives, dish.alternative, &Alternative::id);
        if (alternative == course.alternatives.end() || !alternative->isForEverybody) {
            mains.insert(dish.id);
        }
    }
    return mains.empty() ? all : mains;
}

} // namespace

std::vector<Helping> helpingsOf(const Occasion& occasion, const Course& course,
                                const Recipes& recipes, const IngredientBook& ingredients)
{
    std::vector<Helping> helpings;
    std::vector<Serving> shared;
    for (const Dish& dish : course.dishes) {
        std::vector<Serving> servings = servingsOf(dish, recipes, ingredients);
        std::size_t portions = 0;
        for (const Serving& serving : servings) {
            portions += serving.left;
        }
        if (portions < occasion.guests.size()) {
            std::ranges::move(servings, std::back_inserter(shared));
            continue;
        }
        SharingOut sharing(occasion, std::move(servings));
        sharing.giveNamed();
        sharing.matchTheRest();
        sharing.giveWhatIsLeft();
        sharing.write(helpings);
    }
    SharingOut sharing(occasion, std::move(shared));
    sharing.giveNamed();
    sharing.matchTheRest();
    sharing.write(helpings);
    return helpings;
}

std::vector<GuestId> leftOut(const Occasion& occasion, const Course& course, const Recipes& recipes,
                             const IngredientBook& ingredients)
{
    const std::set<DishId> dishes = dishesToHaveOneOf(course);
    if (dishes.empty()) {
        return {};
    }
    const std::vector<Helping> helpings = helpingsOf(occasion, course, recipes, ingredients);
    std::vector<GuestId> result;
    for (const Guest& guest : occasion.guests) {
        const bool eats = std::ranges::any_of(helpings, [&](const Helping& helping) {
            return helping.guest == guest.id && helping.unsuitable.empty() &&
                   dishes.contains(helping.dish);
        });
        if (!eats) {
            result.push_back(guest.id);
        }
    }
    return result;
}

} // namespace suppertide
