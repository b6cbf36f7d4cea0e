#include "core/assign/cheapest_program.h"

#include <algorithm>
#include <limits>
#include <unordered_map>
#include <utility>

#include "core/assign/cost_to_go.h"
#include "core/assign/grid_to_go.h"
#include "core/assign/oven_heat.h"
#include "core/assign/oven_segments.h"
#include "core/assign/setting_costs.h"

namespace suppertide {

namespace {

constexpr std::int64_t thousand = 1000; // thousandths of a degree
/// States within which most programs are found; else it is worth knowing more before.
constexpr std::int64_t easyEffort = 4'000;

std::int64_t floorDegrees(std::int64_t milliC)
{
    return milliC >= 0 ? milliC / thousand : -((-milliC + thousand - 1) / thousand);
}

std::int64_t ceilDegrees(std::int64_t milliC)
{
    return -floorDegrees(-milliC);
}

/// While nothing is in, a cheapest program that has switched the oven on does not let it cool to
/// its surroundings before the next stay: it might have left it off until then.
enum class Phase : std::uint8_t
{
    Left, // off ever since it is empty; or not empty
    Heated
};

struct Moment
{
    int minute = 0;
    LastSettings last;
    std::int64_t milliC = 0;
    Phase phase = Phase::Left;
    bool on = false; // in the minute before

    friend bool operator==(const Moment&, const Moment&) = default;
};

struct MomentHash
{
    std::size_t operator()(const Moment& moment) const
    {
        std::uint64_t hash = static_cast<std::uint64_t>(moment.milliC);
        hash = hash * 0x9e3779b97f4a7c15U + static_cast<std::uint64_t>(moment.minute);
        hash =
            hash * 0x9e3779b97f4a7c15U + static_cast<std::uint64_t>(moment.last.lowest + 200'000);
        hash =
            hash * 0x9e3779b97f4a7c15U + static_cast<std::uint64_t>(moment.last.highest + 200'000);
        hash = hash * 4 + static_cast<std::uint64_t>(moment.phase);
        hash = hash * 0x9e3779b97f4a7c15U + (moment.on ? 1U : 0U);
        return hash ^ (hash >> 29U);
    }
};

class ProgramSearch
{
public:
    ProgramSearch(const Oven& oven, const std::vector<OvenStay>& stays,
                  const OvenProgramStyle& style, std::int64_t below)
        : oven_(oven), style_(style), below_(below), heat_(oven, stays, style, below),
          settings_(oven, stays, heat_, style)
    {
        heat_.weigh(settings_.offCosts());
        // Of what switching on costs it knows nothing, and takes long where minutes are many.
        if (SettingLevels::suits(oven) && !style.countsSwitching()) {
            toGo_.emplace(oven, stays, heat_, style, below);
        }
    }

    CheapestProgram run(std::int64_t effort);
    /// Is told what the rest costs. False: it is not known.
    bool learn(const std::vector<OvenStay>& stays);

private:
    struct Known
    {
        Moment at;
        std::int64_t cost = 0;
        std::size_t from = 0;
        LastSettings setting; // in the minute before, if it is on
        bool isOn = false;
        bool isAnew = false; // set anew, whatever the setting was before
        bool closed = false;
    };
    struct Waiting
    {
        std::size_t known;
        bool forChange; // its settings anew, which is dear, are looked at only if nothing else is
                        // left
    };
    [[nodiscard]] std::int64_t least(const Moment& moment) const
    {
        const std::int64_t apart =
            heat_.least(moment.minute, moment.milliC, moment.on, moment.phase == Phase::Heated) +
            settings_.least(moment.minute, moment.last);
        if (grid_) {
            return std::max(apart, moment.last.none()
                                       ? grid_->least(moment.minute, moment.milliC)
                                       : grid_->least(moment.minute, moment.milliC, moment.on,
                                                      moment.last.lowest, moment.last.highest));
        }
        if (!toGo_ || !toGo_->isKnown() || apart >= below_) {
            return apart;
        }
        return std::max(apart, moment.last.none()
                                   ? toGo_->least(moment.minute, moment.milliC)
                                   : toGo_->least(moment.minute, moment.milliC, moment.last.lowest,
                                                  moment.last.highest));
    }
    [[nodiscard]] std::int64_t switchingOn(int minute) const
    {
        return style_.switchOn + (heat_.isWithin(minute) ? style_.switchOnWithin : 0);
    }
    void reach(const Known& known);
    void wait(const Waiting& waiting, std::int64_t leads);
    [[nodiscard]] std::int64_t leastIfAnew(std::size_t from) const;
    void stepOff(std::size_t from);
    void stepOn(const Known& begun, const LastSettings& settings);
    void stepTo(Known known, const LastSettings& settings, std::int64_t milliC);
    void keepOn(std::size_t from);
    void setAnew(std::size_t from);
    [[nodiscard]] Known switchedOn(std::size_t from) const;
    void follow(Known known);
    void expand(std::size_t from);
    [[nodiscard]] OvenProgram programTo(std::size_t goal) const;

    const Oven& oven_;
    OvenProgramStyle style_;
    std::int64_t below_;
    OvenHeat heat_;
    SettingCosts settings_;
    std::optional<CostToGo> toGo_;
    std::optional<GridToGo> grid_;
    std::vector<Known> known_;
    std::unordered_map<Moment, std::size_t, MomentHash> places_;
    std::vector<std::vector<Waiting>> open_; // by the least that they lead to, less `base_`
    std::int64_t base_ = 0;
    std::size_t bucket_ = 0; // looked at now
    /// What is dearer by so much than the least is left out, and `leftOut_` the least of it.
    static constexpr std::int64_t mostBuckets = 200'000;
    std::int64_t leftOut_ = std::numeric_limits<std::int64_t>::max();
};

void ProgramSearch::reach(const Known& known)
{
    if (!heat_.allows(known.at.minute, known.at.milliC)) {
        return;
    }
    const std::int64_t leads = known.cost + least(known.at);
    if (leads >= below_) {
        return;
    }
    const auto [place, isNew] = places_.try_emplace(known.at, known_.size());
    if (isNew) {
        known_.push_back(known);
    } else if (known_[place->second].cost > known.cost) {
        known_[place->second] = known;
    } else {
        return;
    }
    wait({place->second, false}, leads);
}

void ProgramSearch::wait(const Waiting& waiting, std::int64_t leads)
{
    if (leads - base_ >= mostBuckets) {
        leftOut_ = std::min(leftOut_, leads);
        return;
    }
    const auto bucket =
        std::max(bucket_, static_cast<std::size_t>(std::max<std::int64_t>(0, leads - base_)));
    if (bucket >= open_.size()) {
        open_.resize(bucket + 1);
    }
    open_[bucket].push_back(waiting);
}

/// `known` is the moment before, with all that the minute does but for its length.
void ProgramSearch::follow(Known known)
{
    const int minute = known.at.minute++;
    if (!heat_.staysEmpty(minute)) {
        known.at.phase = Phase::Left;
    } else if (known.isOn) {
        known.at.phase = Phase::Heated;
    }
    known.at.on = known.isOn && style_.countsSwitching();
    known.closed = false;
    reach(known);
}

void ProgramSearch::stepOff(std::size_t from)
{
    Known known = known_[from];
    known.from = from;
    known.cost += settings_.atStart(known.at.minute, noSetting);
    known.at.milliC = ovenMoved(oven_, known.at.milliC, std::nullopt, Minutes{1});
    known.isOn = false;
    known.isAnew = false;
    follow(known);
}

/// A minute on at any of the settings, which all lead to the same temperature.
void ProgramSearch::stepTo(Known known, const LastSettings& settings, std::int64_t milliC)
{
    const int minute = known.at.minute;
    known.at.milliC = milliC;
    if (!heat_.allows(minute + 1, milliC)) {
        return;
    }
    const auto followAt = [&](const LastSettings& those, std::int64_t extra) {
        Known next = known;
        next.setting = those;
        next.at.last = style_.change == 0 ? settings_.all() : those;
        next.cost += extra;
        follow(next);
    };
    if (!settings_.isStart(minute)) {
        followAt(settings, 0);
        return;
    }
    for (int setting = settings.lowest; setting <= settings.highest; ++setting) {
        followAt({setting, setting}, settings_.atStart(minute, setting));
    }
}

void ProgramSearch::stepOn(const Known& begun, const LastSettings& settings)
{
    const std::int64_t hottest = begun.at.milliC + oven_.heatMilliCPerMin;
    const std::int64_t coolest = begun.at.milliC - oven_.coolMilliCPerMin;
    const auto first = std::int64_t{settings.lowest};
    const auto last = std::int64_t{settings.highest};
    const int above = static_cast<int>(std::clamp(ceilDegrees(hottest), first, last + 1));
    const int below = static_cast<int>(std::clamp(floorDegrees(coolest), first - 1, last));
    if (above <= settings.highest) {
        stepTo(begun, {above, settings.highest}, hottest);
    }
    if (below >= settings.lowest) {
        stepTo(begun, {settings.lowest, below}, coolest);
    }
    for (int setting = below + 1; setting < above; ++setting) {
        stepTo(begun, {setting, setting}, std::int64_t{setting} * thousand);
    }
}

ProgramSearch::Known ProgramSearch::switchedOn(std::size_t from) const
{
    Known known = known_[from];
    known.from = from;
    known.cost += style_.onMinute + (known.at.on ? 0 : switchingOn(known.at.minute));
    known.isOn = true;
    known.isAnew = false;
    return known;
}

/// On, at the setting that the oven has or had last.
void ProgramSearch::keepOn(std::size_t from)
{
    const Known known = switchedOn(from);
    if (!known.at.last.none()) {
        stepOn(known, known.at.last);
    }
}

/// On, at any setting.
void ProgramSearch::setAnew(std::size_t from)
{
    Known known = switchedOn(from);
    known.isAnew = true;
    if (known.at.last.none() || style_.change > 0) {
        known.cost += known.at.last.none() ? 0 : style_.change;
        stepOn(known, settings_.all());
    }
}

/// What a minute at a setting of any kind leads to at least.
std::int64_t ProgramSearch::leastIfAnew(std::size_t from) const
{
    const Known& known = known_[from];
    const std::int64_t hottest = known.at.milliC + oven_.heatMilliCPerMin;
    const bool staysHot = heat_.staysEmpty(known.at.minute);
    return known.cost + style_.onMinute + (known.at.on ? 0 : switchingOn(known.at.minute)) +
           (known.at.last.none() ? 0 : style_.change) + settings_.least(known.at.minute, {}) +
           heat_.least(known.at.minute + 1, hottest, true, staysHot);
}

void ProgramSearch::expand(std::size_t from)
{
    stepOff(from);
    if (heat_.mustBeOff(known_[from].at.minute)) {
        return;
    }
    keepOn(from);
    const std::int64_t anew = leastIfAnew(from);
    if (anew < below_) {
        wait({from, true}, anew);
    }
}

OvenProgram ProgramSearch::programTo(std::size_t goal) const
{
    std::vector<std::size_t> path{goal};
    while (known_[path.back()].at.minute > 0) {
        path.push_back(known_[path.back()].from);
    }
    std::reverse(path.begin(), path.end());
    // What was left open is settled backwards: the settings narrow as time goes on.
    std::vector<std::optional<int>> settings(path.size());
    std::optional<int> later;
    for (std::size_t i = path.size(); i-- > 1;) {
        const Known& known = known_[path[i]];
        if (!known.isOn) {
            continue;
        }
        const bool goesOn =
            later && known.setting.lowest <= *later && *later <= known.setting.highest;
        settings[i] = goesOn ? *later : known.setting.lowest;
        later = known.isAnew && style_.change > 0 ? std::nullopt : settings[i];
    }
    OvenProgram program;
    std::optional<int> setting;
    for (std::size_t i = 1; i < path.size(); ++i) {
        if (settings[i] != setting) {
            program.push_back({planTime(known_[path[i]].at.minute - 1), settings[i]});
            setting = settings[i];
        }
    }
    if (setting) {
        program.push_back({planTime(heat_.last()), std::nullopt});
    }
    return program;
}

bool ProgramSearch::learn(const std::vector<OvenStay>& stays)
{
    grid_.emplace(oven_, stays, heat_, style_, below_);
    if (!grid_->isKnown()) {
        grid_.reset();
    }
    return grid_.has_value();
}

CheapestProgram ProgramSearch::run(std::int64_t effort)
{
    CheapestProgram result;
    Moment start;
    start.milliC = std::int64_t{oven_.startC} * 1000;
    known_.clear();
    places_.clear();
    open_.clear();
    bucket_ = 0;
    base_ = least(start);
    reach({start, 0, 0, {}, false, false, false});
    if (known_.empty()) {
        result.isImpossible = base_ < below_;
        result.bound = std::min(base_, below_);
        return result;
    }
    for (; bucket_ < open_.size(); ++bucket_) {
        while (!open_[bucket_].empty()) {
            const Waiting next = open_[bucket_].back();
            open_[bucket_].pop_back();
            result.bound = base_ + static_cast<std::int64_t>(bucket_);
            if (next.forChange) {
                setAnew(next.known);
                continue;
            }
            Known& known = known_[next.known];
            if (known.closed) {
                continue;
            }
            known.closed = true;
            if (known.at.minute == heat_.last()) {
                result.cost = known.cost;
                result.bound = known.cost;
                result.program = programTo(next.known);
                return result;
            }
            if (--effort < 0) {
                return result;
            }
            expand(next.known);
        }
    }
    result.bound = std::min(below_, leftOut_);
    return result;
}

} // namespace

CheapestProgram cheapestProgram(const Oven& oven, const std::vector<OvenStay>& stays,
                                const OvenProgramStyle& style, std::int64_t below,
                                std::int64_t effort)
{
    if (stays.empty()) {
        CheapestProgram nothing;
        nothing.program.emplace();
        return nothing;
    }
    ProgramSearch search(oven, stays, style, below);
    CheapestProgram found = search.run(std::min(effort, easyEffort));
    const bool isOver = found.program || found.isImpossible || found.bound >= below;
    if (isOver || effort <= easyEffort) {
        return found;
    }
    search.learn(stays);
    return search.run(effort - easyEffort);
}

} // namespace suppertide
