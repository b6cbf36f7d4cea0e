// Builds the demo's library from its readable files: all of them through core/exchange, into one
// new library through core/store. Run by the build; a file with a fault stops it with its sentence.
//     build_demo LIBRARY FILE…
#include <fmt/format.h>

#include <filesystem>
#include <iostream>
#include <span>
#include <string>
#include <system_error>

#include "core/exchange/exchange.h"
#include "core/store/sqlite_library.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;

/// Adds what a file holds. An id that another file has already is a fault: it would vanish.
Result<void> add(const fs::path& file, ExchangeContent& all)
{
    auto content = readExchangeFile(file);
    if (!content) {
        return content.error();
    }
    LibraryState known = imported({}, all);
    const LibraryState own = imported({}, *content);
    const std::size_t expected = known.recipes.size() + known.kitchens.size() +
                                 known.occasions.size() + own.recipes.size() + own.kitchens.size() +
                                 own.occasions.size();
    const LibraryState both = imported(std::move(known), *content);
    if (both.recipes.size() + both.kitchens.size() + both.occasions.size() != expected) {
        return Failure{FailureKind::BadInput,
                       fmt::format("“{}” holds something whose id stands in another file too. "
                                   "Give it an id of its own.",
                                   file.string()),
                       {}};
    }
    if (all.larder && content->larder) {
        return Failure{
            FailureKind::BadInput,
            fmt::format("“{}” holds a second larder. Put all of it into one file.", file.string()),
            {}};
    }
    if (content->larder) {
        all.larder = std::move(content->larder);
    }
    all.recipes.insert(all.recipes.end(), content->recipes.begin(), content->recipes.end());
    all.kitchens.insert(all.kitchens.end(), content->kitchens.begin(), content->kitchens.end());
    all.occasions.insert(all.occasions.end(), content->occasions.begin(), content->occasions.end());
    return {};
}

Result<void> run(std::span<char*> words)
{
    if (words.size() < 2) {
        return Failure{FailureKind::BadInput, "Usage: build_demo LIBRARY FILE…", {}};
    }
    ExchangeContent all;
    for (const char* file : words.subspan(2)) {
        if (auto added = add(file, all); !added) {
            return added;
        }
    }
    if (auto fits = checkFit({}, all); !fits) {
        return fits;
    }
    std::error_code error;
    fs::remove(words[1], error);
    return makeLibrary(words[1], imported({}, all));
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    const auto done = suppertide::run({argv, static_cast<std::size_t>(argc)});
    if (!done) {
        std::cerr << done.error().forCook << '\n';
        return 1;
    }
    return 0;
}
