// Cooks (formulate rule 13): when they are free, and what must not be hot while nobody is awake at
// home.
#include <algorithm>

#include "core/plan/evening.h"
#include "core/plan/presence.h"

namespace suppertide {

void addCooks(Evening& evening)
{
    for (const KitchenCook& cook : evening.kitchen().cooks) {
        Cook added;
        added.id = cook.id.text();
        added.skills = cook.skills;
        added.free = presenceOf(cook, evening.occasion(), evening.draft.calendar(),
                                evening.draft.wholeHorizon())
                         .free;
        evening.draft.addCook(std::move(added), cook.name);
    }
}

void addAbsences(Evening& evening)
{
    const auto watch = evening.things.find({ResourceKind::Watch, "watch"});
    if (watch == evening.things.end()) {
        return;
    }
    FormulationDraft& draft = evening.draft;
    std::vector<Interval> atHome;
    for (const KitchenCook& cook : evening.kitchen().cooks) {
        const auto presence =
            presenceOf(cook, evening.occasion(), draft.calendar(), draft.wholeHorizon());
        atHome.insert(atHome.end(), presence.atHome.begin(), presence.atHome.end());
    }
    const std::int64_t everything = draft.count(*watch->second.count).capacity;
    int number = 0;
    for (const Interval& away : gapsIn(draft.wholeHorizon(), merged(std::move(atHome)))) {
        Task task;
        task.id = "unwatched/" + std::to_string(++number);
        task.duration = away.length();
        task.window = away;
        TaskSource source;
        source.role = TaskRole::Watch;
        source.rule = Rule::Cooks;
        source.text = "nobody awake at home";
        const TaskIndex added = draft.addTask(std::move(task), source);
        Demand demand{"unwatched/" + std::to_string(number),
                      startOf(added),
                      endOf(added),
                      {},
                      everything,
                      {},
                      0,
                      {}};
        demand.count = watch->second.count;
        draft.addDemand(std::move(demand),
                        {Rule::Cooks, {}, {}, "watch", source.text, false, false});
    }
}

} // namespace suppertide
