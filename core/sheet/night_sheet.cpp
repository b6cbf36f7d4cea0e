#include "core/sheet/night_sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/night/foods_on_the_night.h"
#include "core/plan/step_cautions.h"
#include "core/problem/oven_curve.h"
#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

constexpr std::size_t mostNext = 3;
/// What is further ahead has its time only.
constexpr Minutes countedDown{6 * 60};
/// Knobs are turned and plates are minded so long ahead.
constexpr Minutes turnsWithin{60};
constexpr Minutes platesWithin{20};

class NightWriter
{
public:
    NightWriter(const RestOfEvening& rest, const Plan& plan, const PlanInput& input,
                const ReadingStyle& style)
        : rest_(rest), plan_(plan), input_(input), formulation_(*plan.formulation),
          context_(plan, input, style)
    {
        for (const TaskIndex task : rest.whole->problem.tasks.indices()) {
            if (rest.inRest[task]) {
                whole_.emplace(*rest.inRest[task], task);
            }
        }
    }

    NightSheet write()
    {
        NightSheet sheet;
        sheet.clock = clock(planTime(0));
        for (const CookIndex cook : formulation_.problem.cooks.indices()) {
            sheet.cooks.push_back(
                {formulation_.cookNames[cook], seated(formulation_.problem.cooks[cook]), {}, {}});
        }
        for (const SheetStep& step : sheetSteps(context_)) {
            addStep(sheet, step);
        }
        addInOvens(sheet);
        addServings(sheet);
        addTurns(sheet);
        for (const SheetNote& note : sheetNotes(context_, {})) {
            if (note.at <= planTime(0) + platesWithin) {
                sheet.notes.push_back(note.text);
            }
        }
        addFoods(sheet);
        sheet.mostLate = mostLate_;
        return sheet;
    }

private:
    [[nodiscard]] std::string clock(PlanTime time) const
    {
        return context_.clock(time, planTime(0));
    }

    [[nodiscard]] std::string seated(const Cook& cook) const
    {
        for (const Interval& table : context_.timetable.atTable(cook)) {
            if (table.contains(planTime(0))) {
                return "at table until " + clock(table.end);
            }
        }
        return {};
    }

    [[nodiscard]] const StepFact* factOf(TaskIndex task) const
    {
        const auto found = whole_.find(task);
        return found == whole_.end() ? nullptr : &rest_.facts.steps[found->second];
    }

    [[nodiscard]] NightLine lineOf(TaskIndex task, const Interval& when)
    {
        NightLine line;
        line.task = formulation_.problem.tasks[task].id;
        const TaskSource& source = formulation_.tasks[task];
        line.deed = deedOf(source);
        for (const safety::CautionKind caution : cautionsOf(source)) {
            line.cautions.push_back(safety::cautionOf(caution).says);
        }
        const StepFact* fact = factOf(task);
        if (fact != nullptr && fact->state == StepState::UnderWay) {
            line.state = LineState::UnderWay;
            line.when = fact->overdue > Minutes{0}
                            ? "was to end at " + clock(planTime(0) - fact->overdue)
                            : "until " + clock(when.end);
            setLate(line, fact->overdue);
            return line;
        }
        const Minutes late = plannedAgo(task);
        const bool isDue = when.start <= planTime(0);
        line.state = isDue ? LineState::Due : LineState::Coming;
        const Minutes ahead = when.start - planTime(0);
        line.when = isDue ? "now, until " + clock(when.end) : "at " + clock(when.start);
        if (!isDue && ahead <= countedDown) {
            line.when += ", in " + durationText(ahead);
        }
        if (isDue) {
            setLate(line, late);
        }
        return line;
    }

    void setLate(NightLine& line, Minutes late)
    {
        if (late <= Minutes{0}) {
            return;
        }
        line.late = durationText(late) + " late";
        if (late > latest_) {
            latest_ = late;
            mostLate_ = fmt::format("{}, {}", line.deed, line.late);
        }
    }

    /// How long ago it was to begin; negative: it is still to come.
    [[nodiscard]] Minutes plannedAgo(TaskIndex task) const
    {
        const auto laid = rest_.layout.starts.find(formulation_.problem.tasks[task].id);
        return laid == rest_.layout.starts.end()
                   ? Minutes{0}
                   : formulation_.calendar.instant(planTime(0)) - laid->second;
    }

    void addStep(NightSheet& sheet, const SheetStep& step)
    {
        NightLine line = lineOf(step.task, {step.start, step.end});
        line.deed = step.deed;
        line.detail = step.detail;
        line.amounts = step.amounts;
        const auto& cooks = plan_.schedule.cooks[step.task];
        if (cooks.empty()) {
            if (line.state != LineState::Coming) {
                sheet.byThemselves.push_back(std::move(line));
            }
            return;
        }
        for (const CookIndex cook : cooks) {
            NightCook& column = sheet.cooks[cook.value()];
            if (line.state != LineState::Coming) {
                column.now.push_back(line);
            } else if (column.next.size() < mostNext) {
                column.next.push_back(line);
            }
        }
    }

    /// Their lines are those that put in and take out; here, how long they still stay in.
    void addInOvens(NightSheet& sheet)
    {
        for (const TaskIndex task : formulation_.problem.tasks.indices()) {
            const StepFact* fact = factOf(task);
            const auto when = plan_.interval(task);
            const bool isSaid = std::ranges::any_of(sheet.byThemselves, [&](const NightLine& line) {
                return line.task == formulation_.problem.tasks[task].id;
            });
            if (fact == nullptr || fact->state != StepState::UnderWay || !when || isSaid ||
                formulation_.problem.tasks[task].needsCooks() ||
                formulation_.tasks[task].role != TaskRole::Step) {
                continue;
            }
            NightLine line = lineOf(task, *when);
            line.detail = formulation_.tasks[task].detail;
            sheet.byThemselves.push_back(std::move(line));
        }
    }

    void addServings(NightSheet& sheet)
    {
        std::vector<std::pair<PlanTime, NightLine>> servings;
        for (const auto& [course, event] : formulation_.servings) {
            if (const auto when = plan_.interval(event)) {
                NightLine line = lineOf(event, *when);
                if (line.state == LineState::Due) {
                    line.when = "now";
                }
                servings.emplace_back(when->start, std::move(line));
            }
        }
        std::ranges::stable_sort(servings, {}, &std::pair<PlanTime, NightLine>::first);
        for (auto& [at, line] : servings) {
            sheet.servings.push_back(std::move(line));
        }
    }

    void addFoods(NightSheet& sheet) const
    {
        const PlanPtr whole = foodsOnTheNight(rest_, plan_.schedule, input_);
        for (const Clash& clash : whole->clashes) {
            sheet.foods.push_back(sentence(*whole, *input_.occasion, clash, context_.style));
        }
    }

    void addTurns(NightSheet& sheet)
    {
        for (const SheetOvenTurn& turn : sheetOvenTurns(context_)) {
            const bool isAsItIs = turn.at == planTime(0) && settingNow(turn.oven) == turn.setC;
            if (!isAsItIs && turn.at <= planTime(0) + turnsWithin) {
                sheet.turns.push_back(fmt::format("{} {}", clock(turn.at), turn.text));
            }
        }
    }

    [[nodiscard]] std::optional<int> settingNow(OvenIndex oven) const
    {
        const OvenCurve curve(rest_.whole->problem.ovens[oven], rest_.planned.programs[oven]);
        return curve.setting(rest_.facts.now);
    }

    const RestOfEvening& rest_;
    const Plan& plan_;
    const PlanInput& input_;
    const Formulation& formulation_;
    SheetContext context_;
    std::map<TaskIndex, TaskIndex> whole_; // from the rest
    Minutes latest_{0};
    std::string mostLate_;
};

std::string spoken(const NightLine& line)
{
    std::string text = line.deed + ", " + line.when;
    text += line.late.empty() ? "" : ", " + line.late;
    for (std::string caution :
         line.state == LineState::Coming ? std::vector<std::string>{} : line.cautions) {
        caution.erase(caution.find_last_not_of('.') + 1);
        text += ". " + caution;
    }
    return text;
}

std::string spoken(const std::vector<NightLine>& lines)
{
    std::string text;
    for (const NightLine& line : lines) {
        text += (text.empty() ? "" : "; ") + spoken(line);
    }
    return text.empty() ? "nothing" : text;
}

} // namespace

NightSheet nightSheet(const RestOfEvening& rest, const PlanPtr& plan, const PlanInput& input,
                      const ReadingStyle& style)
{
    expects(plan != nullptr, "a plan of the rest");
    return NightWriter(rest, *plan, input, style).write();
}

std::string toText(const NightSheet& sheet)
{
    std::string text = sheet.clock + "\n";
    for (const NightCook& cook : sheet.cooks) {
        text += fmt::format("{}{}. Now: {}. Next: {}.\n", cook.name,
                            cook.seated.empty() ? "" : ", " + cook.seated, spoken(cook.now),
                            spoken(cook.next));
    }
    if (!sheet.byThemselves.empty()) {
        text += "By themselves: " + spoken(sheet.byThemselves) + ".\n";
    }
    for (const std::string& turn : sheet.turns) {
        text += turn + "\n";
    }
    for (const NightLine& serving : sheet.servings) {
        text += spoken(serving) + ".\n";
    }
    for (const std::string& note : sheet.notes) {
        text += note + "\n";
    }
    for (const std::string& food : sheet.foods) {
        text += food + "\n";
    }
    return text;
}

} // namespace suppertide
