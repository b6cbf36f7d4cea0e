// The command line: which verb, on what, with which options. Parsed by itself, so that it can be
// tested; carries nothing out.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/menus/figure.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide::app {

enum class Verb
{
    Window,
    Demo,
    Check,
    Plan,
    Print,
    Shop,
    Compare,
    Import,
    Export,
    Help,
    Version
};

enum class Paper
{
    A4,
    Letter
};

struct CommandLine
{
    Verb verb = Verb::Window;
    std::optional<std::filesystem::path> library;
    std::vector<std::string> arguments; // occasion, or files to import
    std::optional<int> seconds;         // of planning
    std::optional<menus::Figure> by;    // by which menus are sorted
    std::optional<std::filesystem::path> out;
    std::optional<std::filesystem::path> pdf;
    std::optional<std::filesystem::path> csv;
    Paper paper = Paper::A4;
    std::optional<MeasureSystem> measures; // of amounts on paper; absent: as the recipes have them
    std::vector<std::string> logLevels;    // "core.planner=debug"

    friend bool operator==(const CommandLine&, const CommandLine&) = default;
};

/// BadInput with a sentence that names the word that was not understood. `words` are without the
/// program's name.
[[nodiscard]] Result<CommandLine> parseCommandLine(const std::vector<std::string>& words);

/// What --help prints.
[[nodiscard]] std::string helpText();

} // namespace suppertide::app
