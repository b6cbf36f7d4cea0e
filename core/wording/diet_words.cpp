#include "core/wording/diet_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace suppertide {

std::vector<std::string> needsOf(const Guest& guest)
{
    std::vector<std::string> needs;
    std::vector<Substance> ruledOut;
    for (const Diet diet : guest.diets) {
        needs.emplace_back(nameOf(diet));
        const std::vector<Substance> avoided = avoidedBy(diet);
        ruledOut.insert(ruledOut.end(), avoided.begin(), avoided.end());
    }
    for (const Substance substance : guest.allergies) {
        if (std::ranges::find(ruledOut, substance) == ruledOut.end()) {
            needs.push_back(fmt::format("no {}", nameOf(substance)));
        }
    }
    return needs;
}

std::string dietDoubtSentence(const Guest& guest)
{
    const auto diets = contradictingDiets(guest);
    if (!diets) {
        return {};
    }
    return fmt::format("{} is said to be {} and {}, which contradict each other. What either rules "
                       "out is kept from them; ask which it is.",
                       guest.name.empty() ? guest.id.text() : guest.name, nameOf(diets->first),
                       nameOf(diets->second));
}

} // namespace suppertide
