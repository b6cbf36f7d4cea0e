// Finding what a command speaks of: the library, the occasion in it or in an exchange file, and all
// that a plan of it is made from.
#pragma once

#include <memory>
#include <string>

#include "app/command_line.h"
#include "core/exchange/exchange.h"
#include "core/library/library.h"
#include "core/plan/plan.h"

namespace suppertide::app {

/// The library of --library, which must be there, or the user's own, made if missing.
[[nodiscard]] Result<std::unique_ptr<Library>> openLibraryOf(const CommandLine& line);

/// An occasion with the library state that it is to be understood in.
struct Evening
{
    LibraryState state; // with what an exchange file adds
    OccasionPtr record;
    bool isFromFile = false;
    std::unique_ptr<Library> library;
};

/// NotFound names the occasions that there are; BadInput if a file holds none or several.
[[nodiscard]] Result<Evening> findEvening(const CommandLine& line, const std::string& occasion);

/// NotFound if its kitchen is not in the state.
[[nodiscard]] Result<PlanInput> planInputOf(const LibraryState& state, const OccasionPtr& record);

/// The occasion that a command names first, and what planning it starts from.
struct NamedEvening
{
    Evening evening;
    PlanInput input;
};
[[nodiscard]] Result<NamedEvening> namedEvening(const CommandLine& line);

/// The plan as the occasion's layout has it, with what clashes in it. Failure for faulty input.
[[nodiscard]] Result<PlanPtr> laidOutPlan(const PlanInput& input);

/// The occasion with its kitchen and the recipes it needs (preparations of preparations included).
[[nodiscard]] ExchangeContent contentWith(const LibraryState& state, OccasionRecord record);

} // namespace suppertide::app
