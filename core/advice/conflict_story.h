// ConflictStory: a minimal conflict put in order: what must be when by these requirements alone,
// and where it fails: too little time from one thing to the next, or too much of one thing at once.
// core/wording tells it in a cook's words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/formulation.h"

namespace suppertide {

/// Why a task cannot begin earlier.
struct StoryLeg
{
    enum class Why
    {
        Hours,  // no cook is there before
        Window, // given for the task
        Tie     // comes after another task: `lag`
    };
    Why why = Why::Window;
    TaskIndex task;    // that cannot begin …
    PlanTime earliest; // … before this
    std::optional<LagIndex> lag;
    std::vector<CookIndex> cooks; // Hours: who comes then

    friend bool operator==(const StoryLeg&, const StoryLeg&) = default;
};

/// Something that takes an oven, a thing or hands.
struct StoryItem
{
    TaskIndex task; // the first that it goes with
    std::optional<OvenDemandIndex> oven;
    std::optional<DemandIndex> thing;
    bool hands = false;
    Minutes length{0};                // at least
    bool dated = false;               // the next two say more than that it is in the plan
    PlanTime earliest;                // to begin with
    PlanTime latest;                  // to end with
    std::optional<Interval> surely;   // whenever it begins
    std::vector<LagIndex> waits;      // of the conflict, that tie it to what follows or came before
    std::optional<TaskIndex> serving; // of the conflict, that it leads up to
    std::vector<std::string> options; // "in a wide pan": it is so if this is chosen

    friend bool operator==(const StoryItem&, const StoryItem&) = default;
};

struct ConflictStory
{
    // Too little time: how the last one comes to begin later than it may.
    std::vector<StoryLeg> legs;
    std::optional<PlanTime> deadline; // when the last of the legs has to begin

    // Too much at once, in order of time.
    std::vector<StoryItem> items;
    std::optional<Interval> together; // minutes in which all of them are
    std::vector<ChoiceIndex> choices; // that help in no way

    friend bool operator==(const ConflictStory&, const ConflictStory&) = default;
};

/// `conflict`: names of requirements of the formulation's problem ("lag:l1").
[[nodiscard]] ConflictStory storyOf(const Formulation& formulation,
                                    const std::vector<std::string>& conflict);

} // namespace suppertide
