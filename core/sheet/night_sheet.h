// NightSheet: what each cook does now and next on the night, as structure and text, from the plan
// of the rest. Large on a screen at the stove; also read aloud.
#pragma once

#include <string>
#include <vector>

#include "core/night/rest_of_evening.h"
#include "core/sheet/per_hour_plan.h"

namespace suppertide {

enum class LineState
{
    UnderWay,
    Due, // its time has come, and nobody has begun it
    Coming
};

struct NightLine
{
    std::string task; // id, for reports
    LineState state = LineState::Coming;
    std::string deed;   // "Slice the potatoes"
    std::string detail; // "2 mm thick · slicer"
    std::string when;   // "until 18:42", "at 18:42, in 12 min"
    std::string late;   // "4 min late"; empty: it is not
    std::vector<std::string> amounts;
    std::vector<std::string> cautions;

    friend bool operator==(const NightLine&, const NightLine&) = default;
};

struct NightCook
{
    std::string name;
    std::string seated; // "at table until 20:05"; empty: not at table
    std::vector<NightLine> now;
    std::vector<NightLine> next;

    friend bool operator==(const NightCook&, const NightCook&) = default;
};

struct NightSheet
{
    std::string clock; // "18:30"
    std::vector<NightCook> cooks;
    std::vector<NightLine> byThemselves; // in the oven, resting: nobody's hands
    std::vector<NightLine> servings;     // to come; the next first
    std::vector<std::string> turns;      // of oven knobs, within the next hour
    std::vector<std::string> notes;      // guests to mind at the plates that are next
    std::vector<std::string> foods;      // rules of food safety that break as things stand
    std::string mostLate;                // "Peel the roots, 12 min late"; empty: nothing is

    friend bool operator==(const NightSheet&, const NightSheet&) = default;
};

/// `plan` is the plan of the rest.
[[nodiscard]] NightSheet nightSheet(const RestOfEvening& rest, const PlanPtr& plan,
                                    const PlanInput& input, const ReadingStyle& style = {});

/// "Now, Maren: slice the potatoes, until 18:42. Next: …", a line a cook, to be read aloud.
[[nodiscard]] std::string toText(const NightSheet& sheet);

} // namespace suppertide
