#include "core/planner/exact/oven_sequence.h"

#include <algorithm>
#include <functional>

namespace suppertide::exact {

namespace {

using engine::Literals;
using engine::Term;
using engine::Trail;

/// A stay begins or ends.
struct Point
{
    std::int64_t at = 0;
    bool begins = false;
    std::size_t stay = 0;
    Term term;
};

std::vector<Point> pointsOf(const std::vector<HeldStay>& held)
{
    std::vector<Point> points;
    for (std::size_t i = 0; i < held.size(); ++i) {
        points.push_back({minuteOf(held[i].stay.during.start), true, i, held[i].from});
        points.push_back({minuteOf(held[i].stay.during.end), false, i, held[i].to});
    }
    std::ranges::stable_sort(points, {}, [](const Point& point) {
        return std::pair(point.at, point.begins); // what ends makes room for what begins
    });
    return points;
}

/// `firstOf`: the stretch with which each begins; `number`: of this one.
OvenStretch stretchWith(const std::vector<HeldStay>& held, const std::vector<bool>& in,
                        const std::vector<std::size_t>& firstOf, std::size_t number)
{
    OvenStretch stretch{-SettingLevels::unbounded, SettingLevels::unbounded, false, {}, 0, 0};
    for (std::size_t i = 0; i < held.size(); ++i) {
        if (in[i]) {
            stretch.goesOn = stretch.goesOn || firstOf[i] < number;
            const OvenStay& stay = held[i].stay;
            stretch.low = std::max(stretch.low, std::int64_t{stay.acceptLow} * 1000);
            stretch.high = std::min(stretch.high, std::int64_t{stay.acceptHigh} * 1000);
            stretch.off = stretch.off || stay.off;
        }
    }
    return stretch;
}

struct Length
{
    std::int64_t least = 0;
    std::int64_t most = 0;
};
using LengthOf = std::function<Length(const Point&, const Point&)>;

/// A stay that lasts from one stretch to the last one so far.
void addSpan(const HeldStay& stay, std::size_t first, OvenBox& box)
{
    const std::int64_t minutes = stay.to.plus - stay.from.plus;
    if (stay.from.variable == stay.to.variable && first < box.stretches.size()) {
        box.spans.push_back({first, box.stretches.size() - 1, minutes});
    }
}

OvenSequence cut(const std::vector<HeldStay>& held, const std::vector<Point>& points,
                 const LengthOf& lengthOf)
{
    OvenSequence result;
    std::vector<bool> in(held.size(), false);
    std::vector<std::size_t> firstOf(held.size(), 0); // stretch
    std::vector<int> preferred;                       // by what begins at this moment
    for (std::size_t i = 0; i < points.size(); ++i) {
        in[points[i].stay] = points[i].begins;
        if (points[i].begins) {
            firstOf[points[i].stay] = result.box.stretches.size();
        } else {
            addSpan(held[points[i].stay], firstOf[points[i].stay], result.box);
        }
        if (i + 1 == points.size()) {
            break;
        }
        const auto& prefer = held[points[i].stay].stay.prefer;
        if (points[i].begins && prefer) {
            preferred.push_back(*prefer);
        }
        const auto [least, most] = lengthOf(points[i], points[i + 1]);
        if (most <= 0) {
            result.ties.emplace_back(points[i].term, points[i + 1].term);
            continue;
        }
        OvenStretch stretch = stretchWith(held, in, firstOf, result.box.stretches.size());
        stretch.least = least;
        stretch.most = most;
        if (least > 0) { // else it may belong to the next stretch
            stretch.preferred = preferred;
        }
        preferred.clear();
        result.box.stretches.push_back(std::move(stretch));
        result.ends.emplace_back(points[i].term, points[i + 1].term);
    }
    return result;
}

} // namespace

OvenSequence sequenceOf(const std::vector<HeldStay>& held)
{
    return cut(held, pointsOf(held), [](const Point& from, const Point& to) {
        return Length{to.at - from.at, to.at - from.at};
    });
}

std::optional<OvenSequence> possibleSequence(const std::vector<HeldStay>& held,
                                             const StartDifferences& differences,
                                             const Trail& trail)
{
    const std::vector<Point> points = pointsOf(held);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        if (differences.least(trail, points[i].term, points[i + 1].term) < 0) {
            return std::nullopt;
        }
    }
    return cut(held, points, [&](const Point& from, const Point& to) {
        return Length{differences.least(trail, from.term, to.term),
                      differences.most(trail, from.term, to.term)};
    });
}

Literals whySequence(const OvenSequence& sequence, const StartDifferences& differences,
                     std::int64_t forgets)
{
    Literals because;
    for (const auto& [from, to] : sequence.ties) {
        differences.sayAtLeast(from, to, 0, because);
        differences.sayAtMost(from, to, 0, because);
    }
    for (std::size_t i = 0; i < sequence.box.stretches.size(); ++i) {
        const OvenStretch& stretch = sequence.box.stretches[i];
        const auto& [from, to] = sequence.ends[i];
        const bool isEmpty = stretch.low <= -SettingLevels::unbounded;
        differences.sayAtLeast(from, to, stretch.least, because);
        if (!isEmpty || stretch.most < forgets) {
            differences.sayAtMost(from, to, stretch.most, because);
        }
    }
    return because;
}

} // namespace suppertide::exact
