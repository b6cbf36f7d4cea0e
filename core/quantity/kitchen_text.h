// Kitchen text: an amount in the cook's own system of measures, rounded as a kitchen measures:
// "235 g", "1 tbsp + 1 tsp", "⅓ cup", "1 lb 2 oz". A pure function of the stored amount, which is
// never changed by being shown.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/amount.h"

namespace suppertide {

enum class MeasureSystem
{
    Metric,      // g, kg, ml, l; spoons of 5 and 15 ml
    UsCustomary, // oz, lb; US cups, spoons, quarts
    Imperial,    // oz, lb; fl oz and pints of the UK; spoons of 5 and 15 ml
};

inline constexpr std::array allMeasureSystems{MeasureSystem::Metric, MeasureSystem::UsCustomary,
                                              MeasureSystem::Imperial};

/// "metric", "US customary", "imperial": as on screen and in files; and back.
[[nodiscard]] std::string_view nameOf(MeasureSystem system);
[[nodiscard]] std::optional<MeasureSystem> findMeasureSystem(std::string_view name);

/// A value as it is measured out: the sum of `parts`, each in a unit of the system and a fraction
/// that its tools have. Within half a `step` of what was asked for, or one step if that is less:
/// something is never shown as nothing.
struct Measured
{
    std::vector<Amount> parts; // one or two, the larger unit first
    Rational step;             // in grams, millilitres or millimetres; 1/4 for what is counted
};

/// One end of `amount`, which must be no range and not "to taste". What is counted stays as it is,
/// to a quarter. Steps: metric: ½ g or ml below 10, 1 below 100, 5 below 1000, 10 above. Spoons: ⅛
/// tsp below 1 tsp, ¼ below 1 tbsp, ½ above. US: spoons below ¼ cup, 1 tbsp below 4 cups (a third
/// of a cup where that is nearer), ¼ cup above. Imperial: fl oz to ¼ below 5, ½ below a pint, 1
/// above. Ounces to ¼ below 1 lb (grams below 1 oz), ½ below 5 lb, 1 above. Inches to ¼,
/// millimetres to 1.
[[nodiscard]] Measured measuredOut(const Amount& amount, MeasureSystem system);

/// The same as text; a range with both ends ("2–3 cups", "900 g – 1.2 kg").
[[nodiscard]] std::string kitchenText(const Amount& amount, MeasureSystem system);
/// In the reader's own measures; absent: in the amount's own unit, by toText.
[[nodiscard]] std::string kitchenText(const Amount& amount,
                                      const std::optional<MeasureSystem>& measures);

} // namespace suppertide
