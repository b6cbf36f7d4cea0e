#include "core/exchange/decimal.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_writing.h"

namespace suppertide {

namespace {

/// Milligrams, in grams.
JsonValue fineGramsToJson(Grams mass)
{
    constexpr std::int64_t milligrams = 1000; // in a gram
    return mass.smallest() % milligrams == 0
               ? toJson(mass.smallest() / milligrams)
               : JsonValue{JsonDecimal{decimalText(mass.smallest(), 3)}};
}

JsonValue ownToJson(const OwnIngredient& own)
{
    JsonObject json;
    json.put("name", toJson(own.name));
    json.putIfAny("synonyms", own.synonyms);
    if (own.contains) {
        json.putList("contains", *own.contains, [](Substance each) { return toJson(each); });
    }
    if (own.litreWeighs) {
        json.put("litre_weighs", fineGramsToJson(*own.litreWeighs));
    }
    if (own.pieceWeighs) {
        json.put("piece_weighs", fineGramsToJson(*own.pieceWeighs));
    }
    json.putIfAny("edible_percent", own.ediblePercent);
    if (!own.parts.empty()) {
        JsonObject parts;
        for (const auto& [part, amount] : own.parts) {
            parts.put(nameIn(enumNames<IngredientPart>, part).value_or("?"), toJson(amount));
        }
        json.put("parts", parts.take());
    }
    json.putIfAny("section", own.section);
    json.putIfAny("keeps_days", own.keepsDays);
    json.putUnless(std::string(), "source", own.source);
    return json.take();
}

JsonValue stockToJson(const StockItem& item)
{
    const StockItem usual;
    JsonObject json;
    json.put("ingredient", toJson(item.ingredient));
    json.putUnless(usual.amount, "amount", item.amount);
    json.putIfAny("use_by", item.useBy);
    json.putUnless(usual.isAlwaysThere, "is_always_there", item.isAlwaysThere);
    json.putUnless(usual.note, "note", item.note);
    return json.take();
}

JsonValue packToJson(const Pack& pack)
{
    JsonObject json;
    json.put("ingredient", toJson(pack.ingredient));
    json.put("amount", toJson(pack.amount));
    json.putIfAny("price", pack.price);
    json.putUnless(std::string(), "name", pack.name);
    json.putUnless(false, "is_loose", pack.isLoose);
    return json.take();
}

JsonValue labelToJson(const ConfirmedLabel& label)
{
    JsonObject json;
    json.put("ingredient", toJson(label.ingredient));
    json.putIfAny("contains", label.contains);
    json.putIfAny("read", label.read);
    json.putUnless(std::string(), "note", label.note);
    return json.take();
}

} // namespace

JsonValue toJson(const Larder& larder)
{
    const Larder usual;
    JsonObject json;
    json.putIfAny("ingredients", larder.ingredients, ownToJson);
    json.putIfAny("stock", larder.stock, stockToJson);
    json.putIfAny("packs", larder.packs, packToJson);
    json.putIfAny("labels", larder.labels, labelToJson);
    json.putUnless(usual.currency, "currency", larder.currency);
    json.putIfAny("sections", larder.sections);
    return json.take();
}

} // namespace suppertide
