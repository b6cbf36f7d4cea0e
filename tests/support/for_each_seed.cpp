#include "tests/support/for_each_seed.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <string>

namespace suppertide::test {

void forEachSeed(int count, const std::function<void(Random&)>& body)
{
    const char* only =
        std::getenv("SUPPERTIDE_SEED"); // NOLINT(concurrency-mt-unsafe): tests set no variables
    const std::uint64_t first = only != nullptr ? std::stoull(only) : 1;
    const std::uint64_t last = only != nullptr ? first : static_cast<std::uint64_t>(count);
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        SCOPED_TRACE("SUPPERTIDE_SEED=" + std::to_string(seed));
        Random random(seed);
        body(random);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

} // namespace suppertide::test
