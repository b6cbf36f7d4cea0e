#include "ui/models/layout_edits.h"

#include <QCoreApplication>

#include <algorithm>

#include "core/plan/lay_out.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/plan_basis.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("LayoutEdits", text);
}

const Layout& layoutIn(const LibraryState& library)
{
    const OccasionPtr open = openOccasion(library);
    expects(open != nullptr, "an open occasion");
    return library.occasions.at(open->occasion.id)->layout;
}

QString lowerFirst(QString text)
{
    const bool isWord = text.size() > 1 && !text[1].isUpper();
    if (isWord) {
        text[0] = text[0].toLower();
    }
    return text;
}

} // namespace

std::optional<TaskIndex> findTask(const Plan& plan, const std::string& id)
{
    const auto there = plan.formulation->taskById.find(id);
    return there == plan.formulation->taskById.end() ? std::nullopt : std::optional(there->second);
}

QString taskName(const Plan& plan, TaskIndex task)
{
    const TaskSource& source = plan.formulation->tasks[task];
    const QString verb = QString::fromStdString(source.verb.empty() ? source.text : source.verb);
    if (source.dishName.empty()) {
        return verb;
    }
    return verb + QLatin1Char(' ') + lowerFirst(QString::fromStdString(source.dishName));
}

Edit moveStep(const LibraryState& library, const Plan& plan, TaskIndex task, PlanTime start)
{
    const Layout& layout = layoutIn(library);
    const Schedule moved = moveTask(*plan.formulation, layout, plan.schedule, task, start);
    return {withLayout(library, layoutOf(*plan.formulation, moved, layout)),
            tr("Move: %1").arg(lowerFirst(taskName(plan, task))),
            {}};
}

std::optional<Edit> moveServing(const LibraryState& library, const PlanCalendar& calendar,
                                int course, PlanTime time)
{
    const OccasionPtr open = openOccasion(library);
    const auto index = static_cast<std::size_t>(course - 1);
    if (!open || course < 1 || index >= open->occasion.courses.size()) {
        return std::nullopt;
    }
    const CivilTime serving = calendar.civil(time);
    LibraryState next = withOccasion(library, [&](Occasion& occasion) {
        occasion.courses[index].serving = serving;
        occasion = sorted(std::move(occasion));
    });
    return Edit{std::move(next),
                tr("Serve %1 at %2")
                    .arg(lowerFirst(QString::fromStdString(open->occasion.courses[index].name)),
                         QString::fromStdString(toIso(serving.clock))),
                {}};
}

bool isDecidedWashing(const Plan& plan, TaskIndex task)
{
    const Formulation& formulation = *plan.formulation;
    for (const DemandIndex demand : formulation.problem.demands.indices()) {
        if (formulation.demands[demand].washedFor &&
            formulation.problem.demands[demand].from.task == task) {
            return true;
        }
    }
    return false;
}

Edit togglePin(const LibraryState& library, const Plan& plan, TaskIndex task)
{
    const std::string& id = plan.formulation->problem.tasks[task].id;
    Layout layout = layoutIn(library);
    if (isDecidedWashing(plan, task)) {
        const Problem& problem = plan.formulation->problem;
        std::erase_if(layout.washed, [&](const std::string& washed) {
            return std::ranges::any_of(problem.demands, [&](const Demand& demand) {
                return demand.id == washed && demand.from.task == task;
            });
        });
        layout.starts.erase(id);
        layout.pinned.erase(id);
        return {withLayout(library, std::move(layout)),
                tr("Do not wash first: %1").arg(lowerFirst(taskName(plan, task))),
                {}};
    }
    const bool isPinned = layout.pinned.erase(id) > 0;
    if (!isPinned) {
        layout = layoutOf(*plan.formulation, plan.schedule, layout);
        layout.pinned.insert(id);
    }
    const QString name = lowerFirst(taskName(plan, task));
    return {withLayout(library, std::move(layout)),
            isPinned ? tr("Let go: %1").arg(name) : tr("Pin: %1").arg(name),
            {}};
}

Edit takePlan(const LibraryState& library, const Plan& found, const QString& text)
{
    Layout layout = layoutOf(*found.formulation, found.schedule, layoutIn(library));
    layout.plannedFrom = planBasis(library);
    return {withLayout(library, std::move(layout)), text, {}};
}

Edit layOutAnew(const LibraryState& library)
{
    Layout layout = layoutIn(library);
    layout.plannedFrom.clear();
    std::erase_if(layout.starts,
                  [&](const auto& start) { return !layout.pinned.contains(start.first); });
    return {withLayout(library, std::move(layout)), tr("Lay out anew"), {}};
}

} // namespace suppertide::ui
