#include "ui/models/mould_fields.h"

#include <QCoreApplication>

namespace suppertide::ui::menu {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("MenuOutline", text);
}

Result<void> setMould(Dish& dish, const std::string& text)
{
    if (text.find_first_not_of(' ') == std::string::npos) {
        dish.mould.reset();
        return {};
    }
    const auto mould = readMould(text);
    if (!mould) {
        return mould.error();
    }
    dish.mould = OtherMould{*mould, dish.mould.value_or(OtherMould{}).keepsAmounts};
    return {};
}

} // namespace

QString filledAsDeep()
{
    return tr("as deep as the recipe's: amounts follow its bottom");
}

QString filledWithTheSame()
{
    return tr("with the same amounts: time follows the depth");
}

void addMould(FieldList<Dish>& form, const Recipe& recipe, const Dish& dish)
{
    const auto own = mouldOf(recipe);
    if (!own && !dish.mould) {
        return;
    }
    form.add(FieldList<Dish>::plain("mould", tr("Baked in another tin"), FieldKind::Line,
                                    dish.mould ? nameOf(dish.mould->mould) : std::string()),
             [](Dish& next, const FieldValue& value) {
                 return setMould(next, std::get<std::string>(value));
             })
        .help(own ? tr("like round 20 cm; empty: the recipe's, %1")
                        .arg(QString::fromStdString(nameOf(*own)))
                  : tr("the recipe names none: empty this"));
    if (!dish.mould) {
        return;
    }
    Field field = FieldList<Dish>::plain("mould-filled", tr("That is filled"), FieldKind::Choice,
                                         std::string(dish.mould->keepsAmounts ? "same" : "deep"));
    field.options = {{"deep", filledAsDeep()}, {"same", filledWithTheSame()}};
    form.add(std::move(field), [](Dish& next, const FieldValue& value) -> Result<void> {
        if (next.mould) {
            next.mould->keepsAmounts = std::get<std::string>(value) == "same";
        }
        return {};
    });
}

} // namespace suppertide::ui::menu
