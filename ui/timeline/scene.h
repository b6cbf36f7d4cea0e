// Scene: all that the painted timeline shows, as plain values without Qt. The timeline knows
// nothing else: no plan, no problem, no document. Whoever owns a plan (ui/models) maps it onto a
// Scene and hands it to TimelineView::setScene; while something is dragged, each move is answered
// with a preview Scene made in the same way. Scenes are compared with == to repaint only what
// changed, so keep ids stable from one scene to the next.
//
// How a plan is mapped:
//  - one SceneLane a resource, in the order in which they are to stand: ovens, burners, appliances,
//    vessels, cooks, cold places; consecutive lanes of one kind share a `group`;
//  - one SceneBlock a task that is more than an event, with a Placement for every lane it occupies:
//    the oven (with its shelf row, 0 the lowest), the burner, the appliance, each of its cooks;
//  - one SceneWait a lag that a cook would call a wait; `when` is from the moment it runs from to
//    the moment it runs to, whichever ends of the two tasks these are;
//  - one SceneSpan a thing held between two tasks; one SceneServing a course;
//  - clashes numbered from 1 as in the list of clashes. A place with a `task` is drawn around that
//    block, one without on the lane itself (hands above 100 %, litres above the line);
//  - dishes by their `look`, the number that picks hue, pattern and letter together (0 = A). It
//    stays with the dish for the whole occasion, also when an earlier dish is removed;
//  - words (names, labels, sentences) come ready from core/wording.
// Ghosts (a dragged variant, a way out) are ordinary blocks with `ghost` set, plus threads.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/interval.h"
#include "core/quantity/quantity.h"
#include "ui/timeline/scene_lane.h"

namespace suppertide::ui {

struct SceneDish
{
    int look = 0;     // hue, pattern and letter: 0 = A, 1 = B, …
    std::string name; // "Braised shoulder"

    friend bool operator==(const SceneDish&, const SceneDish&) = default;
};

/// Where a block stands: a lane, and in an oven which shelves.
struct Placement
{
    std::string lane;
    int row = 0;  // oven: the lowest shelf it uses, 0 at the foot
    int rows = 1; // oven: how many shelves

    friend bool operator==(const Placement&, const Placement&) = default;
};

/// A block that is not in the plan yet.
struct Ghost
{
    std::optional<Minutes> countdown; // to its course, drawn left of it: 65 min → "−1:05"

    friend bool operator==(const Ghost&, const Ghost&) = default;
};

/// What happened to a step on the night.
struct Progress
{
    bool isDone = false;
    std::optional<Minutes> late; // past its end and not done: "+12"

    friend bool operator==(const Progress&, const Progress&) = default;
};

struct SceneBlock
{
    std::string id;                  // of the task; unique, stable from scene to scene
    std::optional<std::size_t> dish; // index into Scene::dishes; none: a house job or a trip
    std::string verb;                // "Braise"
    std::string object;              // "shoulder"; may be empty
    PlanTime start;
    Minutes least{0}; // least <= likely <= most
    Minutes likely{0};
    Minutes most{0};
    Attention attention; // of each cook it stands with
    std::vector<Placement> places;
    bool isPinned = false;
    Progress progress;
    std::optional<Interval> slack; // from the earliest to the latest start, all others fixed
    std::string slackWords;        // "10 min earlier, 10 later"
    std::optional<Ghost> ghost;
    std::string sentence; // for the hover card and for screen readers: what, when, where, how sure

    [[nodiscard]] Interval when() const { return {start, start + likely}; }
    friend bool operator==(const SceneBlock&, const SceneBlock&) = default;
};

struct SceneWait
{
    std::string id;
    std::string from; // block id: the wait is drawn under its row
    std::string to;   // block id; empty: a serving line
    Interval when;
    Minutes least{0};
    std::optional<Minutes> most;
    std::string label; // "soup chills: least 4 h, most 2 days"
    std::string place; // "counter", "fridge"
    bool isByProduct = false;
    std::optional<int> clash; // the number of the clash that it is too short or too long for

    friend bool operator==(const SceneWait&, const SceneWait&) = default;
};

/// A thing held from one block to another ("pan held from sear to sauce, 4 h 13").
struct SceneSpan
{
    std::string id;
    std::string lane;
    std::optional<std::size_t> dish;
    Interval when; // between the two blocks
    std::string label;

    friend bool operator==(const SceneSpan&, const SceneSpan&) = default;
};

struct SceneServing
{
    int course = 1;   // the number on the flag
    std::string name; // "Soup"
    PlanTime time;
    bool isPinned = false;

    friend bool operator==(const SceneServing&, const SceneServing&) = default;
};

enum class ClashSeverity
{
    Impossible,
    Unsafe,
    Undesirable
};

struct DegreeRange
{
    Celsius low;
    Celsius high;

    friend bool operator==(const DegreeRange&, const DegreeRange&) = default;
};

struct ClashPlace
{
    std::string lane;
    std::optional<std::string> task;
    Interval when; // only these minutes are hatched
    std::optional<DegreeRange> degrees;

    friend bool operator==(const ClashPlace&, const ClashPlace&) = default;
};

struct SceneClash
{
    int number = 1;
    ClashSeverity severity = ClashSeverity::Impossible;
    std::string sentence;
    std::vector<ClashPlace> places;

    friend bool operator==(const SceneClash&, const SceneClash&) = default;
};

struct DayHeading
{
    PlanTime from;         // the day's first minute
    std::string longName;  // "Friday 18 June"
    std::string shortName; // "Fri 18"

    friend bool operator==(const DayHeading&, const DayHeading&) = default;
};

/// Where a dragged step may go with everything still holding.
struct AllowedRange
{
    std::string lane;
    Interval when;      // what the step may cover, not only its starts
    std::string words;  // "may bake 17:10 to 20:20"
    std::string second; // "everything else still holds"

    friend bool operator==(const AllowedRange&, const AllowedRange&) = default;
};

/// Ties a ghost to what it leads up to.
struct GhostThread
{
    std::string from; // ghost block
    std::string to;   // block; empty: the serving line of `course`
    int course = 0;

    friend bool operator==(const GhostThread&, const GhostThread&) = default;
};

/// What hangs beside the serving line while a variant is dragged.
struct DragCard
{
    PlanTime servingAt;
    std::optional<int> look;
    std::string title;   // "Stuffed squash"
    std::string line;    // "2 portions, 3 Main"
    std::string verdict; // "no new clash"
    bool isGood = true;

    friend bool operator==(const DragCard&, const DragCard&) = default;
};

struct Scene
{
    PlanCalendar calendar;
    Interval horizon;
    std::vector<DayHeading> days;
    std::vector<SceneDish> dishes;
    std::vector<SceneLane> lanes;
    std::vector<SceneBlock> blocks;
    std::vector<SceneWait> waits;
    std::vector<SceneSpan> spans;
    std::vector<SceneServing> servings;
    std::vector<SceneClash> clashes;
    std::optional<PlanTime> now;
    bool isFahrenheit = false; // how the user reads temperatures
    // While something is dragged:
    std::vector<AllowedRange> allowed;
    std::vector<GhostThread> threads;
    std::optional<DragCard> card;

    friend bool operator==(const Scene&, const Scene&) = default;
};

/// The block of that id, or null.
[[nodiscard]] const SceneBlock* findBlock(const Scene& scene, const std::string& id);
[[nodiscard]] std::optional<std::size_t> findLane(const Scene& scene, const std::string& id);
[[nodiscard]] const SceneServing* findServing(const Scene& scene, int course);
[[nodiscard]] const SceneClash* findClash(const Scene& scene, int number);

} // namespace suppertide::ui
