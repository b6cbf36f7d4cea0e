#include <gtest/gtest.h>

#include <algorithm>

#include "core/assign/oven_choice.h"
#include "tests/core/assign/small_ovens.h"

namespace suppertide {

namespace {

using test::forEachSeed;
using test::Random;

bool holds(const IndexedVector<OvenIndex, Oven>& ovens, const std::vector<OvenWork>& work,
           const std::vector<std::size_t>& given)
{
    for (std::size_t i = 0; i < work.size(); ++i) {
        const Oven& oven = ovens[OvenIndex{given[i]}];
        std::int64_t used = 0;
        for (std::size_t j = 0; j < work.size(); ++j) {
            const bool together = given[i] == given[j];
            const bool modes = work[i].mode && work[j].mode && work[i].mode != work[j].mode &&
                               work[i].stay.during.overlaps(work[j].stay.during);
            const bool clash =
                i != j && (modes || ovenPairClash(oven, work[i].stay, work[j].stay).has_value());
            if ((together && clash) ||
                (!together && work[i].group && work[i].group == work[j].group)) {
                return false;
            }
            used += together && work[j].stay.during.contains(work[i].stay.during.start)
                        ? work[j].shelves
                        : 0;
        }
        if (used > oven.shelves || !work[i].allowed[given[i]] || !ovenSuits(oven, work[i].stay) ||
            ovenStartClash(oven, work[i].stay)) {
            return false;
        }
    }
    return true;
}

bool someHolds(const IndexedVector<OvenIndex, Oven>& ovens, const std::vector<OvenWork>& work,
               std::vector<std::size_t>& given)
{
    if (given.size() == work.size()) {
        return holds(ovens, work, given);
    }
    for (std::size_t oven = 0; oven < ovens.size(); ++oven) {
        given.push_back(oven);
        const bool found = someHolds(ovens, work, given);
        given.pop_back();
        if (found) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST(OvenChoice, FindsAnAssignmentExactlyIfOneHolds)
{
    int feasible = 0;
    forEachSeed(400, [&](Random& random) {
        IndexedVector<OvenIndex, Oven> ovens;
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            ovens.push_back(test::smallOven(random));
            ovens.back().shelves = random.between(1, 3);
        }
        std::vector<OvenWork> work;
        for (std::int64_t i = random.between(1, 6); i > 0; --i) {
            OvenWork item;
            item.stay = test::smallStay(random, 60);
            item.shelves = random.between(0, 2);
            item.mode = random.oneIn(3) ? std::optional<std::string>{"fan"} : std::nullopt;
            item.mode = random.oneIn(4) ? std::optional<std::string>{"grill"} : item.mode;
            item.group = random.oneIn(3) ? std::optional<std::string>{"g"} : std::nullopt;
            for (std::size_t oven = 0; oven < ovens.size(); ++oven) {
                item.allowed.push_back(!random.oneIn(4));
            }
            work.push_back(item);
        }
        const OvenChoiceResult found = chooseOvens(ovens, work);
        std::vector<std::size_t> given;
        const bool exists = someHolds(ovens, work, given);
        EXPECT_EQ(found.broken == 0, exists);
        EXPECT_TRUE(!exists || holds(ovens, work, found.ovens));
        feasible += exists ? 1 : 0;
    });
    EXPECT_GT(feasible, 20);
}

} // namespace suppertide
