// TimetablePropagator: items that take an amount of something whose capacity is limited, each from
// a variable start to a variable end, some of them only if a literal holds. Where an item must be
// whatever happens, from its latest start to its earliest end, it counts:
//
//     item a, amount 2     [====......====]      may lie anywhere here, and is surely in the middle
//     surely there              ######
//     item b, amount 2        [===]──▶           capacity 3: b cannot be at the minute of #, so it
//                                                begins after it
//
// Explanations are of one minute: each item that is surely there starts no later than it and ends
// after it.
// It is asked each time that any bound of an item changes, mostly of one that it has nothing to say
// to. So the profile is made anew only where what is surely there has changed, and an item looked
// at only where it or the profile has.
// Source: A. Schutt, T. Feydy, P. Stuckey, M. Wallace, Explaining the cumulative propagator,
// Constraints 16 (2011), sections 4 and 5 (pointwise explanations).
#pragma once

#include <optional>
#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

struct TimetableItem
{
    Term start;
    Term end;
    Bound amount = 1;
    std::optional<Literal> present; // absent: surely
};

class TimetablePropagator : public Propagator
{
public:
    TimetablePropagator(std::vector<TimetableItem> items, Bound capacity)
        : items_(std::move(items)), capacity_(capacity), seen_(items_.size())
    {}
    /// Adds it to the engine, listening to what it needs.
    static void post(Engine& engine, std::vector<TimetableItem> items, Bound capacity);

    bool propagate(Engine& engine) override;
    [[nodiscard]] int order() const override { return 1; }

private:
    struct Step // from `from` on, until the next one, `load` is surely used
    {
        Bound from;
        Bound load;

        friend bool operator==(const Step&, const Step&) = default;
    };
    /// An item as it was when the profile had nothing to say to it.
    struct Seen
    {
        Bound startLeast = 0;
        Bound startMost = 0;
        Bound endLeast = 0;
        Bound endMost = 0;
        bool isPresent = false;
        bool isQuiet = false;

        friend bool operator==(const Seen&, const Seen&) = default;
    };
    enum class Verdict
    {
        Quiet,
        Changed,
        Conflict
    };
    [[nodiscard]] bool isPresent(const Trail& trail, const TimetableItem& item) const;
    [[nodiscard]] bool isAbsent(const Trail& trail, const TimetableItem& item) const;
    [[nodiscard]] bool isSurelyAt(const Trail& trail, const TimetableItem& item,
                                  Bound minute) const;
    [[nodiscard]] bool buildProfile(Engine& engine);
    void forgetProfile();
    [[nodiscard]] Seen seenNow(const Trail& trail, const TimetableItem& item) const;
    /// Why so much more than `room` is surely used at a minute, by others than `without`.
    [[nodiscard]] Literals usedAt(const Trail& trail, Bound minute, Bound room,
                                  const TimetableItem* without) const;
    [[nodiscard]] Verdict raiseStart(Engine& engine, const TimetableItem& item);
    [[nodiscard]] Verdict lowerEnd(Engine& engine, const TimetableItem& item);
    [[nodiscard]] Verdict ruleOut(Engine& engine, const TimetableItem& item);
    [[nodiscard]] Verdict lookAt(Engine& engine, const TimetableItem& item);
    [[nodiscard]] Verdict lookAtAll(Engine& engine);
    [[nodiscard]] std::size_t stepAt(Bound minute) const;

    std::vector<TimetableItem> items_;
    Bound capacity_;
    std::vector<Step> profile_;
    Bound most_ = 0;                // of the profile
    std::vector<Step> changes_;     // that the profile is made of, in the order of the items
    std::vector<Step> lastChanges_; // scratch
    std::vector<Step> sorted_;      // scratch
    std::vector<Seen> seen_;        // by item
};

} // namespace suppertide::engine
