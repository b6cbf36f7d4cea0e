// PlaceSheet: who gets what on paper: a table for the cook, and a card for each place; as structure
// and as text. Pages are painted by ui/print.
#pragma once

#include <string>
#include <vector>

#include "core/plan/formulation.h"

namespace suppertide {

struct PlaceSheetCell
{
    std::string dish; // "Stuffed squash, vegetarian"; empty: goes without
    std::string mark; // what speaks against it: "not for them: milk", "check the label: stock"

    friend bool operator==(const PlaceSheetCell&, const PlaceSheetCell&) = default;
};

struct PlaceSheetRow
{
    std::string guest;
    std::string needs; // "coeliac, no crustacean, pregnant"; empty: none
    std::vector<PlaceSheetCell> cells;

    friend bool operator==(const PlaceSheetRow&, const PlaceSheetRow&) = default;
};

struct PlaceSheet
{
    std::string title;
    std::string day;                  // of the first course
    std::vector<std::string> columns; // courses and sides
    std::vector<PlaceSheetRow> rows;
    std::string caution; // that recipes can be wrong, and who to ask

    friend bool operator==(const PlaceSheet&, const PlaceSheet&) = default;
};

/// `input` with the recipes of all alternatives.
[[nodiscard]] PlaceSheet placeSheet(const PlanInput& input);

/// One paragraph a guest.
[[nodiscard]] std::string toText(const PlaceSheet& sheet);

} // namespace suppertide
