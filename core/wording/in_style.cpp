// Temperatures within words that a recipe or a kitchen brings, as the user reads them.
#include <fmt/format.h>

#include <array>
#include <charconv>
#include <optional>

#include "core/wording/wording.h"

namespace suppertide {

namespace {

bool isDigit(char letter)
{
    return letter >= '0' && letter <= '9';
}

/// A whole number at the end of `text`, with what joins it to another one before it.
struct TrailingNumber
{
    std::size_t begin = 0;
    int celsius = 0;
};

std::optional<TrailingNumber> numberAtEnd(std::string_view text)
{
    constexpr std::string_view minus = "−";
    constexpr std::size_t mostDigits = 4;
    std::size_t begin = text.size();
    while (begin > 0 && isDigit(text[begin - 1])) {
        --begin;
    }
    TrailingNumber number{begin, 0};
    const bool isNumber = begin < text.size() && text.size() - begin <= mostDigits &&
                          (begin == 0 || (text[begin - 1] != '.' && text[begin - 1] != ','));
    if (!isNumber) {
        return std::nullopt;
    }
    std::from_chars(text.data() + begin, text.data() + text.size(), number.celsius);
    if (text.substr(0, begin).ends_with(minus)) {
        number.begin -= minus.size();
        number.celsius = -number.celsius;
    }
    return number;
}

std::string degreesText(int celsius, const ReadingStyle& style)
{
    const std::string text = temperatureText(celsius, style);
    return text.substr(0, text.find(' '));
}

/// `before` is what stands before " °C"; its last number, or range of two, is turned into °F.
std::optional<std::string> converted(std::string_view before, const ReadingStyle& style)
{
    constexpr std::array<std::string_view, 4> joints{"–", "-", " to ", " and "};
    const auto last = numberAtEnd(before);
    if (!last) {
        return std::nullopt;
    }
    const std::string high = temperatureText(last->celsius, style);
    const std::string_view rest = before.substr(0, last->begin);
    for (const std::string_view joint : joints) {
        if (rest.ends_with(joint)) {
            const std::string_view head = rest.substr(0, rest.size() - joint.size());
            if (const auto first = numberAtEnd(head)) {
                return fmt::format("{}{}{}{}", head.substr(0, first->begin),
                                   degreesText(first->celsius, style), joint, high);
            }
        }
    }
    return fmt::format("{}{}", rest, high);
}

} // namespace

std::string inStyle(const std::string& text, const ReadingStyle& style)
{
    constexpr std::string_view unit = " °C";
    if (!style.fahrenheit) {
        return text;
    }
    std::string result;
    std::size_t at = 0;
    while (true) {
        const std::size_t end = text.find(unit, at);
        if (end == std::string::npos) {
            return result + text.substr(at);
        }
        const std::string before = text.substr(at, end - at);
        const auto turned = converted(before, style);
        result += turned ? *turned : before + std::string(unit);
        at = end + unit.size();
    }
}

} // namespace suppertide
