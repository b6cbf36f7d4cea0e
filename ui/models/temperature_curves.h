// TemperatureCurves: the foods that a plan follows and its ovens, and of each what the page of
// temperatures shows. Computed for one plan; a plan that has changed wants another one. No finding
// means that no rule known to the program is broken, never that a food is safe.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/food_safety.h"
#include "core/wording/wording.h"
#include "ui/models/temperature_view.h"

namespace suppertide::ui {

class TemperatureCurves
{
public:
    /// Computes the histories of all foods; about a millisecond for an evening.
    TemperatureCurves(PlanPtr plan, const PlanInput& input, const ReadingStyle& style = {});

    /// Foods with a broken rule first, the worst before the others; then foods by their dishes;
    /// then ovens that are used.
    [[nodiscard]] const std::vector<TemperatureSubject>& subjects() const { return subjects_; }
    [[nodiscard]] bool hasFoods() const { return hasFoods_; }
    /// Absent if there is no such subject in this plan.
    [[nodiscard]] std::optional<TemperatureView> viewOf(const std::string& key) const;

private:
    void addFoods();
    void addOvens();
    [[nodiscard]] std::optional<TemperatureView> knownView(const std::string& key) const;
    [[nodiscard]] TemperatureView foodView(FoodIndex food) const;
    void addFindings(FoodIndex food, TemperatureView& view) const;

    PlanPtr plan_;
    std::shared_ptr<const Occasion> occasion_;
    ReadingStyle style_;
    FoodSafety safety_;
    std::vector<TemperatureSubject> subjects_;
    bool hasFoods_ = false;
};

/// The subject that a clash is about: the food of a broken rule, or the oven of a clash of oven
/// temperatures; empty if it is about none.
[[nodiscard]] std::string temperatureSubjectOf(const Plan& plan, const Clash& clash);

} // namespace suppertide::ui
