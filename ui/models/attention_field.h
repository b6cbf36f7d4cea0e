// How much of a cook something takes, as a field: the four named grades, and any percentage that
// was set besides. Shared by the forms of steps and of house jobs.
#pragma once

#include "ui/models/field_list.h"

namespace suppertide::ui {

[[nodiscard]] QString attentionLabel();
/// "undivided", "hands-on", "keep an eye", "unattended", or "35 %".
[[nodiscard]] QString attentionName(Attention attention);
[[nodiscard]] std::vector<std::pair<Attention, QString>> attentionOptions(Attention now);

template <typename Thing>
void addAttention(FieldList<Thing>& form, Attention now, Attention Thing::*member)
{
    form.choice("attention", attentionLabel(), member, attentionOptions(now));
}

} // namespace suppertide::ui
