#include "ui/models/reading.h"

#include <fmt/format.h>

#include <cctype>
#include <charconv>
#include <limits>
#include <utility>
#include <vector>

namespace suppertide::ui {

namespace {

constexpr std::int64_t largest = 1'000'000; // no kitchen has more of anything

Failure unreadable(std::string_view text, std::string_view examples)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” cannot be read here. Write it like {}.", text, examples), ""};
}

/// Splits into words; a figure and the letters after it are two ("2h30" → 2 h 30).
std::vector<std::string> wordsOf(std::string_view text)
{
    enum class Kind
    {
        Space,
        Figure,
        Letter
    };
    std::vector<std::string> words;
    Kind last = Kind::Space;
    for (const char letter : text) {
        const auto code = static_cast<unsigned char>(letter);
        const bool isFigure =
            std::isdigit(code) != 0 || letter == '.' || letter == ',' || letter == '/';
        const Kind kind = std::isspace(code) != 0 ? Kind::Space
                          : isFigure              ? Kind::Figure
                                                  : Kind::Letter;
        if (kind != Kind::Space) {
            if (kind != last) {
                words.emplace_back();
            }
            words.back() += static_cast<char>(code < 128 ? std::tolower(code) : code);
        }
        last = kind;
    }
    return words;
}

std::optional<std::int64_t> wholeOf(std::string_view digits)
{
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    const bool isRead = error == std::errc{} && end == digits.data() + digits.size();
    return isRead && !digits.empty() && value >= 0 && value <= largest ? std::optional(value)
                                                                       : std::nullopt;
}

/// "3", "2.5", "2,5", "1/3".
std::optional<Rational> figureOf(std::string_view word)
{
    const auto slash = word.find('/');
    if (slash != std::string_view::npos) {
        const auto above = wholeOf(word.substr(0, slash));
        const auto below = wholeOf(word.substr(slash + 1));
        return above && below && *below > 0 ? std::optional(Rational(*above, *below))
                                            : std::nullopt;
    }
    const auto point = word.find_first_of(".,");
    if (point == std::string_view::npos) {
        const auto whole = wholeOf(word);
        return whole ? std::optional(Rational(*whole)) : std::nullopt;
    }
    const std::string_view after = word.substr(point + 1);
    const auto whole = point == 0 ? std::optional<std::int64_t>(0) : wholeOf(word.substr(0, point));
    const auto part = wholeOf(after);
    if (!whole || !part || after.size() > 6) {
        return std::nullopt;
    }
    std::int64_t scale = 1;
    for (std::size_t i = 0; i < after.size(); ++i) {
        scale *= 10;
    }
    return Rational(*whole) + Rational(*part, scale);
}

/// Vulgar fractions as a cook may paste them; UTF-8.
constexpr std::pair<std::string_view, std::pair<int, int>> vulgar[] = {
    {"½", {1, 2}}, {"¼", {1, 4}}, {"¾", {3, 4}}, {"⅓", {1, 3}}, {"⅔", {2, 3}}, {"⅛", {1, 8}}};

std::string withPlainFractions(std::string_view text)
{
    std::string plain(text);
    for (const auto& [sign, fraction] : vulgar) {
        for (auto at = plain.find(sign); at != std::string::npos; at = plain.find(sign)) {
            plain.replace(at, sign.size(), fmt::format(" {}/{}", fraction.first, fraction.second));
        }
    }
    return plain;
}

/// Takes a fraction off the front of `words`: one figure, or a whole one and a fraction.
std::optional<Rational> takeFraction(std::vector<std::string>& words)
{
    if (words.empty()) {
        return std::nullopt;
    }
    auto value = figureOf(words.front());
    if (!value) {
        return std::nullopt;
    }
    words.erase(words.begin());
    if (!words.empty() && words.front().find('/') != std::string::npos) {
        const auto more = figureOf(words.front());
        if (!more || !value->isWhole()) {
            return std::nullopt;
        }
        words.erase(words.begin());
        value = *value + *more;
    }
    return value;
}

std::optional<std::int64_t> minutesIn(std::string_view unit)
{
    constexpr std::pair<std::string_view, std::int64_t> units[] = {
        {"min", 1},    {"mins", 1},    {"minute", 1},    {"minutes", 1},
        {"m", 1},      {"h", 60},      {"hr", 60},       {"hour", 60},
        {"hours", 60}, {"d", 24 * 60}, {"day", 24 * 60}, {"days", 24 * 60}};
    for (const auto& [name, minutes] : units) {
        if (name == unit) {
            return minutes;
        }
    }
    return std::nullopt;
}

std::string joined(const std::vector<std::string>& words)
{
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    return text;
}

/// A side of a mould in centimetres, to the millimetre.
std::optional<Length> takeSide(std::vector<std::string>& words)
{
    const auto side = takeFraction(words);
    const auto millimetres = side ? *side * Rational{10} : Rational{1, 2};
    return millimetres.isWhole() ? std::optional(Length::ofSmallest(millimetres.numerator()))
                                 : std::nullopt;
}

/// "round 24 cm", "square 20 cm", "20 × 30 cm".
std::optional<Mould> mouldOf(std::vector<std::string> words)
{
    const std::string shape = words.empty() ? "" : words.front();
    const bool isNamed = shape == "round" || shape == "square";
    if (isNamed) {
        words.erase(words.begin());
    }
    const auto first = takeSide(words);
    auto second = first;
    if (!isNamed && !words.empty() && (words.front() == "x" || words.front() == "×")) {
        words.erase(words.begin());
        second = takeSide(words);
    } else if (!isNamed) {
        return std::nullopt;
    }
    if (!words.empty() && words.front() == "cm") {
        words.erase(words.begin());
    }
    if (!first || !second || !words.empty()) {
        return std::nullopt;
    }
    return shape == "round" ? Mould{RoundMould{*first}} : Mould{RectangularMould{*first, *second}};
}

} // namespace

Result<Minutes> readDuration(std::string_view text)
{
    const std::vector<std::string> words = wordsOf(text);
    Rational total;
    std::int64_t unit = 1; // of a figure without one: minutes, or those after "1 h"
    bool isRead = !words.empty();
    for (std::size_t i = 0; i < words.size() && isRead; ++i) {
        const auto figure = figureOf(words[i]);
        const auto named = i + 1 < words.size() ? minutesIn(words[i + 1]) : std::optional(unit);
        isRead = figure && named;
        if (isRead) {
            total = total + *figure * Rational(*named);
            ++i;
        }
    }
    if (!isRead || !total.isWhole() || total > Rational(largest)) {
        return unreadable(text, "“45 min”, “1 h 30” or “2 days”");
    }
    return Minutes{total.rounded()};
}

Result<Rational> readFraction(std::string_view text)
{
    std::vector<std::string> words = wordsOf(withPlainFractions(text));
    const auto value = takeFraction(words);
    if (!value || !words.empty()) {
        return unreadable(text, "“8”, “2.5” or “2 1/2”");
    }
    return *value;
}

namespace {

/// Takes the other end of a range off the front of `words`: "–3", "- 3", "to 3".
std::optional<Rational> takeUpperEnd(std::vector<std::string>& words)
{
    const bool isJoint =
        words.size() > 1 && (words.front() == "-" || words.front() == "–" || words.front() == "to");
    if (!isJoint || !figureOf(words[1])) {
        return std::nullopt;
    }
    words.erase(words.begin());
    return takeFraction(words);
}

} // namespace

Result<Amount> readAmount(std::string_view text)
{
    std::vector<std::string> words = wordsOf(withPlainFractions(text));
    if (joined(words) == "to taste") {
        return Amount{Rational{0}, Unit::ToTaste};
    }
    const bool isOne = !words.empty() && (words.front() == "a" || words.front() == "one");
    if (isOne) {
        words.front() = "1";
    }
    const auto value = takeFraction(words);
    const auto upTo = takeUpperEnd(words);
    const std::string symbol = joined(words);
    const auto unit = symbol.empty() ? std::optional(Unit::Piece) : findUnitWord(symbol);
    if (!value || !unit || *unit == Unit::ToTaste || (upTo && *upTo <= *value)) {
        return unreadable(text, "“1.2 kg”, “250 ml”, “2 1/2 tbsp”, “1 US cup”, “2–3 cloves”, “3” "
                                "or “to taste”");
    }
    return Amount{*value, *unit, upTo};
}

Result<LineScaling> readLineScaling(std::string_view text)
{
    const std::vector<std::string> given = wordsOf(withPlainFractions(text));
    const auto after =
        [&given](const std::vector<std::string>& first) -> std::optional<std::vector<std::string>> {
        if (given.size() < first.size() || !std::equal(first.begin(), first.end(), given.begin())) {
            return std::nullopt;
        }
        return std::vector<std::string>(given.begin() + static_cast<std::ptrdiff_t>(first.size()),
                                        given.end());
    };
    const std::string whole = joined(given);
    if (whole.empty() || whole == "in proportion") {
        return LineScaling{InProportion{}};
    }
    if (whole == "the same" || whole == "fixed") {
        return LineScaling{SameForAny{}};
    }
    if (whole == "per batch") {
        return LineScaling{EachBatch{}};
    }
    if (whole == "square root") {
        return LineScaling{ByPower{}};
    }
    std::optional<LineScaling> rule;
    if (auto words = after({"per", "batch", "of"})) {
        if (const auto portions = takeFraction(*words); portions && words->empty()) {
            rule = EachBatch{*portions};
        }
    } else if (words = after({"power"}); words) {
        if (const auto exponent = takeFraction(*words); exponent && words->empty()) {
            rule = ByPower{*exponent};
        }
    } else if (words = after({"mould"}); words) {
        if (const auto mould = mouldOf(*words)) {
            rule = ByMould{*mould};
        }
    }
    if (!rule || !isPossible(*rule)) {
        return unreadable(text, "“in proportion”, “the same”, “per batch”, “per batch of 6”, "
                                "“square root”, “power 3/4”, “mould round 24 cm” or “mould 20 × 30 "
                                "cm”");
    }
    return *rule;
}

Result<Mould> readMould(std::string_view text)
{
    const auto mould = mouldOf(wordsOf(withPlainFractions(text)));
    if (!mould || !isPossible(*mould)) {
        return unreadable(text, "“round 24 cm”, “square 20 cm” or “20 × 30 cm”");
    }
    return *mould;
}

Result<Litres> readLitres(std::string_view text)
{
    std::vector<std::string> words = wordsOf(withPlainFractions(text));
    const auto value = takeFraction(words);
    const std::string unit = joined(words);
    const bool isLitres = unit.empty() || unit == "l" || unit == "litre" || unit == "litres";
    if (!value || !isLitres) {
        return unreadable(text, "“4” or “2.5” (litres)");
    }
    return Litres::ofSmallest((*value * Rational(10)).rounded());
}

std::string fieldText(Minutes duration)
{
    const std::int64_t minutes = duration.count();
    constexpr std::int64_t day = 24 * 60;
    std::string text;
    if (minutes >= day) {
        text = minutes / day == 1 ? "1 day" : fmt::format("{} days", minutes / day);
    }
    if (minutes % day >= 60) {
        text += fmt::format("{}{} h", text.empty() ? "" : " ", minutes % day / 60);
    }
    if (minutes % 60 != 0 || text.empty()) {
        text += fmt::format("{}{} min", text.empty() ? "" : " ", minutes % 60);
    }
    return text;
}

std::string fieldText(const Rational& fraction)
{
    if (fraction.isWhole()) {
        return fraction.text();
    }
    const Rational thousand = fraction * Rational(1000);
    if (thousand.isWhole()) {
        std::string text =
            fmt::format("{}.{:03}", thousand.numerator() / 1000, thousand.numerator() % 1000);
        text.erase(text.find_last_not_of('0') + 1);
        return text;
    }
    const std::int64_t whole = fraction.numerator() / fraction.denominator();
    const std::int64_t rest = fraction.numerator() % fraction.denominator();
    return whole == 0 ? fmt::format("{}/{}", rest, fraction.denominator())
                      : fmt::format("{} {}/{}", whole, rest, fraction.denominator());
}

std::string fieldText(const Amount& amount)
{
    if (amount.unit == Unit::ToTaste) {
        return "to taste";
    }
    std::string text = fieldText(amount.value);
    if (amount.upTo) {
        text += "–" + fieldText(*amount.upTo);
    }
    if (amount.unit == Unit::Piece) {
        return text;
    }
    const bool isMore = amount.most() > Rational{1};
    return fmt::format("{} {}", text, isMore ? pluralOf(amount.unit) : symbolOf(amount.unit));
}

namespace {

struct ScalingText
{
    std::string operator()(const InProportion& /*rule*/) const { return "in proportion"; }
    std::string operator()(const SameForAny& /*rule*/) const { return "the same"; }
    std::string operator()(const EachBatch& rule) const
    {
        return rule.portions ? "per batch of " + fieldText(*rule.portions) : "per batch";
    }
    std::string operator()(const ByPower& rule) const
    {
        return rule == ByPower{} ? "square root" : "power " + fieldText(rule.exponent);
    }
    std::string operator()(const ByMould& rule) const { return "mould " + nameOf(rule.mould); }
};

} // namespace

std::string fieldText(const LineScaling& scaling)
{
    return std::visit(ScalingText{}, scaling);
}

std::string fieldText(Litres room)
{
    return fieldText(Rational(room.smallest(), 10));
}

} // namespace suppertide::ui
