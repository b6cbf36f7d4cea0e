// OvenCostPropagator: what one oven costs at least, given what is sure to be in it and when; or
// what several cost together, given what is in any of them.
//
//     roast       [---|======|---]       sure to be in from its latest start to its earliest end
//     potatoes             [--|====|--]
//     must be hot     |=========|        so many minutes on, whatever the program
//
// Where stays may still move, what each costs while it lasts counts, divided by how many there can
// be at once: by the shelves that it takes, and undivided where no other can be in beside it.
//
// Added to either: settings away from what is preferred, and changes, whatever the order of the
// stays: over the temperatures preferred in rising order, the cheapest way to divide them into runs
// of one setting each; or, where switching on again with something in costs too, a setting for each
// band (band_changes.h). That is a lower bound of other costs.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <vector>

#include "core/assign/least_heat.h"
#include "core/assign/oven_program.h"
#include "core/planner/engine/engine.h"
#include "core/planner/exact/one_setting.h"
#include "core/planner/exact/oven_order.h"
#include "core/planner/exact/sequence_costs.h"
#include "core/planner/exact/sure_stays.h"

namespace suppertide::exact {

class OvenCostPropagator : public engine::Propagator
{
public:
    /// `boxes`: of the first oven.
    OvenCostPropagator(std::vector<Oven> ovens, const OvenProgramStyle& style,
                       std::vector<PossibleStay> stays,
                       std::shared_ptr<const StartDifferences> differences,
                       std::shared_ptr<BoxCosts> boxes, engine::Variable least, std::int64_t most);
    static void post(engine::Engine& engine, std::vector<Oven> ovens, const OvenProgramStyle& style,
                     std::vector<PossibleStay> stays,
                     std::shared_ptr<const StartDifferences> differences,
                     std::shared_ptr<BoxCosts> boxes, engine::Variable least, std::int64_t most);

    bool propagate(engine::Engine& engine) override;
    [[nodiscard]] int order() const override { return 2; }

private:
    bool raiseTo(engine::Engine& engine, std::int64_t cost, const engine::Literals& because) const;
    bool raiseByOrder(engine::Engine& engine, const engine::Literals& because);
    [[nodiscard]] std::vector<std::size_t> inSureOrder(const engine::Trail& trail) const;
    bool raiseBySequence(engine::Engine& engine, bool& ofAll);
    bool raiseByHeat(engine::Engine& engine, const SureStays& sure, engine::Literals because,
                     std::int64_t& lastMinutes);
    /// Whether what the stays ask for is the same whenever they are.
    [[nodiscard]] bool countsFromAnyTime() const;
    [[nodiscard]] std::int64_t costOfHeat(const std::vector<OvenStay>& sure);
    /// The same where switching on costs too.
    [[nodiscard]] std::int64_t costOfSwitching(const std::vector<OvenStay>& sure);
    void lookAtEach();
    [[nodiscard]] std::int64_t costWhileIn(const Oven& oven, const PossibleStay& stay) const;
    void note(std::vector<std::size_t> inside);
    [[nodiscard]] std::int64_t costBefore(const Oven& oven, const PossibleStay& stay) const;
    [[nodiscard]] bool mayMeet(const PossibleStay& one, const PossibleStay& other) const;
    [[nodiscard]] std::vector<std::size_t> meeting(std::size_t first,
                                                   std::vector<std::size_t>& left) const;
    [[nodiscard]] std::int64_t costOfShares(const std::vector<std::size_t>& inside) const;
    struct SettingCosts
    {
        std::int64_t least = 0;
        std::int64_t withChange = 0; // if there is one
    };
    [[nodiscard]] SettingCosts costOfSettings(const std::vector<std::size_t>& inside) const;
    [[nodiscard]] SettingCosts costOfPreferred(const std::vector<std::size_t>& inside) const;
    [[nodiscard]] std::int64_t costOfBands(const std::vector<std::size_t>& inside) const;
    [[nodiscard]] std::int64_t costOfOneSetting(const std::vector<int>& preferred, std::size_t from,
                                                std::size_t to) const;

    std::vector<Oven> ovens_;
    std::int64_t shelves_ = 1; // of the largest
    OvenProgramStyle style_;
    /// Without what switching on with something in costs, which counts with changes of setting.
    OvenProgramStyle ofHeat_;
    std::vector<PossibleStay> stays_;
    std::vector<std::int64_t> whileIn_; // what each costs at least while it lasts
    std::vector<std::int64_t> before_;  // and before it, if it is the first
    std::shared_ptr<const StartDifferences> differences_;
    engine::Variable least_;
    std::int64_t most_;
    std::map<std::vector<std::int64_t>, std::int64_t> switching_;
    LeastHeat heat_; // of the first oven
    OvenOrder order_;
    std::int64_t looks_ = 0;          // of the order, when last looked at for one setting
    std::int64_t ofOneInOrder_ = 0;   // what was found then
    OneSetting oneSetting_;           // of the first oven
    SequenceCosts sequences_;         // of the first oven
    std::vector<std::size_t> inside_; // when last looked at
    std::vector<std::size_t> byHeat_; // those, the hottest first
    std::int64_t costOfSettings_ = 0; // for those
    std::int64_t costWithChange_ = 0; // the same, of more settings than one
    std::int64_t costOfShares_ = 0;
    std::int64_t sureByTheClock_ = 0; // minutes, when last looked at
    std::int64_t sureToEachOther_ = 0;
};

} // namespace suppertide::exact
