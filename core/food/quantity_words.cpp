#include "core/food/quantity_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <string>
#include <utility>

namespace suppertide {

namespace {

constexpr std::array<std::pair<std::string_view, std::pair<int, int>>, 15> glyphs{{
    {"½", {1, 2}},
    {"⅓", {1, 3}},
    {"⅔", {2, 3}},
    {"¼", {1, 4}},
    {"¾", {3, 4}},
    {"⅕", {1, 5}},
    {"⅖", {2, 5}},
    {"⅗", {3, 5}},
    {"⅘", {4, 5}},
    {"⅙", {1, 6}},
    {"⅚", {5, 6}},
    {"⅛", {1, 8}},
    {"⅜", {3, 8}},
    {"⅝", {5, 8}},
    {"⅞", {7, 8}},
}};

constexpr std::array<std::pair<std::string_view, int>, 12> numberWords{{
    {"one", 1},
    {"two", 2},
    {"three", 3},
    {"four", 4},
    {"five", 5},
    {"six", 6},
    {"seven", 7},
    {"eight", 8},
    {"nine", 9},
    {"ten", 10},
    {"eleven", 11},
    {"twelve", 12},
}};

bool isDigit(char letter)
{
    return letter >= '0' && letter <= '9';
}

bool isLetter(char letter)
{
    const auto code = static_cast<unsigned char>(letter);
    return std::isalpha(code) != 0 || code >= 128;
}

/// A value and the text that it took.
struct Figure
{
    Rational value;
    std::size_t length = 0;
};

std::size_t digitsAt(std::string_view text)
{
    constexpr std::size_t most = 7;
    std::size_t count = 0;
    while (count < text.size() && isDigit(text[count])) {
        ++count;
    }
    return count <= most ? count : 0;
}

std::int64_t wholeOf(std::string_view digits)
{
    std::int64_t value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

std::optional<Figure> glyphAt(std::string_view text)
{
    for (const auto& [glyph, fraction] : glyphs) {
        if (text.starts_with(glyph)) {
            return Figure{Rational{fraction.first, fraction.second}, glyph.size()};
        }
    }
    return std::nullopt;
}

/// "1/2", "1⁄2".
std::optional<Figure> slashedAt(std::string_view text)
{
    constexpr std::string_view fractionSlash = "⁄";
    const std::size_t above = digitsAt(text);
    if (above == 0) {
        return std::nullopt;
    }
    const std::string_view rest = text.substr(above);
    const std::size_t slash = rest.starts_with('/')             ? 1
                              : rest.starts_with(fractionSlash) ? fractionSlash.size()
                                                                : 0;
    const std::size_t below = slash == 0 ? 0 : digitsAt(rest.substr(slash));
    if (below == 0 || below > 3 || wholeOf(rest.substr(slash, below)) == 0) {
        return std::nullopt;
    }
    const Rational value{wholeOf(text.substr(0, above)), wholeOf(rest.substr(slash, below))};
    return Figure{value, above + slash + below};
}

/// "0.75", "0,75"; three places after a comma are thousands: "1,000".
std::optional<Figure> decimalAt(std::string_view text)
{
    const std::size_t whole = digitsAt(text);
    if (whole == 0) {
        return std::nullopt;
    }
    const Rational value{wholeOf(text.substr(0, whole))};
    const bool hasPoint = whole < text.size() && (text[whole] == '.' || text[whole] == ',');
    const std::size_t places = hasPoint ? digitsAt(text.substr(whole + 1)) : 0;
    if (places == 0 || places > 3) {
        return Figure{value, whole};
    }
    const std::int64_t part = wholeOf(text.substr(whole + 1, places));
    const std::size_t length = whole + 1 + places;
    if (text[whole] == ',' && places == 3 && value > Rational{0}) {
        return Figure{value * Rational{1000} + Rational{part}, length};
    }
    constexpr std::array<std::int64_t, 4> powers{1, 10, 100, 1000};
    return Figure{value + Rational{part, powers.at(places)}, length};
}

/// "2 1/2", "2½", "1-1/2" and all that has one part only.
std::optional<Figure> figureAt(std::string_view text)
{
    if (const auto glyph = glyphAt(text)) {
        return glyph;
    }
    if (const auto fraction = slashedAt(text)) {
        return fraction;
    }
    const auto whole = decimalAt(text);
    if (!whole || !whole->value.isWhole()) {
        return whole;
    }
    std::size_t at = whole->length;
    while (at < text.size() && text[at] == ' ') {
        ++at;
    }
    if (at == whole->length && at < text.size() && text[at] == '-') {
        ++at;
    }
    const std::string_view rest = text.substr(at);
    const auto glyph = glyphAt(rest);
    const auto part = glyph ? glyph : slashedAt(rest);
    if (part && part->value < Rational{1}) {
        return Figure{whole->value + part->value, at + part->length};
    }
    return whole;
}

std::optional<NumberRead> wordNumberAt(std::string_view text)
{
    const auto read = [&text](std::string_view rest, const Rational& value, bool isArticle) {
        return NumberRead{value, std::nullopt, text.size() - rest.size(), isArticle};
    };
    for (const std::string_view words : {"half a dozen", "half dozen"}) {
        if (const auto rest = after(text, words)) {
            return read(*rest, Rational{6}, false);
        }
    }
    for (const std::string_view words : {"a dozen", "one dozen"}) {
        if (const auto rest = after(text, words)) {
            return read(*rest, Rational{12}, false);
        }
    }
    static constexpr std::array<std::pair<std::string_view, std::pair<int, int>>, 9> shares{{
        {"half of an", {1, 2}},
        {"half of a", {1, 2}},
        {"half an", {1, 2}},
        {"half a", {1, 2}},
        {"half", {1, 2}},
        {"a quarter of a", {1, 4}},
        {"quarter of a", {1, 4}},
        {"a third of a", {1, 3}},
        {"three quarters of a", {3, 4}},
    }};
    for (const auto& [words, share] : shares) {
        if (const auto rest = after(text, words)) {
            return read(*rest, Rational{share.first, share.second}, false);
        }
    }
    for (const std::string_view words : {"an", "a"}) {
        if (const auto rest = after(text, words)) {
            return read(*rest, Rational{1}, true);
        }
    }
    for (const auto& [word, value] : numberWords) {
        if (const auto rest = after(text, word)) {
            return read(*rest, Rational{value}, false);
        }
    }
    return std::nullopt;
}

/// What joins the ends of a range, with the blanks around it; 0 if nothing does.
std::size_t jointAt(std::string_view text)
{
    const std::string_view rest = trimmedFront(text);
    for (const std::string_view joint : {"–", "—", "-", "to ", "or "}) {
        if (rest.starts_with(joint)) {
            const std::string_view tail = trimmedFront(rest.substr(joint.size()));
            return text.size() - tail.size();
        }
    }
    return 0;
}

std::optional<NumberRead> betweenAt(std::string_view text)
{
    const auto first = after(text, "between");
    const auto low = first ? figureAt(*first) : std::nullopt;
    if (!low) {
        return std::nullopt;
    }
    const auto second = after(trimmedFront(first->substr(low->length)), "and");
    const auto high = second ? figureAt(*second) : std::nullopt;
    if (!high || high->value <= low->value) {
        return std::nullopt;
    }
    return NumberRead{low->value, high->value, text.size() - second->size() + high->length, false};
}

struct UnitWord
{
    std::string_view word; // lower case, singular; found in the plural too
    Unit metric;
    Unit us;
};

constexpr UnitWord same(std::string_view word, Unit unit)
{
    return {word, unit, unit};
}

constexpr std::array<UnitWord, 96> unitWords{{
    same("kilograms", Unit::Kilogram),
    same("kilogram", Unit::Kilogram),
    same("kilogrammes", Unit::Kilogram),
    same("kilos", Unit::Kilogram),
    same("kilo", Unit::Kilogram),
    same("kgs", Unit::Kilogram),
    same("kg", Unit::Kilogram),
    same("grammes", Unit::Gram),
    same("grams", Unit::Gram),
    same("gram", Unit::Gram),
    same("gms", Unit::Gram),
    same("gm", Unit::Gram),
    same("gr", Unit::Gram),
    same("g", Unit::Gram),
    same("millilitres", Unit::Millilitre),
    same("millilitre", Unit::Millilitre),
    same("milliliters", Unit::Millilitre),
    same("milliliter", Unit::Millilitre),
    same("ml", Unit::Millilitre),
    same("centilitres", Unit::Centilitre),
    same("cl", Unit::Centilitre),
    same("decilitres", Unit::Decilitre),
    same("dl", Unit::Decilitre),
    same("litres", Unit::Litre),
    same("litre", Unit::Litre),
    same("liters", Unit::Litre),
    same("liter", Unit::Litre),
    same("ltr", Unit::Litre),
    same("l", Unit::Litre),
    {"fluid ounces", Unit::ImperialFluidOunce, Unit::UsFluidOunce},
    {"fluid ounce", Unit::ImperialFluidOunce, Unit::UsFluidOunce},
    {"fl. oz", Unit::ImperialFluidOunce, Unit::UsFluidOunce},
    {"fl oz", Unit::ImperialFluidOunce, Unit::UsFluidOunce},
    {"floz", Unit::ImperialFluidOunce, Unit::UsFluidOunce},
    same("ounces", Unit::Ounce),
    same("ounce", Unit::Ounce),
    same("ozs", Unit::Ounce),
    same("oz", Unit::Ounce),
    same("pounds", Unit::Pound),
    same("pound", Unit::Pound),
    same("lbs", Unit::Pound),
    same("lb", Unit::Pound),
    {"tablespoons", Unit::Tablespoon, Unit::UsTablespoon},
    {"tablespoon", Unit::Tablespoon, Unit::UsTablespoon},
    {"tablespoonfuls", Unit::Tablespoon, Unit::UsTablespoon},
    {"tbsps", Unit::Tablespoon, Unit::UsTablespoon},
    {"tbsp", Unit::Tablespoon, Unit::UsTablespoon},
    {"tbs", Unit::Tablespoon, Unit::UsTablespoon},
    {"tblsp", Unit::Tablespoon, Unit::UsTablespoon},
    {"teaspoons", Unit::Teaspoon, Unit::UsTeaspoon},
    {"teaspoon", Unit::Teaspoon, Unit::UsTeaspoon},
    {"teaspoonfuls", Unit::Teaspoon, Unit::UsTeaspoon},
    {"tsps", Unit::Teaspoon, Unit::UsTeaspoon},
    {"tsp", Unit::Teaspoon, Unit::UsTeaspoon},
    {"cups", Unit::MetricCup, Unit::UsCup},
    {"cup", Unit::MetricCup, Unit::UsCup},
    {"pints", Unit::ImperialPint, Unit::UsPint},
    {"pint", Unit::ImperialPint, Unit::UsPint},
    {"pts", Unit::ImperialPint, Unit::UsPint},
    {"pt", Unit::ImperialPint, Unit::UsPint},
    {"quarts", Unit::ImperialQuart, Unit::UsQuart},
    {"quart", Unit::ImperialQuart, Unit::UsQuart},
    {"qts", Unit::ImperialQuart, Unit::UsQuart},
    {"qt", Unit::ImperialQuart, Unit::UsQuart},
    {"gallons", Unit::ImperialGallon, Unit::UsGallon},
    {"gallon", Unit::ImperialGallon, Unit::UsGallon},
    same("mm", Unit::Millimetre),
    same("centimetre", Unit::Centimetre),
    same("cm", Unit::Centimetre),
    same("inches", Unit::Inch),
    same("inch", Unit::Inch),
    same("clove", Unit::Clove),
    same("bunch", Unit::Bunch),
    same("sprig", Unit::Sprig),
    same("leaf", Unit::Leaf),
    same("slice", Unit::Slice),
    same("rasher", Unit::Slice),
    same("sheet", Unit::Sheet),
    same("head", Unit::Head),
    same("bulb", Unit::Head),
    same("stalk", Unit::Stalk),
    same("rib", Unit::Stalk),
    same("stick", Unit::Stick),
    same("tin", Unit::Tin),
    same("can", Unit::Tin),
    same("jar", Unit::Jar),
    same("packet", Unit::Packet),
    same("package", Unit::Packet),
    same("pack", Unit::Packet),
    same("sachet", Unit::Packet),
    same("envelope", Unit::Packet),
    same("pinch", Unit::Pinch),
    same("handful", Unit::Handful),
    same("knob", Unit::Knob),
    same("dash", Unit::Dash),
    same("drop", Unit::Drop),
}};

/// One letter is told by its case: T is a tablespoon, t a teaspoon.
std::optional<Unit> letterUnit(std::string_view word, MeasureSystem system)
{
    const bool isUs = system == MeasureSystem::UsCustomary;
    if (word == "T") {
        return isUs ? Unit::UsTablespoon : Unit::Tablespoon;
    }
    if (word == "t") {
        return isUs ? Unit::UsTeaspoon : Unit::Teaspoon;
    }
    if (word == "c" || word == "C") {
        return isUs ? Unit::UsCup : Unit::MetricCup;
    }
    return std::nullopt;
}

/// With the point that ends an abbreviation.
std::size_t withPoint(std::string_view text, std::size_t length)
{
    return length < text.size() && text[length] == '.' ? length + 1 : length;
}

bool endsWord(std::string_view text, std::size_t length)
{
    return length >= text.size() || !isLetter(text[length]);
}

/// The length of `word` or its plural at the front of the text; 0 if neither is.
std::size_t lengthOf(std::string_view text, const UnitWord& each)
{
    const std::string lower = lowerWord(text.substr(0, each.word.size() + 3));
    if (!lower.starts_with(each.word)) {
        return 0;
    }
    for (const std::string_view end : {"es", "s", ""}) {
        const std::size_t length = each.word.size() + end.size();
        if (std::string_view(lower).substr(each.word.size()).starts_with(end) &&
            endsWord(text, length)) {
            return length;
        }
    }
    return 0;
}

} // namespace

std::string_view trimmedFront(std::string_view text)
{
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) {
        text.remove_prefix(1);
    }
    return text;
}

std::string_view trimmed(std::string_view text)
{
    text = trimmedFront(text);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) {
        text.remove_suffix(1);
    }
    return text;
}

std::string_view wordAt(std::string_view text)
{
    return text.substr(0, text.find_first_of(" \t,;:()"));
}

std::string lowerWord(std::string_view word)
{
    std::string lower(word);
    std::ranges::transform(lower, lower.begin(), [](unsigned char letter) {
        return static_cast<char>(letter < 128 ? std::tolower(letter) : letter);
    });
    return lower;
}

std::optional<std::string_view> after(std::string_view text, std::string_view word)
{
    if (lowerWord(text.substr(0, word.size())) != word || !endsWord(text, word.size())) {
        return std::nullopt;
    }
    return trimmedFront(text.substr(word.size()));
}

std::optional<NumberRead> numberAt(std::string_view text)
{
    if (const auto range = betweenAt(text)) {
        return range;
    }
    const auto first = figureAt(text);
    auto read = first ? std::optional(NumberRead{first->value, std::nullopt, first->length, false})
                      : wordNumberAt(text);
    if (!read || read->isArticle) {
        return read;
    }
    // After a word ("one or two") the blank is taken already.
    const std::string_view rest = text.substr(read->length);
    const std::size_t joint = jointAt(rest);
    if (joint == 0) {
        return read;
    }
    const auto second = figureAt(rest.substr(joint));
    const auto word = second ? std::nullopt : wordNumberAt(rest.substr(joint));
    const bool isWord = word && !word->isArticle;
    if (second && second->value > read->value) {
        read->upTo = second->value;
        read->length += joint + second->length;
    } else if (isWord && word->value > read->value) {
        read->upTo = word->value;
        read->length += joint + word->length;
    }
    return read;
}

std::optional<UnitRead> unitAt(std::string_view text, MeasureSystem system)
{
    const std::string_view word = text.substr(0, text.find_first_of(" \t.,;:()-/"));
    if (const auto unit = letterUnit(word, system)) {
        return UnitRead{*unit, withPoint(text, word.size())};
    }
    if (const auto leaves = after(text, "leaves")) {
        return UnitRead{Unit::Leaf, std::string_view("leaves").size()};
    }
    if (const auto splash = after(text, "splash")) {
        return UnitRead{Unit::Dash, std::string_view("splash").size()};
    }
    for (const UnitWord& each : unitWords) {
        if (const std::size_t length = lengthOf(text, each)) {
            return UnitRead{system == MeasureSystem::UsCustomary ? each.us : each.metric,
                            withPoint(text, length)};
        }
    }
    return std::nullopt;
}

} // namespace suppertide
