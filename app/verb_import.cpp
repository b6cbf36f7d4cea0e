#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/exchange/exchange.h"

namespace suppertide::app {

Exit runImport(const CommandLine& line, const VerbContext& context)
{
    // All files are read before anything is kept: one bad file, and nothing is imported.
    std::vector<ExchangeContent> contents;
    for (const std::string& file : line.arguments) {
        auto content = readExchangeFile(file);
        if (!content) {
            return say(content.error(), context);
        }
        contents.push_back(std::move(*content));
    }
    auto library = openLibraryOf(line);
    if (!library) {
        return say(library.error(), context);
    }
    auto before = (*library)->load();
    if (!before) {
        return say(before.error(), context);
    }
    LibraryState after = *before;
    std::size_t recipes = 0;
    std::size_t kitchens = 0;
    std::size_t occasions = 0;
    for (const ExchangeContent& content : contents) {
        after = imported(std::move(after), content);
        recipes += content.recipes.size();
        kitchens += content.kitchens.size();
        occasions += content.occasions.size();
    }
    auto kept = (*library)->apply(differenceOf(*before, after, "Import"));
    if (!kept) {
        return say(kept.error(), context);
    }
    context.out << fmt::format("Imported: {} recipes, {} kitchens, {} occasions.\n", recipes,
                               kitchens, occasions);
    return Exit::Done;
}

} // namespace suppertide::app
