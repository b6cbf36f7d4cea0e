// Edible portions against the US Armed Forces Recipe Service, card A-6 (as purchased for one edible
// portion). A cross-check that is reported, not demanded: trim habits differ by up to a quarter.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>

#include "core/food/ingredient_amount.h"

namespace suppertide {
namespace {

struct YieldRow
{
    const char* ingredient;
    double purchased; // for one edible portion
};

TEST(ArmedForcesRecipeService, YieldsAreReportedBesideOurs)
{
    double worst = 0;
    std::string where;
    int rows = 0;
    for (const YieldRow& row :
         {YieldRow{"carrot", 1.22}, YieldRow{"onion", 1.11}, YieldRow{"potato", 1.23},
          YieldRow{"broccoli", 1.64}, YieldRow{"celery", 1.37}, YieldRow{"green bean", 1.14},
          YieldRow{"red pepper", 1.22}, YieldRow{"cucumber", 1.19}, YieldRow{"aubergine", 1.23},
          YieldRow{"mushroom", 1.10}, YieldRow{"asparagus", 1.89}, YieldRow{"cooking apple", 1.28},
          YieldRow{"banana", 1.54}, YieldRow{"pear", 1.28}, YieldRow{"pineapple", 1.92},
          YieldRow{"strawberry", 1.06}, YieldRow{"mango", 1.45}, YieldRow{"avocado", 1.45}}) {
        const Ingredient* ours = findIngredient(row.ingredient);
        ASSERT_NE(ours, nullptr) << row.ingredient;
        const double purchased =
            static_cast<double>(asPurchased(grams(1000), *ours).smallest()) / 1e6;
        const double off = std::abs(purchased - row.purchased);
        if (off > worst) {
            worst = off;
            where = row.ingredient;
        }
        // The two agree that something is lost, and not by more than known habits differ.
        EXPECT_GE(purchased, 1) << row.ingredient;
        EXPECT_LE(off, 0.27) << row.ingredient;
        ++rows;
    }
    std::printf("[published] AFRS card A-6: yields\t%d rows\tworst %.2f\t%s\n", rows, worst,
                where.c_str());
}

} // namespace
} // namespace suppertide
