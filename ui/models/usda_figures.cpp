#include "ui/models/usda_figures.h"

#include <QCoreApplication>

#include <algorithm>

#include "core/food/ingredient_amount.h"
#include "core/food/usda_foods.h"
#include "core/larder/ingredient_book.h"

namespace suppertide::ui {

namespace {

constexpr std::string_view prefix = "usda:";

QString tr(const char* text)
{
    return QCoreApplication::translate("UsdaFigures", text);
}

OwnIngredient ownFrom(const UsdaFood& food, const std::string& name)
{
    const Ingredient figures = ingredientFrom(food);
    OwnIngredient own;
    own.name = name;
    own.source = "USDA SR26 " + food.number + ": " + food.name;
    if (figures.density) {
        constexpr std::int64_t millilitres = 1000;
        own.litreWeighs = Grams::ofSmallest(figures.density->milligramsPerMillilitre * millilitres);
    }
    if (figures.ediblePerThousand) {
        own.ediblePercent = std::clamp((*figures.ediblePerThousand + 5) / 10, 1, 100);
    }
    const auto piece = std::ranges::find(figures.pieces, Unit::Piece, &PieceMass::unit);
    if (piece != figures.pieces.end()) {
        own.pieceWeighs = asPurchased(piece->mass, figures);
    }
    return own;
}

} // namespace

std::vector<RowCommand> usdaCommands(const LibraryState& library, const std::string& ingredient)
{
    std::vector<RowCommand> commands;
    if (ingredient.empty() || ingredientBook(larderOf(library)).find(ingredient) != nullptr) {
        return commands;
    }
    constexpr std::size_t few = 3;
    for (const UsdaFood& food : lookUpFoods(ingredient, few)) {
        commands.push_back({std::string(prefix) + food.number,
                            tr("Take figures of “%1”").arg(QString::fromStdString(food.name))});
    }
    return commands;
}

std::optional<Edit> takeUsdaFigures(const LibraryState& library, const std::string& ingredient,
                                    const std::string& command)
{
    if (!command.starts_with(prefix)) {
        return std::nullopt;
    }
    const auto food = findUsdaFood(std::string_view(command).substr(prefix.size()));
    if (!food) {
        return std::nullopt;
    }
    Larder larder = larderOf(library);
    larder.ingredients.push_back(ownFrom(*food, ingredient));
    LibraryState next = library;
    next.larder = std::make_shared<const Larder>(std::move(larder));
    return Edit{std::move(next), tr("Know %1").arg(QString::fromStdString(ingredient)), {}};
}

} // namespace suppertide::ui
