// Allergen lists: what the law of a place makes a seller declare, as labels over our substances,
// which are finer. The lists differ: the US one has no molluscs, celery, mustard, lupin, sulphites,
// rye, barley or oats; the EU one has no pine nut. A label is for showing; who may eat what is
// judged by substances alone.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/food/substance.h"

namespace suppertide {

enum class AllergenList
{
    Eu14, // Regulation (EU) 1169/2011, Annex II
    Uk14, // the same, retained
    Us9,  // FALCPA 2004 and FASTER Act 2021
};

inline constexpr std::array allAllergenLists{AllergenList::Eu14, AllergenList::Uk14,
                                             AllergenList::Us9};

/// "EU (14)", "UK (14)", "US (9)".
[[nodiscard]] std::string_view nameOf(AllergenList list);

/// One entry of a list, in the order of the law.
struct AllergenLabel
{
    AllergenList list = AllergenList::Eu14;
    std::string name; // "cereals containing gluten"
    std::vector<Substance> substances;
    std::string source;
    std::string section;
};

[[nodiscard]] const std::vector<AllergenLabel>& allAllergenLabels();
[[nodiscard]] std::vector<const AllergenLabel*> labelsOf(AllergenList list);
/// The label under which a list has a substance; null if it has none.
[[nodiscard]] const AllergenLabel* labelOf(AllergenList list, Substance substance);
/// Names of the labels that a food with these substances bears, in the order of the law, each once.
[[nodiscard]] std::vector<std::string> labelsFor(AllergenList list,
                                                 std::span<const Substance> substances);

/// Sulphites are declared above 10 mg/kg or 10 mg/l, counted as total SO₂, by the EU and UK lists.
/// Source: Regulation (EU) 1169/2011, Annex II, 12.
[[nodiscard]] bool mustDeclareSulphites(AllergenList list, double milligramsPerKilogram);

/// A word for an ingredient, with what it comes from.
struct AllergenWord
{
    std::string word; // lower case
    std::vector<Substance> substances;
    bool isUsTreeNut = false;           // counts as one by FDA's guidance
    bool isOtherName = false;           // of one that the guidance names before
    std::vector<AllergenList> exemptIn; // need not be declared there, as refined as this
    std::string source;
    std::string section;
};

[[nodiscard]] const std::vector<AllergenWord>& allAllergenWords();
/// The whole word, whatever its case; null if nobody has said.
[[nodiscard]] const AllergenWord* findAllergenWord(std::string_view word);

[[nodiscard]] Result<std::vector<AllergenLabel>> readAllergenLabels(std::string_view table);
[[nodiscard]] Result<std::vector<AllergenWord>> readAllergenWords(std::string_view table);

} // namespace suppertide
