// Transitions: the temperatures at which food changes (resources/tables/transitions.tsv and
// syrup_stages.tsv), and how fast dough and gelatine go at other temperatures.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/science/estimate.h"

namespace suppertide::science {

struct Transition
{
    std::string id;
    std::string what;  // "custard sets"
    double from = 0.0; // °C
    double to = 0.0;   // °C; the same if it is one temperature
    std::string source;
};

[[nodiscard]] const std::vector<Transition>& transitions();
[[nodiscard]] Result<Transition> findTransition(std::string_view id);
/// Reads a table like transitions.tsv. A fault names its line.
[[nodiscard]] Result<std::vector<Transition>> readTransitions(std::string_view text);

/// A temperature or range that a source prints.
struct PrintedRange
{
    double from = 0.0;
    double to = 0.0;

    friend bool operator==(const PrintedRange&, const PrintedRange&) = default;
};

struct SyrupStage
{
    std::string id;
    std::string name;
    PrintedRange celsius;
    std::optional<PrintedRange> fahrenheit;
    std::optional<PrintedRange> otherBooks; // °C
    std::optional<double> sugarPercent;     // by mass
    std::string source;
};

[[nodiscard]] const std::vector<SyrupStage>& syrupStages();
/// Reads a table like syrup_stages.tsv. A fault names its line.
[[nodiscard]] Result<std::vector<SyrupStage>> readSyrupStages(std::string_view text);

/// °C of a stage at −400…5000 m: lower by as much as water's boiling point is. Caramel is not
/// lowered: its sugar no longer boils.
[[nodiscard]] Result<PrintedRange> syrupStageAt(const SyrupStage& stage, double metres);

/// Minutes that a rise takes at `to` °C if it takes `minutes` at `from` °C: t ∝ Q₁₀^((from −
/// to)/10). Likely: Q₁₀ 2.3; the range from 2.1 (double per 17 °F) to 2.6 (10 % more per °C). 5…38
/// °C; above, yeast suffers; a failure outside. Source: bakers' press.
[[nodiscard]] Result<Estimate> risingTime(double minutes, double from, double to);
/// The same for one Q₁₀ of 1…4.
[[nodiscard]] Result<double> timeByQ10(double time, double from, double to, double q10);

/// Hours until a gelatine gel has its full strength at 2…10 °C: 5…8 h at 5 °C and 15…20 h at 10 °C,
/// straight in the logarithm between and below; a failure outside. Source: makers' data sheets.
[[nodiscard]] Result<PrintedRange> gelatineHours(double celsius);

} // namespace suppertide::science
