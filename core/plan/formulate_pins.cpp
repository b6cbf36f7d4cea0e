// Pins (formulate rule 14), and who alone may do a task (rule 13): what the user has fixed becomes
// windows, units, ovens and skills of their own.
#include <algorithm>
#include <set>

#include "core/plan/evening.h"

namespace suppertide {

namespace {

class PinWriter
{
public:
    explicit PinWriter(Evening& evening) : evening_(evening), draft_(evening.draft) {}

    void write()
    {
        pinStarts();
        pinOptions();
        pinCooks();
        pinUnits();
        pinOvens();
        pinSettings();
    }

private:
    void pinStarts()
    {
        const Layout& layout = evening_.layout();
        for (const TaskIndex index : draft_.problem().tasks.indices()) {
            Task& task = draft_.task(index);
            const auto laid = layout.starts.find(task.id);
            if (!evening_.isHeld(task.id) || laid == layout.starts.end()) {
                continue;
            }
            const PlanTime start = draft_.calendar().planTime(laid->second);
            const Interval pinned{start, start + task.duration};
            if (draft_.wholeHorizon().contains(pinned)) {
                task.window = pinned;
                draft_.source(index).rule = Rule::Pins;
            }
        }
    }

    /// A step can only stay where it is if it is done at all: with the option that it is part of.
    void pinOptions()
    {
        for (const ChoiceIndex choice : draft_.problem().choices.indices()) {
            const auto& options = draft_.problem().choices[choice].options;
            const auto laid = evening_.layout().options.find(draft_.problem().choices[choice].id);
            for (const OptionIndex taken : options.indices()) {
                if (laid != evening_.layout().options.end() && options[taken].id == laid->second &&
                    isAnyHeld(options[taken].tasks)) {
                    excludeOthers(choice, taken);
                }
            }
        }
    }

    [[nodiscard]] bool isAnyHeld(const std::vector<TaskIndex>& tasks) const
    {
        return std::ranges::any_of(tasks, [&](TaskIndex task) {
            return evening_.isHeld(draft_.problem().tasks[task].id);
        });
    }

    void excludeOthers(ChoiceIndex choice, OptionIndex taken)
    {
        LagSource source;
        source.rule = Rule::Pins;
        for (const OptionIndex other : draft_.problem().choices[choice].options.indices()) {
            if (other != taken) {
                draft_.exclude({choice, other}, source);
            }
        }
    }

    /// Wishes of dishes, jobs and trips, and over them those of the layout.
    void pinCooks()
    {
        for (const auto& [id, cooks] : evening_.layout().cooks) {
            const auto task = draft_.formulation().taskById.find(id);
            if (task != draft_.formulation().taskById.end() && !cooks.empty()) {
                std::vector<CookId>& wanted = evening_.wantedCooks[task->second];
                wanted.clear();
                std::ranges::transform(cooks, std::back_inserter(wanted),
                                       [](const std::string& cook) { return CookId{cook}; });
            }
        }
        for (const auto& [index, cooks] : evening_.wantedCooks) {
            if (draft_.task(index).hands) {
                askFor(*draft_.task(index).hands, cooks);
                nameCooks(index, cooks);
            }
        }
    }

    /// A skill of their own for those who alone may do it, besides what the step asks for.
    void askFor(Hands& hands, const std::vector<CookId>& cooks)
    {
        std::set<std::string> names;
        for (const CookId& cook : cooks) {
            names.insert(cook.text());
        }
        std::string skill = "cook";
        for (const std::string& name : names) {
            skill += " " + name;
        }
        skill += hands.skill ? " with " + *hands.skill : "";
        for (const CookIndex index : draft_.problem().cooks.indices()) {
            Cook& cook = draft_.cook(index);
            const auto has = [&](const std::string& what) {
                return std::ranges::find(cook.skills, what) != cook.skills.end();
            };
            if (names.contains(cook.id) && (!hands.skill || has(*hands.skill)) && !has(skill)) {
                cook.skills.push_back(skill);
            }
        }
        hands.skill = skill;
    }

    void nameCooks(TaskIndex task, const std::vector<CookId>& cooks)
    {
        for (const KitchenCook& cook : evening_.kitchen().cooks) {
            if (std::ranges::find(cooks, cook.id) != cooks.end()) {
                draft_.source(task).onlyBy.push_back(cook.name);
            }
        }
    }

    void pinUnits()
    {
        for (const DemandIndex index : draft_.problem().demands.indices()) {
            Demand& demand = draft_.demand(index);
            const auto said = evening_.layout().units.find(demand.id);
            if (said == evening_.layout().units.end() || !demand.pool) {
                continue;
            }
            const auto& units = draft_.problem().pools[*demand.pool].units;
            for (const UnitIndex unit : units.indices()) {
                if (units[unit].id == said->second) {
                    demand.units = std::vector{unit};
                }
            }
        }
    }

    void pinOvens()
    {
        for (const OvenDemandIndex index : draft_.problem().ovenDemands.indices()) {
            OvenDemand& demand = draft_.ovenDemand(index);
            const auto said = evening_.layout().ovens.find(demand.id);
            if (said == evening_.layout().ovens.end()) {
                continue;
            }
            if (const auto oven = findOven(said->second)) {
                demand.ovens = std::vector{*oven};
            }
        }
    }

    [[nodiscard]] std::optional<OvenIndex> findOven(const std::string& id) const
    {
        for (const OvenIndex oven : draft_.problem().ovens.indices()) {
            if (draft_.problem().ovens[oven].id == id) {
                return oven;
            }
        }
        return std::nullopt;
    }

    /// A fixed task that takes no room and accepts nothing else.
    void pinSettings()
    {
        int number = 0;
        for (const OvenSettingPin& pin : evening_.layout().ovenSettings) {
            const auto oven = findOven(pin.oven);
            const Interval when =
                Interval{draft_.calendar().planTime(pin.from), draft_.calendar().planTime(pin.to)}
                    .common(draft_.wholeHorizon());
            if (!oven || when.empty()) {
                continue;
            }
            Task task;
            task.id = "setting/" + pin.oven + "/" + std::to_string(++number);
            task.duration = when.length();
            task.window = when;
            TaskSource source;
            source.role = TaskRole::OvenSetting;
            source.rule = Rule::Pins;
            source.text = draft_.formulation().ovenNames[*oven] + " as set";
            const TaskIndex set = draft_.addTask(std::move(task), std::move(source));
            OvenDemand demand;
            demand.id = "setting/" + pin.oven + "/" + std::to_string(number);
            demand.from = startOf(set);
            demand.to = endOf(set);
            demand.shelves = 0;
            demand.acceptLow = pin.setC;
            demand.acceptHigh = pin.setC;
            demand.prefer = pin.setC;
            demand.ovens = std::vector{*oven};
            draft_.addOvenDemand(std::move(demand),
                                 {Rule::Pins, {}, "pinned setting", "oven", {}, false, false});
        }
    }

    Evening& evening_;
    FormulationDraft& draft_;
};

} // namespace

void addPins(Evening& evening)
{
    PinWriter(evening).write();
}

} // namespace suppertide
