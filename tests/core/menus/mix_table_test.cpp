// The mix as a table of variants by guests, and where a portion may be moved in it.
#include <gmock/gmock.h>

#include "core/menus/mix_table.h"
#include "tests/core/menus/courses.h"

namespace suppertide::menus {
namespace {

using test::sharedOut;
using testing::ElementsAre;
using testing::SizeIs;

std::vector<bool> theirs(const MixRow& row)
{
    std::vector<bool> result;
    for (const MixCell& cell : row.cells) {
        result.push_back(cell.isTheirs);
    }
    return result;
}

TEST(MixTable, HasARowForEachVariantAndOneForNothing)
{
    const MixTable table = mixTableOf(sharedOut().input());
    ASSERT_THAT(table.rows, SizeIs(6)); // lamb, two of squash, nothing; gratin, nothing
    EXPECT_EQ(table.rows[0].helping, (std::pair{DishId{"lamb"}, VariantId{"herbs"}}));
    EXPECT_THAT(theirs(table.rows[0]), ElementsAre(true, false, false));
    EXPECT_EQ(table.rows[0].portions, Portions{1});
    EXPECT_FALSE(table.rows[3].helping);
    EXPECT_THAT(theirs(table.rows[3]), ElementsAre(false, false, false));
    EXPECT_THAT(theirs(table.rows[5]), ElementsAre(false, false, true)) << "cream is not for Bea";
    EXPECT_FALSE(table.rows[0].cells[1].suitability.isFree()) << "Dov eats no meat";
}

TEST(MixTable, GivesEachGuestOneOfEachColumn)
{
    const MixTable table = mixTableOf(sharedOut().input());
    for (std::size_t guest = 0; guest < 3; ++guest) {
        std::vector<int> count(table.places.columns.size());
        for (const MixRow& row : table.rows) {
            count[row.column] += row.cells[guest].isTheirs ? 1 : 0;
        }
        EXPECT_THAT(count, testing::Each(1));
    }
}

TEST(MixTable, SaysWhereAPortionCannotGo)
{
    const MixTable table = mixTableOf(sharedOut().input());
    EXPECT_EQ(moveFault(table, 0, 0, 2), MoveFault::None);
    EXPECT_EQ(moveFault(table, 0, 0, 3), MoveFault::None) << "nothing may be given";
    EXPECT_EQ(moveFault(table, 0, 1, 2), MoveFault::NoPortion);
    EXPECT_EQ(moveFault(table, 0, 0, 4), MoveFault::OtherCourse);
}

} // namespace
} // namespace suppertide::menus
