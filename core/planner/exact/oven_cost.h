// OvenCostPropagator: what one oven costs at least, given what is sure to be in it and when.
//
//     roast       [---|======|---]       sure to be in from its latest start to its earliest end
//     potatoes             [--|====|--]
//     must be hot     |=========|        so many minutes on, whatever the program
//
// Added to it: settings away from what is preferred, and changes, whatever the order of the stays:
// over the temperatures preferred in rising order, the cheapest way to divide them into runs of one
// setting each. Both are lower bounds of different costs.
#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "core/assign/oven_program.h"
#include "core/planner/engine/engine.h"

namespace suppertide::exact {

/// A stay that may be in the oven.
struct PossibleStay
{
    engine::Term from;
    engine::Term to;
    engine::Literal inside; // in this oven, and something is held
    OvenStay stay;          // its times are not looked at
};

class OvenCostPropagator : public engine::Propagator
{
public:
    OvenCostPropagator(Oven oven, const OvenProgramStyle& style, std::vector<PossibleStay> stays,
                       engine::Variable least, std::int64_t most);
    static void post(engine::Engine& engine, const Oven& oven, const OvenProgramStyle& style,
                     std::vector<PossibleStay> stays, engine::Variable least, std::int64_t most);

    bool propagate(engine::Engine& engine) override;
    [[nodiscard]] int order() const override { return 2; }

private:
    [[nodiscard]] bool isWorthALook(const std::vector<OvenStay>& sure, bool allFixed);
    [[nodiscard]] std::int64_t costOfHeat(const std::vector<OvenStay>& sure);
    [[nodiscard]] std::int64_t costOfSettings(const std::vector<const PossibleStay*>& inside) const;
    [[nodiscard]] std::int64_t costOfOneSetting(const std::vector<int>& preferred, std::size_t from,
                                                std::size_t to) const;

    Oven oven_;
    OvenProgramStyle style_;
    std::vector<PossibleStay> stays_;
    engine::Variable least_;
    std::int64_t most_;
    std::map<std::vector<std::int64_t>, std::int64_t> heat_; // by the stays that are sure
    std::int64_t sureMinutes_ = 0;                           // when last looked at
};

} // namespace suppertide::exact
