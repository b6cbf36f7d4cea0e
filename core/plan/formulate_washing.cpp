// Washing between (formulate rules 3 and 4): a thing that another dish needs is held until it has
// been washed; portions that must be kept clear of something are made first, and where that cannot
// be, in things washed before.
#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "core/plan/evening.h"
#include "core/plan/followed_foods.h"
#include "core/plan/tool_order.h"

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
        tellWhatIsLeft();
        giveEachItsOwn();
        for (std::size_t i = 0; i < evening_.washes.size(); ++i) {
            const WashAfter& use = evening_.washes[i];
            if (isNeededByAnother(use, leavesWhatAnotherMustNotHave(i))) {
                holdUntilWashed(use, use.washing);
            }
        }
        for (std::size_t making = 0; making < evening_.makings.size(); ++making) {
            clearOnesFirst(making);
        }
        for (const WashAfter& use : evening_.washes) {
            washBefore(use);
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

    /// What a use leaves in its thing, and what must not be in it.
    struct Touch
    {
        bool leavesRaw = false;
        bool isReady = false; // eaten as it is
        std::vector<Substance> leaves;
        std::vector<Substance> mustBeFree;
    };

    void tellWhatIsLeft()
    {
        for (const WashAfter& use : evening_.washes) {
            const TaskSource& source = evening_.draft.sources()[use.usedFrom.task];
            Touch touch;
            touch.leaves = source.contains;
            touch.mustBeFree = avoidedIn(source, evening_.occasion()).any;
            const Making& making = evening_.makings[use.making];
            for (const MakingVariant& variant : making.variants) {
                for (const OpenFood& open : foodsOf(making, variant)) {
                    addFood(*open.food, source.step, touch);
                }
            }
            touches_.push_back(std::move(touch));
        }
    }

    static void addFood(const FollowedFood& food, const std::optional<StepId>& step, Touch& touch)
    {
        FoodClass now = food.kind.food;
        bool isMet = false;
        bool isHeatedLater = false;
        for (const FoodTreatment& treatment : food.steps) {
            const bool isHot = makesHot(treatment.treatment);
            if (treatment.step == step) {
                isMet = true;
                touch.leavesRaw = touch.leavesRaw || (isRawAnimal(now) && !isHot);
            }
            isHeatedLater = isHeatedLater || (isMet && isHot);
            now = treatment.becomes.value_or(isHot ? cooked(now) : now);
        }
        touch.isReady = touch.isReady || (isMet && !isHeatedLater && !isRawAnimal(food.kind.food));
    }

    [[nodiscard]] bool spoils(std::size_t one, std::size_t other) const
    {
        const Touch& dirty = touches_[one];
        const Touch& clean = touches_[other];
        return (dirty.leavesRaw && clean.isReady) ||
               std::ranges::any_of(dirty.leaves, [&clean](Substance substance) {
                   return std::ranges::find(clean.mustBeFree, substance) != clean.mustBeFree.end();
               });
    }

    /// To another dish's use of such a thing.
    [[nodiscard]] bool leavesWhatAnotherMustNotHave(std::size_t index) const
    {
        const WashAfter& use = evening_.washes[index];
        for (std::size_t i = 0; i < evening_.washes.size(); ++i) {
            const WashAfter& other = evening_.washes[i];
            if (isSameThing(use, other) && other.making != use.making && spoils(index, i)) {
                return true;
            }
        }
        return false;
    }

    /// Where there are enough for everybody, nothing is washed in between: then what must be kept
    /// apart is not left to chance, and each use gets a thing of its own.
    void giveEachItsOwn()
    {
        for (std::size_t i = 0; i < evening_.washes.size(); ++i) {
            const WashAfter& use = evening_.washes[i];
            if (use.thing.pool && !haveOwn_.contains(*use.thing.pool) &&
                leavesWhatAnotherMustNotHave(i) && isEnoughForAll(use) &&
                giveOwn(*use.thing.pool)) {
                haveOwn_.insert(*use.thing.pool);
            }
        }
    }

    /// Those that want a large one choose first. False: there are enough, but not of the large
    /// ones.
    bool giveOwn(PoolIndex pool)
    {
        std::vector<DemandIndex> demands;
        for (const DemandIndex index : evening_.draft.problem().demands.indices()) {
            if (evening_.draft.problem().demands[index].pool == pool) {
                demands.push_back(index);
            }
        }
        std::ranges::stable_sort(demands, std::greater{}, [this](DemandIndex index) {
            return evening_.draft.problem().demands[index].minSize;
        });
        const auto& units = evening_.draft.problem().pools[pool].units;
        std::map<DemandIndex, UnitIndex> given;
        std::set<UnitIndex> taken;
        for (const DemandIndex index : demands) {
            std::optional<UnitIndex> best;
            for (const UnitIndex unit : units.indices()) {
                const bool isLarge =
                    units[unit].size >= evening_.draft.problem().demands[index].minSize;
                if (isLarge && !taken.contains(unit) &&
                    (!best || units[unit].size < units[*best].size)) {
                    best = unit;
                }
            }
            if (!best) {
                return false;
            }
            taken.insert(*best);
            given.emplace(index, *best);
        }
        for (const auto& [index, unit] : given) {
            evening_.draft.demand(index).units = std::vector{unit};
        }
        return true;
    }

    [[nodiscard]] bool isSameThing(const WashAfter& one, const WashAfter& other) const
    {
        return one.thing.kind == other.thing.kind && one.thing.name == other.thing.name;
    }

    /// Another dish uses such a thing, and there are not enough for everybody, or not enough to
    /// keep apart what must be.
    [[nodiscard]] bool isNeededByAnother(const WashAfter& use, bool isSoiled) const
    {
        if (use.washing <= Minutes{0}) {
            return false;
        }
        const bool byAnother = std::ranges::any_of(evening_.washes, [&](const WashAfter& other) {
            return isSameThing(use, other) && other.making != use.making;
        });
        const bool isKeptApart = use.thing.pool && haveOwn_.contains(*use.thing.pool);
        return byAnother && (!isEnoughForAll(use) || (isSoiled && use.thing.pool && !isKeptApart));
    }

    [[nodiscard]] bool isEnoughForAll(const WashAfter& use) const
    {
        std::int64_t wanted = 0;
        for (const WashAfter& other : evening_.washes) {
            if (!isSameThing(use, other)) {
                continue;
            }
            for (const DemandIndex demand : other.demands) {
                wanted += evening_.draft.problem().demands[demand].amount;
            }
        }
        return wanted <= use.thing.units;
    }

    /// A task of washing the thing that is used by `of`, present as that use is.
    TaskIndex addWashing(const WashAfter& use, TaskIndex of, std::string id, Minutes minutes)
    {
        const Making& making = evening_.makings[use.making];
        Task task;
        task.id = std::move(id);
        task.duration = minutes;
        task.hands = Hands{handsOn, 1, std::nullopt};
        TaskSource source = evening_.draft.formulation().tasks[of];
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
        option = option ? option : evening_.draft.optionOf(use.usedUntil.task);
        evening_.place(wash, option);
        if (making.cook) {
            evening_.wantedCooks[wash] = {*making.cook};
        }
        return wash;
    }

    TaskIndex holdUntilWashed(const WashAfter& use, Minutes minutes)
    {
        const Making& making = evening_.makings[use.making];
        const std::string suffix = use.batch ? ".wash" : "." + use.thing.name + ".wash";
        const TaskIndex wash =
            addWashing(use, use.usedUntil.task,
                       evening_.draft.problem().tasks[use.usedFrom.task].id + suffix, minutes);
        evening_.draft.addLag(use.usedUntil, startOf(wash), Gap::atLeast(Minutes{0}),
                              orderSource(making, Rule::Washing));
        for (const DemandIndex demand : use.demands) {
            evening_.draft.demand(demand).to = endOf(wash);
            evening_.draft.demandSource(demand).isWash = true;
        }
        return wash;
    }

    /// The thing is held from the washing on, so that nothing comes between.
    void washBefore(const WashAfter& use)
    {
        const auto isWished = [this](DemandIndex demand) {
            const std::string& id = evening_.draft.problem().demands[demand].id;
            return evening_.layout().washed.contains(id);
        };
        if (std::ranges::none_of(use.demands, isWished)) {
            return;
        }
        const TaskIndex user = use.usedFrom.task;
        const TaskIndex wash = addWashing(use, user,
                                          evening_.draft.problem().tasks[user].id + "." +
                                              use.thing.name + ".wash-before",
                                          longestWashing(use));
        evening_.draft.source(wash).text = "Wash the " + use.thing.name + " first";
        evening_.draft.addLag(endOf(wash), use.usedFrom, Gap::atLeast(Minutes{0}),
                              orderSource(evening_.makings[use.making], Rule::Washing));
        for (const DemandIndex demand : use.demands) {
            evening_.draft.demand(demand).from = startOf(wash);
            evening_.draft.demandSource(demand).washedFor = user;
        }
    }

    /// Whatever was in it before.
    [[nodiscard]] Minutes longestWashing(const WashAfter& use) const
    {
        Minutes longest = washingOff;
        for (const WashAfter& other : evening_.washes) {
            longest = isSameThing(use, other) ? std::max(longest, other.washing) : longest;
        }
        return longest;
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
    std::vector<Touch> touches_;  // parallel to the evening's washes
    std::set<PoolIndex> haveOwn_; // in which each use has a thing of its own
};

} // namespace

void addWashing(Evening& evening)
{
    WashWriter(evening).write();
}

} // namespace suppertide
