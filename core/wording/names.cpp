// Fixed words: kinds, severities, cautions.
#include "core/plan/step_cautions.h"
#include "core/wording/wording.h"

namespace suppertide {

std::string_view nameOf(ClashKind kind)
{
    switch (kind) {
    case ClashKind::OvenTemperature:
        return "oven temperature";
    case ClashKind::OvenSpace:
        return "oven space";
    case ClashKind::OvenRamp:
        return "no time to heat or cool the oven";
    case ClashKind::Burner:
        return "burner";
    case ClashKind::Appliance:
        return "appliance";
    case ClashKind::Vessel:
        return "vessel";
    case ClashKind::ColdSpace:
        return "cold space";
    case ClashKind::Hands:
        return "hands";
    case ClashKind::CookNotFree:
        return "cook not free";
    case ClashKind::WaitTooShort:
        return "wait too short";
    case ClashKind::WaitTooLong:
        return "wait too long";
    case ClashKind::LateForServing:
        return "late for serving";
    case ClashKind::OutsideWindow:
        return "outside its hours";
    case ClashKind::NothingChosen:
        return "no suitable method";
    case ClashKind::Allergen:
        return "allergen at a guest's place";
    case ClashKind::GuestLeftOut:
        return "guest left out";
    case ClashKind::ContentsUnknown:
        return "contents unknown";
    case ClashKind::Utensils:
        return "not enough of a utensil";
    case ClashKind::Unwatched:
        return "heat with nobody awake";
    case ClashKind::FoodSafety:
        return "food safety";
    case ClashKind::UnwashedTool:
        return "tool not washed";
    }
    return "";
}

std::string_view nameOf(Severity severity)
{
    switch (severity) {
    case Severity::Impossible:
        return "impossible";
    case Severity::Unsafe:
        return "unsafe";
    case Severity::Undesirable:
        return "undesirable";
    }
    return "";
}

std::string_view cautionText(Caution caution)
{
    return safety::cautionOf(kindOf(caution)).says;
}

} // namespace suppertide
