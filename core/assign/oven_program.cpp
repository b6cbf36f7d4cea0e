#include "core/assign/oven_program.h"

#include <algorithm>
#include <compare>
#include <cstdlib>
#include <optional>
#include <utility>

#include "core/assign/oven_segments.h"
#include "core/problem/oven_curve.h"

namespace suppertide {

namespace {

/// What counts first, and, where that is equal, degree-minutes off what is preferred.
struct ProgramCost
{
    std::int64_t stated = 0;
    std::int64_t discomfort = 0;

    friend auto operator<=>(const ProgramCost&, const ProgramCost&) = default;
};

/// The oven at one cut, and how it came there from a state of the cut before.
struct OvenState
{
    std::int64_t milliC = 0;
    std::optional<int> setting;     // now
    std::optional<int> lastSetting; // the last that it was not off
    ProgramCost cost;
    std::size_t from = 0;
    OvenProgram entries; // made since the cut before; at most two

    [[nodiscard]] bool sameAs(const OvenState& other) const
    {
        return milliC == other.milliC && setting == other.setting &&
               lastSetting == other.lastSetting;
    }
};

/// The latest minute of [first, last] for which `holds`, where an earlier one holds if a later one
/// does; absent if it does not hold at `first`.
template <typename Holds>
std::optional<PlanTime> latestWhere(PlanTime first, PlanTime last, const Holds& holds)
{
    if (last < first || !holds(first)) {
        return std::nullopt;
    }
    while (first < last) {
        const PlanTime middle = first + (last - first + Minutes{1}) / 2;
        if (holds(middle)) {
            first = middle;
        } else {
            last = middle - Minutes{1};
        }
    }
    return first;
}

class OvenProgramSearch
{
public:
    OvenProgramSearch(const Oven& oven, const std::vector<OvenStay>& stays,
                      const std::vector<std::size_t>& kept, const OvenProgramStyle& style)
        : oven_(oven), stays_(stays), style_(style), segments_(ovenSegments(oven, stays, kept))
    {}

    /// The first cut that cannot be reached; absent: a program was found.
    std::optional<std::size_t> run();
    [[nodiscard]] OvenProgram program() const;
    [[nodiscard]] std::int64_t cost() const { return best().cost.stated; }
    [[nodiscard]] const OvenSegments& segments() const { return segments_; }

private:
    [[nodiscard]] const OvenState& best() const;
    [[nodiscard]] bool isOpen(std::size_t cut, std::int64_t milliC) const
    {
        return segments_.cuts[cut].least <= milliC && milliC <= segments_.cuts[cut].most;
    }
    [[nodiscard]] OvenState begun(std::size_t k, std::size_t from) const
    {
        OvenState state = layers_[k][from];
        state.from = from;
        state.entries.clear();
        return state;
    }
    void keep(std::size_t k, OvenState state);
    void set(OvenState& state, PlanTime at, std::optional<int> setting) const;
    void run(OvenState& state, std::size_t k, PlanTime from, PlanTime until) const;

    void extendEmpty(std::size_t k, std::size_t from);
    void addStaysOn(std::size_t k, std::size_t from);
    void extendOff(std::size_t k, std::size_t from);
    void extendSet(std::size_t k, std::size_t from, int setting);
    void addLateSwitch(std::size_t k, const OvenState& begun, int second);
    void addCoast(std::size_t k, const OvenState& begun);
    void chargePreferred(OvenState& state, std::size_t k) const;
    [[nodiscard]] bool mayCoast(std::size_t k) const;

    const Oven& oven_;
    const std::vector<OvenStay>& stays_;
    OvenProgramStyle style_;
    OvenSegments segments_;
    std::vector<std::vector<OvenState>> layers_;
};

void OvenProgramSearch::set(OvenState& state, PlanTime at, std::optional<int> setting) const
{
    if (state.setting == setting) {
        return;
    }
    if (setting) {
        if (!state.setting) {
            state.cost.stated +=
                style_.switchOn + (isWithinStay(stays_, at) ? style_.switchOnWithin : 0);
        }
        if (state.lastSetting && *state.lastSetting != *setting) {
            state.cost.stated += style_.change;
            state.cost.discomfort += 1; // a change less is better where changes cost nothing
        }
        state.lastSetting = setting;
    }
    state.setting = setting;
    state.entries.push_back({at, setting});
}

/// Lets time pass, within segment k.
void OvenProgramSearch::run(OvenState& state, std::size_t k, PlanTime from, PlanTime until) const
{
    const Minutes length = until - from;
    state.milliC = ovenMoved(oven_, state.milliC, state.setting, length);
    if (!state.setting) {
        return;
    }
    state.cost.stated += style_.onMinute * length.count();
    for (const std::size_t index : segments_.segments[k].present) {
        if (stays_[index].prefer) {
            state.cost.discomfort +=
                std::abs(std::int64_t{*stays_[index].prefer} - *state.setting) * length.count();
        }
    }
}

void OvenProgramSearch::chargePreferred(OvenState& state, std::size_t k) const
{
    const std::int64_t inForce = state.setting.value_or(oven_.ambientC);
    for (const std::size_t index : segments_.cuts[k].begins) {
        if (stays_[index].prefer) {
            state.cost.stated += style_.preferC * std::abs(inForce - *stays_[index].prefer);
        }
    }
}

void OvenProgramSearch::keep(std::size_t k, OvenState state)
{
    if (!isOpen(k, state.milliC)) {
        return;
    }
    for (OvenState& known : layers_[k]) {
        if (known.sameAs(state)) {
            if (state.cost < known.cost) {
                known = std::move(state);
            }
            return;
        }
    }
    layers_[k].push_back(std::move(state));
}

/// Nothing is in: off, and on again as late as what comes next allows.
void OvenProgramSearch::extendEmpty(std::size_t k, std::size_t from)
{
    const Interval during = segments_.segments[k].during;
    OvenState off = begun(k, from);
    set(off, during.start, std::nullopt);
    const std::int64_t least = segments_.cuts[k + 1].least;
    const std::vector<int>& settings = segments_.segments[k + 1].settings;
    const auto switchedOn = [&](int setting) {
        const auto at = latestWhere(during.start, during.end - Minutes{1}, [&](PlanTime minute) {
            const std::int64_t before =
                ovenMoved(oven_, off.milliC, std::nullopt, minute - during.start);
            return ovenMoved(oven_, before, setting, during.end - minute) >= least;
        });
        if (!at) {
            return;
        }
        const bool stayed = *at == during.start;
        OvenState on = stayed ? begun(k, from) : off;
        if (!stayed) {
            run(on, k, during.start, *at);
        }
        set(on, *at, setting);
        run(on, k, *at, during.end);
        keep(k + 1, std::move(on));
    };
    OvenState throughout = off;
    run(throughout, k, during.start, during.end);
    const bool warmEnough = throughout.milliC >= least;
    keep(k + 1, std::move(throughout));
    if (style_.countsSwitching()) {
        addStaysOn(k, from);
    }
    if (warmEnough) {
        return;
    }
    for (const int setting : settings) {
        switchedOn(setting);
    }
    if (settings.empty()) { // what comes next has the oven off, and warm
        switchedOn(static_cast<int>(
            std::clamp<std::int64_t>((least + 999) / 1000, oven_.minC, oven_.maxC)));
    }
}

/// Nothing is in, but the oven stays on, so that it need not be switched on again.
void OvenProgramSearch::addStaysOn(std::size_t k, std::size_t from)
{
    const Interval during = segments_.segments[k].during;
    std::vector<int> settings = segments_.segments[k + 1].settings;
    if (const auto current = layers_[k][from].setting) {
        settings.push_back(*current);
    }
    for (const int setting : settings) {
        OvenState on = begun(k, from);
        set(on, during.start, setting);
        run(on, k, during.start, during.end);
        keep(k + 1, std::move(on));
    }
}

void OvenProgramSearch::extendOff(std::size_t k, std::size_t from)
{
    const Interval during = segments_.segments[k].during;
    OvenState state = begun(k, from);
    set(state, during.start, std::nullopt);
    chargePreferred(state, k);
    run(state, k, during.start, during.end);
    keep(k + 1, std::move(state));
}

bool OvenProgramSearch::mayCoast(std::size_t k) const
{
    if (!style_.coast) {
        return false;
    }
    return k + 1 == segments_.segments.size() || segments_.segments[k + 1].present.empty() ||
           segments_.segments[k + 1].off;
}

void OvenProgramSearch::extendSet(std::size_t k, std::size_t from, int setting)
{
    const OvenSegment& segment = segments_.segments[k];
    OvenState state = begun(k, from);
    set(state, segment.during.start, setting);
    chargePreferred(state, k);
    if (mayCoast(k)) {
        addCoast(k, state);
    }
    OvenState held = state;
    run(held, k, segment.during.start, segment.during.end);
    if (isOpen(k + 1, held.milliC)) {
        keep(k + 1, std::move(held));
        return;
    }
    for (const int second : segment.settings) {
        if (second != setting) {
            addLateSwitch(k, state, second);
        }
    }
}

/// First one setting, then, as late as what follows allows, a second one.
void OvenProgramSearch::addLateSwitch(std::size_t k, const OvenState& begun, int second)
{
    const Interval during = segments_.segments[k].during;
    const auto at =
        latestWhere(during.start + Minutes{1}, during.end - Minutes{1}, [&](PlanTime minute) {
            const std::int64_t before =
                ovenMoved(oven_, begun.milliC, begun.setting, minute - during.start);
            return isOpen(k + 1, ovenMoved(oven_, before, second, during.end - minute));
        });
    if (!at) {
        return;
    }
    OvenState state = begun;
    run(state, k, during.start, *at);
    set(state, *at, second);
    run(state, k, *at, during.end);
    keep(k + 1, std::move(state));
}

/// Off before the end, as early as what is in and what follows allow.
void OvenProgramSearch::addCoast(std::size_t k, const OvenState& begun)
{
    const Interval during = segments_.segments[k].during;
    std::int64_t least = segments_.cuts[k + 1].least;
    for (const std::size_t index : segments_.segments[k].present) {
        least = std::max(least, std::int64_t{stays_[index].acceptLow} * 1000);
    }
    const Minutes last = during.length() - Minutes{1};
    const auto early = latestWhere(planTime(0), planTime(last.count()), [&](PlanTime back) {
        const Minutes coasting = Minutes{1} + (back - planTime(0));
        const std::int64_t before =
            ovenMoved(oven_, begun.milliC, begun.setting, during.length() - coasting);
        return ovenMoved(oven_, before, std::nullopt, coasting) >= least;
    });
    if (!early) {
        return;
    }
    const PlanTime at =
        std::max(during.start + Minutes{1}, during.end - Minutes{1} - (*early - planTime(0)));
    if (at >= during.end) {
        return;
    }
    OvenState state = begun;
    run(state, k, during.start, at);
    set(state, at, std::nullopt);
    run(state, k, at, during.end);
    keep(k + 1, std::move(state));
}

std::optional<std::size_t> OvenProgramSearch::run()
{
    layers_.resize(segments_.cuts.size());
    OvenState start;
    start.milliC = std::int64_t{oven_.startC} * 1000;
    keep(0, std::move(start));
    for (std::size_t k = 0; k < segments_.segments.size(); ++k) {
        const OvenSegment& segment = segments_.segments[k];
        for (std::size_t from = 0; from < layers_[k].size(); ++from) {
            if (segment.present.empty()) {
                extendEmpty(k, from);
                continue;
            }
            for (const int setting : segment.settings) {
                extendSet(k, from, setting);
            }
            if (segment.off || segment.settings.empty() || style_.coast || !segment.preferred) {
                extendOff(k, from);
            }
        }
        if (layers_[k + 1].empty()) {
            return k + 1;
        }
    }
    return layers_[0].empty() ? std::optional<std::size_t>{0} : std::nullopt;
}

const OvenState& OvenProgramSearch::best() const
{
    return *std::min_element(
        layers_.back().begin(), layers_.back().end(),
        [](const OvenState& a, const OvenState& b) { return a.cost < b.cost; });
}

OvenProgram OvenProgramSearch::program() const
{
    std::vector<const OvenState*> path{&best()};
    for (std::size_t k = layers_.size() - 1; k > 0; --k) {
        path.push_back(&layers_[k - 1][path.back()->from]);
    }
    OvenProgram result;
    for (auto state = path.rbegin(); state != path.rend(); ++state) {
        result.insert(result.end(), (*state)->entries.begin(), (*state)->entries.end());
    }
    if (best().setting) {
        result.push_back({segments_.cuts.back().at, std::nullopt});
    }
    return result;
}

/// Whether `one` rather than `other` is to be ignored: the later one, then the one named later.
bool isLater(const std::vector<OvenStay>& stays, std::size_t one, std::size_t other)
{
    return std::pair(stays[one].during.start, one) > std::pair(stays[other].during.start, other);
}

/// Stays that agree two by two, found by leaving out again and again the one with most clashes.
std::vector<std::size_t> agreeing(const Oven& oven, const std::vector<OvenStay>& stays)
{
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < stays.size(); ++i) {
        if (ovenSuits(oven, stays[i]) && !ovenStartClash(oven, stays[i])) {
            kept.push_back(i);
        }
    }
    std::vector<std::vector<std::size_t>> clashes(stays.size());
    for (std::size_t a = 0; a < kept.size(); ++a) {
        for (std::size_t b = a + 1; b < kept.size(); ++b) {
            if (ovenPairClash(oven, stays[kept[a]], stays[kept[b]])) {
                clashes[kept[a]].push_back(kept[b]);
                clashes[kept[b]].push_back(kept[a]);
            }
        }
    }
    while (!kept.empty()) {
        const std::size_t worst =
            *std::max_element(kept.begin(), kept.end(), [&](std::size_t a, std::size_t b) {
                return clashes[a].size() != clashes[b].size()
                           ? clashes[a].size() < clashes[b].size()
                           : isLater(stays, b, a);
            });
        if (clashes[worst].empty()) {
            break;
        }
        for (const std::size_t other : clashes[worst]) {
            std::erase(clashes[other], worst);
        }
        clashes[worst].clear();
        std::erase(kept, worst);
    }
    return kept;
}

/// The stay to give up where a program cannot go on: the last to begin of those there.
std::size_t inTheWay(const std::vector<OvenStay>& stays, const std::vector<std::size_t>& kept,
                     PlanTime at)
{
    std::optional<std::size_t> result;
    for (const std::size_t index : kept) {
        const bool there = stays[index].during.start <= at && at <= stays[index].during.end;
        if (there && (!result || isLater(stays, index, *result))) {
            result = index;
        }
    }
    return result.value_or(kept.back());
}

std::int64_t preferredCost(const Oven& oven, const OvenProgram& program,
                           const std::vector<OvenStay>& stays,
                           const std::vector<std::size_t>& which, std::int64_t preferC)
{
    if (which.empty() || preferC == 0) {
        return 0;
    }
    const OvenCurve curve(oven, program);
    std::int64_t result = 0;
    for (const std::size_t index : which) {
        if (stays[index].prefer) {
            const int inForce = curve.setting(stays[index].during.start).value_or(oven.ambientC);
            result += preferC * std::abs(std::int64_t{inForce} - *stays[index].prefer);
        }
    }
    return result;
}

} // namespace

OvenProgramStyle ovenProgramStyle(const Costs& costs, bool coast)
{
    return {costs.ovenChange,   costs.ovenOnMinute,      costs.preferC, coast,
            costs.ovenSwitchOn, costs.ovenSwitchOnWithin};
}

bool isWithinStay(const std::vector<OvenStay>& stays, PlanTime at)
{
    return std::ranges::any_of(stays, [&](const OvenStay& stay) {
        return stay.during.start < at && at < stay.during.end;
    });
}

OvenProgramResult ovenProgramFor(const Oven& oven, const std::vector<OvenStay>& stays,
                                 const OvenProgramStyle& style)
{
    OvenProgramResult result;
    std::vector<std::size_t> kept = agreeing(oven, stays);
    while (!kept.empty()) {
        OvenProgramSearch search(oven, stays, kept, style);
        const auto stuck = search.run();
        if (!stuck) {
            result.program = search.program();
            result.cost = search.cost();
            break;
        }
        std::erase(kept, inTheWay(stays, kept, search.segments().cuts[*stuck].at));
    }
    for (std::size_t i = 0; i < stays.size(); ++i) {
        if (!std::binary_search(kept.begin(), kept.end(), i)) {
            result.ignored.push_back(i);
        }
    }
    result.cost += preferredCost(oven, result.program, stays, result.ignored, style.preferC);
    return result;
}

} // namespace suppertide
