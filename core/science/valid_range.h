// ValidRange: within which numbers a function of food engineering holds, and the sentence for a
// number outside it. Used by every function of this folder before it computes, so that nothing that
// comes back is infinite or not a number.
#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>

#include "core/base/result.h"

namespace suppertide::science {

/// One number with the least and the most for which a formula is valid, both included.
struct Bounded
{
    std::string_view what; // begins a sentence: "The altitude"
    double value;
    double least;
    double most;
    std::string_view unit; // "m", "°C", "kg"; may be empty
};

/// A failure about the first number that lies outside its range or is not a number; nothing if all
/// lie within. "The altitude is 9000 m, but this can be computed only from −400 m to 5000 m. Change
/// it."
[[nodiscard]] std::optional<Failure> outsideRange(std::initializer_list<Bounded> numbers);

/// A failure of the kind BadInput with whole sentences for the cook.
[[nodiscard]] Failure cannotCompute(std::string sentences, CallSite where = CallSite::here());

/// A number as a cook reads it, with at most four figures: "0.25", "165", "−18".
[[nodiscard]] std::string plainNumber(double value);

} // namespace suppertide::science
