// Touched: the requirements that a change of a schedule touches. Filled from the evidence before
// and after the change, since a cook, a unit or an oven that is left is touched too.
#pragma once

#include <vector>

#include "core/check/evidence.h"
#include "core/check/requirements.h"

namespace suppertide {

class Touched
{
public:
    Touched(const Evidence& evidence, const Requirements& requirements)
        : evidence_(&evidence), requirements_(&requirements), isTouched_(requirements.size(), false)
    {}

    void byChoice(ChoiceIndex choice);
    /// Its start or its presence changes.
    void byTask(TaskIndex task);
    void byCooksOf(TaskIndex task);
    void byUnitOf(DemandIndex demand);
    void byOvenOf(OvenDemandIndex demand);
    void byProgram(OvenIndex oven);

    /// Each once, in no order; empties this.
    [[nodiscard]] std::vector<RequirementNumber> take();

private:
    void add(RequirementNumber number);
    void allIn(OvenIndex oven);
    void allHandsOf(CookIndex cook);

    const Evidence* evidence_;
    const Requirements* requirements_;
    std::vector<bool> isTouched_;
    std::vector<RequirementNumber> numbers_;
};

} // namespace suppertide
