#include <algorithm>
#include <functional>
#include <limits>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "core/planner/engine/energy.h"
#include "core/planner/exact/parts.h"

namespace suppertide::exact {

namespace {

constexpr std::size_t mostTasks = 250;  // that all paths between are found of
constexpr std::size_t mostMembers = 40; // with more of them windows are too many
/// With more of them windows are looked at only at level 1, which assumes a limit of the cost.
constexpr std::size_t mostAtAllLevels = 32;

struct Member
{
    Variable start;
    Bound length = 0;
};

/// Which tasks that there are for sure cannot overlap.
class ApartTasks
{
public:
    explicit ApartTasks(const Model& model)
    {
        for (const TaskIndex task : model.problem().tasks.indices()) {
            if (model.isAlways(model.present(task))) {
                place_.emplace(model.start(task).index, members_.size());
                members_.push_back(
                    {model.start(task),
                     static_cast<Bound>(model.problem().tasks[task].duration.count())});
            }
        }
        if (members_.size() <= mostTasks) {
            apart_.assign(members_.size() * members_.size(), false);
            readEdges(model);
        }
    }

    [[nodiscard]] const std::vector<Member>& members() const { return members_; }
    [[nodiscard]] bool isKnown() const { return !apart_.empty(); }
    [[nodiscard]] bool areApart(std::size_t one, std::size_t other) const
    {
        return apart_[one * members_.size() + other] || apart_[other * members_.size() + one];
    }

private:
    using Ordered = std::pair<std::size_t, std::size_t>;
    static constexpr std::int64_t never = -(std::int64_t{1} << 40);

    /// Says that the second begins so much later than the first at least.
    void readEdges(const Model& model)
    {
        const std::size_t count = members_.size();
        std::vector<std::int64_t> later(count * count, never);
        std::map<Ordered, std::set<Literal>> ifHolds;
        for (const engine::Edges::Half& half : model.engine().edges().halves()) {
            const auto from = place_.find(Variable{half.from / 2}.index);
            const auto to = place_.find(Variable{half.to / 2}.index);
            const bool isOfLeast = half.from == Variable{half.from / 2}.minus();
            if (!isOfLeast || from == place_.end() || to == place_.end()) {
                continue;
            }
            const Ordered pair(from->second, to->second);
            const std::int64_t least = -std::int64_t{half.weight};
            if (!half.enabler || model.isAlways(*half.enabler)) {
                std::int64_t& known = later[pair.first * count + pair.second];
                known = std::max(known, least);
            } else if (least >= members_[pair.first].length) {
                ifHolds[pair].insert(*half.enabler);
            }
        }
        findPaths(later);
        for (std::size_t i = 0; i < later.size(); ++i) {
            apart_[i] = later[i] >= members_[i / count].length && i / count != i % count;
        }
        for (const auto& [pair, literals] : ifHolds) {
            const auto back = ifHolds.find({pair.second, pair.first});
            apart_[pair.first * count + pair.second] =
                apart_[pair.first * count + pair.second] ||
                (back != ifHolds.end() && std::ranges::any_of(literals, [&](Literal one) {
                     return back->second.contains(~one);
                 }));
        }
    }
    /// Source: R. Floyd, Algorithm 97: Shortest path (1962).
    void findPaths(std::vector<std::int64_t>& later) const
    {
        const std::size_t count = members_.size();
        for (std::size_t k = 0; k < count; ++k) {
            for (std::size_t i = 0; i < count; ++i) {
                const std::int64_t first = later[i * count + k];
                for (std::size_t j = 0; first > never && j < count; ++j) {
                    const std::int64_t second = later[k * count + j];
                    std::int64_t& known = later[i * count + j];
                    // Where lags contradict each other there is no end to it.
                    const std::int64_t both = std::min(first + second, -never);
                    known = second > never ? std::max(known, both) : known;
                }
            }
        }
    }

    std::vector<Member> members_;
    std::map<std::uint32_t, std::size_t> place_; // by variable
    std::vector<bool> apart_;
};

/// Of the cliques found by taking, for each task, as many others as there can be, the longer ones
/// first: the one that takes longest.
std::vector<Member> longestClique(const ApartTasks& tasks)
{
    const std::vector<Member>& members = tasks.members();
    std::vector<std::size_t> byLength;
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (members[i].length > 0) {
            byLength.push_back(i);
        }
    }
    std::ranges::stable_sort(byLength, std::greater{},
                             [&](std::size_t i) { return members[i].length; });
    std::vector<std::size_t> longest;
    std::int64_t most = 0;
    for (const std::size_t seed : byLength) {
        std::vector<std::size_t> clique{seed};
        std::int64_t sum = members[seed].length;
        for (const std::size_t i : byLength) {
            const bool fits =
                clique.size() < mostMembers && std::ranges::all_of(clique, [&](std::size_t other) {
                    return i != other && tasks.areApart(i, other);
                });
            if (fits) {
                clique.push_back(i);
                sum += members[i].length;
            }
        }
        if (sum > most) {
            most = sum;
            longest = std::move(clique);
        }
    }
    std::ranges::sort(longest);
    std::vector<Member> result;
    result.reserve(longest.size());
    for (const std::size_t i : longest) {
        result.push_back(members[i]);
    }
    return result;
}

} // namespace

void addClique(Model& model)
{
    const ApartTasks tasks(model);
    if (!tasks.isKnown()) {
        return;
    }
    std::vector<engine::EnergyItem> items;
    for (const Member& member : longestClique(tasks)) {
        items.push_back({{member.start, 0}, member.length, 1});
    }
    if (items.size() > 2) {
        const std::int32_t deepest =
            items.size() <= mostAtAllLevels ? std::numeric_limits<std::int32_t>::max() : 1;
        engine::EnergyPropagator::post(model.engine(), std::move(items), 1, deepest);
    }
}

} // namespace suppertide::exact
