// Which menus nothing beats, and what they are sorted by.
#include <gmock/gmock.h>

#include "core/menus/figure.h"
#include "core/wording/menu_words.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::menus {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

ComparedMenu menuOf(std::size_t number, std::int64_t handsOn, std::int64_t ahead)
{
    ComparedMenu menu;
    menu.number = number;
    menu.cookable = Cookable::Yes;
    menu.evening = EveningFigures{};
    menu.evening->handsOn = Minutes{handsOn};
    menu.evening->ahead = Minutes{ahead};
    return menu;
}

// More made ahead is better, fewer minutes are better:
//   ahead 90  .  .  b  .
//         60  a  .  .  d
//         30  .  c  .  .
//            100 110 120 130  hands-on
TEST(Unbeaten, KeepsWhatIsBetterInOneFigureThanAllThatAreBetterInTheOther)
{
    const std::vector menus{menuOf(0, 100, 60), menuOf(1, 120, 90), menuOf(2, 110, 30),
                            menuOf(3, 130, 60)};
    EXPECT_THAT(unbeaten(menus, Figure::HandsOn, Figure::Ahead), ElementsAre(0, 1));
    EXPECT_THAT(sortedBy(menus, Figure::Ahead), ElementsAre(1, 0, 3, 2));
}

TEST(Unbeaten, KeepsEqualOnesTogetherAndLeavesOutWhatCannotBeCooked)
{
    std::vector menus{menuOf(0, 100, 60), menuOf(1, 100, 60), menuOf(2, 90, 70)};
    menus[2].cookable = Cookable::No;
    EXPECT_THAT(unbeaten(menus, Figure::HandsOn, Figure::Ahead), ElementsAre(0, 1));
    EXPECT_THAT(unbeaten(menus, Figure::HandsOn, Figure::Price), IsEmpty()) << "no price is known";
}

TEST(Unbeaten, AreThoseThatTryingAllPairsFinds)
{
    test::forEachSeed(200, [](test::Random& random) {
        std::vector<ComparedMenu> menus;
        const auto count = random.between(0, 40);
        for (std::int64_t i = 0; i < count; ++i) {
            menus.push_back(
                menuOf(static_cast<std::size_t>(i), random.between(0, 8), random.between(0, 8)));
        }
        std::vector<std::size_t> expected;
        for (const ComparedMenu& menu : menus) {
            const bool isBeaten = std::ranges::any_of(menus, [&](const ComparedMenu& other) {
                const auto& a = *other.evening;
                const auto& b = *menu.evening;
                return a.handsOn <= b.handsOn && a.ahead >= b.ahead &&
                       (a.handsOn < b.handsOn || a.ahead > b.ahead);
            });
            if (!isBeaten) {
                expected.push_back(menu.number);
            }
        }
        auto found = unbeaten(menus, Figure::HandsOn, Figure::Ahead);
        std::ranges::sort(found);
        EXPECT_EQ(found, expected);
    });
}

TEST(Figures, AreNamedAndFoundByTheirKeys)
{
    for (const Figure figure : allFigures) {
        EXPECT_EQ(findFigure(keyOf(figure)), figure);
        EXPECT_FALSE(headingOf(figure).empty());
        EXPECT_FALSE(meaningOf(figure).empty());
    }
    EXPECT_FALSE(findFigure("calm"));
}

TEST(FigureText, HasItsUnitAndADashWhereNothingIsKnown)
{
    EXPECT_EQ(figureText(Figure::HandsOn, 190), "3 h 10");
    EXPECT_EQ(figureText(Figure::Energy, 1940), "1.9 kWh");
    EXPECT_EQ(figureText(Figure::Price, 1205), "12.05");
    EXPECT_EQ(figureText(Figure::OvenChanges, 4), "4");
    EXPECT_EQ(figureText(Figure::Price, std::nullopt), "–");
}

} // namespace
} // namespace suppertide::menus
