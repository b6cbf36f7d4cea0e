// Edit: what a model answers to a wish of the user: the state that would follow, the words for
// Undo, and the row to select then. The page hands it to Document::apply. Small ways to make one.
#pragma once

#include <QString>

#include <algorithm>
#include <functional>
#include <string>

#include "ui/document/state.h"

namespace suppertide::ui {

struct Edit
{
    LibraryState next;
    QString text;
    std::string select; // row of the outline to show then; empty: the same
};

/// The library with the open occasion changed by `change(Occasion&)`. Requires one to be open.
template <typename Change>
[[nodiscard]] LibraryState withOccasion(const LibraryState& library, const Change& change)
{
    const OccasionPtr record = openOccasion(library);
    expects(record != nullptr, "an open occasion");
    OccasionRecord next = *record;
    change(next.occasion);
    LibraryState state = library;
    // The id apart: what is assigned is made, and `next` emptied, before the place is looked up.
    const OccasionId id = record->occasion.id;
    state.occasions[id] = std::make_shared<const OccasionRecord>(std::move(next));
    return state;
}

/// The library with the open occasion's layout replaced.
[[nodiscard]] LibraryState withLayout(const LibraryState& library, Layout layout);
/// The library with this in the place of the record of its id.
[[nodiscard]] LibraryState withRecord(const LibraryState& library, OccasionRecord record);
[[nodiscard]] LibraryState withRecipe(const LibraryState& library, Recipe recipe);
[[nodiscard]] LibraryState withKitchen(const LibraryState& library, Kitchen kitchen);

/// A readable id made of `name` that is not among those that `isTaken` answers true for:
/// "Roast roots" → "roast-roots", "roast-roots-2" …; "dish" stands in for a name without letters.
[[nodiscard]] std::string freshId(const std::string& name,
                                  const std::function<bool(const std::string&)>& isTaken);

/// The same for a list of things that have an id.
template <typename Thing>
[[nodiscard]] decltype(Thing::id) freshIdIn(const std::vector<Thing>& things,
                                            const std::string& name)
{
    return decltype(Thing::id){freshId(name, [&](const std::string& id) {
        return std::any_of(things.begin(), things.end(),
                           [&](const Thing& thing) { return thing.id.text() == id; });
    })};
}

/// The thing of that id in a list; null if there is none.
template <typename Things, typename Key>
[[nodiscard]] auto* findIn(Things& things, const Key& id)
{
    const auto there = std::find_if(things.begin(), things.end(),
                                    [&](const auto& thing) { return thing.id == id; });
    return there == things.end() ? nullptr : &*there;
}

template <typename Thing, typename Key>
void eraseFrom(std::vector<Thing>& things, const Key& id)
{
    std::erase_if(things, [&](const Thing& thing) { return thing.id == id; });
}

} // namespace suppertide::ui
