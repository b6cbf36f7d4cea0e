#include "core/assign/band_changes.h"

#include <algorithm>
#include <optional>

namespace suppertide {

namespace {

/// Without a minute at a setting that the stay accepts, the oven heats or cools at its full rate
/// all the time, so that each way takes no longer than the band is wide. To go from cooling to
/// heating it is switched on, or set higher; in twice the time there and back it is so at least
/// twice, and set lower in between.
bool asksForSetting(const Oven& oven, const HeldBand& band)
{
    const std::int64_t width = (std::int64_t{band.high} - band.low) * 1000;
    if (band.low <= oven.ambientC || width < 0 || oven.heatMilliCPerMin <= 0 ||
        oven.coolMilliCPerMin <= 0) {
        return false;
    }
    const std::int64_t once = width / oven.heatMilliCPerMin + width / oven.coolMilliCPerMin;
    return band.minutes > 2 * once;
}

} // namespace

std::int64_t changesForBands(const std::vector<Oven>& ovens, std::vector<HeldBand> bands)
{
    std::erase_if(bands, [&](const HeldBand& band) {
        return !std::ranges::all_of(ovens,
                                    [&](const Oven& oven) { return asksForSetting(oven, band); });
    });
    std::ranges::sort(bands, {}, &HeldBand::high);
    std::int64_t apart = 0; // as many as can be, no two of which agree
    std::optional<int> last;
    for (const HeldBand& band : bands) {
        if (!last || band.low > *last) {
            ++apart;
            last = band.high;
        }
    }
    // In each oven they follow each other. From one that has its setting to the next one that has
    // there is a change, another brings one of its own; the first setting is no change.
    return std::max<std::int64_t>(0, apart - static_cast<std::int64_t>(ovens.size()));
}

} // namespace suppertide
