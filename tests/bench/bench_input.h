// What planning an occasion of a library starts from, for the programs of this folder.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/exchange/exchange.h"
#include "core/library/library.h"
#include "core/plan/formulation.h"

namespace suppertide::bench {

/// A library of all that the files hold.
[[nodiscard]] inline Result<LibraryState> stateFrom(const std::vector<std::string>& files)
{
    LibraryState state;
    for (const std::string& file : files) {
        auto content = readExchangeFile(file);
        if (!content) {
            return content.error();
        }
        state = imported(std::move(state), *content);
    }
    return state;
}

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
