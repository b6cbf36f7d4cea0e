// What stays in one oven (formulate rules 5 and 8): a step that goes on where the one before left
// off, and the time between a hot start and a lower finish.
#include "core/plan/tied_points.h"

namespace suppertide {

void joinOvens(Evening& evening, OvenDemandIndex one, OvenDemandIndex other)
{
    FormulationDraft& draft = evening.draft;
    const std::string name = draft.ovenDemand(one).group.value_or(draft.ovenDemand(one).id);
    const std::optional<std::string> absorbed = draft.ovenDemand(other).group;
    draft.ovenDemand(one).group = name;
    draft.ovenDemand(other).group = name;
    for (const OvenDemandIndex index : draft.problem().ovenDemands.indices()) {
        if (absorbed && draft.ovenDemand(index).group == absorbed) {
            draft.ovenDemand(index).group = name;
        }
    }
}

void addOvenGroups(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        for (const SharedTie<Wait>& shared : sharedWaits(evening.makings[making])) {
            if (shared.tie.most != Minutes{0}) {
                continue;
            }
            for (const TiedPair& pair :
                 tiedPairs(evening, making, shared.tie.from, shared.tie.to, shared.variants)) {
                if (!pair.from.batch || !pair.to.batch) {
                    continue;
                }
                const auto first = evening.ovenOf.find({making, *pair.from.batch});
                const auto second = evening.ovenOf.find({making, *pair.to.batch});
                if (first != evening.ovenOf.end() && second != evening.ovenOf.end()) {
                    joinOvens(evening, first->second, second->second);
                }
            }
        }
    }
}

} // namespace suppertide
