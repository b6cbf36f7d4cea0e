#include "core/assign/pulsed_program.h"

#include <algorithm>
#include <cstdlib>

#include "core/problem/oven_curve.h"

namespace suppertide {

namespace {

/// Far outside any temperature, yet safe to add ramps to.
constexpr std::int64_t unbounded = std::int64_t{1} << 50;

std::int64_t milli(int degrees)
{
    return std::int64_t{degrees} * 1000;
}

std::int64_t costOf(const OvenCurve& curve, const Oven& oven, const std::vector<OvenStay>& stays,
                    const OvenProgramStyle& style, PlanTime last)
{
    std::int64_t cost =
        style.change * curve.changes() + style.onMinute * curve.onBefore(last).count();
    for (const OvenStay& stay : stays) {
        if (stay.prefer) {
            const int inForce = curve.setting(stay.during.start).value_or(oven.ambientC);
            cost += style.preferC * std::abs(inForce - *stay.prefer);
        }
    }
    return cost;
}

bool keeps(const OvenCurve& curve, const std::vector<OvenStay>& stays)
{
    return std::ranges::all_of(stays, [&](const OvenStay& stay) {
        const auto turns = curve.turningMinutes(stay.during);
        return std::ranges::all_of(turns,
                                   [&](PlanTime at) {
                                       const std::int64_t now = curve.milliC(at);
                                       return milli(stay.acceptLow) <= now &&
                                              now <= milli(stay.acceptHigh);
                                   }) &&
               (!stay.off || !curve.firstOn(stay.during));
    });
}

class Pulsing
{
public:
    Pulsing(const Oven& oven, const OvenProgram& held, const std::vector<OvenStay>& stays)
        : oven_(oven), ambient_(milli(oven.ambientC))
    {
        first_ = minuteOf(held.front().at);
        last_ = first_;
        for (const OvenStay& stay : stays) {
            last_ = std::max<std::int64_t>(last_, minuteOf(stay.during.end));
        }
        minutes_.resize(static_cast<std::size_t>(last_ - first_) + 1);
        readSettings(held);
        readStays(stays);
    }

    /// The settings by minute from `held.front()` on; absent: it cannot be.
    std::optional<OvenProgram> program(const OvenCurve& held)
    {
        findNeeds();
        std::int64_t now = held.milliC(planTime(first_));
        const Needs& start = needs_.front();
        std::size_t left = 0;
        while (left < start.milliC.size() && start.milliC[left] > now) {
            ++left;
        }
        if (left == start.milliC.size()) {
            return std::nullopt;
        }
        std::int64_t budget = start.first + static_cast<std::int64_t>(left);
        OvenProgram result;
        std::optional<int> inForce;
        for (std::size_t at = 0; at + 1 < minutes_.size(); ++at) {
            const bool off = !minutes_[at].mustBeOn && allows(at + 1, afterOff(now), budget);
            if (!off && (!minutes_[at].setting ||
                         !allows(at + 1, afterOn(now, *minutes_[at].setting), budget - 1))) {
                return std::nullopt;
            }
            const std::optional<int> setting = off ? std::nullopt : minutes_[at].setting;
            now = off ? afterOff(now) : afterOn(now, *setting);
            budget -= off ? 0 : 1;
            if (setting != inForce) {
                result.push_back({planTime(first_ + static_cast<std::int64_t>(at)), setting});
                inForce = setting;
            }
        }
        if (inForce) {
            result.push_back({planTime(last_), std::nullopt});
        }
        return result;
    }

private:
    struct Minute
    {
        std::optional<int> setting;
        bool mustBeOn = false;
        std::int64_t least = -unbounded; // at its beginning
        std::int64_t most = unbounded;
    };
    /// The least temperature from which so many minutes on do, from `first` minutes on.
    struct Needs
    {
        std::int64_t first = 0;
        std::vector<std::int64_t> milliC;
    };

    void readSettings(const OvenProgram& held)
    {
        for (std::size_t i = 0; i < held.size(); ++i) {
            const std::int64_t end = i + 1 < held.size() ? minuteOf(held[i + 1].at) : last_;
            for (std::int64_t at = minuteOf(held[i].at); at < std::min(end, last_); ++at) {
                minutes_[static_cast<std::size_t>(at - first_)].setting = held[i].setC;
            }
        }
    }

    void readStays(const std::vector<OvenStay>& stays)
    {
        for (const OvenStay& stay : stays) {
            for (std::int64_t at = std::max<std::int64_t>(first_, minuteOf(stay.during.start));
                 at <= minuteOf(stay.during.end); ++at) {
                Minute& minute = minutes_[static_cast<std::size_t>(at - first_)];
                minute.least = std::max(minute.least, milli(stay.acceptLow));
                minute.most = std::min(minute.most, milli(stay.acceptHigh));
            }
            const std::int64_t start = minuteOf(stay.during.start) - first_;
            if (stay.prefer && start >= 0) {
                Minute& minute = minutes_[static_cast<std::size_t>(start)];
                minute.mustBeOn = minute.setting.has_value();
            }
        }
        for (std::size_t at = minutes_.size() - 1; at-- > 0;) {
            minutes_[at].most =
                std::min(minutes_[at].most, minutes_[at + 1].most + oven_.coolMilliCPerMin);
        }
    }

    void findNeeds()
    {
        needs_.resize(minutes_.size());
        needs_.back() = {0, {minutes_.back().least}};
        for (std::size_t at = minutes_.size() - 1; at-- > 0;) {
            needs_[at] = before(minutes_[at], minutes_[at + 1], needs_[at + 1]);
        }
    }

    [[nodiscard]] Needs before(const Minute& here, const Minute& next, const Needs& after) const
    {
        Needs result;
        result.first = after.first;
        const std::size_t last = after.milliC.size() - 1;
        for (std::size_t more = 0; more <= last + 1; ++more) {
            const std::int64_t off =
                here.mustBeOn ? unbounded : ifOff(next, after.milliC[std::min(more, last)]);
            const std::int64_t on = more == 0 || !here.setting
                                        ? unbounded
                                        : ifOn(*here.setting, next, after.milliC[more - 1]);
            const std::int64_t level = std::max(here.least, std::min(off, on));
            if (level > std::min(here.most, unbounded - 1)) {
                result.first += result.milliC.empty() ? 1 : 0;
                continue;
            }
            result.milliC.push_back(level);
            if (level == here.least) { // more minutes do no more
                break;
            }
        }
        if (result.milliC.empty()) {
            result.milliC.push_back(unbounded);
        }
        return result;
    }

    [[nodiscard]] std::int64_t ifOff(const Minute& next, std::int64_t needed) const
    {
        if (needed > next.most) {
            return unbounded;
        }
        return needed > ambient_ ? needed + oven_.coolMilliCPerMin : -unbounded;
    }
    [[nodiscard]] std::int64_t ifOn(int setting, const Minute& next, std::int64_t needed) const
    {
        if (needed > next.most) {
            return unbounded;
        }
        return needed > milli(setting) ? needed + oven_.coolMilliCPerMin
                                       : std::max(-unbounded, needed - oven_.heatMilliCPerMin);
    }
    [[nodiscard]] std::int64_t afterOff(std::int64_t now) const
    {
        return now > ambient_ ? std::max(ambient_, now - oven_.coolMilliCPerMin)
                              : std::min(ambient_, now + oven_.heatMilliCPerMin);
    }
    [[nodiscard]] std::int64_t afterOn(std::int64_t now, int setting) const
    {
        return now > milli(setting) ? std::max(milli(setting), now - oven_.coolMilliCPerMin)
                                    : std::min(milli(setting), now + oven_.heatMilliCPerMin);
    }
    [[nodiscard]] bool allows(std::size_t at, std::int64_t now, std::int64_t budget) const
    {
        const Needs& needs = needs_[at];
        if (budget < needs.first || now > minutes_[at].most) {
            return false;
        }
        const auto place = static_cast<std::size_t>(budget - needs.first);
        return needs.milliC[std::min(place, needs.milliC.size() - 1)] <= now;
    }

    Oven oven_;
    std::int64_t ambient_;
    std::int64_t first_ = 0;
    std::int64_t last_ = 0;
    std::vector<Minute> minutes_;
    std::vector<Needs> needs_;
};

} // namespace

std::optional<OvenProgramResult> pulsedProgram(const Oven& oven, const OvenProgram& held,
                                               const std::vector<OvenStay>& stays,
                                               const OvenProgramStyle& style)
{
    if (held.empty() || stays.empty() || style.onMinute == 0 || style.countsSwitching()) {
        return std::nullopt;
    }
    const OvenCurve before(oven, held);
    auto program = Pulsing(oven, held, stays).program(before);
    if (!program) {
        return std::nullopt;
    }
    PlanTime last = held.back().at;
    for (const OvenStay& stay : stays) {
        last = std::max(last, stay.during.end);
    }
    const OvenCurve after(oven, *program);
    const std::int64_t cost = costOf(after, oven, stays, style, last);
    if (!keeps(after, stays) || cost >= costOf(before, oven, stays, style, last)) {
        return std::nullopt;
    }
    return OvenProgramResult{*std::move(program), cost, {}};
}

} // namespace suppertide
