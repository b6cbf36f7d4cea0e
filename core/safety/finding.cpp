#include "core/safety/finding.h"

#include <fmt/format.h>

#include "core/base/contracts.h"
#include "core/safety/storage_days.h"

namespace suppertide::safety {

std::string_view unitOf(Measure measure)
{
    switch (measure) {
    case Measure::None:
        return "";
    case Measure::Minutes:
        return "min";
    case Measure::Days:
        return "days";
    case Measure::Times:
        return "times";
    case Measure::Celsius:
        return "°C";
    case Measure::Fahrenheit:
        return "°F";
    }
    return "";
}

FindingSource sourceOf(const Finding& finding)
{
    constexpr std::string_view storage = "storage/";
    if (finding.rule.starts_with(storage)) {
        const StorageRow* row = findStorageRow(finding.rule.substr(storage.size()));
        expects(row != nullptr, "the finding's row of keeping times exists");
        return {fmt::format("This keeps for a limited time in fridge or freezer ({}).", row->label),
                row->source, row->section, row->strength, row->status};
    }
    const Rule* rule = findRule(finding.rule);
    expects(rule != nullptr, "the finding's rule exists");
    return {rule->says, rule->source, rule->section, rule->strength, rule->status};
}

} // namespace suppertide::safety
