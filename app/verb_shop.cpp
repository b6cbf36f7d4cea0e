#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/text_file.h"
#include "app/verbs.h"
#include "core/shopping/shopping_text.h"

namespace suppertide::app {

namespace {

/// The plan as it was laid out or taken; null if there is none yet, or if the evening has faults:
/// what is to be bought can be said all the same.
PlanPtr planIfThere(const PlanInput& input)
{
    if (input.layout->starts.empty()) {
        return nullptr;
    }
    const auto plan = laidOutPlan(input);
    return plan ? *plan : nullptr;
}

} // namespace

Exit runShop(const CommandLine& line, const VerbContext& context)
{
    auto named = namedEvening(line);
    if (!named) {
        return say(named.error(), context);
    }
    shopping::ShoppingInput asked;
    const LibraryState& state = named->evening.state;
    asked.plan = planIfThere(named->input);
    asked.evening = named->input;
    asked.larder = larderOf(state);
    asked.bought = named->evening.record->bought;
    asked.repertoire = state.recipes;
    asked.measures = line.measures;
    const shopping::ShoppingList list = shopping::shoppingListOf(asked);
    if (!line.csv) {
        context.out << shopping::textOf(list);
        return Exit::Done;
    }
    if (auto written = writeText(shopping::csvOf(list), *line.csv); !written) {
        return say(written.error(), context);
    }
    context.out << fmt::format("Written to {}.\n", line.csv->string());
    return Exit::Done;
}

} // namespace suppertide::app
