// Days as a list says them. core/wording, which says more, stands above this folder.
#pragma once

#include <string>

#include "core/base/civil_time.h"

namespace suppertide::shopping {

/// "Friday 18 June".
[[nodiscard]] std::string dayWords(const CivilDate& date);

} // namespace suppertide::shopping
