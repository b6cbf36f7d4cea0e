// EveningChange: one thing that could be otherwise about an evening, so that it can be cooked: when
// it is served, who helps, what is borrowed, how something is made. Values; `applied` makes the
// evening that would follow, core/wording says it. What is here is all that is ever offered.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/occasion/give_helping.h"
#include "core/occasion/line_swaps.h"
#include "core/plan/formulation.h"

namespace suppertide {

/// Nothing but times, cooks and ovens: the planner arranges it.
struct PlanAnew
{
    friend bool operator==(const PlanAnew&, const PlanAnew&) = default;
};

/// A task, choice or oven setting is let go.
struct Unpin
{
    std::string id;   // of the task or choice; empty: the setting
    int setting = -1; // number of the oven setting, else −1

    friend bool operator==(const Unpin&, const Unpin&) = default;
};

/// A step is put elsewhere, and the rest planned around it.
struct MoveStep
{
    enum class Why
    {
        ShorterWait, // what comes after or before waits no longer than it must
        DayBefore,
        DayLater,  // so that what it makes is kept a day less
        CleanFirst // before what would leave something in the tool that it uses
    };
    Why why = Why::DayBefore;
    std::string task;
    Instant from;
    Instant to;

    friend bool operator==(const MoveStep&, const MoveStep&) = default;
};

/// Another option of a choice: method, keep place, by-product.
struct TakeOption
{
    std::string choice;
    std::string from;
    std::string to;

    friend bool operator==(const TakeOption&, const TakeOption&) = default;
};

/// A method that the user had fixed is exchanged for another.
struct TakeMethod
{
    DishId dish;
    MethodChoiceId choice;
    MethodId from;
    MethodId to;

    friend bool operator==(const TakeMethod&, const TakeMethod&) = default;
};

/// Another vessel or appliance of the kind for one use.
struct UseOther
{
    std::string demand;
    std::string task; // that uses it
    std::string from; // unit ids
    std::string to;

    friend bool operator==(const UseOther&, const UseOther&) = default;
};

/// A vessel or appliance is washed before one use of it.
struct WashBefore
{
    std::string demand;
    std::string task; // that uses it
    std::string tool; // "mixing bowl"

    friend bool operator==(const WashBefore&, const WashBefore&) = default;
};

/// A pinned oven setting becomes one that both of two dishes accept.
struct ShareTemperature
{
    int setting = 0; // number of the oven setting
    int fromC = 0;
    int toC = 0;

    friend bool operator==(const ShareTemperature&, const ShareTemperature&) = default;
};

struct ServingMove
{
    CourseId course;
    CivilTime from;
    CivilTime to;

    friend bool operator==(const ServingMove&, const ServingMove&) = default;
};

struct ServeLater
{
    std::vector<ServingMove> moves;

    friend bool operator==(const ServeLater&, const ServeLater&) = default;
};

/// Durations are planned as they are likely, not with the care that the user asked for.
struct PlanLikely
{
    CautionLevel from = CautionLevel::Careful;

    friend bool operator==(const PlanLikely&, const PlanLikely&) = default;
};

struct DropJob
{
    HouseJobId job;

    friend bool operator==(const DropJob&, const DropJob&) = default;
};

/// A house job may be done from an earlier time on.
struct JobEarlier
{
    HouseJobId job;
    CivilTime from;
    CivilTime to;

    friend bool operator==(const JobEarlier&, const JobEarlier&) = default;
};

/// A cook is free at times when they were not.
struct FreeCook
{
    CookId cook;
    CivilTime from;
    CivilTime to; // on the same day; 24:00 is {24, 0}

    friend bool operator==(const FreeCook&, const FreeCook&) = default;
};

/// Somebody who is no cook of this kitchen helps.
struct Helper
{
    CivilTime from;
    CivilTime to;

    friend bool operator==(const Helper&, const Helper&) = default;
};

/// One more of a kind of thing.
struct Borrow
{
    ResourceKind kind = ResourceKind::Vessel;
    std::string name;      // "wide pan", "oven with grill"; empty where any will do
    std::int64_t size = 0; // least that will do: tenths of a litre, or mm of a pan

    friend bool operator==(const Borrow&, const Borrow&) = default;
};

/// One more shelf in an oven that is there.
struct AddShelf
{
    KitchenItemId oven;

    friend bool operator==(const AddShelf&, const AddShelf&) = default;
};

struct TakeVariant
{
    DishId dish;
    VariantId from;
    VariantId to;

    friend bool operator==(const TakeVariant&, const TakeVariant&) = default;
};

/// One guest gets another variant than so far.
struct GiveVariant
{
    DishId dish;
    GuestId guest;
    VariantId from;
    VariantId to;

    friend bool operator==(const GiveVariant&, const GiveVariant&) = default;
};

/// One guest gets another dish of the course than so far, or goes without.
struct ServeGuest
{
    CourseId course;
    GuestId guest;
    std::optional<DishId> from; // absent: they had nothing
    GivenHelping to;

    friend bool operator==(const ServeGuest&, const ServeGuest&) = default;
};

/// One guest's portion is made with other ingredients, as a variant of its own that the recipe has
/// from then on.
struct Substitute
{
    CourseId course;
    GuestId guest;
    std::optional<DishId> from; // what they had; absent: nothing
    DishId dish;
    VariantId variant; // that is made so
    std::vector<LineSwap> swaps;

    friend bool operator==(const Substitute&, const Substitute&) = default;
};

/// Another dish of the same course instead, in variants that suit those who eat it.
struct TakeAlternative
{
    CourseId course;
    DishId from;
    DishId to;

    friend bool operator==(const TakeAlternative&, const TakeAlternative&) = default;
};

using EveningChange = std::variant<PlanAnew, Unpin, MoveStep, TakeOption, TakeMethod, UseOther,
                                   WashBefore, ShareTemperature, ServeLater, PlanLikely, DropJob,
                                   JobEarlier, FreeCook, Helper, Borrow, AddShelf, TakeVariant,
                                   GiveVariant, ServeGuest, Substitute, TakeAlternative>;

/// The evening with the change made. A moved step is pinned in it, so that the planner keeps it;
/// `released` takes that pin out again. An option or a tool that is taken stays pinned: it is what
/// the cook has decided.
[[nodiscard]] PlanInput applied(const PlanInput& input, const EveningChange& change);
[[nodiscard]] Layout released(Layout layout, const EveningChange& change, const Layout& before);

/// How unwelcome a change is by itself, in points of the plan's cost (whose unit is what a change
/// of the oven's temperature or a working session costs, two and one). Our own choice: first what
/// only moves work, then what costs somebody's time, then what must be fetched, last what is eaten.
[[nodiscard]] std::int64_t pointsOf(const EveningChange& change);

} // namespace suppertide
