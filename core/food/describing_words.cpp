#include "core/food/describing_words.h"

#include <algorithm>
#include <array>

namespace suppertide {

namespace {

constexpr std::array<std::string_view, 120> describing{
    "baked",        "balls",    "beaten",   "big",       "blanched",     "boiled",   "boiling",
    "boned",        "boneless", "bruised",  "chilled",   "chopped",      "chunky",   "clean",
    "cleaned",      "cold",     "cooked",   "cooled",    "cored",        "crisp",    "crumbled",
    "crushed",      "cubed",    "cut",      "debearded", "defrosted",    "deseeded", "diced",
    "drained",      "fat",      "filleted", "firm",      "fresh",        "generous", "good",
    "good-quality", "grated",   "halved",   "heaped",    "heaping",      "hot",      "hulled",
    "husked",       "iced",     "juicy",    "julienned", "large",        "lean",     "level",
    "little",       "lukewarm", "mashed",   "medium",    "medium-sized", "melted",   "mid-sized",
    "minced",       "organic",  "overripe", "packed",    "peeled",       "picked",   "pitted",
    "plump",        "podded",   "poached",  "pounded",   "pressed",      "puréed",   "quartered",
    "quality",      "raw",      "rinsed",   "ripe",      "roasted",      "rounded",  "sauteed",
    "scant",        "scrubbed", "seeded",   "segmented", "shaved",       "shelled",  "shredded",
    "sifted",       "skinless", "skinned",  "skin-on",   "sliced",       "slivered", "small",
    "snipped",      "soaked",   "soft",     "softened",  "squeezed",     "steamed",  "stemmed",
    "stoned",       "strained", "tender",   "thawed",    "thick",        "thin",     "thumb-sized",
    "toasted",      "torn",     "trimmed",  "uncooked",  "undrained",    "unpeeled", "unwaxed",
    "warm",         "warmed",   "washed",   "whipped",   "whisked",      "whole",    "extra-large",
    "young"};

constexpr std::array<std::string_view, 18> degrees{
    "very",    "finely", "roughly", "coarsely", "thinly", "thickly", "freshly", "lightly", "firmly",
    "loosely", "well",   "extra",   "quite",    "gently", "newly",   "tightly", "just",    "super"};

} // namespace

bool isDescribingWord(std::string_view word)
{
    return std::ranges::find(describing, word) != describing.end();
}

bool isDegreeWord(std::string_view word)
{
    return std::ranges::find(degrees, word) != degrees.end();
}

} // namespace suppertide
