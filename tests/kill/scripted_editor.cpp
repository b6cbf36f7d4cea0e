// Changes a library step by step until it is killed, and says the number of each step on stdout
// once the library has acknowledged it.
//     scripted_editor LIBRARY FIRST_STEP
#include <unistd.h>

#include <iostream>
#include <string>

#include "core/store/sqlite_library.h"
#include "tests/kill/script.h"

namespace suppertide::test {

namespace {

Result<void> carryOut(Library& library, const Deed& deed)
{
    if (const auto* change = std::get_if<Change>(&deed)) {
        return library.apply(*change);
    }
    return std::holds_alternative<Undo>(deed) ? library.undo() : library.redo();
}

Result<void> edit(const std::string& file, int firstStep)
{
    auto library = openLibrary(file, OpenMode::CreateIfMissing);
    if (!library) {
        return library.error();
    }
    auto state = (*library)->load();
    if (!state) {
        return state.error();
    }
    auto history = (*library)->loadHistory();
    if (!history) {
        return history.error();
    }
    Model model{std::move(*state), std::move(*history)};
    for (int number = firstStep;; ++number) {
        const Deed deed = deedOf(model, number);
        if (auto done = carryOut(**library, deed); !done) {
            return done;
        }
        model = after(std::move(model), deed);
        const std::string line = std::to_string(number) + "\n";
        if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) {
            return {}; // whoever listened has gone
        }
    }
}

} // namespace

} // namespace suppertide::test

int main(int argc, char** argv)
{
    if (argc != 3) {
        std::cerr << "Usage: scripted_editor LIBRARY FIRST_STEP\n";
        return 2;
    }
    const auto done = suppertide::test::edit(argv[1], std::stoi(argv[2]));
    if (!done) {
        std::cerr << done.error().forCook << '\n';
        return 1;
    }
    return 0;
}
