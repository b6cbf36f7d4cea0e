// What the user points at in the timeline, beside the scene itself: part of what is painted, and
// no part of the plan. Pure.
#pragma once

#include <optional>
#include <string>

#include "ui/timeline/hit_test.h"

namespace suppertide::ui {

struct Marks
{
    Target hovered;
    Target focused; // drawn only while the widget has the keyboard
    bool hasKeyboard = false;
    std::string selected;            // task id; empty: none
    std::optional<int> pointedClash; // hovered in the list of clashes: its tags are tied by a line
    std::string dragged;             // task id; empty: none

    friend bool operator==(const Marks&, const Marks&) = default;
};

} // namespace suppertide::ui
