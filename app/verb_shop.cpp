#include <fmt/format.h>

#include <cerrno>
#include <fstream>
#include <ostream>
#include <system_error>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/plan/lay_out.h"
#include "core/shopping/shopping_text.h"

namespace suppertide::app {

namespace {

/// The plan as it was laid out or taken; null if there is none yet, or if the evening has faults:
/// what is to be bought can be said all the same.
PlanPtr planOf(const PlanInput& input)
{
    if (input.layout->starts.empty()) {
        return nullptr;
    }
    const auto formulation = formulate(input);
    return formulation ? judgePlan(*formulation, input, layOut(**formulation, *input.layout))
                       : nullptr;
}

Result<void> writeText(const std::string& text, const std::filesystem::path& file)
{
    std::ofstream stream(file, std::ios::binary);
    stream << text;
    stream.close();
    if (stream.fail()) {
        const std::string reason = std::generic_category().message(errno);
        return Failure{FailureKind::Io,
                       fmt::format("“{}” could not be written: {}. Choose another folder or name.",
                                   file.string(), reason),
                       reason};
    }
    return {};
}

} // namespace

Exit runShop(const CommandLine& line, const VerbContext& context)
{
    auto evening = findEvening(line, line.arguments.front());
    if (!evening) {
        return say(evening.error(), context);
    }
    auto input = planInputOf(evening->state, evening->record);
    if (!input) {
        return say(input.error(), context);
    }
    shopping::ShoppingInput asked;
    asked.plan = planOf(*input);
    asked.evening = std::move(*input);
    asked.larder = larderOf(evening->state);
    asked.bought = evening->record->bought;
    asked.repertoire = evening->state.recipes;
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
