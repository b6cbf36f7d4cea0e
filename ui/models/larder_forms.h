// Forms of the larder: what is at home, packs and prices, own ingredients, labels. Used by
// LarderOutline.
#pragma once

#include "core/larder/larder.h"
#include "ui/models/field_list.h"

namespace suppertide::ui::larder {

[[nodiscard]] FieldList<Larder> larderForm(const Larder& larder);
[[nodiscard]] FieldList<StockItem> stockForm(const StockItem& item);
/// Prices are written in whole coins of the currency with its decimals: "1.25".
[[nodiscard]] FieldList<Pack> packForm(const Pack& pack, const std::string& currency);
[[nodiscard]] FieldList<OwnIngredient> ownForm(const OwnIngredient& own);
[[nodiscard]] FieldList<ConfirmedLabel> labelForm(const ConfirmedLabel& label);

} // namespace suppertide::ui::larder
