// The forms of the page "Kitchen": one FieldList for each kind of thing.
#pragma once

#include "ui/models/field_list.h"

namespace suppertide::ui::kitchen {

[[nodiscard]] FieldList<Kitchen> kitchenForm(const Kitchen& kitchen);
[[nodiscard]] FieldList<KitchenOven> ovenForm(const KitchenOven& oven);
[[nodiscard]] FieldList<Burner> burnerForm(const Burner& burner);
[[nodiscard]] FieldList<Appliance> applianceForm(const Appliance& appliance);
[[nodiscard]] FieldList<Vessel> vesselForm(const Vessel& vessel);
[[nodiscard]] FieldList<ColdPlace> coldForm(const ColdPlace& cold);
[[nodiscard]] FieldList<TimeTaken> timeForm(const Kitchen& kitchen, const TimeTaken& time);
[[nodiscard]] FieldList<KitchenCook> cookForm(const KitchenCook& cook);
/// The hours of one day of the occasion.
[[nodiscard]] FieldList<HoursOfDay> dayForm(const HoursOfDay& day);

} // namespace suppertide::ui::kitchen
