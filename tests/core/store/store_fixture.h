// A folder of its own for each test, and short words for what store tests do all the time.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>

#include "core/library/library.h"
#include "core/store/sqlite_library.h"
#include "tests/support/temporary_folder.h"

namespace suppertide::test {

class StoreTest : public testing::Test
{
protected:
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_.path(); }
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }

    /// The library at file(), made if it is not there.
    [[nodiscard]] std::unique_ptr<Library> open() const
    {
        auto library = openLibrary(file_, OpenMode::CreateIfMissing);
        EXPECT_TRUE(library) << library.error().forCook;
        return library ? std::move(*library) : nullptr;
    }

private:
    // In memory where there is such a folder: these tests commit a thousand times.
    TemporaryFolder folder_{std::filesystem::is_directory("/dev/shm")
                                ? std::filesystem::path("/dev/shm")
                                : std::filesystem::temp_directory_path()};
    std::filesystem::path file_ = folder_.path() / "library.suppertide";
};

[[nodiscard]] inline LibraryState loaded(Library& library)
{
    auto state = library.load();
    EXPECT_TRUE(state) << state.error().forCook;
    return state ? *state : LibraryState{};
}

[[nodiscard]] inline History historyOf(Library& library)
{
    auto history = library.loadHistory();
    EXPECT_TRUE(history) << history.error().forCook;
    return history ? *history : History{};
}

/// Whether both hold equal things, shared or not.
[[nodiscard]] inline bool areAlike(const LibraryState& a, const LibraryState& b)
{
    return differenceOf(a, b, "").parts.empty();
}

[[nodiscard]] inline LibraryState withRecipe(LibraryState state, const std::string& id,
                                             const std::string& name)
{
    Recipe recipe;
    recipe.id = RecipeId{id};
    recipe.name = name;
    state.recipes[RecipeId{id}] = std::make_shared<const Recipe>(std::move(recipe));
    return state;
}

/// Applies the step from `state` to `next`, and makes it the state.
inline void step(Library& library, LibraryState& state, const LibraryState& next,
                 const std::string& text = "Change")
{
    const auto done = library.apply(differenceOf(state, next, text));
    EXPECT_TRUE(done) << done.error().forCook;
    state = next;
}

} // namespace suppertide::test
