// Problem: what must hold and what costs, in the terms of scheduling: tasks, lags, counts, pools,
// cooks, ovens, choices. It knows nothing about food. core/plan makes one from an occasion, the
// planner solves it, core/check judges schedules by it, core/exchange reads and writes it as a
// file. Things refer to each other by dense indices; ids are kept for messages and files.
// Temperatures are whole °C, oven rates thousandths of a °C a minute, all other numbers whole.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/interval.h"
#include "core/base/strong_index.h"
#include "core/quantity/quantity.h"

namespace suppertide {

using TaskIndex = StrongIndex<struct TaskIndexTag>;
using LagIndex = StrongIndex<struct LagIndexTag>;
using CountIndex = StrongIndex<struct CountIndexTag>;
using PoolIndex = StrongIndex<struct PoolIndexTag>;
using UnitIndex = StrongIndex<struct UnitIndexTag>; // within its pool
using DemandIndex = StrongIndex<struct DemandIndexTag>;
using CookIndex = StrongIndex<struct CookIndexTag>;
using OvenIndex = StrongIndex<struct OvenIndexTag>;
using OvenDemandIndex = StrongIndex<struct OvenDemandIndexTag>;
using ChoiceIndex = StrongIndex<struct ChoiceIndexTag>;
using OptionIndex = StrongIndex<struct OptionIndexTag>; // within its choice

enum class Edge
{
    Start,
    End
};

/// The start or the end of a task.
struct TaskPoint
{
    TaskIndex task;
    Edge edge = Edge::Start;

    friend bool operator==(const TaskPoint&, const TaskPoint&) = default;
};

/// Who does a task: `cooks` different cooks, each giving `attention`, with the skill if one is
/// named.
struct Hands
{
    Attention attention;
    int cooks = 1;
    std::optional<std::string> skill;

    friend bool operator==(const Hands&, const Hands&) = default;
};

struct Task
{
    std::string id;
    Minutes duration{0}; // 0: an event
    Interval window;     // start and end lie within it, ends included
    std::optional<Hands> hands;
    bool atTable = false; // may be done while its cook sits at table

    /// A task without length or attention needs nobody.
    [[nodiscard]] bool needsCooks() const
    {
        return hands && hands->attention.percent() > 0 && duration.count() > 0;
    }
    friend bool operator==(const Task&, const Task&) = default;
};

/// min ≤ time(to) − time(from) ≤ max; an absent bound is no bound.
struct Lag
{
    std::string id;
    TaskPoint from;
    TaskPoint to;
    std::optional<Minutes> min;
    std::optional<Minutes> max;
    std::int64_t loss = 0; // cost a minute of gap above min

    friend bool operator==(const Lag&, const Lag&) = default;
};

/// A resource of which there is an amount (litres of fridge).
struct Count
{
    std::string id;
    std::int64_t capacity = 0;

    friend bool operator==(const Count&, const Count&) = default;
};

struct PoolUnit
{
    std::string id;
    std::int64_t size = 0;

    friend bool operator==(const PoolUnit&, const PoolUnit&) = default;
};

/// A resource of which there are units, told apart by size (burners).
struct Pool
{
    std::string id;
    IndexedVector<UnitIndex, PoolUnit> units;

    friend bool operator==(const Pool&, const Pool&) = default;
};

/// From one task's start or end to another's; nothing is held if it ends no later than it begins.
/// Exactly one of `count` and `pool` is set.
struct Demand
{
    std::string id;
    TaskPoint from;
    TaskPoint to;
    std::optional<CountIndex> count;
    std::int64_t amount = 1; // of a count
    std::optional<PoolIndex> pool;
    std::int64_t minSize = 0;                    // of a pool
    std::optional<std::vector<UnitIndex>> units; // of a pool; absent: any

    friend bool operator==(const Demand&, const Demand&) = default;
};

struct TableAfter
{
    TaskIndex event;
    Minutes minutes{0};

    friend bool operator==(const TableAfter&, const TableAfter&) = default;
};

struct Cook
{
    std::string id;
    std::vector<std::string> skills;
    std::vector<Interval> free;  // rising, not overlapping
    std::vector<Interval> table; // rising, not overlapping
    std::vector<TableAfter> tableAfter;

    friend bool operator==(const Cook&, const Cook&) = default;
};

struct Oven
{
    std::string id;
    std::int64_t shelves = 0;
    int minC = 0;
    int maxC = 0;
    int startC = 0;
    int ambientC = 0;
    std::int64_t heatMilliCPerMin = 1000; // thousandths of a °C a minute, > 0
    std::int64_t coolMilliCPerMin = 1000;

    friend bool operator==(const Oven&, const Oven&) = default;
};

/// The mode in which an oven is switched off for the length of the demand.
inline constexpr const char* modeOff = "off";

struct OvenDemand
{
    std::string id;
    TaskPoint from;
    TaskPoint to;
    std::int64_t shelves = 1;
    int acceptLow = 0;
    int acceptHigh = 0;
    std::optional<int> prefer;
    std::optional<std::vector<OvenIndex>> ovens; // absent: any
    std::optional<std::string> group;            // demands of one group are in one oven
    std::optional<std::string> mode;

    friend bool operator==(const OvenDemand&, const OvenDemand&) = default;
};

struct Option
{
    std::string id;
    std::vector<TaskIndex> tasks; // present exactly if this option is chosen
    std::int64_t cost = 0;

    friend bool operator==(const Option&, const Option&) = default;
};

struct Choice
{
    std::string id;
    IndexedVector<OptionIndex, Option> options; // at least one

    friend bool operator==(const Choice&, const Choice&) = default;
};

/// Costs rate × attention × minutes within [from, to), or, if `before` is set, within the
/// `minutes` that lead up to the start of that task.
struct Quiet
{
    std::int64_t rate = 0;
    Interval when;
    std::optional<TaskIndex> before;
    Minutes minutes{0};

    friend bool operator==(const Quiet&, const Quiet&) = default;
};

struct BeforeStart
{
    TaskIndex task;
    PlanTime start;

    friend bool operator==(const BeforeStart&, const BeforeStart&) = default;
};

struct Costs
{
    std::vector<Quiet> quiet;
    std::int64_t ovenChange = 0;
    std::int64_t ovenOnMinute = 0;
    std::int64_t ovenSwitchOn = 0; // each time that an oven goes from off to a setting
    /// The same beside, where something is in that was put in earlier and stays in.
    std::int64_t ovenSwitchOnWithin = 0;
    std::int64_t preferC = 0;
    std::int64_t session = 0;
    Minutes sessionGap{0};
    std::vector<BeforeStart> before;
    std::int64_t beforeRate = 0;
    std::int64_t beforeMoved = 0;

    friend bool operator==(const Costs&, const Costs&) = default;
};

struct Problem
{
    std::string name;
    PlanTime horizon; // points in time lie within 0…horizon
    IndexedVector<TaskIndex, Task> tasks;
    IndexedVector<LagIndex, Lag> lags;
    IndexedVector<CountIndex, Count> counts;
    IndexedVector<PoolIndex, Pool> pools;
    IndexedVector<DemandIndex, Demand> demands;
    IndexedVector<CookIndex, Cook> cooks;
    IndexedVector<OvenIndex, Oven> ovens;
    IndexedVector<OvenDemandIndex, OvenDemand> ovenDemands;
    IndexedVector<ChoiceIndex, Choice> choices;
    Costs costs;

    friend bool operator==(const Problem&, const Problem&) = default;
};

} // namespace suppertide
