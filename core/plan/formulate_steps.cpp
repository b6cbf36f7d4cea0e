// Attention, ways in and out of the oven, batches, durations, ovens (formulate rules 1, 2, 3, 8,
// 10): the tasks of each step and what it holds while it lasts.
#include <algorithm>
#include <set>

#include "core/plan/batch_room.h"
#include "core/plan/evening.h"
#include "core/plan/followed_foods.h"
#include "core/plan/step_cautions.h"
#include "core/plan/step_estimate.h"
#include "core/science/pert_beta.h"

namespace suppertide {

namespace {

/// A step of up to this attention, but more than none, is "keeping an eye".
constexpr Attention mostKeepingAnEye = Attention::percent(20);
/// Keeping an eye for longer than this may change hands …
constexpr Minutes mostByOneCook{30};
/// … from piece to piece, none longer than this.
constexpr Minutes longestPiece{60};
/// Putting in and taking out of up to this may be done from the table.
constexpr Minutes mostFromTable{2};
constexpr Minutes turning{1};

Minutes planned(const DurationRange& range, CautionLevel caution)
{
    const auto quantile = [&](int percent) {
        return pertQuantile(range.least, range.likely, range.most, percent);
    };
    switch (caution) {
    case CautionLevel::Likely:
        return range.likely;
    case CautionLevel::Half:
        return quantile(50);
    case CautionLevel::Careful:
        return quantile(80);
    case CautionLevel::VeryCareful:
        return quantile(95);
    }
    return range.likely;
}

const OvenUse* ovenUseOf(const Step& step)
{
    for (const Use& use : step.uses) {
        if (const auto* oven = std::get_if<OvenUse>(&use)) {
            return oven;
        }
    }
    return nullptr;
}

bool isHot(const Step& step)
{
    const OvenUse* oven = ovenUseOf(step);
    return (oven != nullptr && oven->mode != OvenMode::Off) ||
           std::ranges::any_of(
               step.uses, [](const Use& use) { return std::holds_alternative<BurnerUse>(use); });
}

bool isKeepingAnEye(Attention attention)
{
    return attention > unattended && attention <= mostKeepingAnEye;
}

class BatchWriter
{
public:
    BatchWriter(Evening& evening, std::size_t making, std::size_t batch)
        : evening_(evening), makingIndex_(making), batchIndex_(batch),
          making_(evening.makings[making]), batch_(making_.batches[batch]),
          made_(making_.steps[batch_.step]), step_(made_.step),
          option_(evening.optionFor(making, made_.method)), id_(evening.idOf(making_, batch_))
    {}

    BatchTasks write()
    {
        range_ = scaledDuration(step_, making_.recipe->portions, batch_.share.total());
        foods_ = foodsOfStep();
        computed_ =
            computedDuration(step_, making_.variants[made_.variants.front()].recipe, range_,
                             batch_.share.total() / making_.recipe->portions, evening_.kitchen());
        if (computed_) {
            range_ = computed_->range;
        }
        const Minutes length = planned(range_, evening_.occasion().preferences.caution);
        if (ovenUseOf(step_) != nullptr) {
            writeInOven(length);
        } else if (mayChangeHands(length)) {
            writePieces(length);
        } else {
            add(deed("", length));
        }
        for (std::size_t i = 1; i < tasks_.tasks.size(); ++i) {
            evening_.draft.addLag(endOf(tasks_.tasks[i - 1]), startOf(tasks_.tasks[i]), Gap::none(),
                                  orderSource(making_, Rule::InAndOut));
        }
        writeUses();
        return std::move(tasks_);
    }

private:
    struct Part
    {
        Task task;
        DurationRange range; // of this part alone; only a step's last part is unsure
        TaskRole role = TaskRole::Step;
        Rule rule = Rule::Attention;
    };

    [[nodiscard]] Part deed(const char* suffix, Minutes length) const
    {
        Part part;
        part.range = range_;
        part.task.id = id_ + suffix;
        part.task.duration = length;
        part.task.hands = Hands{step_.attention, step_.cooks, step_.skill};
        part.task.atTable = step_.atTable.value_or(isKeepingAnEye(step_.attention));
        return part;
    }

    /// Part of a step that goes on afterwards: however long the step takes, this part is sure.
    [[nodiscard]] Part early(const char* suffix, Minutes length) const
    {
        Part part = deed(suffix, length);
        part.range = {length, length, length};
        return part;
    }

    /// The end of a step of which `before` has passed.
    [[nodiscard]] Part last(const char* suffix, Minutes length, Minutes before) const
    {
        Part part = deed(suffix, length);
        part.range = {std::clamp(range_.least - before, Minutes{1}, length), length,
                      std::max(range_.most - before, length)};
        return part;
    }

    /// A hands-on minute or two beside the time in the oven.
    [[nodiscard]] Part handling(const char* suffix, Minutes length, TaskRole role) const
    {
        Part part = deed(suffix, length);
        part.task.hands = Hands{handsOn, 1, std::nullopt};
        part.task.atTable = step_.atTable.value_or(length <= mostFromTable);
        part.role = role;
        part.rule = Rule::InAndOut;
        return part;
    }

    void writeInOven(Minutes length)
    {
        if (step_.ovenIn > Minutes{0}) {
            add(handling(".in", step_.ovenIn, TaskRole::OvenIn));
        }
        if (step_.turnAfter && *step_.turnAfter > Minutes{0} &&
            *step_.turnAfter + turning < length) {
            add(early("", *step_.turnAfter));
            add(handling(".turn", turning, TaskRole::Turn));
            add(last(".2", length - *step_.turnAfter - turning, *step_.turnAfter + turning));
        } else {
            add(deed("", length));
        }
        if (step_.ovenOut > Minutes{0}) {
            add(handling(".out", step_.ovenOut, TaskRole::OvenOut));
        }
    }

    [[nodiscard]] bool mayChangeHands(Minutes length) const
    {
        return isKeepingAnEye(step_.attention) && length > mostByOneCook && step_.cooks == 1 &&
               !making_.cook && evening_.kitchen().cooks.size() > 1;
    }

    void writePieces(Minutes length)
    {
        const Minutes::rep count = std::max<Minutes::rep>(
            2, (length.count() + longestPiece.count() - 1) / longestPiece.count());
        Minutes left = length;
        for (Minutes::rep i = count; i > 0; --i) {
            const Minutes piece = left / i;
            const std::string suffix = i == count ? "" : "." + std::to_string(count - i + 1);
            add(i > 1 ? early(suffix.c_str(), piece) : last(suffix.c_str(), piece, length - piece));
            left -= piece;
        }
    }

    void add(Part part)
    {
        const bool needsCooks = part.task.needsCooks();
        if (!needsCooks) {
            part.task.hands.reset();
        }
        TaskSource source = sourceFor(part);
        const TaskIndex task = evening_.draft.addTask(std::move(part.task), std::move(source));
        evening_.place(task, option_);
        if (needsCooks && making_.cook) {
            evening_.wantedCooks[task] = {*making_.cook};
        }
        tasks_.tasks.push_back(task);
    }

    [[nodiscard]] TaskSource sourceFor(const Part& part) const
    {
        TaskSource source;
        source.role = part.role;
        source.rule = part.rule;
        source.course = making_.course->id;
        source.dish = making_.dish->id;
        source.recipe = making_.recipe->id;
        source.step = step_.id;
        source.batch = batch_.number;
        source.batches = batch_.count;
        source.portions = batch_.share.total();
        source.dishName = making_.name;
        nameVariants(source);
        // Whoever puts it in, turns it and takes it out is as near to the heat as the step itself.
        source.cautions = step_.cautions;
        source.alsoCalledFor = calledFor(step_, made_.lines, foods_, part.role);
        source.computed = computed_;
        if (part.role == TaskRole::Step) {
            source.verb = step_.verb;
            source.text = step_.text;
            source.detail = step_.detail;
            source.duration = part.range;
            source.lines = scaledLines();
            source.isHot = isHot(step_);
            source.skill = step_.skill;
        }
        return source;
    }

    /// Those of the first of its variants: a step that they share does the same to them.
    [[nodiscard]] std::vector<FoodInStep> foodsOfStep() const
    {
        std::vector<const FollowedFood*> foods;
        for (const OpenFood& open : foodsOf(making_, making_.variants[made_.variants.front()])) {
            if (!open.method || !made_.method || open.method == made_.method) {
                foods.push_back(open.food);
            }
        }
        return foodsIn(foods, step_.id);
    }

    void nameVariants(TaskSource& source) const
    {
        std::set<Substance> contains;
        for (const std::size_t index : made_.variants) {
            const MakingVariant& variant = making_.variants[index];
            if (!batch_.share.meets(making_.shareOf(index))) {
                continue;
            }
            source.variants.push_back(variant.id);
            contains.insert(variant.contains.begin(), variant.contains.end());
            if (made_.variants.size() < making_.variants.size()) {
                source.variantName += (source.variantName.empty() ? "" : ", ") + variant.name;
            }
        }
        source.contains.assign(contains.begin(), contains.end());
    }

    [[nodiscard]] std::vector<ScaledLine> scaledLines() const
    {
        std::vector<ScaledLine> lines;
        const Portions all = making_.shareOf(made_.variants).total();
        for (const IngredientLine& line : made_.lines) {
            lines.push_back({line.id, line.ingredient, line.part,
                             amountFor(line, making_, batch_.share.total(), all), line.note});
        }
        return lines;
    }

    void writeUses()
    {
        for (const Use& use : step_.uses) {
            if (const auto* oven = std::get_if<OvenUse>(&use)) {
                evening_.ovenOf[{makingIndex_, batchIndex_}] =
                    holdOven(evening_, *oven, tasks_.start(), tasks_.end(), id_,
                             demandSource(making_, Rule::Ovens, "oven"));
            } else {
                holdWhileItLasts(use);
            }
        }
        if (isHot(step_) && !step_.mayRunUnwatched && step_.attention == unattended) {
            keepWatch(evening_, tasks_.start(), tasks_.end(), id_,
                      demandSource(making_, Rule::Cooks, ""));
        }
    }

    /// The use with the room that this batch needs as its filling.
    [[nodiscard]] Use withRoom(Use use) const
    {
        const auto room = [this](const Filling& filling, int vessels) {
            return Filling{
                roomFor(filling, vessels, making_.recipe->portions, batch_.share.total())};
        };
        if (auto* vessel = std::get_if<VesselUse>(&use); vessel && vessel->filling) {
            vessel->filling = room(*vessel->filling, vessel->count);
        } else if (auto* appliance = std::get_if<ApplianceUse>(&use);
                   appliance && appliance->filling) {
            appliance->filling = room(*appliance->filling, 1);
        }
        return use;
    }

    void holdWhileItLasts(const Use& use)
    {
        std::vector<DemandIndex> demands =
            hold(evening_, withRoom(use), tasks_.start(), tasks_.end(), id_,
                 demandSource(making_, Rule::Spans, ""));
        Minutes washing{0};
        KitchenThing thing;
        if (const auto* appliance = std::get_if<ApplianceUse>(&use)) {
            washing = appliance->washing;
            thing = thingOf(evening_, ResourceKind::Appliance, appliance->kind);
        } else if (const auto* vessel = std::get_if<VesselUse>(&use)) {
            washing = vessel->washing;
            thing = thingOf(evening_, ResourceKind::Vessel, vessel->kind);
        } else {
            return;
        }
        evening_.washes.push_back({makingIndex_, batchIndex_, thing, std::move(demands), washing,
                                   tasks_.start(), tasks_.end()});
    }

    Evening& evening_;
    std::size_t makingIndex_;
    std::size_t batchIndex_;
    const Making& making_;
    const Batch& batch_;
    const MadeStep& made_;
    const Step& step_;
    std::optional<OptionRef> option_;
    std::string id_;
    DurationRange range_;
    std::optional<ComputedDuration> computed_;
    std::vector<FoodInStep> foods_;
    BatchTasks tasks_;
};

} // namespace

std::string Evening::prefix(const Making& making, const MadeStep& step) const
{
    std::string middle;
    if (step.variants.size() < making.variants.size()) {
        for (const std::size_t variant : step.variants) {
            middle += (middle.empty() ? "" : "+") + making.variants[variant].id.text();
        }
    }
    if (step.method) {
        middle += (middle.empty() ? "" : "+") + step.method->method.text();
    }
    return making.key + "/" + (middle.empty() ? "*" : middle);
}

std::string Evening::idOf(const Making& making, const Batch& batch) const
{
    const MadeStep& step = making.steps[batch.step];
    const std::string number = batch.number > 0 ? "#" + std::to_string(batch.number) : "";
    return prefix(making, step) + "/" + step.step.id.text() + number;
}

std::optional<OptionRef> Evening::optionFor(std::size_t making,
                                            const std::optional<MethodKey>& method) const
{
    if (method) {
        return methodOptions.at({making, *method});
    }
    const auto& only = makings[making].onlyWith;
    return only ? std::optional(methodOptions.at({only->making, only->method})) : std::nullopt;
}

void Evening::place(TaskIndex task, const std::optional<OptionRef>& option)
{
    if (option) {
        draft.putInto(*option, task);
    }
}

LagSource orderSource(const Making& making, Rule rule)
{
    LagSource source;
    source.rule = rule;
    source.dish = making.dish->id;
    return source;
}

void addMethodChoices(Evening& evening)
{
    for (std::size_t index = 0; index < evening.makings.size(); ++index) {
        const Making& making = evening.makings[index];
        for (const MethodChoice& choice : making.choices) {
            const ChoiceIndex added = evening.draft.addChoice(
                making.key + "/" + choice.id.text(),
                {ChoiceKind::Method, making.dish->id, making.name, choice.name, {}});
            for (const Method& method : choice.methods) {
                const OptionRef option = evening.draft.addOption(
                    added, method.id.text(), method.name, method.cost * costUnitsPerPoint);
                evening.methodOptions.emplace(std::pair{index, MethodKey{choice.id, method.id}},
                                              option);
            }
        }
    }
}

void addSteps(Evening& evening)
{
    evening.tasks.resize(evening.makings.size());
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        for (std::size_t batch = 0; batch < evening.makings[making].batches.size(); ++batch) {
            evening.tasks[making].push_back(BatchWriter(evening, making, batch).write());
        }
    }
}

} // namespace suppertide
