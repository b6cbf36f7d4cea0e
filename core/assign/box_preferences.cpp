#include "core/assign/box_preferences.h"

#include <algorithm>
#include <cstdint>

namespace suppertide {

BoxPreferences preferencesOf(const std::vector<OvenStretch>& stretches)
{
    BoxPreferences result;
    for (const OvenStretch& stretch : stretches) {
        result.upTo.push_back(result.inOrder.size());
        OvenStay stay;
        stay.acceptLow = static_cast<int>(std::clamp<std::int64_t>(stretch.low / 1000, -1, 10'000));
        stay.acceptHigh =
            static_cast<int>(std::clamp<std::int64_t>(stretch.high / 1000, -1, 10'000));
        result.stays.push_back(stay);
        for (const int preferred : stretch.preferred) {
            const auto at = static_cast<std::int64_t>(result.inOrder.size());
            result.inOrder.push_back(preferred);
            stay.prefer = preferred;
            stay.during = interval(at, at + 1);
            result.stays.push_back(stay);
        }
    }
    return result;
}

} // namespace suppertide
