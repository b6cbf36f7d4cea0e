// Fields for what a step or a span holds: oven, burner, appliance, vessel. One of each kind can be
// edited; what a file has beyond that is kept as it is.
#pragma once

#include <QCoreApplication>

#include <algorithm>
#include <type_traits>

#include "ui/models/physical_fields.h"

namespace suppertide::ui::recipe {

/// The first use of a kind in a list; null if there is none.
template <typename Kind>
[[nodiscard]] const Kind* firstUse(const std::vector<Use>& uses)
{
    for (const Use& use : uses) {
        if (const auto* found = std::get_if<Kind>(&use)) {
            return found;
        }
    }
    return nullptr;
}

/// Changes the first use of a kind, adding one if there is none.
template <typename Kind, typename Change>
void changeUse(std::vector<Use>& uses, const Kind& fresh, const Change& change)
{
    for (Use& use : uses) {
        if (auto* found = std::get_if<Kind>(&use)) {
            change(*found);
            return;
        }
    }
    Kind added = fresh;
    change(added);
    uses.emplace_back(std::move(added));
}

template <typename Kind>
void dropUse(std::vector<Use>& uses)
{
    std::erase_if(uses, [](const Use& use) { return std::holds_alternative<Kind>(use); });
}

/// Adds the fields to a form whose things have their uses under `member`.
template <typename Thing>
class UseFields
{
public:
    UseFields(FieldList<Thing>& form, const Thing& thing, std::vector<Use> Thing::*member)
        : form_(form), uses_(thing.*member), member_(member)
    {}

    void add()
    {
        addOven();
        addBurner();
        addAppliance();
        addVessel();
    }

private:
    static QString tr(const char* text)
    {
        return QCoreApplication::translate("RecipeOutline", text);
    }

    static OvenUse usualOven()
    {
        return {1, Celsius::degrees(170), Celsius::degrees(190), Celsius::degrees(180),
                OvenMode::Any};
    }

    void addOven()
    {
        const auto* oven = firstUse<OvenUse>(uses_);
        form_.add(
            FieldList<Thing>::plain("oven", tr("In an oven"), FieldKind::Switch, oven != nullptr),
            [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                if (std::get<bool>(value)) {
                    changeUse(thing.*member, usualOven(), [](OvenUse&) {});
                } else {
                    dropUse<OvenUse>(thing.*member);
                }
                return {};
            });
        if (oven == nullptr) {
            return;
        }
        addOvenDegrees("oven-low", tr("From"), oven->low, &OvenUse::low);
        addOvenDegrees("oven-high", tr("To"), oven->high, &OvenUse::high);
        addCelsius<Thing>(form_, "oven-prefer", tr("Best at"), oven->prefer.value_or(oven->low),
                          [member = member_](Thing& thing, Celsius value) {
                              changeUse(thing.*member, usualOven(),
                                        [value](OvenUse& use) { use.prefer = value; });
                          });
        Field shelves = FieldList<Thing>::plain("oven-shelves", tr("Shelves"), FieldKind::Whole,
                                                std::int64_t{oven->shelves});
        shelves.most = 20;
        form_.add(std::move(shelves),
                  [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                      changeUse(thing.*member, usualOven(), [&value](OvenUse& use) {
                          use.shelves = static_cast<int>(std::get<std::int64_t>(value));
                      });
                      return {};
                  });
        addOvenMode(*oven);
    }

    void addOvenDegrees(const char* key, const QString& label, Celsius now, Celsius OvenUse::*which)
    {
        addCelsius<Thing>(
            form_, key, label, now, [member = member_, which](Thing& thing, Celsius value) {
                changeUse(thing.*member, usualOven(), [&](OvenUse& use) { use.*which = value; });
            });
    }

    void addOvenMode(const OvenUse& oven)
    {
        Field mode = FieldList<Thing>::plain("oven-mode", tr("Heat"), FieldKind::Choice,
                                             std::to_string(static_cast<int>(oven.mode)));
        const std::vector<QString> names{tr("any"), tr("fan"), tr("top and bottom"), tr("grill"),
                                         tr("switched off")};
        for (std::size_t i = 0; i < names.size(); ++i) {
            mode.options.push_back({std::to_string(i), names[i]});
        }
        form_.add(std::move(mode),
                  [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                      changeUse(thing.*member, usualOven(), [&value](OvenUse& use) {
                          use.mode = static_cast<OvenMode>(std::stoi(std::get<std::string>(value)));
                      });
                      return {};
                  });
    }

    void addBurner()
    {
        const auto* burner = firstUse<BurnerUse>(uses_);
        addCentimetres<Thing>(form_, "burner", tr("On a burner, pan across"),
                              burner == nullptr ? Length{} : burner->pan,
                              [member = member_](Thing& thing, Length value) {
                                  if (value == Length{}) {
                                      dropUse<BurnerUse>(thing.*member);
                                  } else {
                                      changeUse(thing.*member, BurnerUse{},
                                                [value](BurnerUse& use) { use.pan = value; });
                                  }
                              });
        form_.help(tr("0: on no burner"));
    }

    void addAppliance()
    {
        const auto* appliance = firstUse<ApplianceUse>(uses_);
        form_
            .add(FieldList<Thing>::plain("appliance", tr("Appliance"), FieldKind::Line,
                                         appliance == nullptr ? std::string() : appliance->kind),
                 [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                     const std::string& kind = std::get<std::string>(value);
                     if (kind.empty()) {
                         dropUse<ApplianceUse>(thing.*member);
                     } else {
                         changeUse(thing.*member, ApplianceUse{},
                                   [&kind](ApplianceUse& use) { use.kind = kind; });
                     }
                     return {};
                 })
            .help(tr("like blender; empty: none"));
        if (appliance != nullptr) {
            addWashing<ApplianceUse>("appliance-washing", appliance->washing);
            addFilling<ApplianceUse>("appliance-filled", "appliance-full", appliance->filling);
        }
    }

    void addVessel()
    {
        const auto* vessel = firstUse<VesselUse>(uses_);
        form_
            .add(FieldList<Thing>::plain("vessel", tr("Vessel"), FieldKind::Line,
                                         vessel == nullptr ? std::string() : vessel->kind),
                 [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                     const std::string& kind = std::get<std::string>(value);
                     if (kind.empty()) {
                         dropUse<VesselUse>(thing.*member);
                     } else {
                         changeUse(thing.*member, VesselUse{},
                                   [&kind](VesselUse& use) { use.kind = kind; });
                     }
                     return {};
                 })
            .help(tr("like wide pan; empty: none"));
        if (vessel == nullptr) {
            return;
        }
        form_
            .add(FieldList<Thing>::plain("vessel-volume", tr("It holds at least"), FieldKind::Line,
                                         fieldText(vessel->volume)),
                 [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                     const auto room = readLitres(std::get<std::string>(value));
                     if (!room) {
                         return room.error();
                     }
                     changeUse(thing.*member, VesselUse{},
                               [&room](VesselUse& use) { use.volume = *room; });
                     return {};
                 })
            .help(tr("litres"));
        addWashing<VesselUse>("vessel-washing", vessel->washing);
        addFilling<VesselUse>("vessel-filled", "vessel-full", vessel->filling);
    }

    /// Only a step fills: a span holds what its steps have filled.
    template <typename Kind>
    void addFilling(const char* filled, const char* full, const std::optional<Filling>& now)
    {
        if constexpr (std::is_same_v<Thing, Step>) {
            form_
                .add(FieldList<Thing>::plain(filled, tr("Filled with"), FieldKind::Line,
                                             now ? fieldText(now->volume) : std::string()),
                     [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                         return setFilling<Kind>(thing.*member, std::get<std::string>(value));
                     })
                .help(tr("litres for all the recipe's portions: what the kitchen's holds then says "
                         "how many portions make a batch; may be left empty"));
            if (now) {
                addFull<Kind>(full, now->percent);
            }
        }
    }

    template <typename Kind>
    static Result<void> setFilling(std::vector<Use>& uses, const std::string& text)
    {
        std::optional<Litres> volume;
        if (text.find_first_not_of(' ') != std::string::npos) {
            const auto read = readLitres(text);
            if (!read) {
                return read.error();
            }
            volume = *read;
        }
        changeUse(uses, Kind{}, [&volume](Kind& use) {
            if (!volume) {
                use.filling.reset();
            } else {
                use.filling = Filling{*volume, use.filling.value_or(Filling{}).percent};
            }
        });
        return {};
    }

    template <typename Kind>
    void addFull(const char* key, int percent)
    {
        Field field = FieldList<Thing>::plain(key, tr("Full at most"), FieldKind::Whole,
                                              std::int64_t{percent});
        field.least = 1;
        field.most = 100;
        field.unit = QStringLiteral("%");
        form_
            .add(std::move(field),
                 [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                     changeUse(thing.*member, Kind{}, [&value](Kind& use) {
                         if (use.filling) {
                             use.filling->percent = static_cast<int>(std::get<std::int64_t>(value));
                         }
                     });
                     return {};
                 })
            .help(tr("of what it holds: foam and boiling need room"));
    }

    template <typename Kind>
    void addWashing(const char* key, Minutes now)
    {
        form_
            .add(FieldList<Thing>::plain(key, tr("Washing after"), FieldKind::Line, fieldText(now)),
                 [member = member_](Thing& thing, const FieldValue& value) -> Result<void> {
                     const auto washing = readDuration(std::get<std::string>(value));
                     if (!washing) {
                         return washing.error();
                     }
                     changeUse(thing.*member, Kind{},
                               [&washing](Kind& use) { use.washing = *washing; });
                     return {};
                 })
            .help(tr("0 where nobody else needs it"));
    }

    FieldList<Thing>& form_;
    const std::vector<Use>& uses_;
    std::vector<Use> Thing::*member_;
};

} // namespace suppertide::ui::recipe
