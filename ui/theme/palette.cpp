#include "ui/theme/palette.h"

#include <QString>

#include "core/base/contracts.h"
#include "ui/theme/look_table.h"

namespace suppertide::ui {

namespace {

/// From one round of hues to the next each hue's pattern moves on by this many.
constexpr std::size_t patternsFurther = 3;

} // namespace

DishFill Palette::dish(int look) const
{
    expects(look >= 0, "a look from 0 on");
    const auto index = static_cast<std::size_t>(look);
    const std::size_t hue = index % hueCount;
    const std::size_t round = index / hueCount;
    // Patterns go by the hue that they belong to, so that a round uses each of them once.
    const std::size_t patternOfHue = (hue + patternsFurther * round) % hueCount;
    return {dishes.at(hue).fill, dishes.at(patternOfHue).pattern};
}

DishFill Palette::houseJob() const
{
    return {{neutral.ink2, neutral.paper}, Pattern::Plain};
}

const Palette& paletteFor(Appearance appearance)
{
    const LookTable& table = lookTable();
    return appearance == Appearance::Light ? table.light : table.dark;
}

QString dishLetter(int look)
{
    expects(look >= 0, "a look from 0 on");
    QString text;
    for (int rest = look; rest >= 0; rest = rest / 26 - 1) {
        text.prepend(QChar{'A' + rest % 26});
    }
    return text;
}

} // namespace suppertide::ui
