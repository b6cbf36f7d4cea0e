#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/verbs.h"
#include "core/exchange/exchange.h"

namespace suppertide::app {

namespace {

template <typename T>
void append(std::vector<T>& all, const std::vector<T>& more)
{
    all.insert(all.end(), more.begin(), more.end());
}

/// BadInput if the prices of two files are of two currencies.
Result<void> addLarder(ExchangeContent& all, const ExchangeContent& content)
{
    if (!content.larder) {
        return {};
    }
    if (!all.larder) {
        all.larder = content.larder;
        return {};
    }
    if (!areInOneCurrency(*all.larder, *content.larder)) {
        return Failure{FailureKind::BadInput,
                       fmt::format("The prices of two files are in {} and in {}. Import them one "
                                   "by one into libraries of their own.",
                                   all.larder->currency, content.larder->currency),
                       {}};
    }
    all.larder = merged(std::move(*all.larder), *content.larder);
    return {};
}

} // namespace

Exit runImport(const CommandLine& line, const VerbContext& context)
{
    // All files are read before anything is kept: one bad file, and nothing is imported.
    ExchangeContent all;
    for (const std::string& file : line.arguments) {
        auto content = readExchangeFile(file);
        if (!content) {
            return say(content.error(), context);
        }
        append(all.recipes, content->recipes);
        append(all.kitchens, content->kitchens);
        append(all.occasions, content->occasions);
        if (auto added = addLarder(all, *content); !added) {
            return say(added.error(), context);
        }
    }
    auto library = openLibraryOf(line);
    if (!library) {
        return say(library.error(), context);
    }
    auto before = (*library)->load();
    if (!before) {
        return say(before.error(), context);
    }
    if (auto fits = checkFit(*before, all); !fits) {
        return say(fits.error(), context);
    }
    auto kept = (*library)->apply(differenceOf(*before, imported(*before, all), "Import"));
    if (!kept) {
        return say(kept.error(), context);
    }
    context.out << fmt::format("Imported: {} recipes, {} kitchens, {} occasions.\n",
                               all.recipes.size(), all.kitchens.size(), all.occasions.size());
    return Exit::Done;
}

} // namespace suppertide::app
