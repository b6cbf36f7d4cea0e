// The form by which names of ingredients are compared.
#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "core/food/ingredient.h"

namespace suppertide {

namespace {

/// Letters with accents that recipes have, as plain ones; UTF-8.
constexpr std::array<std::pair<std::string_view, std::string_view>, 30> plainLetters{{
    {"é", "e"}, {"è", "e"}, {"ê", "e"},  {"ë", "e"},  {"É", "e"}, {"È", "e"},
    {"à", "a"}, {"á", "a"}, {"â", "a"},  {"ä", "a"},  {"å", "a"}, {"Å", "a"},
    {"ç", "c"}, {"ñ", "n"}, {"ô", "o"},  {"ö", "o"},  {"ó", "o"}, {"ò", "o"},
    {"ø", "o"}, {"û", "u"}, {"ü", "u"},  {"ú", "u"},  {"ù", "u"}, {"î", "i"},
    {"ï", "i"}, {"í", "i"}, {"œ", "oe"}, {"æ", "ae"}, {"’", "'"}, {"ß", "ss"},
}};

std::string folded(std::string_view name)
{
    std::string result;
    for (std::size_t i = 0; i < name.size();) {
        const auto code = static_cast<unsigned char>(name[i]);
        const auto accent = code < 128
                                ? plainLetters.end()
                                : std::ranges::find_if(plainLetters, [&](const auto& letter) {
                                      return name.substr(i).starts_with(letter.first);
                                  });
        if (accent != plainLetters.end()) {
            result += accent->second;
            i += accent->first.size();
            continue;
        }
        const bool isBlank = std::isspace(code) != 0;
        if (!isBlank) {
            result += static_cast<char>(code < 128 ? std::tolower(code) : code);
        } else if (!result.empty() && result.back() != ' ') {
            result += ' ';
        }
        ++i;
    }
    while (!result.empty() && result.back() == ' ') {
        result.pop_back();
    }
    return result;
}

/// Rules that make a plural and its singular the same text; where English has no rule, the words
/// themselves.
std::string singular(std::string word)
{
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 8> irregular{{
        {"leaves", "leaf"},
        {"halves", "half"},
        {"loaves", "loaf"},
        {"chillies", "chilli"},
        {"chilies", "chilli"},
        {"chilis", "chilli"},
        {"chili", "chilli"},
        {"anchovies", "anchovy"},
    }};
    for (const auto& [plural, one] : irregular) {
        if (word == plural) {
            return std::string(one);
        }
    }
    const auto replaceEnd = [&word](std::size_t cut, std::string_view end) {
        return word.substr(0, word.size() - cut) + std::string(end);
    };
    if (word.size() < 4 || !word.ends_with('s') || word.ends_with("ss") || word.ends_with("us") ||
        word.ends_with("is")) {
        return word;
    }
    if (word.ends_with("ies")) {
        return replaceEnd(3, "y");
    }
    for (const std::string_view end : {"oes", "ches", "shes", "xes", "sses"}) {
        if (word.ends_with(end)) {
            return replaceEnd(2, "");
        }
    }
    return replaceEnd(1, "");
}

} // namespace

std::string nameKey(std::string_view name)
{
    std::string key = folded(name);
    const std::size_t last = key.rfind(' ');
    const std::size_t begin = last == std::string::npos ? 0 : last + 1;
    return key.substr(0, begin) + singular(key.substr(begin));
}

} // namespace suppertide
