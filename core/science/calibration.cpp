#include "core/science/calibration.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/science/valid_range.h"

namespace suppertide::science {

namespace {

/// Half of the width of the middle 80 % of a normal distribution, in standard deviations.
constexpr double eighty = 1.2815515655446004;
constexpr double mostFactor = 5.0;
constexpr double mostPairs = 10000.0;

struct Normal
{
    double mean;
    double deviation;
};

/// Of the mean, given values that scatter about it. Sums in rising order, so that the order given
/// is without effect.
Normal posterior(std::vector<double> values, double prior, double scatter)
{
    std::sort(values.begin(), values.end());
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    const double precision =
        1.0 / (prior * prior) + static_cast<double>(values.size()) / (scatter * scatter);
    return {sum / (scatter * scatter) / precision, std::sqrt(1.0 / precision)};
}

Spread factors(const Normal& logarithm)
{
    const double half = eighty * logarithm.deviation;
    return {std::exp(logarithm.mean - half), std::exp(logarithm.mean),
            std::exp(logarithm.mean + half)};
}

} // namespace

Result<Calibration> calibrate(const std::vector<MeasuredTime>& pairs,
                              const CalibrationBelief& belief)
{
    if (auto fault = outsideRange(
            {{"The spread that is believed of the factor", belief.prior, 0.01, 2.0, ""},
             {"The spread of single evenings", belief.evening, 0.01, 2.0, ""},
             {"The number of measurements", static_cast<double>(pairs.size()), 0.0, mostPairs,
              ""}})) {
        return *fault;
    }
    std::vector<double> logarithms;
    logarithms.reserve(pairs.size());
    for (const MeasuredTime& pair : pairs) {
        const double ratio = pair.measured / pair.estimated;
        if (!(pair.estimated > 0.0 && ratio >= 1.0 / mostFactor && ratio <= mostFactor)) {
            return cannotCompute(fmt::format("{} minutes were measured where {} were estimated. "
                                             "That is too far apart to learn from: "
                                             "leave it out, or correct it.",
                                             plainNumber(pair.measured),
                                             plainNumber(pair.estimated)));
        }
        logarithms.push_back(std::log(ratio));
    }
    const Normal mean = posterior(std::move(logarithms), belief.prior, belief.evening);
    const Normal next{mean.mean, std::hypot(mean.deviation, belief.evening)};
    return Calibration{factors(mean), factors(next), static_cast<int>(pairs.size()),
                       mean.deviation / belief.prior};
}

Estimate calibrated(const Estimate& estimate, const Calibration& calibration)
{
    if (calibration.pairs == 0 || estimate.likely <= 0.0) {
        return estimate;
    }
    const double likely = estimate.likely * calibration.factor.likely;
    const auto halfOf = [](const Spread& spread) { return std::log(spread.most / spread.likely); };
    const double nextTime = halfOf(calibration.nextTime);
    const double mean = halfOf(calibration.factor);
    const double evening = std::sqrt(std::max(nextTime * nextTime - mean * mean, 0.0));
    const auto half = [&](double end) {
        return std::hypot(calibration.doubtLeft * std::log(end / estimate.likely), evening);
    };
    // A range that begins at nothing has no logarithm there; it stays.
    Estimate moved{estimate.least > 0.0 ? likely * std::exp(-half(estimate.least)) : 0.0, likely,
                   likely * std::exp(half(estimate.most)), estimate.because};
    moved.because.push_back({"your kitchen takes", calibration.factor.likely, "times as long"});
    moved.because.push_back(
        {"learned from", static_cast<double>(calibration.pairs), "measurements"});
    return moved;
}

Result<Spread> ovenOffset(const std::vector<MeasuredTemperature>& pairs)
{
    constexpr double prior = 12.0;    // °C
    constexpr double reading = 6.0;   // °C
    constexpr double farthest = 60.0; // °C
    std::vector<double> differences;
    differences.reserve(pairs.size());
    for (const MeasuredTemperature& pair : pairs) {
        const double difference = pair.measured - pair.set;
        if (!(std::abs(difference) <= farthest)) {
            return cannotCompute(fmt::format("{} °C were measured at a setting of {} °C. That is "
                                             "too far apart to learn from: measure "
                                             "again when the oven is hot through.",
                                             plainNumber(pair.measured), plainNumber(pair.set)));
        }
        differences.push_back(difference);
    }
    const Normal mean = posterior(std::move(differences), prior, reading);
    const double half = eighty * mean.deviation;
    return Spread{mean.mean - half, mean.mean, mean.mean + half};
}

} // namespace suppertide::science
