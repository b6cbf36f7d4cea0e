// A library survives its program being killed at any moment: every acknowledged change is there,
// the one under way is there whole or not at all, the history fits, and the file is sound.
// SUPPERTIDE_KILLS says how often (20).
#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <limits>
#include <string>

#include "core/store/sqlite_library.h"
#include "tests/kill/script.h"
#include "tests/support/for_each_seed.h"
#include "tests/support/temporary_folder.h"

namespace suppertide::test {

namespace {

namespace fs = std::filesystem;
using std::chrono::microseconds;
using std::chrono::steady_clock;

int killCount()
{
    const char* wanted = std::getenv("SUPPERTIDE_KILLS"); // NOLINT(concurrency-mt-unsafe)
    return wanted == nullptr ? 20 : std::stoi(wanted);
}

/// The editor as a program of its own, with what it says.
class Editor
{
public:
    Editor(const fs::path& library, int firstStep)
    {
        std::array<int, 2> ends{};
        if (::pipe(ends.data()) != 0) {
            ADD_FAILURE() << "no pipe";
        }
        said_ = ends[0];
        const std::string step = std::to_string(firstStep);
        process_ = ::fork();
        if (process_ == 0) {
            ::dup2(ends[1], STDOUT_FILENO);
            ::close(ends[0]);
            ::close(ends[1]);
            // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): that is how execl is declared
            ::execl(SUPPERTIDE_SCRIPTED_EDITOR, SUPPERTIDE_SCRIPTED_EDITOR, library.c_str(),
                    step.c_str(), nullptr);
            ::_exit(3);
        }
        ::close(ends[1]);
    }
    Editor(const Editor&) = delete;
    Editor& operator=(const Editor&) = delete;
    Editor(Editor&&) = delete;
    Editor& operator=(Editor&&) = delete;
    ~Editor() { ::close(said_); }

    /// Waits until it has acknowledged so many steps, listens for `time` more, then kills it. The
    /// number of steps that it has acknowledged.
    [[nodiscard]] int killAfter(int steps, microseconds time)
    {
        constexpr std::chrono::minutes patience{2}; // for a busy disk
        listenUntil(steady_clock::now() + patience, steps);
        EXPECT_GE(lines_, steps) << "the editor does not get on";
        listenUntil(steady_clock::now() + time, std::numeric_limits<int>::max());
        ::kill(process_, SIGKILL);
        int status = 0;
        ::waitpid(process_, &status, 0);
        EXPECT_TRUE(WIFSIGNALED(status)) << "the editor stopped by itself";
        while (listen()) {
        }
        return lines_;
    }

private:
    void listenUntil(steady_clock::time_point end, int steps)
    {
        while (lines_ < steps) {
            const auto left = std::chrono::ceil<microseconds>(end - steady_clock::now());
            const timespec wait{left.count() / 1'000'000, left.count() % 1'000'000 * 1'000};
            pollfd said{said_, POLLIN, 0};
            if (left.count() <= 0 || ::ppoll(&said, 1, &wait, nullptr) <= 0 || !listen()) {
                return;
            }
        }
    }

    /// Takes what it has said; false at the end of it.
    bool listen()
    {
        std::array<char, 4096> text{};
        const ssize_t size = ::read(said_, text.data(), text.size());
        for (ssize_t i = 0; i < size; ++i) {
            lines_ += text[static_cast<std::size_t>(i)] == '\n' ? 1 : 0;
        }
        return size > 0;
    }

    int said_ = -1;
    pid_t process_ = -1;
    int lines_ = 0;
};

Model modelIn(const fs::path& file)
{
    auto library = openLibrary(file, OpenMode::CreateIfMissing);
    EXPECT_TRUE(library) << library.error().forCook;
    if (!library) {
        return {};
    }
    EXPECT_EQ((*library)->readOnlyReason(), "") << "the lock of the killed program is still held";
    auto state = (*library)->load();
    auto history = (*library)->loadHistory();
    EXPECT_TRUE(state) << state.error().forCook;
    EXPECT_TRUE(history) << history.error().forCook;
    return state && history ? Model{std::move(*state), std::move(*history)} : Model{};
}

/// What the whole history says must lead from its beginning to the state, and back.
void expectHistoryLeadsToState(const Model& model)
{
    LibraryState state = model.state;
    for (std::size_t i = model.history.done; i > 0; --i) {
        state = reverted(std::move(state), model.history.changes[i - 1]);
    }
    for (std::size_t i = 0; i < model.history.done; ++i) {
        state = applied(std::move(state), model.history.changes[i]);
    }
    EXPECT_TRUE(differenceOf(state, model.state, {}).parts.empty());
}

void expectSound(const fs::path& file)
{
    SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
    EXPECT_EQ(database.execAndGet("PRAGMA integrity_check").getString(), "ok");
    SQLite::Statement strays(database, "PRAGMA foreign_key_check");
    EXPECT_FALSE(strays.executeStep());
}

TEST(Kill, LosesNothingAcknowledged)
{
    const test::TemporaryFolder folder;
    const fs::path file = folder.path() / "library.suppertide";
    Random random(2027);
    Model model;
    int step = 0;
    int acknowledged = 0;
    int underWayKept = 0;
    for (int i = 0; i < killCount() && !testing::Test::HasFailure(); ++i) {
        Editor editor(file, step);
        // Sometimes while it opens the library, else in the middle of its work.
        const auto wanted = static_cast<int>(random.between(0, 6));
        const int done = editor.killAfter(wanted, microseconds{random.between(0, 30'000)});
        for (int n = 0; n < done; ++n, ++step) {
            model = after(std::move(model), deedOf(model, step));
        }
        acknowledged += done;
        const Model found = modelIn(file);
        if (!areAlike(found, model)) {
            // The step under way may have been kept just before its acknowledgement.
            model = after(model, deedOf(model, step));
            ++step;
            ++underWayKept;
            EXPECT_TRUE(areAlike(found, model)) << "kill " << i << " at step " << step;
        }
        expectHistoryLeadsToState(found);
        expectSound(file);
    }
    RecordProperty("acknowledged", acknowledged);
    RecordProperty("kept_under_way", underWayKept);
    std::cout << acknowledged << " changes acknowledged, " << underWayKept
              << " more kept unacknowledged\n";
}

} // namespace

} // namespace suppertide::test
