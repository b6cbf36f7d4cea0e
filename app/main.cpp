// The program: reads the command line and carries the verb out; alone knows the store and the
// window. Catches what escaped everything else, says it, and exits with status 2.
#include <QApplication>

#include <cstdlib>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "app/command_line.h"
#include "app/library_paths.h"
#include "app/verbs.h"
#include "app/window.h"
#include "core/base/clock.h"
#include "core/base/log.h"

namespace suppertide::app {

namespace {

void setLogLevels(const std::vector<std::string>& levels)
{
    for (const std::string& level : levels) {
        const auto equals = level.find('=');
        const std::string name = level.substr(0, equals);
        const std::string value = equals == std::string::npos ? "debug" : level.substr(equals + 1);
        log::setLevel(name, value == "debug"  ? log::Level::Debug
                            : value == "warn" ? log::Level::Warn
                                              : log::Level::Info);
    }
}

bool hasDisplay()
{
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        const char* value = std::getenv(name); // NOLINT(concurrency-mt-unsafe): one thread as yet
        if (value != nullptr && *value != '\0') {
            return true;
        }
    }
    return false;
}

Exit openWindow(const CommandLine& line, const VerbContext& context, int& count, char** words)
{
    if (!hasDisplay()) {
        return say({FailureKind::Io,
                    "There is no display to open a window on. “suppertide --help” lists the "
                    "commands that need none.",
                    {}},
                   context);
    }
    return runWindow(line, context, count, words);
}

Exit carryOut(const CommandLine& line, const VerbContext& context, int& count, char** words)
{
    switch (line.verb) {
    case Verb::Window:
        return openWindow(line, context, count, words);
    case Verb::Demo:
        return hasDisplay() ? openWindow(line, context, count, words) : printDemo(line, context);
    case Verb::Check:
        return runCheck(line, context);
    case Verb::Plan:
        return runPlan(line, context);
    case Verb::Print:
        return runPrint(line, context);
    case Verb::Shop:
        return runShop(line, context);
    case Verb::Compare:
        return runCompare(line, context);
    case Verb::Import:
        return runImport(line, context);
    case Verb::Export:
        return runExport(line, context);
    case Verb::Help:
        context.out << helpText();
        return Exit::Done;
    case Verb::Version:
        context.out << "Suppertide " SUPPERTIDE_VERSION "\n";
        return Exit::Done;
    }
    return Exit::BadInput;
}

Exit run(int& count, char** words)
{
    const SystemClock clock;
    const VerbContext context{std::cout, std::cerr, clock};
    const auto line = parseCommandLine(std::vector<std::string>(words + 1, words + count));
    if (!line) {
        return say(line.error(), context);
    }
    setLogLevels(line->logLevels);
    return carryOut(*line, context, count, words);
}

} // namespace

} // namespace suppertide::app

int main(int count, char** words)
{
    try {
        return static_cast<int>(suppertide::app::run(count, words));
    } catch (const std::exception& problem) {
        std::cerr << "Suppertide met a defect of its own and stopped; what was shown as saved is "
                     "saved. Please report: "
                  << problem.what() << '\n';
        return static_cast<int>(suppertide::app::Exit::BadInput);
    }
}
