#include "core/assign/oven_segments.h"

#include <algorithm>
#include <limits>

namespace suppertide {

namespace {

/// Far outside any temperature, yet safe to add ramps to.
constexpr std::int64_t unbounded = std::int64_t{1} << 50;

struct Band
{
    std::int64_t low = -unbounded;
    std::int64_t high = unbounded;
};

Band bandOf(const std::vector<OvenStay>& stays, const std::vector<std::size_t>& present)
{
    Band band;
    for (const std::size_t index : present) {
        band.low = std::max(band.low, std::int64_t{stays[index].acceptLow} * 1000);
        band.high = std::min(band.high, std::int64_t{stays[index].acceptHigh} * 1000);
    }
    return band;
}

std::vector<std::size_t> staysAt(const std::vector<OvenStay>& stays,
                                 const std::vector<std::size_t>& kept, PlanTime at)
{
    std::vector<std::size_t> result;
    for (const std::size_t index : kept) {
        if (stays[index].during.start <= at && at <= stays[index].during.end) {
            result.push_back(index);
        }
    }
    return result;
}

void addCuts(OvenSegments& result, const std::vector<OvenStay>& stays,
             const std::vector<std::size_t>& kept)
{
    std::vector<PlanTime> minutes{planTime(0)};
    for (const std::size_t index : kept) {
        minutes.push_back(stays[index].during.start);
        minutes.push_back(stays[index].during.end);
    }
    std::sort(minutes.begin(), minutes.end());
    minutes.erase(std::unique(minutes.begin(), minutes.end()), minutes.end());
    for (const PlanTime at : minutes) {
        OvenCut cut;
        cut.at = at;
        for (const std::size_t index : kept) {
            if (stays[index].during.start == at) {
                cut.begins.push_back(index);
            }
        }
        result.cuts.push_back(std::move(cut));
    }
}

void addSegments(OvenSegments& result, const std::vector<OvenStay>& stays,
                 const std::vector<std::size_t>& kept)
{
    for (std::size_t k = 0; k + 1 < result.cuts.size(); ++k) {
        OvenSegment segment;
        segment.during = {result.cuts[k].at, result.cuts[k + 1].at};
        for (const std::size_t index : kept) {
            if (stays[index].during.contains(segment.during)) {
                segment.present.push_back(index);
                segment.off = segment.off || stays[index].off;
                segment.preferred = segment.preferred || stays[index].prefer.has_value();
            }
        }
        result.segments.push_back(std::move(segment));
    }
}

/// Backwards: from `least`…`most` at a cut, all later stays can be kept.
void setLevels(const Oven& oven, OvenSegments& result, const std::vector<OvenStay>& stays,
               const std::vector<std::size_t>& kept)
{
    const std::int64_t ambient = std::int64_t{oven.ambientC} * 1000;
    for (std::size_t k = result.cuts.size(); k-- > 0;) {
        OvenCut& cut = result.cuts[k];
        const Band band = bandOf(stays, staysAt(stays, kept, cut.at));
        cut.least = band.low;
        cut.most = band.high;
        if (k + 1 == result.cuts.size()) {
            continue;
        }
        const OvenCut& next = result.cuts[k + 1];
        const std::int64_t length = result.segments[k].during.length().count();
        const std::int64_t mostAfter = next.most + oven.coolMilliCPerMin * length;
        if (!result.segments[k].off) {
            cut.least = std::max(cut.least, next.least - oven.heatMilliCPerMin * length);
            cut.most = std::min(cut.most, mostAfter);
            continue;
        }
        if (next.least > ambient) {
            cut.least = std::max(cut.least, next.least + oven.coolMilliCPerMin * length);
        }
        cut.most = std::min(cut.most, next.most < ambient ? next.most : mostAfter);
    }
}

/// Every temperature that a stay names, moved into the band of the segment: among these are
/// settings that need the fewest changes and those nearest to what is preferred.
void setSettings(const Oven& oven, OvenSegments& result, const std::vector<OvenStay>& stays,
                 const std::vector<std::size_t>& kept)
{
    std::vector<int> named;
    for (const std::size_t index : kept) {
        named.push_back(stays[index].acceptLow);
        named.push_back(stays[index].acceptHigh);
        if (stays[index].prefer) {
            named.push_back(*stays[index].prefer);
        }
    }
    std::sort(named.begin(), named.end());
    named.erase(std::unique(named.begin(), named.end()), named.end());
    for (std::size_t k = 0; k < result.segments.size(); ++k) {
        OvenSegment& segment = result.segments[k];
        if (segment.present.empty() || segment.off) {
            continue;
        }
        const Band band = bandOf(stays, segment.present);
        const std::int64_t low = std::max(band.low, std::int64_t{oven.minC} * 1000) / 1000;
        const std::int64_t high = std::min(band.high, std::int64_t{oven.maxC} * 1000) / 1000;
        if (low > high) {
            continue;
        }
        const auto add = [&](std::int64_t degrees) {
            segment.settings.push_back(static_cast<int>(std::clamp(degrees, low, high)));
        };
        for (const int degrees : named) {
            add(degrees);
        }
        const OvenCut& next = result.cuts[k + 1];
        add(next.least / 1000 + 1);
        add(next.most / 1000);
        std::sort(segment.settings.begin(), segment.settings.end());
        segment.settings.erase(std::unique(segment.settings.begin(), segment.settings.end()),
                               segment.settings.end());
    }
}

} // namespace

std::int64_t ovenMoved(const Oven& oven, std::int64_t milliC, std::optional<int> setting,
                       Minutes length)
{
    const std::int64_t target = std::int64_t{setting.value_or(oven.ambientC)} * 1000;
    return target >= milliC ? std::min(target, milliC + oven.heatMilliCPerMin * length.count())
                            : std::max(target, milliC - oven.coolMilliCPerMin * length.count());
}

OvenSegments ovenSegments(const Oven& oven, const std::vector<OvenStay>& stays,
                          const std::vector<std::size_t>& kept)
{
    OvenSegments result;
    addCuts(result, stays, kept);
    addSegments(result, stays, kept);
    setLevels(oven, result, stays, kept);
    setSettings(oven, result, stays, kept);
    return result;
}

} // namespace suppertide
