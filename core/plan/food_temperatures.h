// FoodTemperatures: the histories of the foods of a plan, for core/safety to judge and for charts:
// where each is and how warm, from its first step to the table. Kept up to date while a plan is
// edited: of a food only the stays from the first that has changed on are computed anew.
//
// A solid food is a body with conduction along one coordinate (slab, cylinder, sphere by its
// shape), what is stirred has one temperature all through, and the surface of its pot where it has
// a mass. Ovens are at the temperature of the schedule's program; a bare surface is cooled by what
// evaporates from it. Where a step says what its middle is brought to, the cook measures: it is
// there at the end of the step, its curve stretched or shortened to that by a factor of up to 1.5;
// what gets there still earlier stays as warm as it then is, and what would take still longer is as
// computed: the rules see a middle that has not got there. A food without a material of the table,
// and what follows a heat of which nothing is known, has no curve; core/safety says so.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/plan/food_passages.h"

namespace suppertide {

using FoodHistories = IndexedVector<FoodIndex, std::optional<safety::FoodHistory>>;

class FoodTemperatures
{
public:
    /// Both must outlive it.
    FoodTemperatures(const Formulation& formulation, const Kitchen& kitchen);
    ~FoodTemperatures();
    FoodTemperatures(FoodTemperatures&&) noexcept;
    FoodTemperatures& operator=(FoodTemperatures&&) noexcept;
    FoodTemperatures(const FoodTemperatures&) = delete;
    FoodTemperatures& operator=(const FoodTemperatures&) = delete;

    /// Of each food its history; absent if it is not cooked in this schedule.
    const FoodHistories& update(const Schedule& schedule);

    /// How many stays the last update has computed.
    [[nodiscard]] std::size_t computedLast() const;

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide
