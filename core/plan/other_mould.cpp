#include "core/plan/other_mould.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/science/mould_scaling.h"

namespace suppertide {

namespace {

/// Calls body(part) for the recipe's own part and those of its methods.
template <typename Body>
void forEachPart(ResolvedRecipe& recipe, Body body)
{
    body(recipe.part);
    for (MethodChoice& choice : recipe.methods) {
        for (Method& method : choice.methods) {
            body(method.part);
        }
    }
}

bool usesOven(const Step& step)
{
    return std::ranges::any_of(step.uses,
                               [](const Use& use) { return std::holds_alternative<OvenUse>(use); });
}

class MouldChanger
{
public:
    MouldChanger(ResolvedRecipe& recipe, const OtherMould& other) : recipe_(recipe), other_(other)
    {}

    void change()
    {
        forEachPart(recipe_, [this](const RecipePart& part) { findLines(part); });
        if (!own_) {
            return;
        }
        ratio_ = areaRatio(other_.mould, *own_);
        while (findMore()) {
        }
        forEachPart(recipe_, [this](RecipePart& part) {
            for (Step& step : part.steps) {
                if (inMould_.contains(step.id) && usesOven(step)) {
                    changeStep(step);
                }
            }
        });
    }

private:
    void findLines(const RecipePart& part)
    {
        for (const IngredientLine& line : part.lines) {
            if (const auto* rule = std::get_if<ByMould>(&line.scaling)) {
                own_ = own_.value_or(rule->mould);
                lines_.insert(line.id);
            }
        }
    }

    /// Steps that take what goes by the mould, and those after them. Whether there were more.
    bool findMore()
    {
        const std::size_t before = inMould_.size();
        const auto isIn = [this](const StepId& id) { return inMould_.contains(id); };
        forEachPart(recipe_, [&](const RecipePart& part) {
            for (const Step& step : part.steps) {
                const bool takes = std::ranges::any_of(
                    step.lines, [this](const LineId& id) { return lines_.contains(id); });
                if (takes || std::ranges::any_of(step.after, isIn)) {
                    inMould_.insert(step.id);
                }
            }
            for (const Wait& wait : part.waits) {
                if (wait.from.step && wait.to.step && isIn(*wait.from.step)) {
                    inMould_.insert(*wait.to.step);
                }
            }
        });
        return inMould_.size() > before;
    }

    void changeStep(Step& step) const
    {
        if (!other_.keepsAmounts && step.portionsPerBatch) {
            step.portionsPerBatch = *step.portionsPerBatch * ratio_;
        }
        if (other_.keepsAmounts) {
            changeTime(step.duration);
            for (OtherHeat& heat : step.otherHeats) {
                changeTime(heat.duration);
            }
        }
        step.detail = fmt::format("in a tin or mould {} instead of {}{}{}", nameOf(other_.mould),
                                  nameOf(*own_), step.detail.empty() ? "" : "; ", step.detail);
    }

    /// Of what cannot be computed the time stays: it is the recipe's.
    void changeTime(DurationRange& range) const
    {
        const auto timeFor = [this](Minutes known) {
            return science::bakingTimeAtDepth(static_cast<double>(known.count()), 1.0,
                                              1.0 / ratio_.toDouble());
        };
        const auto least = timeFor(range.least);
        const auto likely = timeFor(range.likely);
        const auto most = timeFor(range.most);
        if (least && likely && most) {
            range = {Minutes{std::llround(least->least)}, Minutes{std::llround(likely->likely)},
                     Minutes{std::llround(most->most)}};
        }
    }

    ResolvedRecipe& recipe_;
    const OtherMould& other_;
    std::optional<Mould> own_; // that the recipe names, in the first line that names one
    Rational ratio_{1};
    std::set<LineId> lines_;
    std::set<StepId> inMould_;
};

} // namespace

void putIntoMould(ResolvedRecipe& recipe, const OtherMould& other)
{
    MouldChanger(recipe, other).change();
}

} // namespace suppertide
