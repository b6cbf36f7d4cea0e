// What planning an occasion of a library starts from, for the programs of this folder.
#pragma once

#include <memory>
#include <string>

#include "core/library/library.h"
#include "core/plan/formulation.h"

namespace suppertide::bench {

/// Throws std::out_of_range if there is no such occasion.
[[nodiscard]] inline PlanInput inputFrom(const LibraryState& state, const std::string& name)
{
    const OccasionRecord& record = *state.occasions.at(OccasionId{name});
    PlanInput input;
    input.occasion = std::make_shared<const Occasion>(record.occasion);
    input.kitchen = state.kitchens.at(record.occasion.kitchen);
    input.recipes = {state.recipes.begin(), state.recipes.end()};
    input.layout = std::make_shared<const Layout>(record.layout);
    return input;
}

} // namespace suppertide::bench
