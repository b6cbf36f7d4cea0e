// House jobs (formulate rule 12).
#include "core/plan/evening.h"

namespace suppertide {

void addHouseJobs(Evening& evening)
{
    FormulationDraft& draft = evening.draft;
    for (const HouseJob& job : evening.occasion().houseJobs) {
        Task task;
        task.id = "job/" + job.id.text();
        task.duration = job.duration;
        task.window =
            Interval{draft.calendar().planTime(job.earliest), draft.calendar().planTime(job.latest)}
                .common(draft.wholeHorizon());
        if (job.attention > unattended) {
            task.hands = Hands{job.attention, 1, std::nullopt};
        }
        TaskSource source;
        source.role = TaskRole::HouseJob;
        source.rule = Rule::House;
        source.job = job.id;
        source.verb = job.name;
        source.text = job.name;
        source.duration = {job.duration, job.duration, job.duration};
        const TaskIndex added = draft.addTask(std::move(task), std::move(source));
        if (job.cook) {
            evening.wantedCooks[added] = {*job.cook};
        }
    }
}

} // namespace suppertide
