#include "ui/models/batch_words.h"

#include <QCoreApplication>

#include "core/plan/batch_room.h"
#include "ui/document/state.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("RecipeOutline", text);
}

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

} // namespace

QString batchWords(const LibraryState& library, const Recipe& recipe, const Step& step)
{
    const KitchenPtr kitchen = openKitchen(library);
    if (!kitchen || recipe.portions <= Portions{0}) {
        return {};
    }
    const BatchRoom room = roomForBatch(step, recipe.portions, recipe.portions, *kitchen);
    if (room.tooSmall != nullptr) {
        return tr("Nothing in “%1” holds a single portion of it.").arg(text(kitchen->name));
    }
    if (!room.atOnce || room.atOnce == step.portionsPerBatch) {
        return {};
    }
    const auto batches = inBatches(recipe.portions, room.atOnce).size();
    // Rounded down to a quarter: no more than fits.
    const Rational quarters = *room.atOnce * Rational{4};
    const Rational shown{quarters.numerator() / quarters.denominator(), 4};
    const QString atOnce = text(toText(Amount{shown, Unit::Piece}));
    return batches == 1
               ? tr("In “%1” up to %2 portions go in at once.").arg(text(kitchen->name), atOnce)
               : tr("In “%1” up to %2 portions go in at once: the recipe's are %3 batches.")
                     .arg(text(kitchen->name), atOnce)
                     .arg(batches);
}

} // namespace suppertide::ui
