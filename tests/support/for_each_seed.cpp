#include "tests/support/for_each_seed.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <string>

namespace suppertide::test {

namespace {

/// A sanitizer makes each case some ten times as long; what it finds does not take as many.
/// SUPPERTIDE_ALL_SEEDS asks for all.
std::uint64_t seedStep()
{
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
    const char* all =
        std::getenv("SUPPERTIDE_ALL_SEEDS"); // NOLINT(concurrency-mt-unsafe): as below
    return all != nullptr ? 1 : 6;
#else
    return 1;
#endif
}

} // namespace

void forEachSeed(int count, const std::function<void(Random&)>& body)
{
    const char* only =
        std::getenv("SUPPERTIDE_SEED"); // NOLINT(concurrency-mt-unsafe): tests set no variables
    const std::uint64_t first = only != nullptr ? std::stoull(only) : 1;
    const std::uint64_t last = only != nullptr ? first : static_cast<std::uint64_t>(count);
    const std::uint64_t step = only != nullptr ? 1 : seedStep();
    for (std::uint64_t seed = first; seed <= last; seed += step) {
        SCOPED_TRACE("SUPPERTIDE_SEED=" + std::to_string(seed));
        Random random(seed);
        body(random);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

} // namespace suppertide::test
