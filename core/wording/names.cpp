// Fixed words: kinds, severities, cautions. Cautions are common practice of kitchens; the rules of
// the place where one cooks prevail.
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
    switch (caution) {
    case Caution::HotOil:
        return "Hot oil: never leave it, keep water away, a lid at hand.";
    case Caution::Caramel:
        return "Hot sugar burns deep: long sleeves, cold water ready, nobody small nearby.";
    case Caution::OpenFlame:
        return "Open flame: sleeves and cloths away, hood fan off, a lid at hand.";
    case Caution::Steam:
        return "Steam: open lids and doors away from you.";
    case Caution::SharpBlade:
        return "Sharp blade: use the guard, unplug before cleaning, never in the sink unseen.";
    case Caution::RawMeat:
        return "Raw meat or fish: own board and knife, wash hands, cook it through.";
    case Caution::RawEgg:
        return "Raw egg: wash hands and bowls after it; what stays raw or soft is not for the "
               "pregnant, "
               "the very young or old, or the ill.";
    case Caution::Alcohol:
        return "Alcohol: say so at table; off the flame when pouring, it can catch fire.";
    case Caution::Poisonous:
        return "Parts of this are poisonous: use only what the recipe names, bin the rest.";
    }
    return "";
}

} // namespace suppertide
