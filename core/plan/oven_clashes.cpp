// Clashes of oven temperatures. A program exists exactly if all that is in an oven agrees two by
// two (core/assign/oven_pairs.h), so each clash names the two dishes that do not agree.
#include <algorithm>

#include "core/assign/oven_pairs.h"
#include "core/plan/clash_finder.h"

namespace suppertide {

namespace {

class OvenClashes
{
public:
    OvenClashes(const Formulation& formulation, const Schedule& schedule, const Timetable& times)
        : formulation_(formulation), problem_(formulation.problem), schedule_(schedule),
          times_(times)
    {}

    std::vector<Clash> find(const std::vector<Broken>& broken)
    {
        for (const OvenIndex oven : problem_.ovens.indices()) {
            std::vector<const Broken*> here;
            for (const Broken& each : broken) {
                if (each.oven == oven) {
                    here.push_back(&each);
                }
            }
            if (!here.empty()) {
                findIn(oven, here);
            }
        }
        for (const Broken& each : broken) {
            if (!each.oven) {
                addAlone(each);
            }
        }
        return std::move(clashes_);
    }

private:
    struct Stay
    {
        OvenDemandIndex demand;
        OvenStay stay;
    };

    void findIn(OvenIndex oven, const std::vector<const Broken*>& broken)
    {
        std::vector<Stay> stays;
        for (const OvenDemandIndex index : problem_.ovenDemands.indices()) {
            const OvenDemand& demand = problem_.ovenDemands[index];
            const auto held = times_.held(demand.from, demand.to);
            if (held && schedule_.ovens[index] == oven) {
                stays.push_back({index, ovenStay(demand, *held)});
            }
        }
        std::ranges::stable_sort(stays, {}, [](const Stay& stay) { return stay.stay.during; });
        const std::size_t before = clashes_.size();
        for (std::size_t i = 0; i < stays.size(); ++i) {
            for (std::size_t j = i + 1; j < stays.size(); ++j) {
                addPair(oven, stays[i], stays[j]);
            }
        }
        for (const Broken* each : broken) {
            claim(*each, before);
        }
    }

    void addPair(OvenIndex oven, const Stay& one, const Stay& other)
    {
        const auto fault = ovenPairClash(problem_.ovens[oven], one.stay, other.stay);
        if (!fault) {
            return;
        }
        const bool isRamp = fault->fault != OvenPairFault::BandsApart || fault->when.empty();
        Clash& clash = addFor(isRamp ? ClashKind::OvenRamp : ClashKind::OvenTemperature,
                              {one.demand, other.demand});
        clash.oven = oven;
        clash.when = fault->when;
    }

    Clash& addFor(ClashKind kind, const std::vector<OvenDemandIndex>& demands)
    {
        Clash& clash = clashes_.emplace_back();
        clash.kind = kind;
        clash.severity = severityOf(kind);
        for (std::size_t i = 0; i < demands.size(); ++i) {
            const OvenDemand& demand = problem_.ovenDemands[demands[i]];
            clash.ovenDemands[i] = demands[i];
            clash.tasks.push_back(demand.from.task);
            clash.tasks.push_back(demand.to.task);
            clash.broken.push_back("oven:" + demand.id);
            (i == 0 ? clash.asked : clash.allowed) = askedOf(demand);
        }
        clash.dish = formulation_.ovenDemands[demands.front()].dish;
        return clash;
    }

    static int askedOf(const OvenDemand& demand)
    {
        return demand.prefer.value_or((demand.acceptLow + demand.acceptHigh) / 2);
    }

    /// What a pair has explained needs no clash of its own.
    void claim(const Broken& broken, std::size_t firstPair)
    {
        const bool isHeat = broken.how == BrokenHow::TooCold || broken.how == BrokenHow::TooHot ||
                            broken.how == BrokenHow::NotOff;
        const auto first = clashes_.begin() + static_cast<std::ptrdiff_t>(firstPair);
        const bool isExplained =
            isHeat && broken.ovenDemand && std::any_of(first, clashes_.end(), [&](const Clash& c) {
                return c.ovenDemands[0] == broken.ovenDemand ||
                       c.ovenDemands[1] == broken.ovenDemand;
            });
        if (!isExplained) {
            addAlone(broken);
        }
    }

    void addAlone(const Broken& broken)
    {
        if (!broken.ovenDemand) { // a setting that the oven does not have
            Clash& clash = clashes_.emplace_back();
            clash.kind = ClashKind::OvenTemperature;
            clash.severity = severityOf(clash.kind);
            clash.oven = broken.oven;
            clash.when = broken.when;
            clash.asked = broken.asked / milli;
            clash.allowed = broken.allowed / milli;
            clash.broken = {broken.name()};
            return;
        }
        std::vector<OvenDemandIndex> demands{*broken.ovenDemand};
        if (broken.otherOvenDemand) {
            demands.push_back(*broken.otherOvenDemand);
        }
        std::ranges::stable_sort(demands, {}, [&](OvenDemandIndex demand) {
            return times_.time(problem_.ovenDemands[demand].from);
        });
        Clash& clash = addFor(kindOf(broken), demands);
        clash.oven = broken.oven;
        clash.when = broken.when;
        clash.isMode = broken.how == BrokenHow::OtherMode;
        clash.broken = {broken.name()};
        const bool isRoom = clash.kind == ClashKind::OvenSpace;
        if (isRoom) {
            clash.asked = problem_.ovenDemands[*broken.ovenDemand].shelves;
            clash.allowed = 0;
        } else if (demands.size() == 1) {
            clash.allowed = broken.asked / milli; // what the oven reaches
        }
    }

    /// Alone, nothing else pulls the oven that way: it is not hot (or cool) in time, or cannot be.
    [[nodiscard]] ClashKind kindOf(const Broken& broken) const
    {
        switch (broken.how) {
        case BrokenHow::Missing:
        case BrokenHow::NotAllowed:
        case BrokenHow::OtherOven:
        case BrokenHow::NotPresent:
            return ClashKind::OvenSpace;
        case BrokenHow::TooCold:
        case BrokenHow::TooHot:
            return ovenCan(broken) ? ClashKind::OvenRamp : ClashKind::OvenTemperature;
        default:
            return ClashKind::OvenTemperature;
        }
    }

    [[nodiscard]] bool ovenCan(const Broken& broken) const
    {
        const OvenDemand& demand = problem_.ovenDemands[*broken.ovenDemand];
        const auto held = times_.held(demand.from, demand.to);
        return broken.oven && held &&
               ovenSuits(problem_.ovens[*broken.oven], ovenStay(demand, *held));
    }

    static constexpr std::int64_t milli = 1000;

    const Formulation& formulation_;
    const Problem& problem_;
    const Schedule& schedule_;
    const Timetable& times_;
    std::vector<Clash> clashes_;
};

} // namespace

std::vector<Clash> ovenClashes(const Formulation& formulation, const Schedule& schedule,
                               const Timetable& times, const std::vector<Broken>& broken)
{
    return OvenClashes(formulation, schedule, times).find(broken);
}

} // namespace suppertide
