// How long a library of a thousand recipes takes to open and load, what its history adds, and what
// keeping one change costs. The recipes are the demo's, many times over.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <filesystem>
#include <stdexcept>
#include <vector>

#include "core/exchange/exchange.h"
#include "core/store/sqlite_library.h"
#include "tests/support/temporary_folder.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;

template <typename T>
T must(Result<T> result)
{
    if (!result) {
        throw std::runtime_error(result.error().forCook);
    }
    return std::move(*result);
}

void must(const Result<void>& result)
{
    if (!result) {
        throw std::runtime_error(result.error().forCook);
    }
}

ExchangeContent demo()
{
    ExchangeContent all;
    for (const auto& entry : fs::recursive_directory_iterator(SUPPERTIDE_DEMO_FILES)) {
        if (entry.path().extension() == ".json") {
            ExchangeContent content = must(readExchangeFile(entry.path()));
            all.recipes.insert(all.recipes.end(), content.recipes.begin(), content.recipes.end());
            all.kitchens.insert(all.kitchens.end(), content.kitchens.begin(),
                                content.kitchens.end());
            all.occasions.insert(all.occasions.end(), content.occasions.begin(),
                                 content.occasions.end());
        }
    }
    return all;
}

/// The demo with its recipes copied until there are `count`, and a hundred changes of an occasion.
class LargeLibrary
{
public:
    explicit LargeLibrary(std::size_t count)
    {
        ExchangeContent content = demo();
        const std::vector<Recipe> originals = content.recipes;
        for (std::size_t i = 0; content.recipes.size() < count; ++i) {
            Recipe copy = originals[i % originals.size()];
            copy.id = RecipeId{fmt::format("{}-{}", copy.id.text(), i)};
            content.recipes.push_back(std::move(copy));
        }
        state_ = imported({}, content);
        must(makeLibrary(file(), state_));
        const auto library = must(openLibrary(file(), OpenMode::ReadWrite));
        for (int i = 0; i < 100; ++i) {
            keepOneChange(*library, i);
        }
    }

    [[nodiscard]] fs::path file() const { return folder_.path() / "library.suppertide"; }

    void keepOneChange(Library& library, int number)
    {
        LibraryState next = state_;
        auto& record = next.occasions.begin()->second;
        OccasionRecord changed = *record;
        changed.occasion.note = fmt::format("change {}", number);
        record = std::make_shared<const OccasionRecord>(std::move(changed));
        must(library.apply(differenceOf(state_, next, "Note")));
        state_ = std::move(next);
    }

private:
    test::TemporaryFolder folder_;
    LibraryState state_;
};

LargeLibrary& thousand()
{
    static LargeLibrary library(1000);
    return library;
}

void open(benchmark::State& state)
{
    for (auto _ : state) {
        benchmark::DoNotOptimize(must(openLibrary(thousand().file(), OpenMode::ReadWrite)));
    }
    state.counters["MB"] = static_cast<double>(fs::file_size(thousand().file())) / 1e6;
}

void openAndLoad(benchmark::State& state)
{
    for (auto _ : state) {
        const auto library = must(openLibrary(thousand().file(), OpenMode::ReadWrite));
        benchmark::DoNotOptimize(must(library->load()));
    }
}

void openAndLoadWithHistory(benchmark::State& state)
{
    for (auto _ : state) {
        const auto library = must(openLibrary(thousand().file(), OpenMode::ReadWrite));
        const LibraryState kept = must(library->load());
        benchmark::DoNotOptimize(must(library->loadHistory()));
    }
}

void keepOneChange(benchmark::State& state)
{
    const auto library = must(openLibrary(thousand().file(), OpenMode::ReadWrite));
    int number = 0;
    for (auto _ : state) {
        thousand().keepOneChange(*library, ++number);
    }
}

BENCHMARK(open)->Unit(benchmark::kMillisecond);
BENCHMARK(openAndLoad)->Unit(benchmark::kMillisecond);
BENCHMARK(openAndLoadWithHistory)->Unit(benchmark::kMillisecond);
BENCHMARK(keepOneChange)->Unit(benchmark::kMillisecond)->UseRealTime();

} // namespace

} // namespace suppertide

BENCHMARK_MAIN();
