#include "ui/models/ingredient_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/food/ingredient_amount.h"
#include "core/food/usda_foods.h"
#include "core/larder/ingredient_book.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("IngredientFacts", text);
}

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

QString namesOf(const std::vector<Substance>& substances)
{
    QStringList names;
    for (const Substance substance : substances) {
        names << text(nameOf(substance));
    }
    return names.join(QStringLiteral(", "));
}

QString contentsOf(const Ingredient& ingredient)
{
    QString words = ingredient.contains.empty()
                        ? tr("contains nothing of what guests are asked about")
                        : tr("contains %1").arg(namesOf(ingredient.contains));
    if (ingredient.checkLabel || !ingredient.mayContain.empty()) {
        words = ingredient.contains.empty() ? tr("check the label")
                                            : tr("%1, and check the label").arg(words);
        if (!ingredient.mayContain.empty()) {
            words += tr(" (it may contain %1)").arg(namesOf(ingredient.mayContain));
        }
    }
    return words;
}

/// Names of foods that the cook may mean, from the large table.
QString unknownWords(const std::string& ingredient)
{
    constexpr std::size_t few = 3;
    QStringList names;
    for (const UsdaFood& food : lookUpFoods(ingredient, few)) {
        names << text(food.name);
    }
    const QString words = tr("Not in the table of ingredients, so nobody knows what it contains: "
                             "say so below.");
    return names.isEmpty()
               ? words
               : tr("%1 The USDA's table has: %2.").arg(words, names.join(QStringLiteral("; ")));
}

} // namespace

QString ingredientFacts(const LibraryState& library, const std::string& ingredient,
                        const Amount& amount, IngredientPart part)
{
    const IngredientBook book = ingredientBook(larderOf(library));
    const Ingredient* known = book.find(ingredient);
    if (known == nullptr) {
        return unknownWords(ingredient);
    }
    QStringList facts{text(nameOf(known->section)), contentsOf(*known)};
    if (dimensionOf(amount.unit) == Dimension::ToTaste) {
        return tr("Known as %1: %2.").arg(text(known->name), facts.join(QStringLiteral("; ")));
    }
    const auto mass = massOf(amount, *known, part);
    if (mass) {
        const Rational inGrams{mass->smallest(), 1000};
        facts << tr("this weighs %1").arg(text(toText(Amount{inGrams, Unit::Gram})));
    }
    const QString words =
        tr("Known as %1: %2.").arg(text(known->name), facts.join(QStringLiteral("; ")));
    return mass ? words : words + QStringLiteral(" ") + text(mass.error().forCook);
}

} // namespace suppertide::ui
