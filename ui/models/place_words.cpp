#include "ui/models/place_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(Places)
};

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

QStringList namesOf(const Suitability& suitability)
{
    QStringList names;
    for (const Substance each : suitability.unsuitable) {
        names.push_back(text(nameOf(each)));
    }
    for (const RiskFact each : suitability.risks) {
        names.push_back(text(nameOf(each)));
    }
    return names;
}

} // namespace

std::optional<PlanInput> placesInput(const LibraryState& library)
{
    auto input = planInputOf(library);
    if (input) {
        input->recipes = library.recipes;
    }
    return input;
}

QString markOf(const Suitability& suitability)
{
    if (!suitability.isFree()) {
        return u"✕ "_s + namesOf(suitability).join(u", "_s);
    }
    return suitability.unknown.empty() ? QString() : Words::tr("? check the label");
}

QString wordsOf(const Suitability& suitability)
{
    QStringList words;
    if (!suitability.isFree()) {
        words.push_back(
            Words::tr("not for this guest: %1").arg(namesOf(suitability).join(u", "_s)));
    }
    if (!suitability.unknown.empty()) {
        QStringList names;
        for (const std::string& each : suitability.unknown) {
            names.push_back(text(each));
        }
        words.push_back(
            Words::tr("nobody has said what is in: %1; check the label").arg(names.join(u", "_s)));
    }
    return words.join(u"; "_s);
}

HelpingWords helpingWords(const PlanInput& input, const DishId& dishId, const VariantId& variantId)
{
    for (const Course& course : input.occasion->courses) {
        const Dish* dish = findIn(course.dishes, dishId);
        if (dish == nullptr) {
            continue;
        }
        const auto recipe = input.recipes.find(dish->recipe);
        if (recipe == input.recipes.end()) {
            break;
        }
        const Variant* variant = findIn(recipe->second->variants, variantId);
        const bool isOne = variant == nullptr || recipe->second->variants.size() == 1;
        return {text(recipe->second->name), isOne ? QString() : text(variant->name)};
    }
    return {text(dishId.text()), {}};
}

QString helpingName(const PlanInput& input, const DishId& dish, const VariantId& variant)
{
    const HelpingWords words = helpingWords(input, dish, variant);
    return words.variant.isEmpty() ? words.dish
                                   : Words::tr("%1, %2").arg(words.dish, words.variant);
}

QString guestName(const PlanInput& input, const GuestId& id)
{
    const Guest* guest = findIn(input.occasion->guests, id);
    return guest == nullptr || guest->name.empty() ? text(id.text()) : text(guest->name);
}

Edit givenHelping(const LibraryState& library, const PlanInput& input,
                  const menus::PlaceColumn& column, const GuestId& guest,
                  const GivenHelping& helping)
{
    Occasion next = menus::withHelping(input, column, guest, helping);
    return {withOccasion(library, [&next](Occasion& occasion) { occasion = std::move(next); }),
            Words::tr("What %1 gets").arg(guestName(input, guest)),
            {}};
}

} // namespace suppertide::ui
