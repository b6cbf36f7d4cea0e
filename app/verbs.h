// The verbs of the command line, one file each. Each writes for people on `out`, says an error in
// one sentence on `err`, and returns the exit status.
#pragma once

#include <iosfwd>

#include "app/command_line.h"
#include "core/base/clock.h"

namespace suppertide::app {

enum class Exit
{
    Done = 0,
    Clashes = 1,
    BadInput = 2,
    NoPlanInTime = 3
};

/// What a verb is given to work with.
struct VerbContext
{
    std::ostream& out;
    std::ostream& err;
    const Clock& clock;
};

[[nodiscard]] Exit runCheck(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runPlan(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runPrint(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runShop(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runCompare(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runImport(const CommandLine& line, const VerbContext& context);
[[nodiscard]] Exit runExport(const CommandLine& line, const VerbContext& context);

/// A fresh copy of the demo, dated so that it is not in the past, under the user's data folder.
[[nodiscard]] Result<std::filesystem::path> freshDemo(const Clock& clock);

/// The demo planned and printed to a PDF, for a machine without a display; says where.
[[nodiscard]] Exit printDemo(const CommandLine& line, const VerbContext& context);

/// Says the failure on `err`; the exit status for it.
[[nodiscard]] Exit say(const Failure& failure, const VerbContext& context);

} // namespace suppertide::app
