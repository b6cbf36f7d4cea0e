// Dice: random numbers that are the same on every machine (the standard distributions need not be).
#pragma once

#include <cstddef>
#include <cstdint>

namespace suppertide::quick_start {

/// SplitMix64. Source: G. Steele, D. Lea, C. Flood, Fast splittable pseudorandom number generators,
/// OOPSLA 2014, figure 17.
class Dice
{
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next()
    {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return z ^ (z >> 31U);
    }
    /// 0 … n − 1; n > 0. The bias, below n / 2⁶⁴, does not matter here.
    std::size_t below(std::size_t n) { return next() % n; }
    /// low … high, both included.
    std::int64_t between(std::int64_t low, std::int64_t high)
    {
        return low + static_cast<std::int64_t>(next() % static_cast<std::uint64_t>(high - low + 1));
    }
    bool percent(std::uint64_t chance) { return next() % 100 < chance; }

private:
    std::uint64_t state_;
};

} // namespace suppertide::quick_start
