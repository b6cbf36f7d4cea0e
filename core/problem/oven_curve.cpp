#include "core/problem/oven_curve.h"

#include <algorithm>

namespace suppertide {

OvenCurve::OvenCurve(const Oven& oven, const OvenProgram& program) : oven_(oven)
{
    knots_.reserve(program.size() + 1);
    knots_.push_back({planTime(0), std::int64_t{oven.startC} * 1000, std::nullopt});
    for (const ProgramEntry& entry : program) {
        knots_.push_back({entry.at, milliC(entry.at), entry.setC});
    }
}

const OvenCurve::Knot& OvenCurve::knotAt(PlanTime at) const
{
    const auto after =
        std::upper_bound(knots_.begin() + 1, knots_.end(), at,
                         [](PlanTime time, const Knot& knot) { return time < knot.at; });
    return *(after - 1);
}

std::optional<int> OvenCurve::setting(PlanTime at) const
{
    return knotAt(at).setC;
}

std::int64_t OvenCurve::milliC(PlanTime at) const
{
    const Knot& knot = knotAt(at);
    const std::int64_t target = std::int64_t{knot.setC.value_or(oven_.ambientC)} * 1000;
    const std::int64_t passed = (at - knot.at).count();
    if (target >= knot.milliC) {
        return std::min(target, knot.milliC + oven_.heatMilliCPerMin * passed);
    }
    return std::max(target, knot.milliC - oven_.coolMilliCPerMin * passed);
}

std::vector<PlanTime> OvenCurve::turningMinutes(const Interval& during) const
{
    std::vector<PlanTime> result{during.start};
    for (auto knot = knots_.begin() + 1; knot != knots_.end(); ++knot) {
        if (during.start < knot->at && knot->at < during.end) {
            result.push_back(knot->at);
        }
    }
    result.push_back(during.end);
    return result;
}

std::optional<PlanTime> OvenCurve::firstOn(const Interval& during) const
{
    if (setting(during.start)) {
        return during.start;
    }
    for (auto knot = knots_.begin() + 1; knot != knots_.end(); ++knot) {
        if (during.start < knot->at && knot->at < during.end && knot->setC) {
            return knot->at;
        }
    }
    return std::nullopt;
}

Minutes OvenCurve::onBefore(PlanTime horizon) const
{
    Minutes result{0};
    for (auto knot = knots_.begin() + 1; knot != knots_.end(); ++knot) {
        if (knot->setC) {
            const PlanTime end =
                knot + 1 == knots_.end() ? horizon : std::min((knot + 1)->at, horizon);
            result += std::max(Minutes{0}, end - knot->at);
        }
    }
    return result;
}

int OvenCurve::changes() const
{
    int result = 0;
    std::optional<int> last;
    for (const Knot& knot : knots_) {
        if (knot.setC) {
            result += last && *last != *knot.setC ? 1 : 0;
            last = knot.setC;
        }
    }
    return result;
}

std::vector<PlanTime> OvenCurve::switchedOn() const
{
    std::vector<PlanTime> result;
    std::optional<int> before;
    for (const Knot& knot : knots_) {
        if (knot.setC && !before) {
            result.push_back(knot.at);
        }
        before = knot.setC;
    }
    return result;
}

} // namespace suppertide
