#include <fmt/format.h>

#include <ostream>

#include "app/evening.h"
#include "app/sheet_pdf.h"
#include "app/verbs.h"
#include "core/plan/lay_out.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide::app {

Exit runPrint(const CommandLine& line, const VerbContext& context)
{
    auto evening = findEvening(line, line.arguments.front());
    if (!evening) {
        return say(evening.error(), context);
    }
    auto input = planInputOf(evening->state, evening->record);
    if (!input) {
        return say(input.error(), context);
    }
    auto formulation = formulate(*input);
    if (!formulation) {
        return say(formulation.error(), context);
    }
    const PlanPtr plan = judgePlan(*formulation, *input, layOut(**formulation, *input->layout));
    ReadingStyle style;
    style.measures = line.measures;
    const PerHourPlan sheet = perHourPlan(plan, *input, style);
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
