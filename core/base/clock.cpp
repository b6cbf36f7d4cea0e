#include "core/base/clock.h"

namespace suppertide {

Instant SystemClock::now() const
{
    return std::chrono::floor<Minutes>(std::chrono::system_clock::now());
}

} // namespace suppertide
