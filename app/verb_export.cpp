#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/exchange/exchange.h"

namespace suppertide::app {

namespace {

ExchangeContent everythingIn(const LibraryState& state)
{
    ExchangeContent content;
    for (const auto& [id, recipe] : state.recipes) {
        content.recipes.push_back(*recipe);
    }
    for (const auto& [id, kitchen] : state.kitchens) {
        content.kitchens.push_back(*kitchen);
    }
    for (const auto& [id, record] : state.occasions) {
        content.occasions.push_back(*record);
    }
    if (state.larder && !state.larder->empty()) {
        content.larder = *state.larder;
    }
    return content;
}

Result<ExchangeContent> contentFor(const CommandLine& line)
{
    if (line.arguments.empty()) {
        auto library = openLibraryOf(line);
        if (!library) {
            return library.error();
        }
        auto state = (*library)->load();
        if (!state) {
            return state.error();
        }
        return everythingIn(*state);
    }
    auto evening = findEvening(line, line.arguments.front());
    if (!evening) {
        return evening.error();
    }
    return contentWith(evening->state, *evening->record);
}

} // namespace

Exit runExport(const CommandLine& line, const VerbContext& context)
{
    auto content = contentFor(line);
    if (!content) {
        return say(content.error(), context);
    }
    auto written = writeExchangeFile(*content, *line.out);
    if (!written) {
        return say(written.error(), context);
    }
    context.out << fmt::format("Written to {}: {} recipes, {} kitchens, {} occasions.\n",
                               line.out->string(), content->recipes.size(),
                               content->kitchens.size(), content->occasions.size());
    return Exit::Done;
}

} // namespace suppertide::app
