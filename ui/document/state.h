// State: one snapshot of all that the cook has said, with a revision by which a plan made from it
// is known. Shared and never changed; an edit makes another one. Read by everything in the window.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <set>

#include "core/library/library.h"
#include "core/plan/formulation.h"

namespace suppertide::ui {

struct State
{
    LibraryState library;
    /// Equal revisions are the same state: undo comes back to the revision that was.
    std::uint64_t revision = 0;
};

using StatePtr = std::shared_ptr<const State>;

/// The occasion that the window shows; null if none is open, or it is not there.
[[nodiscard]] OccasionPtr openOccasion(const LibraryState& library);
/// Its kitchen; null if it has none.
[[nodiscard]] KitchenPtr openKitchen(const LibraryState& library);
/// All that a plan of the open occasion is made from; absent without an occasion or a kitchen.
/// Preparations that its dishes use are among the recipes.
[[nodiscard]] std::optional<PlanInput> planInputOf(const LibraryState& library);
/// For core functions that look recipes up.
[[nodiscard]] std::map<RecipeId, const Recipe*> recipesOf(const LibraryState& library);

/// What differs between two states, for views to redraw no more than they must.
struct ChangeSet
{
    std::set<RecipeId> recipes;
    std::set<KitchenId> kitchens;
    std::set<OccasionId> occasions;
    bool isOtherOccasion = false;  // another one is shown
    bool isOccasionChanged = true; // the shown one, or another is shown
    bool isPlanTouched = true;     // the shown occasion, its kitchen or one of its recipes
    bool isLarderChanged = false;

    [[nodiscard]] bool empty() const
    {
        return recipes.empty() && kitchens.empty() && occasions.empty() && !isOtherOccasion &&
               !isLarderChanged;
    }
    friend bool operator==(const ChangeSet&, const ChangeSet&) = default;
};

[[nodiscard]] ChangeSet changesBetween(const LibraryState& before, const LibraryState& after);

} // namespace suppertide::ui
