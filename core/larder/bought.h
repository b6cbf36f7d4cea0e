// Bought: what has been ticked of the shopping of an evening: how much of each line there was to
// buy when it was ticked, so that what is wanted later on top of it shows. Kept with the occasion.
#pragma once

#include <map>
#include <string>

#include "core/quantity/amount.h"

namespace suppertide {

struct Bought
{
    std::map<std::string, Amount> lines; // by the key of a line of the list

    [[nodiscard]] bool empty() const { return lines.empty(); }
    friend bool operator==(const Bought&, const Bought&) = default;
};

} // namespace suppertide
