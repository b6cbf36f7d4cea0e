#include <fmt/format.h>

#include "core/exchange/thing_json.h"
#include "core/exchange/value_reading.h"

namespace suppertide {

namespace {

/// Whole milligrams, written in grams.
Grams readFineGrams(const JsonCursor& at)
{
    constexpr std::int64_t most = 1'000'000; // g
    return Grams::ofSmallest(at.decimal(3, 0, most * 1000));
}

std::map<IngredientPart, Amount> readParts(const JsonCursor& at)
{
    std::map<IngredientPart, Amount> parts;
    at.forEachEntry([&](const std::string& name, const JsonCursor& value) {
        const auto part = findIn<IngredientPart>(enumNames<IngredientPart>, name);
        if (!part) {
            value.fault(fmt::format("“{}” is no part of an ingredient, like “juice”", name));
            return;
        }
        parts.emplace(*part, readAmount(value));
    });
    return parts;
}

OwnIngredient readOwn(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OwnIngredient own;
        own.name = readText(fields.required("name"));
        takeList(fields, "synonyms", own.synonyms, readText);
        take(fields, "contains", own.contains,
             [](const JsonCursor& list) { return readList(list, readSubstance); });
        take(fields, "litre_weighs", own.litreWeighs, readFineGrams);
        take(fields, "piece_weighs", own.pieceWeighs, readFineGrams);
        take(fields, "edible_percent", own.ediblePercent, readPercent);
        take(fields, "parts", own.parts, readParts);
        take(fields, "section", own.section, readText);
        take(fields, "keeps_days", own.keepsDays,
             [](const JsonCursor& days) { return static_cast<int>(days.whole(0, 10'000)); });
        take(fields, "source", own.source, readText);
        return own;
    });
}

StockItem readStock(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        StockItem item;
        item.ingredient = readText(fields.required("ingredient"));
        take(fields, "amount", item.amount, readAmount);
        take(fields, "use_by", item.useBy, readDate);
        take(fields, "is_always_there", item.isAlwaysThere, readBool);
        take(fields, "note", item.note, readText);
        return item;
    });
}

Pack readPack(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Pack pack;
        pack.ingredient = readText(fields.required("ingredient"));
        pack.amount = readAmount(fields.required("amount"));
        take(fields, "price", pack.price,
             [](const JsonCursor& price) { return price.whole(0, 1'000'000'000); });
        take(fields, "name", pack.name, readText);
        take(fields, "is_loose", pack.isLoose, readBool);
        return pack;
    });
}

ConfirmedLabel readLabel(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        ConfirmedLabel label;
        label.ingredient = readText(fields.required("ingredient"));
        takeList(fields, "contains", label.contains, readSubstance);
        take(fields, "read", label.read, readDate);
        take(fields, "note", label.note, readText);
        return label;
    });
}

} // namespace

Larder readLarderAt(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Larder larder;
        takeList(fields, "ingredients", larder.ingredients, readOwn);
        takeList(fields, "stock", larder.stock, readStock);
        takeList(fields, "packs", larder.packs, readPack);
        takeList(fields, "labels", larder.labels, readLabel);
        take(fields, "currency", larder.currency, readText);
        takeList(fields, "sections", larder.sections, readText);
        return larder;
    });
}

} // namespace suppertide
