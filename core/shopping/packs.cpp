#include "core/shopping/packs.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <tuple>

namespace suppertide::shopping {

namespace {

// Finer sizes are told apart to a thousandth (a milligram of what is weighed in grams).
constexpr std::int64_t finest = 10'000;
constexpr std::int64_t thousandths = 1000;
constexpr std::int64_t mostSteps = 30'000;

/// Into how many parts of a unit all sizes divide.
std::int64_t partsFor(const std::vector<PackSize>& sizes)
{
    std::int64_t parts = 1;
    for (const PackSize& pack : sizes) {
        parts = std::lcm(parts, std::min(pack.size.denominator(), finest + 1));
        if (parts > finest) {
            return thousandths;
        }
    }
    return parts;
}

/// Everything in steps of the greatest size in which all packs can be counted.
struct Counted
{
    std::int64_t needed = 0;
    std::vector<std::int64_t> sizes;
};

/// Sizes rounded down and the need up: never too little.
Counted countIn(const Rational& needed, const std::vector<PackSize>& sizes)
{
    Counted counted;
    const std::int64_t parts = partsFor(sizes);
    std::int64_t step = 0;
    for (const PackSize& pack : sizes) {
        const std::int64_t size = -(Rational{0} - pack.size * Rational{parts}).ceiled();
        counted.sizes.push_back(std::max<std::int64_t>(size, 1));
        step = std::gcd(step, counted.sizes.back());
    }
    for (std::int64_t& size : counted.sizes) {
        size /= step;
    }
    counted.needed = (needed * Rational{parts} / Rational{step}).ceiled();
    return counted;
}

/// The best way to a number of steps: what it costs, what is over, how many packs, and the last
/// pack.
struct Way
{
    std::int64_t cost = 0;
    std::int64_t over = 0;
    std::int64_t count = 0;
    std::size_t last = 0;

    friend bool operator<(const Way& a, const Way& b)
    {
        return std::tie(a.cost, a.over, a.count) < std::tie(b.cost, b.over, b.count);
    }
};

/// The pack that is cheapest for its size, or the largest.
std::size_t bulkPack(const std::vector<PackSize>& sizes, const Counted& counted, bool isPriced)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < sizes.size(); ++i) {
        const bool isBetter = isPriced ? Rational{*sizes[i].price, counted.sizes[i]} <
                                             Rational{*sizes[best].price, counted.sizes[best]}
                                       : counted.sizes[i] > counted.sizes[best];
        best = isBetter ? i : best;
    }
    return best;
}

void addBestWay(std::int64_t needed, const std::vector<PackSize>& sizes, const Counted& counted,
                bool isPriced, std::vector<std::int64_t>& counts)
{
    std::vector<Way> ways(static_cast<std::size_t>(needed) + 1);
    for (std::int64_t goal = 1; goal <= needed; ++goal) {
        std::optional<Way> best;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            const std::int64_t before = std::max<std::int64_t>(goal - counted.sizes[i], 0);
            Way way = ways[static_cast<std::size_t>(before)];
            way.cost += isPriced ? *sizes[i].price : 0;
            way.over += before - (goal - counted.sizes[i]);
            ++way.count;
            way.last = i;
            best = !best || way < *best ? way : *best;
        }
        ways[static_cast<std::size_t>(goal)] = *best;
    }
    for (std::int64_t rest = needed; rest > 0;) {
        const std::size_t last = ways[static_cast<std::size_t>(rest)].last;
        ++counts[last];
        rest = std::max<std::int64_t>(rest - counted.sizes[last], 0);
    }
}

/// Takes out what is not needed after all, the largest first.
void prune(const Counted& counted, std::vector<std::int64_t>& counts)
{
    std::int64_t over = -counted.needed;
    std::vector<std::size_t> order(counts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (const std::size_t i : order) {
        over += counts[i] * counted.sizes[i];
    }
    std::ranges::stable_sort(order, std::greater<>{},
                             [&](std::size_t i) { return counted.sizes[i]; });
    for (const std::size_t i : order) {
        const std::int64_t spare = std::min(counts[i], over / counted.sizes[i]);
        counts[i] -= spare;
        over -= spare * counted.sizes[i];
    }
}

} // namespace

std::vector<std::int64_t> packsFor(const Rational& needed, const std::vector<PackSize>& sizes)
{
    std::vector<std::int64_t> counts(sizes.size(), 0);
    if (needed <= Rational{0} || sizes.empty()) {
        return counts;
    }
    const Counted counted = countIn(needed, sizes);
    const bool isPriced =
        std::ranges::all_of(sizes, [](const PackSize& pack) { return pack.price.has_value(); });
    std::int64_t rest = counted.needed;
    if (rest > mostSteps) {
        const std::size_t bulk = bulkPack(sizes, counted, isPriced);
        counts[bulk] = (rest - mostSteps / 2) / counted.sizes[bulk];
        rest -= counts[bulk] * counted.sizes[bulk];
    }
    if (rest > mostSteps) {
        const std::size_t bulk = bulkPack(sizes, counted, isPriced);
        counts[bulk] += (rest + counted.sizes[bulk] - 1) / counted.sizes[bulk];
    } else {
        addBestWay(rest, sizes, counted, isPriced, counts);
    }
    prune(counted, counts);
    return counts;
}

} // namespace suppertide::shopping
