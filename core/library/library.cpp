#include "core/library/library.h"

#include <utility>

namespace suppertide {

namespace {

/// The same thing, whether shared or equal.
template <typename T>
bool isSame(const std::shared_ptr<const T>& a, const std::shared_ptr<const T>& b)
{
    return a == b || (a && b && *a == *b);
}

/// Walks both maps side by side, both being sorted by id.
template <typename Part, typename IdType, typename Ptr>
void addDifferences(const std::map<IdType, Ptr>& before, const std::map<IdType, Ptr>& after,
                    std::vector<ChangePart>& parts)
{
    auto old = before.begin();
    auto now = after.begin();
    while (old != before.end() || now != after.end()) {
        if (now == after.end() || (old != before.end() && old->first < now->first)) {
            parts.push_back(Part{old->first, old->second, nullptr});
            ++old;
        } else if (old == before.end() || now->first < old->first) {
            parts.push_back(Part{now->first, nullptr, now->second});
            ++now;
        } else {
            if (!isSame(old->second, now->second)) {
                parts.push_back(Part{old->first, old->second, now->second});
            }
            ++old;
            ++now;
        }
    }
}

template <typename IdType, typename Ptr>
void put(std::map<IdType, Ptr>& things, const IdType& id, const Ptr& thing)
{
    if (thing) {
        things.insert_or_assign(id, thing);
    } else {
        things.erase(id);
    }
}

template <typename Part>
const auto& sideOf(const Part& part, bool forward)
{
    return forward ? part.after : part.before;
}

/// Puts one side of a change's parts into a state.
class Putter
{
public:
    Putter(LibraryState& state, bool forward) : state_(&state), forward_(forward) {}

    void operator()(const RecipeChange& part)
    {
        put(state_->recipes, part.id, sideOf(part, forward_));
    }
    void operator()(const KitchenChange& part)
    {
        put(state_->kitchens, part.id, sideOf(part, forward_));
    }
    void operator()(const OccasionChange& part)
    {
        put(state_->occasions, part.id, sideOf(part, forward_));
    }
    void operator()(const LarderChange& part) { state_->larder = sideOf(part, forward_); }
    void operator()(const OpenChange& part) { state_->open = sideOf(part, forward_); }

private:
    LibraryState* state_;
    bool forward_;
};

LibraryState withSide(LibraryState state, const Change& change, bool forward)
{
    Putter putter(state, forward);
    for (const ChangePart& part : change.parts) {
        std::visit(putter, part);
    }
    return state;
}

} // namespace

const Larder& larderOf(const LibraryState& state)
{
    static const Larder empty;
    return state.larder ? *state.larder : empty;
}

Change differenceOf(const LibraryState& before, const LibraryState& after, std::string text)
{
    Change change{std::move(text), {}};
    addDifferences<RecipeChange>(before.recipes, after.recipes, change.parts);
    addDifferences<KitchenChange>(before.kitchens, after.kitchens, change.parts);
    addDifferences<OccasionChange>(before.occasions, after.occasions, change.parts);
    if (!isSame(before.larder, after.larder)) {
        change.parts.emplace_back(LarderChange{before.larder, after.larder});
    }
    if (before.open != after.open) {
        change.parts.emplace_back(OpenChange{before.open, after.open});
    }
    return change;
}

LibraryState applied(LibraryState state, const Change& change)
{
    return withSide(std::move(state), change, true);
}

LibraryState reverted(LibraryState state, const Change& change)
{
    return withSide(std::move(state), change, false);
}

} // namespace suppertide
