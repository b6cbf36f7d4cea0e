#include <fmt/format.h>

#include <algorithm>
#include <ostream>
#include <system_error>

#include "app/library_paths.h"
#include "app/planning.h"
#include "app/sheet_pdf.h"
#include "app/verbs.h"
#include "core/library/redate.h"
#include "core/sheet/per_hour_plan.h"
#include "core/store/sqlite_library.h"

namespace suppertide::app {

namespace fs = std::filesystem;

namespace {

/// The day on which an occasion is served.
std::optional<CivilDate> dayOf(const Occasion& occasion)
{
    return occasion.courses.empty() ? std::nullopt
                                    : std::optional{occasion.courses.front().serving.date};
}

/// The occasion to show first: the one with most courses.
OccasionPtr mainOccasion(const LibraryState& state)
{
    const auto most = std::ranges::max_element(state.occasions, {}, [](const auto& entry) {
        return entry.second->occasion.courses.size();
    });
    return most == state.occasions.end() ? nullptr : most->second;
}

Result<LibraryState> withDatesAhead(const LibraryState& state, const Clock& clock)
{
    LibraryState result = state;
    for (auto& [id, record] : result.occasions) {
        const auto day = dayOf(record->occasion);
        const auto zone = TimeZone::find(record->occasion.zone);
        if (!day || !zone) {
            continue;
        }
        const CivilDate next = nextOfItsKind(*day, zone->civil(clock.now()).date);
        auto moved = redated(*record, daysBetween(*day, next));
        if (!moved) {
            return moved.error();
        }
        record = std::make_shared<const OccasionRecord>(std::move(*moved));
    }
    if (const OccasionPtr main = mainOccasion(state); main && state.larder) {
        const auto before = dayOf(main->occasion);
        const auto after = dayOf(result.occasions.at(main->occasion.id)->occasion);
        if (before && after) {
            result.larder = std::make_shared<const Larder>(
                redated(*state.larder, daysBetween(*before, *after)));
        }
    }
    return result;
}

/// A name under `folder` that is not taken: demo-1.suppertide, demo-2.suppertide …
fs::path freeName(const fs::path& folder)
{
    std::error_code error;
    for (int number = 1;; ++number) {
        fs::path name = folder / fmt::format("demo-{}.suppertide", number);
        if (!fs::exists(name, error)) {
            return name;
        }
    }
}

fs::path pdfBeside(fs::path library)
{
    return library.replace_extension(".pdf");
}

/// What the built demo holds, read from a copy at `scratch` that is gone afterwards: the folder of
/// the built one may be closed to writing.
Result<LibraryState> stateOf(const fs::path& built, const fs::path& scratch)
{
    if (auto copied = copyLibrary(built, scratch); !copied) {
        return copied.error();
    }
    auto state = [&scratch]() -> Result<LibraryState> {
        auto library = openLibrary(scratch, OpenMode::ReadWrite);
        if (!library) {
            return library.error();
        }
        return (*library)->load();
    }();
    std::error_code error;
    fs::remove(scratch, error);
    return state;
}

} // namespace

Result<fs::path> freshDemo(const Clock& clock)
{
    auto built = builtDemo();
    if (!built) {
        return built.error();
    }
    auto folder = dataFolder();
    if (!folder) {
        return folder.error();
    }
    fs::path copy = freeName(*folder);
    auto state = stateOf(*built, copy);
    if (!state) {
        return state.error();
    }
    auto dated = withDatesAhead(*state, clock);
    if (!dated) {
        return dated.error();
    }
    if (const OccasionPtr shown = mainOccasion(*dated)) {
        dated->open = shown->occasion.id;
    }
    if (auto made = makeLibrary(copy, *dated); !made) {
        return made.error();
    }
    return copy;
}

Exit printDemo(const CommandLine& line, const VerbContext& context)
{
    auto demo = freshDemo(context.clock);
    if (!demo) {
        return say(demo.error(), context);
    }
    auto library = openLibrary(*demo, OpenMode::ReadWrite);
    if (!library) {
        return say(library.error(), context);
    }
    auto state = (*library)->load();
    if (!state) {
        return say(state.error(), context);
    }
    const OccasionPtr record = mainOccasion(*state);
    if (!record) {
        return say({FailureKind::NotFound, "The demo holds no occasion.", {}}, context);
    }
    auto input = planInputOf(*state, record);
    if (!input) {
        return say(input.error(), context);
    }
    auto outcome = planEvening(line, *input);
    if (!outcome) {
        return say(outcome.error(), context);
    }
    const PlanPtr plan = planIn(*outcome);
    if (!plan) {
        context.err << "No plan of the demo was found in time. Give it more with --seconds.\n";
        return Exit::NoPlanInTime;
    }
    if (auto kept = keepRecord(**library, *state, withPlan(*record, *plan), "Make plan"); !kept) {
        return say(kept.error(), context);
    }
    const fs::path pdf = line.pdf.value_or(pdfBeside(*demo));
    auto written = writeSheetPdf(perHourPlan(plan, *input), pdf, line.paper);
    if (!written) {
        return say(written.error(), context);
    }
    context.out << fmt::format("There is no display, so the demo was planned and printed.\n"
                               "Per-hour plan: {}\nLibrary: {}\n",
                               pdf.string(), demo->string());
    return Exit::Done;
}

} // namespace suppertide::app
