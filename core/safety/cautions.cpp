#include "core/safety/cautions.h"

#include <algorithm>
#include <utility>

#include "core/base/own_table.h"
#include "core/base/table_text.h"

namespace suppertide::tables {

std::string_view cautions();

} // namespace suppertide::tables

namespace suppertide::safety {

namespace {

using KindName = std::pair<CautionKind, std::string_view>;

constexpr std::array kindNames{
    KindName{CautionKind::HotOil, "hot oil"},
    KindName{CautionKind::Caramel, "caramel"},
    KindName{CautionKind::Torch, "torch"},
    KindName{CautionKind::AlcoholFlame, "alcohol flame"},
    KindName{CautionKind::Alcohol, "alcohol"},
    KindName{CautionKind::Pressure, "pressure"},
    KindName{CautionKind::SharpBlade, "sharp blade"},
    KindName{CautionKind::Steam, "steam"},
    KindName{CautionKind::HotOven, "hot oven"},
    KindName{CautionKind::RawMeat, "raw meat"},
    KindName{CautionKind::RawEgg, "raw egg"},
    KindName{CautionKind::Poisonous, "poisonous"},
};
static_assert(kindNames.size() == allCautionKinds.size());

constexpr double scalding = 120; // °C of oil or sugar; common practice

} // namespace

std::string_view nameOf(CautionKind kind)
{
    const auto found = std::ranges::find(kindNames, kind, &KindName::first);
    return found == kindNames.end() ? std::string_view{} : found->second;
}

std::optional<CautionKind> findCautionKind(std::string_view name)
{
    const auto found = std::ranges::find(kindNames, name, &KindName::second);
    return found == kindNames.end() ? std::nullopt : std::optional{found->first};
}

Result<std::vector<CautionText>> readCautions(std::string_view table)
{
    const auto text = TableText::read("cautions", table, {"kind", "when", "says", "source"});
    if (!text) {
        return text.error();
    }
    std::vector<CautionText> cautions;
    for (const TableRow& row : text->rows()) {
        const auto kind = findCautionKind(row.text("kind"));
        if (!kind) {
            return row.fault("kind", "a kind of caution");
        }
        cautions.push_back({*kind, std::string(row.text("when")), std::string(row.text("says")),
                            std::string(row.text("source"))});
    }
    for (const CautionKind kind : allCautionKinds) {
        if (std::ranges::count(cautions, kind, &CautionText::kind) != 1) {
            return Failure{FailureKind::BadInput,
                           "The table “cautions” cannot be read: each kind must stand in it once.",
                           std::string(nameOf(kind))};
        }
    }
    return cautions;
}

const std::vector<CautionText>& allCautions()
{
    static const std::vector<CautionText> all =
        ownTable(readCautions(tables::cautions()), "the table of cautions can be read");
    return all;
}

const CautionText& cautionOf(CautionKind kind)
{
    const auto found = std::ranges::find(allCautions(), kind, &CautionText::kind);
    ensures(found != allCautions().end(), "each kind of caution has a text");
    return *found;
}

std::vector<CautionKind> cautionsFor(const StepHeat& step)
{
    const bool isHotOil = step.oil && *step.oil > scalding;
    const bool isHotSugar = step.sugar && *step.sugar > scalding;
    const std::array asked{
        std::pair{CautionKind::HotOil, isHotOil},
        std::pair{CautionKind::Caramel, isHotSugar},
        std::pair{CautionKind::Torch, step.hasFlame},
        std::pair{CautionKind::AlcoholFlame,
                  step.poursAlcohol && (step.hasFlame || step.isOnBurner || isHotOil)},
        std::pair{CautionKind::Alcohol, step.servesAlcohol},
        std::pair{CautionKind::Pressure, step.isUnderPressure},
        std::pair{CautionKind::SharpBlade, step.hasBlade},
        std::pair{CautionKind::Steam, step.makesSteam || step.isUnderPressure},
        std::pair{CautionKind::HotOven, step.liftsFromOven},
        std::pair{CautionKind::RawMeat, step.handlesRawAnimal},
        std::pair{CautionKind::RawEgg, step.servesRawEgg},
    };
    std::vector<CautionKind> cautions;
    for (const auto& [kind, applies] : asked) {
        if (applies) {
            cautions.push_back(kind);
        }
    }
    return cautions;
}

std::string_view localCodesPrevail()
{
    return "Local food codes and licensed practice prevail.";
}

} // namespace suppertide::safety
