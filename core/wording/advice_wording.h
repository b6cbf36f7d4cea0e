// What core/advice finds, in sentences: why a dinner cannot be cooked, what would help and what
// that would change, why a step stands where it does.
#pragma once

#include <string>
#include <vector>

#include "core/advice/ways_out.h"
#include "core/advice/why_here.h"
#include "core/wording/wording.h"

namespace suppertide {

/// Why these requirements ("lag:l1") cannot all hold, in a few sentences of the food's names: what
/// each dish needs, in order of time, and where it fails. A line each.
[[nodiscard]] std::vector<std::string> conflictSentences(const Formulation& formulation,
                                                         const Occasion& occasion,
                                                         const std::vector<std::string>& conflict,
                                                         const ReadingStyle& style = {});

/// "Serve the main at 20:45, 15 min later."
[[nodiscard]] std::string changeSentence(const WayOut& way, const ReadingStyle& style = {});
/// What follows from it: which steps move and by how much, and the figures that change.
[[nodiscard]] std::string effectSentence(const WayOut& way, const ReadingStyle& style = {});
/// The same change as the words for Undo: "Serve the main later".
[[nodiscard]] std::string changeTitle(const WayOut& way);

/// "It could start 25 min earlier, at 17:15; before that Maren is busy with “Slice the potatoes”."
[[nodiscard]] std::string earlierSentence(const WhyHere& why, const Plan& plan,
                                          const Occasion& occasion, const ReadingStyle& style = {});
[[nodiscard]] std::string laterSentence(const WhyHere& why, const Plan& plan,
                                        const Occasion& occasion, const ReadingStyle& style = {});
/// How far it could go with what is tied to it; empty if that is no further.
[[nodiscard]] std::string alongSentence(const WhyHere& why);

} // namespace suppertide
