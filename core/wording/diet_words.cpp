#include "core/wording/diet_words.h"

#include <fmt/format.h>

namespace suppertide {

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
