#include "ui/models/shopping_edits.h"

#include <QCoreApplication>

#include "core/shopping/ingredient_facts.h"
#include "ui/models/larder_outline.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("ShoppingEdits", text);
}

/// The place of the first thing that is about the ingredient.
template <typename Thing>
std::optional<std::size_t> placeOf(const std::vector<Thing>& things, const std::string& ingredient,
                                   const Larder& larder)
{
    const std::string key = shopping::factsOf(ingredient, larder).key;
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (shopping::factsOf(things[i].ingredient, larder).key == key) {
            return i;
        }
    }
    return std::nullopt;
}

Amount sensible(const Amount& amount)
{
    return amount.value > Rational{0} ? amount : Amount{Rational{1}, Unit::Piece};
}

/// Goes to the thing about the line's ingredient in one of the larder's lists; makes it if need be.
template <typename Thing>
Edit goTo(const LibraryState& library, std::vector<Thing> Larder::*list, Thing fresh,
          const char* kind, const QString& text)
{
    Larder larder = larderOf(library);
    std::vector<Thing>& things = larder.*list;
    const auto there = placeOf(things, fresh.ingredient, larder);
    const std::size_t place = there.value_or(things.size());
    const std::string row = RowPath().with(kind, std::to_string(place)).text();
    if (there) {
        return Edit{library, text, row};
    }
    things.push_back(std::move(fresh));
    return Edit{withLarder(library, std::move(larder)), text, row};
}

} // namespace

std::optional<shopping::ShoppingInput> shoppingInputOf(const LibraryState& library,
                                                       const PlanPtr& plan,
                                                       const std::optional<MeasureSystem>& measures)
{
    auto evening = planInputOf(library);
    if (!evening) {
        return std::nullopt;
    }
    shopping::ShoppingInput input;
    input.evening = std::move(*evening);
    input.larder = larderOf(library);
    input.bought = openOccasion(library)->bought;
    input.plan = plan;
    input.measures = measures;
    input.repertoire = library.recipes;
    return input;
}

Edit tickEdit(const LibraryState& library, const shopping::ShoppingLine& line, bool isBought)
{
    OccasionRecord record = *openOccasion(library);
    record.bought = shopping::withTicked(std::move(record.bought), line, isBought);
    const QString name = QString::fromStdString(line.ingredient);
    return Edit{withRecord(library, std::move(record)),
                isBought ? tr("Buy %1").arg(name) : tr("%1 not bought").arg(name),
                {}};
}

Edit stockEdit(const LibraryState& library, const shopping::ShoppingLine& line)
{
    StockItem fresh;
    fresh.ingredient = line.ingredient;
    fresh.amount = sensible(line.needed);
    return goTo(library, &Larder::stock, std::move(fresh), "stock",
                tr("Note what is at home: %1").arg(QString::fromStdString(line.ingredient)));
}

Edit packEdit(const LibraryState& library, const shopping::ShoppingLine& line)
{
    Pack fresh;
    fresh.ingredient = line.ingredient;
    fresh.amount = sensible(line.toBuy);
    return goTo(library, &Larder::packs, std::move(fresh), "pack",
                tr("Note a pack: %1").arg(QString::fromStdString(line.ingredient)));
}

} // namespace suppertide::ui
