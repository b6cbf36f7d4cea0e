#include "core/assign/box_widening.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/assign/box_preferences.h"
#include "core/assign/needed_walk.h"
#include "core/assign/reached_walk.h"

namespace suppertide {

namespace {

using LevelsWalk = NeededWalk<const SettingLevels>;
using Length = LevelsWalk::Length;
using Moment = LevelsWalk::Moment;
/// By how long stays have lasted.
using Strands = std::map<SpanPlaces::Lasted, Moment>;

constexpr std::int64_t mostSteps = 20'000; // minutes

class Widening
{
public:
    /// All must outlive this.
    Widening(const ReachedLevels& reached, const ReachedWalk<ReachedLevels>& before,
             const SpanPlaces& places, LevelsWalk needed, std::int64_t least)
        : reached_(reached), before_(before), places_(places), needed_(needed), least_(least)
    {}

    /// The box costs enough as it is.
    [[nodiscard]] OvenBox widened(OvenBox box, const std::vector<StretchLengths>& open)
    {
        Strands here{{{}, needed_.atEnd(box.stretches.back())}};
        for (std::size_t i = box.stretches.size(); i-- > 0;) {
            if (!widen(i, box.stretches[i], open[i], here)) {
                break;
            }
        }
        return box;
    }

private:
    struct Strand
    {
        SpanPlaces::Lasted lasted{};
        Length length;
        Moment moment;
    };

    /// Whether the box would cost less, the stretches before as they were.
    [[nodiscard]] bool costsLess(std::size_t i, const SpanPlaces::Lasted& lasted,
                                 const SettingLevels::Row& needed) const
    {
        return std::ranges::any_of(before_.to(i), [&](const auto& path) {
            return places_.fit(i, path.first, lasted) &&
                   reached_.meets(path.second, needed, least_);
        });
    }
    /// As wide as it may be, if one walk for each way to go on earlier shows it.
    [[nodiscard]] bool widenAtOnce(std::size_t i, OvenStretch& stretch, StretchLengths open,
                                   Strands& here)
    {
        std::map<SpanPlaces::Lasted, std::vector<LevelsWalk::End>> joined;
        for (const auto& [lasted, moment] : here) {
            const auto [least, most] = places_.lengthsBack(i, lasted, open);
            if (least < most || !LevelsWalk::canJoin(stretch, moment)) {
                return false;
            }
            if (least == most) {
                joined[places_.back(i, lasted, least)].push_back({least, &moment});
            }
        }
        Strands earlier;
        for (const auto& [lasted, ends] : joined) {
            Moment begun = needed_.together(stretch, ends, least_);
            if (needed_.isTooLong() || costsLess(i, lasted, begun.row)) {
                return false;
            }
            earlier.emplace(lasted, std::move(begun));
        }
        here = std::move(earlier);
        stretch.least = open.least;
        stretch.most = open.most;
        return true;
    }
    /// False: not even as the stretch is can it be shown, or it takes too long.
    [[nodiscard]] bool widen(std::size_t i, OvenStretch& stretch, StretchLengths open,
                             Strands& here)
    {
        if (widenAtOnce(i, stretch, open, here)) {
            return true;
        }
        std::vector<Strand> strands;
        bool isShown = true;
        for (const auto& [lasted, moment] : here) {
            const auto emit = [&, &soFar = lasted](Length length, const Moment& begun) {
                const auto now = places_.back(i, soFar, length.minutes);
                if (!costsLess(i, now, begun.row)) {
                    strands.push_back({now, length, begun});
                } else if (length.minutes > stretch.most) {
                    open.most = std::min(open.most, length.minutes - 1);
                } else if (length.minutes < stretch.least && !length.orLonger) {
                    open.least = std::max(open.least, length.minutes + 1);
                } else {
                    isShown = false;
                }
                return isShown && length.minutes < open.most;
            };
            needed_.through(stretch, places_.lengthsBack(i, lasted, open), moment, least_,
                            places_.goesBack(i), emit);
        }
        if (!isShown || needed_.isTooLong()) {
            return false;
        }
        here.clear();
        for (Strand& strand : strands) {
            const auto [minutes, orLonger] = strand.length;
            if (minutes <= open.most && (minutes >= open.least || orLonger)) {
                take(here, std::move(strand));
            }
        }
        stretch.least = open.least;
        stretch.most = open.most;
        return true;
    }
    void take(Strands& strands, Strand strand) const
    {
        const auto [best, isNew] = strands.try_emplace(strand.lasted, strand.moment);
        if (!isNew) {
            needed_.takeBetter(best->second, strand.moment);
        }
    }

    const ReachedLevels& reached_;
    const ReachedWalk<ReachedLevels>& before_;
    const SpanPlaces& places_;
    LevelsWalk needed_;
    std::int64_t least_;
};

} // namespace

WidenedBox widenedBox(const Oven& oven, const OvenProgramStyle& style, const OvenBox& box,
                      const std::vector<StretchLengths>& open, std::int64_t least)
{
    WidenedBox result{box, 0};
    if (!SettingLevels::suits(oven) || style.countsSwitching()) {
        return result;
    }
    const auto heats = leastHeatUpTo(oven, style, box, least, result.work);
    const SettingLevels levels(oven, preferencesOf(box.stretches).stays, style, least,
                               heats.empty() ? 0 : heats.back());
    const ReachedLevels reached(oven, style, levels);
    const SpanPlaces places(box.spans, open);
    const ReachedWalk before(oven, reached, places, box, open, least);
    if (before.isDone() && before.leastTo(box.stretches.size()) >= least) {
        Widening widening(reached, before, places, LevelsWalk(oven, levels, mostSteps), least);
        result.box = widening.widened(box, open);
    }
    result.work += levels.work() + reached.work();
    return result;
}

} // namespace suppertide
