// Which steps the variants of a making share, and their batches.
#include <algorithm>
#include <set>

#include "core/plan/batch_room.h"
#include "core/plan/making.h"

namespace suppertide {

namespace {

/// A step of one variant, before it is known with whom it is shared.
struct OwnStep
{
    const Step* step = nullptr;
    std::optional<MethodKey> method;
};

/// What must be equal for two variants to do a step together.
struct Signature
{
    Step step;
    std::optional<MethodKey> method;
    std::vector<IngredientLine> lines;
    std::vector<std::size_t> before;
    std::vector<Wait> waits;

    friend bool operator==(const Signature&, const Signature&) = default;
};

std::vector<OwnStep> stepsOf(const MakingVariant& variant, const Making& making)
{
    std::vector<OwnStep> steps;
    for (const Step& step : variant.recipe.part.steps) {
        steps.push_back({&step, std::nullopt});
    }
    for (const MethodChoice& choice : variant.recipe.methods) {
        const bool isOpen =
            std::ranges::find(making.choices, choice.id, &MethodChoice::id) != making.choices.end();
        for (const Method& method : choice.methods) {
            for (const Step& step : method.part.steps) {
                steps.push_back({&step, isOpen ? std::optional(MethodKey{choice.id, method.id})
                                               : std::nullopt});
            }
        }
    }
    return steps;
}

std::vector<Wait> waitsOf(const MakingVariant& variant)
{
    std::vector<Wait> waits = variant.recipe.part.waits;
    for (const MethodChoice& choice : variant.recipe.methods) {
        for (const Method& method : choice.methods) {
            waits.insert(waits.end(), method.part.waits.begin(), method.part.waits.end());
        }
    }
    return waits;
}

/// Names of the steps that `step` comes after, by its own word or by a wait.
std::vector<StepId> predecessorsOf(const Step& step, const std::vector<Wait>& waits)
{
    std::vector<StepId> before = step.after;
    for (const Wait& wait : waits) {
        if (wait.to.step == step.id && wait.from.step && wait.from.step != wait.to.step &&
            std::ranges::find(before, *wait.from.step) == before.end()) {
            before.push_back(*wait.from.step);
        }
    }
    return before;
}

/// Each step after all that it comes after; of several that may be next, the first as written.
/// Steps that wait for each other in a circle come last as written (a fault of the recipe).
std::vector<OwnStep> inOrder(std::vector<OwnStep> steps, const std::vector<Wait>& waits)
{
    std::vector<OwnStep> ordered;
    std::multiset<StepId> open; // several methods may have a step of one name
    for (const OwnStep& own : steps) {
        open.insert(own.step->id);
    }
    while (!steps.empty()) {
        const auto isReady = [&](const OwnStep& own) {
            return std::ranges::none_of(predecessorsOf(*own.step, waits), [&](const StepId& id) {
                return id != own.step->id && open.contains(id);
            });
        };
        auto next = std::ranges::find_if(steps, isReady);
        next = next == steps.end() ? steps.begin() : next;
        open.erase(open.find(next->step->id));
        ordered.push_back(*next);
        steps.erase(next);
    }
    return ordered;
}

/// Lines that no step takes: nobody knows when they go in, so they count for every step.
std::vector<IngredientLine> strayLines(const std::vector<IngredientLine>& lines,
                                       const std::vector<OwnStep>& steps)
{
    std::vector<IngredientLine> stray;
    for (const IngredientLine& line : lines) {
        const bool isTaken = std::ranges::any_of(steps, [&](const OwnStep& own) {
            return std::ranges::find(own.step->lines, line.id) != own.step->lines.end();
        });
        if (!isTaken) {
            stray.push_back(line);
        }
    }
    return stray;
}

class StepSorter
{
public:
    explicit StepSorter(Making& making) : making_(making) {}

    void addVariant(std::size_t index)
    {
        const MakingVariant& variant = making_.variants[index];
        const std::vector<Wait> waits = waitsOf(variant);
        const std::vector<IngredientLine> lines = linesOf(variant);
        std::vector<OwnStep> steps = inOrder(stepsOf(variant, making_), waits);
        const std::vector<IngredientLine> stray = strayLines(lines, steps);
        std::multimap<StepId, std::size_t> found;
        for (const OwnStep& own : steps) {
            Signature signature{*own.step, own.method, {}, {}, {}};
            for (const IngredientLine& line : lines) {
                if (std::ranges::find(own.step->lines, line.id) != own.step->lines.end()) {
                    signature.lines.push_back(line);
                }
            }
            const std::size_t taken = signature.lines.size();
            for (const StepId& id : predecessorsOf(*own.step, waits)) {
                const auto [first, last] = found.equal_range(id);
                for (auto before = first; before != last; ++before) {
                    if (areCompatible(own.method, making_.steps[before->second].method)) {
                        signature.before.push_back(before->second);
                    }
                }
            }
            std::ranges::copy_if(waits, std::back_inserter(signature.waits),
                                 [&](const Wait& wait) { return wait.to.step == own.step->id; });
            signature.lines.insert(signature.lines.end(), stray.begin(), stray.end());
            found.emplace(own.step->id, place(index, std::move(signature), taken));
        }
    }

private:
    std::size_t place(std::size_t variant, Signature signature, std::size_t taken)
    {
        const auto same = std::ranges::find(signatures_, signature);
        const auto index = static_cast<std::size_t>(same - signatures_.begin());
        if (same == signatures_.end()) {
            MadeStep made{signature.step, signature.method, {}, {}, signature.before, {}};
            made.lines.assign(signature.lines.begin(),
                              signature.lines.begin() + static_cast<std::ptrdiff_t>(taken));
            making_.steps.push_back(std::move(made));
            signatures_.push_back(std::move(signature));
        }
        making_.steps[index].variants.push_back(variant);
        return index;
    }

    Making& making_;
    std::vector<Signature> signatures_; // as making.steps
};

void cutIntoBatches(Making& making, const Kitchen& kitchen)
{
    for (std::size_t index = 0; index < making.steps.size(); ++index) {
        MadeStep& made = making.steps[index];
        const PortionShare all = making.shareOf(made.variants);
        const BatchRoom room =
            roomForBatch(made.step, making.recipe->portions, all.total(), kitchen);
        const std::vector<Portions> sizes = inBatches(all.total(), room.atOnce);
        const std::vector<PortionShare> shares = all.cut(sizes);
        const int count = static_cast<int>(shares.size());
        for (int i = 0; i < count; ++i) {
            made.batches.push_back(making.batches.size());
            making.batches.push_back(
                {index, count > 1 ? i + 1 : 0, count, shares[static_cast<std::size_t>(i)]});
        }
    }
}

} // namespace

std::vector<IngredientLine> linesOf(const MakingVariant& variant)
{
    std::vector<IngredientLine> lines = variant.recipe.part.lines;
    for (const MethodChoice& choice : variant.recipe.methods) {
        for (const Method& method : choice.methods) {
            lines.insert(lines.end(), method.part.lines.begin(), method.part.lines.end());
        }
    }
    return lines;
}

PortionShare Making::shareOf(const std::vector<std::size_t>& some) const
{
    std::vector<PortionRange> ranges;
    for (const std::size_t variant : some) {
        ranges.push_back(variants[variant].portions);
    }
    return PortionShare{std::move(ranges)};
}

std::vector<std::size_t> Making::stepsNamed(std::size_t variant, const StepId& id) const
{
    std::vector<std::size_t> named;
    for (std::size_t index = 0; index < steps.size(); ++index) {
        if (steps[index].step.id == id &&
            std::ranges::find(steps[index].variants, variant) != steps[index].variants.end()) {
            named.push_back(index);
        }
    }
    return named;
}

bool areCompatible(const std::optional<MethodKey>& one, const std::optional<MethodKey>& other)
{
    return !one || !other || one->choice != other->choice || one->method == other->method;
}

void tellStepsApart(Making& making, const Kitchen& kitchen)
{
    StepSorter sorter(making);
    for (std::size_t index = 0; index < making.variants.size(); ++index) {
        sorter.addVariant(index);
    }
    cutIntoBatches(making, kitchen);
}

} // namespace suppertide
