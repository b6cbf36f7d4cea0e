// Washing between (formulate rules 3 and 4): a thing that another dish needs is held until it has
// been washed; portions that must be kept clear of something are made first, and where that cannot
// be, in things washed before.
#include <algorithm>

#include "core/plan/evening.h"

namespace suppertide {

namespace {

/// Where the recipe says no minutes but an allergen must be washed off (common practice).
constexpr Minutes washingOff{5};

/// How two steps of one dish stand to each other.
enum class Clearance
{
    None,
    FirstBefore,     // the first must be clear of the other: made before it
    WashedInBetween, // the later must be clear of what was in the earlier
};

/// Of two variants that do their steps apart, the one that stands first in the making goes first.
Clearance clearanceOf(const Evening& evening, const Making& making, const MadeStep& first,
                      const MadeStep& second)
{
    Clearance result = Clearance::None;
    for (const std::size_t one : first.variants) {
        for (const std::size_t other : second.variants) {
            if (one == other) {
                return Clearance::None;
            }
            const MakingVariant& early = making.variants[one];
            const MakingVariant& late = making.variants[other];
            if (mustBeClearOf(evening.occasion(), late, early)) {
                result = Clearance::WashedInBetween;
            } else if (result == Clearance::None &&
                       mustBeClearOf(evening.occasion(), early, late)) {
                result = Clearance::FirstBefore;
            }
        }
    }
    return result;
}

class WashWriter
{
public:
    explicit WashWriter(Evening& evening) : evening_(evening) {}

    void write()
    {
        keepLikeBatchesTogether();
        for (std::size_t i = 0; i < evening_.washes.size(); ++i) {
            if (isNeededByAnother(evening_.washes[i])) {
                holdUntilWashed(evening_.washes[i], evening_.washes[i].washing);
            }
        }
        for (std::size_t making = 0; making < evening_.makings.size(); ++making) {
            clearOnesFirst(making);
        }
    }

private:
    /// Between like batches the one thing there is gets emptied, not washed: it is held on.
    void keepLikeBatchesTogether()
    {
        for (WashAfter& use : evening_.washes) {
            if (!use.batch || use.thing.units != 1) {
                continue;
            }
            const Making& making = evening_.makings[use.making];
            const Batch& batch = making.batches[*use.batch];
            if (batch.number == 0 || batch.number == batch.count) {
                continue;
            }
            const std::size_t next = *use.batch + 1;
            const TaskPoint begins = evening_.batchTasks(use.making, next).start();
            evening_.draft.addLag(use.usedUntil, begins, Gap::atLeast(Minutes{0}),
                                  orderSource(making, Rule::Batches));
            for (const DemandIndex demand : use.demands) {
                evening_.draft.demand(demand).to = begins;
            }
            use.washing = Minutes{0};
        }
    }

    [[nodiscard]] bool isSameThing(const WashAfter& one, const WashAfter& other) const
    {
        return one.thing.kind == other.thing.kind && one.thing.name == other.thing.name;
    }

    /// Another dish uses such a thing, and there are not enough for everybody.
    [[nodiscard]] bool isNeededByAnother(const WashAfter& use) const
    {
        if (use.washing <= Minutes{0}) {
            return false;
        }
        std::int64_t wanted = 0;
        bool byAnother = false;
        for (const WashAfter& other : evening_.washes) {
            if (!isSameThing(use, other)) {
                continue;
            }
            byAnother = byAnother || other.making != use.making;
            for (const DemandIndex demand : other.demands) {
                wanted += evening_.draft.problem().demands[demand].amount;
            }
        }
        return byAnother && wanted > use.thing.units;
    }

    TaskIndex holdUntilWashed(const WashAfter& use, Minutes minutes)
    {
        const Making& making = evening_.makings[use.making];
        const TaskIndex used = use.usedUntil.task;
        Task task;
        task.id = evening_.draft.problem().tasks[use.usedFrom.task].id;
        task.id += use.batch ? ".wash" : "." + use.thing.name + ".wash";
        task.duration = minutes;
        task.hands = Hands{handsOn, 1, std::nullopt};
        TaskSource source = evening_.draft.formulation().tasks[used];
        source.role = TaskRole::Washing;
        source.rule = Rule::Washing;
        source.dish = making.dish->id;
        source.dishName = making.name;
        source.verb = "Wash";
        source.text = "Wash the " + use.thing.name;
        source.detail.clear();
        source.lines.clear();
        source.cautions.clear();
        source.alsoCalledFor.clear();
        source.isHot = false;
        source.duration = {minutes, minutes, minutes};
        const TaskIndex wash = evening_.draft.addTask(std::move(task), std::move(source));
        auto option = evening_.draft.optionOf(use.usedFrom.task);
        option = option ? option : evening_.draft.optionOf(used);
        evening_.place(wash, option);
        if (making.cook) {
            evening_.wantedCooks[wash] = {*making.cook};
        }
        evening_.draft.addLag(use.usedUntil, startOf(wash), Gap::atLeast(Minutes{0}),
                              orderSource(making, Rule::Washing));
        for (const DemandIndex demand : use.demands) {
            evening_.draft.demand(demand).to = endOf(wash);
            evening_.draft.demandSource(demand).isWash = true;
        }
        return wash;
    }

    void clearOnesFirst(std::size_t index)
    {
        const Making& making = evening_.makings[index];
        for (std::size_t one = 0; one < making.steps.size(); ++one) {
            for (std::size_t other = 0; other < making.steps.size(); ++other) {
                const MadeStep& first = making.steps[one];
                const MadeStep& second = making.steps[other];
                if (one == other || first.step.id != second.step.id ||
                    first.variants.front() > second.variants.front()) {
                    continue;
                }
                const Clearance clearance = clearanceOf(evening_, making, first, second);
                if (clearance != Clearance::None) {
                    keepClear(index, first, second, clearance);
                }
            }
        }
    }

    /// Handled by somebody, or in the same thing: one after the other; else begun no later.
    void keepClear(std::size_t index, const MadeStep& first, const MadeStep& second,
                   Clearance clearance)
    {
        for (const std::size_t one : first.batches) {
            for (const std::size_t other : second.batches) {
                const WashAfter* shared = sharedThing(index, one, other);
                const BatchTasks& early = evening_.batchTasks(index, one);
                const BatchTasks& late = evening_.batchTasks(index, other);
                const bool isHandled = first.step.attention > unattended || shared != nullptr;
                LagSource source = orderSource(evening_.makings[index], Rule::Batches);
                if (clearance == Clearance::WashedInBetween && shared != nullptr) {
                    washBetween(*shared, late.start());
                }
                evening_.draft.addLag(isHandled ? early.end() : early.start(), late.start(),
                                      Gap::atLeast(Minutes{0}), std::move(source));
            }
        }
    }

    /// A use of `one` of the kind of thing that `other` uses too.
    [[nodiscard]] const WashAfter* sharedThing(std::size_t making, std::size_t one,
                                               std::size_t other) const
    {
        for (const WashAfter& use : evening_.washes) {
            if (use.making != making || use.batch != one) {
                continue;
            }
            for (const WashAfter& second : evening_.washes) {
                if (second.making == making && second.batch == other && isSameThing(use, second)) {
                    return &use;
                }
            }
        }
        return nullptr;
    }

    void washBetween(const WashAfter& use, const TaskPoint& next)
    {
        const TaskPoint held = evening_.draft.problem().demands[use.demands.front()].to;
        const bool isWashed =
            evening_.draft.formulation().tasks[held.task].role == TaskRole::Washing;
        const TaskIndex wash =
            isWashed ? held.task : holdUntilWashed(use, std::max(use.washing, washingOff));
        evening_.draft.addLag(endOf(wash), next, Gap::atLeast(Minutes{0}),
                              orderSource(evening_.makings[use.making], Rule::Washing));
    }

    Evening& evening_;
};

} // namespace

void addWashing(Evening& evening)
{
    WashWriter(evening).write();
}

} // namespace suppertide
