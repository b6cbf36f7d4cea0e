// Calibration: what a cook has measured moves the estimates of this kitchen, or of this oven: a
// factor with its own range, learned by Bayes's rule.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

/// One evening: what was estimated (likely) and what it took. Minutes, both positive.
struct MeasuredTime
{
    double estimated = 0.0;
    double measured = 0.0;
};

/// What is believed before anything is measured. The logarithm of the factor is normal with mean 0
/// and standard deviation `prior`; single evenings differ from it by `evening`. Both in logarithms:
/// 0.25 is about 25 %.
struct CalibrationBelief
{
    double prior = 0.25;   // common practice: recipes and ovens differ by a quarter
    double evening = 0.15; // the same dish on two evenings
};

/// measured/estimated of this kitchen. `factor` spans what is believed of the mean (80 %),
/// `nextTime` what may happen next time (80 %). Medians: the likely value. `pairs` tells how many
/// measurements it rests on.
struct Calibration
{
    Spread factor;
    Spread nextTime;
    int pairs = 0;
    double doubtLeft = 1.0; // of the belief's spread, 1 (nothing measured) to 0
};

/// The conjugate rule for a normal mean of known variance, in the logarithm x of
/// measured/estimated:
///   precision = 1/prior² + n/evening², mean = (Σx/evening²)/precision.
/// So after one evening that took 20 % longer, the estimates grow by 14 %; with none the factor
/// is 1. The order of measurements is without effect, to the last digit; forgetting is leaving some
/// out, resetting leaving out all. A measured time of less than a fifth or more than five times the
/// estimated is a failure: something else was measured. So are more than 10 000 pairs, and beliefs
/// outside 0.01…2. Source: A. Gelman et al., Bayesian Data Analysis, 3rd ed. (2013), § 2.5.
[[nodiscard]] Result<Calibration> calibrate(const std::vector<MeasuredTime>& pairs,
                                            const CalibrationBelief& belief = {});

/// The estimate moved: likely by the likely factor. Of its range, as logarithms, the part stays
/// that is still in doubt, joined with the spread of single evenings (root of the sum of squares):
/// what was unknown of this kitchen has been measured. Without measurements it is unchanged.
[[nodiscard]] Estimate calibrated(const Estimate& estimate, const Calibration& calibration);

/// One oven: what its dial said and what a thermometer showed. °C.
struct MeasuredTemperature
{
    double set = 0.0;
    double measured = 0.0;
};

/// °C by which this oven is hotter than its dial (80 %), by the same rule for a normal difference:
/// prior 0 ± 12 °C, single readings ± 6 °C (common practice). A difference of more than 60 °C is a
/// failure.
[[nodiscard]] Result<Spread> ovenOffset(const std::vector<MeasuredTemperature>& pairs);

} // namespace suppertide::science
