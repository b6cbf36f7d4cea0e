// Stretch cut: parts a stretch that is higher than a page, between entries. Pure.
#pragma once

#include <functional>
#include <vector>

#include "ui/print/sheet_rows.h"

namespace suppertide::ui {

/// The height of an entry in a column, with the gap after it.
using HeightOf = std::function<double(const SheetEntry& entry, std::size_t column)>;

/// The stretch in parts whose columns are no higher than `room`, cut at the time of an entry; every
/// part has at least one entry, even if that is higher.
[[nodiscard]] std::vector<Stretch> cutToFit(const Stretch& stretch, const HeightOf& heightOf,
                                            double room);

} // namespace suppertide::ui
