#include "core/food/name_words.h"

#include <algorithm>
#include <cctype>

#include "core/food/ingredient.h"

namespace suppertide {

std::vector<std::string> nameWords(std::string_view text)
{
    std::vector<std::string> words(1);
    for (const char each : nameKey(text)) {
        const auto code = static_cast<unsigned char>(each);
        if (code < 0x80 && std::isalnum(code) == 0) {
            words.emplace_back();
        } else {
            words.back() += each;
        }
    }
    std::erase(words, std::string());
    for (std::string& word : words) {
        word = nameKey(word);
    }
    return words;
}

bool hasWords(const std::vector<std::string>& whole, const std::vector<std::string>& part)
{
    return !part.empty() && std::ranges::search(whole, part).begin() != whole.end();
}

} // namespace suppertide
