#include "core/menus/cheapest_choices.h"

#include <algorithm>
#include <map>
#include <optional>

#include "core/base/contracts.h"

namespace suppertide::menus {

namespace {

class Search
{
public:
    Search(const std::vector<const Choices*>& takers, const CostOfMaking& costOfMaking,
           std::size_t mostNodes)
        : takers_(takers), costOfMaking_(costOfMaking), nodesLeft_(mostNodes),
          taken_(takers.size(), 0), leastOfRest_(takers.size() + 1, 0)
    {
        for (std::size_t i = takers.size(); i-- > 0;) {
            const auto least = std::ranges::min_element(*takers[i], {}, &Choice::penalty);
            leastOfRest_[i] = leastOfRest_[i + 1] + least->penalty;
        }
    }

    std::vector<std::size_t> run()
    {
        descend(0, {}, 0);
        return best_;
    }

private:
    [[nodiscard]] int costOf(const std::set<std::size_t>& things)
    {
        const auto known = costs_.find(things);
        return known != costs_.end() ? known->second
                                     : costs_.emplace(things, costOfMaking_(things)).first->second;
    }

    void descend(std::size_t taker, const std::set<std::size_t>& things, int penalties)
    {
        const int cost = costOf(things) + penalties;
        const bool isWorse = bestCost_ && cost + leastOfRest_[taker] >= *bestCost_;
        // The first way down is always gone to its end, so that there is an answer.
        if (isWorse || (bestCost_ && nodesLeft_ == 0)) {
            return;
        }
        nodesLeft_ -= nodesLeft_ > 0 ? 1 : 0;
        if (taker == takers_.size()) {
            best_ = taken_;
            bestCost_ = cost;
            return;
        }
        for (std::size_t i = 0; i < takers_[taker]->size(); ++i) {
            const Choice& choice = (*takers_[taker])[i];
            std::set<std::size_t> more = things;
            more.insert(choice.thing);
            taken_[taker] = i;
            descend(taker + 1, more, penalties + choice.penalty);
        }
    }

    const std::vector<const Choices*>& takers_;
    const CostOfMaking& costOfMaking_;
    std::size_t nodesLeft_;
    std::map<std::set<std::size_t>, int> costs_;
    std::vector<std::size_t> taken_;
    std::vector<int> leastOfRest_; // of the penalties, from a taker on
    std::vector<std::size_t> best_;
    std::optional<int> bestCost_;
};

} // namespace

std::vector<std::size_t> cheapestChoices(const std::vector<Choices>& takers,
                                         const CostOfMaking& costOfMaking, std::size_t mostNodes)
{
    // Whoever has the same choices does best with the same thing: they are one taker, and the
    // penalties of one are those of all.
    std::map<std::vector<std::pair<std::size_t, int>>, std::size_t> kinds;
    std::vector<Choices> different;
    std::vector<std::size_t> kindOf;
    for (const Choices& choices : takers) {
        expects(!choices.empty(), "everybody has something to choose from");
        std::vector<std::pair<std::size_t, int>> key;
        for (const Choice& choice : choices) {
            key.emplace_back(choice.thing, choice.penalty);
        }
        const auto [at, isNew] = kinds.emplace(std::move(key), different.size());
        if (isNew) {
            different.push_back(choices);
        } else {
            for (std::size_t i = 0; i < choices.size(); ++i) {
                different[at->second][i].penalty += choices[i].penalty;
            }
        }
        kindOf.push_back(at->second);
    }
    // Who has least choice first: the bound rises soonest.
    std::vector<std::size_t> order(different.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return different[i].size(); });
    std::vector<const Choices*> ordered;
    ordered.reserve(order.size());
    for (const std::size_t i : order) {
        ordered.push_back(&different[i]);
    }
    const std::vector<std::size_t> found = Search(ordered, costOfMaking, mostNodes).run();
    std::vector<std::size_t> ofKind(different.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        ofKind[order[i]] = found[i];
    }
    std::vector<std::size_t> result;
    result.reserve(kindOf.size());
    for (const std::size_t kind : kindOf) {
        result.push_back(ofKind[kind]);
    }
    return result;
}

} // namespace suppertide::menus
