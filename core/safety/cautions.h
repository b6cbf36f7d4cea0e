// Cautions: what a kitchen is warned of, and when, as data; and the one sentence that stands under
// everything that this library says.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace suppertide::safety {

enum class CautionKind
{
    HotOil,
    Caramel,
    Torch,
    AlcoholFlame,
    Alcohol,
    Pressure,
    SharpBlade,
    Steam,
    HotOven,
    RawMeat,
    RawEgg,
    Poisonous
};

inline constexpr std::array allCautionKinds{
    CautionKind::HotOil,  CautionKind::Caramel,  CautionKind::Torch,      CautionKind::AlcoholFlame,
    CautionKind::Alcohol, CautionKind::Pressure, CautionKind::SharpBlade, CautionKind::Steam,
    CautionKind::HotOven, CautionKind::RawMeat,  CautionKind::RawEgg,     CautionKind::Poisonous};

/// "hot oil", as in the table and on screen.
[[nodiscard]] std::string_view nameOf(CautionKind kind);
[[nodiscard]] std::optional<CautionKind> findCautionKind(std::string_view name);

/// One row of resources/tables/cautions.tsv.
struct CautionText
{
    CautionKind kind = CautionKind::HotOil;
    std::string when; // "while sugar is cooked above 120 °C"
    std::string says;
    std::string source;
};

/// Each kind once, in the order of the table.
[[nodiscard]] const std::vector<CautionText>& allCautions();
[[nodiscard]] const CautionText& cautionOf(CautionKind kind);
[[nodiscard]] Result<std::vector<CautionText>> readCautions(std::string_view table);

/// What is known of a step that may call for cautions, in °C.
struct StepHeat
{
    std::optional<double> oil;
    std::optional<double> sugar;
    bool hasFlame = false; // a torch, or a flame at table
    bool isOnBurner = false;
    bool poursAlcohol = false;
    bool servesAlcohol = false;
    bool isUnderPressure = false;
    bool hasBlade = false;
    bool makesSteam = false;
    bool liftsFromOven = false; // something heavy, into it or out of it
    bool handlesRawAnimal = false;
    bool servesRawEgg = false;
};
/// The cautions that a step calls for: oil or sugar above 120 °C (common practice), alcohol near a
/// flame or a burner, and so on; each once, in the order of the enumeration.
[[nodiscard]] std::vector<CautionKind> cautionsFor(const StepHeat& step);

/// "Local food codes and licensed practice prevail."
[[nodiscard]] std::string_view localCodesPrevail();

} // namespace suppertide::safety
