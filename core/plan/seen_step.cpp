#include "core/plan/seen_step.h"

namespace suppertide {

bool isDeed(TaskRole role)
{
    switch (role) {
    case TaskRole::Step:
    case TaskRole::OvenIn:
    case TaskRole::OvenOut:
    case TaskRole::Turn:
    case TaskRole::Washing:
    case TaskRole::Serving:
    case TaskRole::HouseJob:
    case TaskRole::Trip:
        return true;
    case TaskRole::Target:
    case TaskRole::KeepFrom:
    case TaskRole::KeepTo:
    case TaskRole::TakeFrom:
    case TaskRole::Watch:
    case TaskRole::OvenSetting:
    case TaskRole::Mark:
        return false;
    }
    return false;
}

bool isWork(TaskRole role)
{
    return isDeed(role) && role != TaskRole::Serving;
}

std::optional<SeenStep> seenStepOf(const TaskSource& source)
{
    switch (source.role) {
    case TaskRole::Step:
    case TaskRole::HouseJob:
    case TaskRole::Trip:
        return SeenStep{source.dish, source.recipe,   source.step,
                        source.job,  source.variants, source.batch};
    case TaskRole::OvenIn:
    case TaskRole::OvenOut:
    case TaskRole::Turn:
    case TaskRole::Washing:
    case TaskRole::Serving:
    case TaskRole::Target:
    case TaskRole::KeepFrom:
    case TaskRole::KeepTo:
    case TaskRole::TakeFrom:
    case TaskRole::Watch:
    case TaskRole::OvenSetting:
    case TaskRole::Mark:
        break;
    }
    return std::nullopt;
}

} // namespace suppertide
