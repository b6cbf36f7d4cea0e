#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/sheet_pdf.h"
#include "app/verbs.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide::app {

Exit runPrint(const CommandLine& line, const VerbContext& context)
{
    auto named = namedEvening(line);
    if (!named) {
        return say(named.error(), context);
    }
    const auto plan = laidOutPlan(named->input);
    if (!plan) {
        return say(plan.error(), context);
    }
    ReadingStyle style;
    style.measures = line.measures;
    const PerHourPlan sheet = perHourPlan(*plan, named->input, style);
    if (!line.pdf) {
        context.out << toText(sheet);
        return Exit::Done;
    }
    auto written = writeSheetPdf(sheet, *line.pdf, line.paper);
    if (!written) {
        return say(written.error(), context);
    }
    context.out << fmt::format("Printed to {}.\n", line.pdf->string());
    return Exit::Done;
}

} // namespace suppertide::app
