#include "core/safety/kitchen_hygiene.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

namespace suppertide::safety {

namespace {

/// What clings to a tool since it was washed: which use left it.
struct Soil
{
    std::optional<std::size_t> raw;
    std::map<Substance, std::size_t> substances;
};

HygieneFinding hygieneFinding(std::string_view rule, std::size_t earlier, std::size_t later,
                              std::vector<Remedy> remedies)
{
    const Rule* row = findRule(rule);
    expects(row != nullptr, "the table has the rule");
    return {row->id, row->weight, earlier, later, {}, std::move(remedies)};
}

/// Substances that `use` must be free of, by the use that left them.
std::map<std::size_t, std::vector<Substance>> leftBy(const Soil& soil, const ToolUse& use)
{
    std::map<std::size_t, std::vector<Substance>> left;
    for (const Substance substance : use.mustBeFree) {
        const auto found = soil.substances.find(substance);
        if (found != soil.substances.end()) {
            left[found->second].push_back(substance);
        }
    }
    return left;
}

bool isRawAbove(const FridgeStay& raw, const FridgeStay& ready)
{
    return isRawAnimal(raw.food) && !raw.isReadyToEat && !raw.isSealed && ready.isReadyToEat &&
           !ready.isSealed && raw.fridge == ready.fridge && raw.when.overlaps(ready.when) &&
           (!raw.shelf || !ready.shelf || *raw.shelf >= *ready.shelf);
}

bool soils(const PortionMade& first, const PortionMade& then)
{
    return std::ranges::any_of(first.contains, [&](Substance substance) {
        return std::ranges::find(then.mustBeFree, substance) != then.mustBeFree.end();
    });
}

} // namespace

std::vector<HygieneFinding> judgeToolUses(std::span<const ToolUse> uses)
{
    std::vector<std::size_t> order(uses.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return uses[i].at; });
    std::map<std::string_view, Soil> tools;
    std::vector<HygieneFinding> findings;
    for (const std::size_t i : order) {
        const ToolUse& use = uses[i];
        Soil& soil = tools[use.tool];
        if (use.isWashedBefore) {
            soil = {};
        }
        if (use.isReadyToEat && soil.raw) {
            findings.push_back(hygieneFinding("board_order", *soil.raw, i,
                                              {Remedy::WashBetween, Remedy::ReadyFirst}));
        }
        for (auto& [earlier, substances] : leftBy(soil, use)) {
            HygieneFinding finding = hygieneFinding("allergen_order", earlier, i,
                                                    {Remedy::ReadyFirst, Remedy::WashBetween});
            finding.substances = std::move(substances);
            findings.push_back(std::move(finding));
        }
        if (isRawAnimal(use.food) && !use.isReadyToEat) {
            soil.raw = i;
        }
        for (const Substance substance : use.contains) {
            soil.substances[substance] = i;
        }
    }
    return findings;
}

std::vector<HygieneFinding> judgeFridgeOrder(std::span<const FridgeStay> stays)
{
    std::vector<HygieneFinding> findings;
    for (std::size_t upper = 0; upper < stays.size(); ++upper) {
        for (std::size_t lower = 0; lower < stays.size(); ++lower) {
            if (!isRawAbove(stays[upper], stays[lower])) {
                continue;
            }
            HygieneFinding finding =
                hygieneFinding("fridge_order", upper, lower, {Remedy::RawBelow});
            if (!stays[upper].shelf || !stays[lower].shelf) {
                finding.weight = Weight::Caution;
            }
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

std::vector<std::size_t> freeFirst(std::span<const PortionMade> portions)
{
    std::vector<std::size_t> waiting(portions.size());
    std::iota(waiting.begin(), waiting.end(), std::size_t{0});
    std::vector<std::size_t> order;
    while (!waiting.empty()) {
        auto next = std::ranges::find_if(waiting, [&](std::size_t candidate) {
            return std::ranges::none_of(waiting, [&](std::size_t other) {
                return other != candidate && soils(portions[candidate], portions[other]);
            });
        });
        if (next == waiting.end()) {
            next = waiting.begin(); // each of these soils another: no order helps
        }
        order.push_back(*next);
        waiting.erase(next);
    }
    return order;
}

} // namespace suppertide::safety
