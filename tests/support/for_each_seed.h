// Random cases that can be replayed: forEachSeed runs a body with one random source a seed and
// says which seed failed. SUPPERTIDE_SEED=17 runs that one alone. Sizes should grow with the seed,
// so that the first failure is small.
#pragma once

#include <cstdint>
#include <functional>
#include <random>

namespace suppertide::test {

class Random
{
public:
    explicit Random(std::uint64_t seed) : engine_(seed), seed_(seed) {}
    /// A whole number of low…high, both included.
    [[nodiscard]] std::int64_t between(std::int64_t low, std::int64_t high)
    {
        return std::uniform_int_distribution<std::int64_t>(low, high)(engine_);
    }
    /// True once in `n` times.
    [[nodiscard]] bool oneIn(std::int64_t n) { return between(1, n) == 1; }
    [[nodiscard]] std::uint64_t seed() const { return seed_; }
    std::mt19937_64& engine() { return engine_; }

private:
    std::mt19937_64 engine_;
    std::uint64_t seed_;
};

void forEachSeed(int count, const std::function<void(Random&)>& body);

} // namespace suppertide::test
