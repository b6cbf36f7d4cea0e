// Library: how everything that the cook says is kept: recipes, kitchens, occasions with their
// layouts and progress, the larder, and the last 100 changes, undoable across a restart. An
// interface, so that tests can fake it; core/store keeps it in an SQLite file.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/kitchen/kitchen.h"
#include "core/larder/bought.h"
#include "core/larder/larder.h"
#include "core/night/progress.h"
#include "core/occasion/occasion.h"
#include "core/plan/layout.h"
#include "core/recipe/recipe.h"

namespace suppertide {

/// An occasion with what the user has decided of its plan, what was reported of it on the night,
/// and what was bought for it.
struct OccasionRecord
{
    Occasion occasion;
    Layout layout;
    Progress progress;
    Bought bought;

    friend bool operator==(const OccasionRecord&, const OccasionRecord&) = default;
};

using RecipePtr = std::shared_ptr<const Recipe>;
using KitchenPtr = std::shared_ptr<const Kitchen>;
using OccasionPtr = std::shared_ptr<const OccasionRecord>;
using LarderPtr = std::shared_ptr<const Larder>;

/// Everything in a library, as shared snapshots: a copy is cheap, and parts are shared between
/// copies.
struct LibraryState
{
    std::map<RecipeId, RecipePtr> recipes;
    std::map<KitchenId, KitchenPtr> kitchens;
    std::map<OccasionId, OccasionPtr> occasions;
    LarderPtr larder;               // null: nothing has been said
    std::optional<OccasionId> open; // the occasion that the window shows

    friend bool operator==(const LibraryState&, const LibraryState&) = default;
};

/// One thing before and after; null: it was not there, or is not there any more.
struct RecipeChange
{
    RecipeId id;
    RecipePtr before;
    RecipePtr after;
};
struct KitchenChange
{
    KitchenId id;
    KitchenPtr before;
    KitchenPtr after;
};
struct OccasionChange
{
    OccasionId id;
    OccasionPtr before;
    OccasionPtr after;
};
struct LarderChange
{
    LarderPtr before;
    LarderPtr after;
};
struct OpenChange
{
    std::optional<OccasionId> before;
    std::optional<OccasionId> after;
};

using ChangePart =
    std::variant<RecipeChange, KitchenChange, OccasionChange, LarderChange, OpenChange>;

/// The larder of a state; an empty one if nothing has been said.
[[nodiscard]] const Larder& larderOf(const LibraryState& state);

/// One undoable change, with the words that Undo shows ("Move roast roots").
struct Change
{
    std::string text;
    std::vector<ChangePart> parts;
};

/// What differs between two states, part by part.
[[nodiscard]] Change differenceOf(const LibraryState& before, const LibraryState& after,
                                  std::string text);
/// The state after the change, or before it again.
[[nodiscard]] LibraryState applied(LibraryState state, const Change& change);
[[nodiscard]] LibraryState reverted(LibraryState state, const Change& change);

/// The changes kept, oldest first; those before `done` are in force, the rest can be redone.
struct History
{
    std::vector<Change> changes;
    std::size_t done = 0;
};

class Library
{
public:
    Library() = default;
    Library(const Library&) = delete;
    Library& operator=(const Library&) = delete;
    Library(Library&&) = delete;
    Library& operator=(Library&&) = delete;
    virtual ~Library() = default;

    /// Why it can only be looked at ("Suppertide (process 4711) has this library open …"); empty:
    /// it can be written.
    [[nodiscard]] virtual std::string readOnlyReason() const = 0;
    [[nodiscard]] virtual Result<LibraryState> load() = 0;
    [[nodiscard]] virtual Result<History> loadHistory() = 0;

    /// Each of these three is one transaction, on disk when it returns. `apply` forgets what could
    /// be redone, and the oldest change above 100.
    [[nodiscard]] virtual Result<void> apply(const Change& change) = 0;
    [[nodiscard]] virtual Result<void> undo() = 0;
    [[nodiscard]] virtual Result<void> redo() = 0;

    /// Small settings of the window ("window.geometry"); no part of undo.
    [[nodiscard]] virtual Result<std::optional<std::string>> setting(const std::string& name) = 0;
    [[nodiscard]] virtual Result<void> keepSetting(const std::string& name,
                                                   const std::string& value) = 0;
};

} // namespace suppertide
