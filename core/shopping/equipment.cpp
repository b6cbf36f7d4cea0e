#include "core/shopping/equipment.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "core/problem/timetable.h"

namespace suppertide::shopping {

namespace {

bool isEquipment(ResourceKind kind)
{
    return kind == ResourceKind::Appliance || kind == ResourceKind::Vessel;
}

/// A stretch in which some of a thing is in use.
struct InUse
{
    Interval when;
    std::int64_t amount = 1;
    std::string text;
};

class EquipmentWriter
{
public:
    explicit EquipmentWriter(const Plan& plan)
        : formulation_(*plan.formulation), times_(formulation_.problem, plan.schedule)
    {}

    EquipmentList write()
    {
        collect();
        EquipmentList list;
        for (auto& [key, uses] : uses_) {
            list.lines.push_back(lineOf(key, uses));
        }
        std::ranges::stable_sort(list.lines, {}, [](const EquipmentLine& line) {
            return std::tuple(!line.isTooFew(), line.kind, line.name);
        });
        addProbes(list);
        return list;
    }

private:
    /// Kind, name, and how many there are.
    using Key = std::tuple<ResourceKind, std::string, std::int64_t>;

    void collect()
    {
        const Problem& problem = formulation_.problem;
        for (const DemandIndex index : problem.demands.indices()) {
            const Demand& demand = problem.demands[index];
            const auto held = times_.held(demand.from, demand.to);
            const ResourceSource& source = demand.count ? formulation_.counts[*demand.count]
                                                        : formulation_.pools[*demand.pool];
            if (!held || !isEquipment(source.kind)) {
                continue;
            }
            const std::int64_t there =
                demand.count ? problem.counts[*demand.count].capacity
                             : static_cast<std::int64_t>(problem.pools[*demand.pool].units.size());
            const DemandSource& what = formulation_.demands[index];
            uses_[{source.kind, source.name, there}].push_back(
                {*held, demand.count ? demand.amount : 1, textOf(demand, what)});
        }
    }

    [[nodiscard]] std::string textOf(const Demand& demand, const DemandSource& what) const
    {
        const std::string& step = formulation_.tasks[demand.from.task].text;
        const std::string& said = what.text.empty() ? step : what.text;
        return what.dishName.empty() ? said : fmt::format("{}: {}", what.dishName, said);
    }

    static EquipmentLine lineOf(const Key& key, std::vector<InUse>& uses)
    {
        EquipmentLine line;
        std::tie(line.kind, line.name, line.there) = key;
        std::ranges::stable_sort(uses, {}, [](const InUse& use) { return use.when.start; });
        // What is used at once is most at some beginning.
        for (const InUse& at : uses) {
            std::int64_t sum = 0;
            for (const InUse& other : uses) {
                const bool isOn =
                    other.when.start <= at.when.start && at.when.start < other.when.end;
                sum += isOn ? other.amount : 0;
            }
            if (sum > line.atOnce) {
                line.atOnce = sum;
                line.busiest = at.when.start;
            }
            if (std::ranges::find(line.uses, at.text) == line.uses.end()) {
                line.uses.push_back(at.text);
            }
        }
        return line;
    }

    void addProbes(EquipmentList& list) const
    {
        for (const TrackedFood& food : formulation_.foods) {
            for (const FoodStage& stage : food.stages) {
                if (!stage.does.to || !times_.isPresent(stage.first)) {
                    continue;
                }
                std::string text = fmt::format("{}: {} to {} °C", food.dishName, food.name,
                                               stage.does.to->wholeDegrees());
                if (std::ranges::find(list.probes, text) == list.probes.end()) {
                    list.probes.push_back(std::move(text));
                }
            }
        }
    }

    const Formulation& formulation_;
    Timetable times_;
    std::map<Key, std::vector<InUse>> uses_;
};

} // namespace

EquipmentList equipmentOf(const Plan& plan)
{
    return EquipmentWriter(plan).write();
}

std::vector<MiseEnPlace> miseEnPlaceOf(const Plan& plan)
{
    std::vector<MiseEnPlace> places;
    const Formulation& formulation = *plan.formulation;
    for (const TaskIndex task : formulation.tasks.indices()) {
        const TaskSource& source = formulation.tasks[task];
        const auto when = plan.interval(task);
        if (when && !source.lines.empty()) {
            places.push_back({when->start, source.dishName, source.text, source.lines});
        }
    }
    std::ranges::stable_sort(places, {}, &MiseEnPlace::by);
    return places;
}

} // namespace suppertide::shopping
