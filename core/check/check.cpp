#include "core/check/check.h"

#include <iterator>

#include "core/check/requirements.h"

namespace suppertide {

std::string_view nameOf(BrokenKind kind)
{
    switch (kind) {
    case BrokenKind::Choice:
        return "choice";
    case BrokenKind::Start:
        return "start";
    case BrokenKind::Window:
        return "window";
    case BrokenKind::Lag:
        return "lag";
    case BrokenKind::Count:
        return "count";
    case BrokenKind::Demand:
        return "demand";
    case BrokenKind::Unit:
        return "unit";
    case BrokenKind::Hands:
        return "hands";
    case BrokenKind::Cook:
        return "cook";
    case BrokenKind::Program:
        return "program";
    case BrokenKind::Oven:
        return "oven";
    case BrokenKind::Shelves:
        return "shelves";
    }
    return "";
}

std::string Broken::name() const
{
    return std::string(nameOf(kind)) + ":" + id;
}

std::vector<Broken> check(const Problem& problem, const Schedule& schedule)
{
    const Evidence evidence(problem, schedule);
    const Requirements requirements(problem, evidence.ties());
    std::vector<Broken> broken;
    for (RequirementNumber number = 0; number < requirements.size(); ++number) {
        std::ranges::move(requirements.judge(evidence, number), std::back_inserter(broken));
    }
    return broken;
}

} // namespace suppertide
