#include "ui/print/stretch_cut.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

using Cursors = std::vector<std::size_t>; // one a column: its first entry that is not placed

/// How far each column comes within `room`.
Cursors furthest(const Stretch& stretch, const Cursors& from, const HeightOf& heightOf, double room)
{
    Cursors to = from;
    for (std::size_t column = 0; column < from.size(); ++column) {
        const auto& entries = stretch.columns[column];
        double used = 0;
        for (std::size_t& at = to[column]; at < entries.size(); ++at) {
            used += heightOf(entries[at], column);
            if (used > room && at > from[column]) {
                break;
            }
        }
    }
    return to;
}

/// The first time that did not get a place; the stretch's end if all did.
PlanTime firstLeft(const Stretch& stretch, const Cursors& to)
{
    PlanTime first = stretch.when.end;
    for (std::size_t column = 0; column < to.size(); ++column) {
        const auto& entries = stretch.columns[column];
        if (to[column] < entries.size()) {
            first = std::min(first, timeOf(entries[to[column]]));
        }
    }
    return first;
}

bool isAllPlaced(const Stretch& stretch, const Cursors& at)
{
    for (std::size_t column = 0; column < at.size(); ++column) {
        if (at[column] < stretch.columns[column].size()) {
            return false;
        }
    }
    return true;
}

} // namespace

std::vector<Stretch> cutToFit(const Stretch& stretch, const HeightOf& heightOf, double room)
{
    std::vector<Stretch> parts;
    Cursors from(stretch.columns.size(), 0);
    PlanTime start = stretch.when.start;
    do {
        Cursors to = furthest(stretch, from, heightOf, room);
        const bool isLast = isAllPlaced(stretch, to);
        const PlanTime cut =
            isLast ? stretch.when.end : std::clamp(firstLeft(stretch, to), start, stretch.when.end);
        Stretch part;
        part.when = {start, cut};
        part.columns.resize(from.size());
        for (std::size_t column = 0; column < from.size(); ++column) {
            const auto& entries = stretch.columns[column];
            for (std::size_t& at = from[column];
                 at < to[column] && (isLast || timeOf(entries[at]) <= cut); ++at) {
                part.columns[column].push_back(entries[at]);
            }
        }
        for (const SheetOvenTurn* turn : stretch.turns) {
            const bool isBefore = turn->at < cut || isLast;
            if (isBefore && (turn->at >= start || parts.empty())) {
                part.turns.push_back(turn);
            }
        }
        start = cut;
        parts.push_back(std::move(part));
    } while (!isAllPlaced(stretch, from));
    return parts;
}

} // namespace suppertide::ui
