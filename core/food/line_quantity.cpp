#include "core/food/line_quantity.h"

#include <algorithm>
#include <array>

#include "core/food/describing_words.h"
#include "core/food/quantity_words.h"

namespace suppertide {

namespace {

bool isMeasured(Unit unit)
{
    const Dimension dimension = dimensionOf(unit);
    return dimension == Dimension::Mass || dimension == Dimension::Volume ||
           dimension == Dimension::Distance;
}

bool isContainer(Unit unit)
{
    return unit == Unit::Tin || unit == Unit::Jar || unit == Unit::Packet;
}

/// "strips of lemon peel", "1 ball mozzarella": counted, and worth a note, but no unit of ours.
bool isShapeWord(std::string_view word)
{
    static constexpr std::array<std::string_view, 20> shapes{
        "ball",   "balls", "block",  "blocks", "chunk",   "chunks", "cube",
        "cubes",  "ear",   "ears",   "log",    "pieces",  "piece",  "strip",
        "strips", "wedge", "wedges", "bottle", "bottles", "curls"};
    return std::ranges::find(shapes, lowerWord(word)) != shapes.end();
}

/// Measures of which nobody can say how much they are.
bool isVagueMeasure(std::string_view word)
{
    static constexpr std::array<std::string_view, 13> vague{
        "dessertspoon", "dessertspoons", "glass", "glasses", "mug",   "mugs",      "ladle",
        "ladles",       "drizzle",       "glug",  "glugs",   "spray", "sprinkling"};
    return std::ranges::find(vague, lowerWord(word)) != vague.end();
}

class QuantityReader
{
public:
    /// `isAlone`: nothing to eat follows, so that "1 stick" is an amount.
    QuantityReader(std::string_view text, MeasureSystem system, bool isAlone)
        : whole_(text), text_(trimmedFront(text)), system_(system), isAlone_(isAlone)
    {}

    LineQuantity read()
    {
        takeHedges();
        if (takeVague() || takeUnnumbered()) {
            return finished();
        }
        const auto number = numberAt(text_);
        if (!number) {
            result_.notes.clear();
            result_.rest = whole_;
            return std::move(result_);
        }
        advance(number->length);
        takeAfter(*number);
        return finished();
    }

private:
    void advance(std::size_t length) { text_ = trimmedFront(text_.substr(length)); }

    bool take(std::string_view word)
    {
        const auto rest = after(text_, word);
        if (rest) {
            text_ = *rest;
        }
        return rest.has_value();
    }

    LineQuantity finished()
    {
        if (take("of")) {
            static_cast<void>(take("the"));
        }
        result_.rest = text_;
        return std::move(result_);
    }

    /// "about", "scant": before the number.
    void takeHedges()
    {
        bool isTaken = true;
        while (isTaken) {
            isTaken = false;
            for (const std::string_view hedge :
                 {"approximately", "approx", "about", "around", "roughly", "circa", "nearly",
                  "at least", "up to", "scant", "heaped", "level", "rounded", "generous", "heaping",
                  "just over", "just under"}) {
                const auto rest = after(text_, hedge);
                if (!rest) {
                    continue;
                }
                std::size_t length = hedge.size();
                length +=
                    length < text_.size() && text_[length] == '.' ? std::size_t{1} : std::size_t{0};
                const std::string_view behind = trimmedFront(text_.substr(length));
                if (numberAt(behind)) { // "level tablespoons" are read further on
                    result_.notes.emplace_back(text_.substr(0, length));
                    text_ = behind;
                    isTaken = true;
                }
                break;
            }
        }
    }

    /// "a few sprigs of", "some": no number, and none is made up.
    bool takeVague()
    {
        for (const std::string_view some :
             {"a few", "some", "a little", "several", "plenty of", "a lot of", "a couple of"}) {
            const auto rest = after(text_, some);
            if (!rest) {
                continue;
            }
            std::size_t length = some.size();
            const auto unit = unitAt(*rest, system_);
            if (unit && !isMeasured(unit->unit)) {
                length = text_.size() - rest->size() + unit->length;
            }
            result_.notes.emplace_back(text_.substr(0, length));
            advance(length);
            return true;
        }
        return takeVagueMeasure();
    }

    /// "3 dessertspoons", "a drizzle of".
    bool takeVagueMeasure()
    {
        const auto number = numberAt(text_);
        const std::size_t begin = number ? number->length : 0;
        const std::string_view tail = trimmedFront(text_.substr(begin));
        const std::string_view word = wordAt(tail);
        if (!isVagueMeasure(word)) {
            return false;
        }
        const std::size_t length = text_.size() - tail.size() + word.size();
        result_.notes.emplace_back(text_.substr(0, length));
        advance(length);
        return true;
    }

    /// "small bunch", "pinch of", "thumb-sized piece of": one, though nobody writes the figure.
    bool takeUnnumbered()
    {
        std::string_view rest = text_;
        const std::vector<std::string> described = takeDescription(rest);
        const auto unit = unitAt(rest, system_);
        if (unit && (dimensionOf(unit->unit) == Dimension::Inexact || unit->unit == Unit::Bunch)) {
            text_ = trimmedFront(rest.substr(unit->length));
            return takeOne(unit->unit, described);
        }
        const auto piece = after(rest, "piece");
        if (piece && after(*piece, "of")) {
            text_ = *piece;
            return takeOne(Unit::Piece, described);
        }
        return false;
    }

    bool takeOne(Unit unit, const std::vector<std::string>& described)
    {
        result_.amount = Amount{Rational{1}, unit};
        result_.notes.insert(result_.notes.end(), described.begin(), described.end());
        return true;
    }

    static std::vector<std::string> takeDescription(std::string_view& rest)
    {
        std::vector<std::string> described;
        while (isDescribingWord(lowerWord(wordAt(rest)))) {
            described.emplace_back(wordAt(rest));
            rest = trimmedFront(rest.substr(wordAt(rest).size()));
        }
        return described;
    }

    void takeAfter(const NumberRead& number)
    {
        if (takeSizeOfEach(number)) {
            return;
        }
        std::string_view rest = text_.starts_with('-') ? text_.substr(1) : text_;
        auto unit = unitAt(rest, system_);
        if (!unit) {
            takeCounted(number);
            return;
        }
        const std::string_view tail = trimmedFront(rest.substr(unit->length));
        if (tail.empty() && !isAlone_ && !isMeasured(unit->unit)) { // "5 cloves": the thing itself
            result_.amount = Amount{number.value, Unit::Piece, number.upTo};
            return;
        }
        text_ = tail;
        result_.amount = Amount{number.value, unit->unit, number.upTo};
        takeSum();
        takeContainerOf();
        takeSecondMeasure();
    }

    /// Words of size before a unit ("4 large cloves", "2 heaped tablespoons"), shapes, or the
    /// things themselves.
    void takeCounted(const NumberRead& number)
    {
        result_.amount = Amount{number.value, Unit::Piece, number.upTo};
        std::string_view rest = text_;
        const std::vector<std::string> described = takeDescription(rest);
        const auto unit = described.empty() ? std::nullopt : unitAt(rest, system_);
        const std::string_view tail = unit ? trimmedFront(rest.substr(unit->length)) : rest;
        if (unit && !tail.empty() && tail.front() != ',' && tail.front() != '(') {
            result_.amount->unit = unit->unit;
            result_.notes.insert(result_.notes.end(), described.begin(), described.end());
            text_ = tail;
            takeSum();
            takeSecondMeasure();
            return;
        }
        takeShape();
    }

    void takeShape()
    {
        const std::string_view word = wordAt(text_);
        const std::string_view tail = trimmedFront(text_.substr(word.size()));
        if (!isShapeWord(word) || tail.empty()) {
            return;
        }
        const std::string lower = lowerWord(word);
        if (lower != "piece" && lower != "pieces") {
            result_.notes.emplace_back(word);
        }
        text_ = tail;
        takeSecondMeasure();
    }

    /// "2 x 400 g tins", "1 (14.5-ounce) can", "One 3-pound chicken", "a 5 cm piece".
    bool takeSizeOfEach(const NumberRead& number)
    {
        std::string_view rest = text_;
        bool isSize = false;
        for (const std::string_view times : {"x", "×", "X"}) {
            const std::string_view tail =
                trimmedFront(rest.substr(std::min(rest.size(), times.size())));
            if (rest.starts_with(times) && numberAt(tail)) {
                rest = tail;
                isSize = true;
                break;
            }
        }
        const bool isBracket = !isSize && rest.starts_with('(');
        const std::size_t close = isBracket ? rest.find(')') : std::string_view::npos;
        if (isBracket && close == std::string_view::npos) {
            return false;
        }
        const std::string_view inner = isBracket ? rest.substr(1, close - 1) : rest;
        const auto size = measureAt(inner);
        if (!size || (isBracket && !size->rest.empty())) {
            return false;
        }
        text_ = trimmedFront(isBracket ? rest.substr(close + 1) : size->rest);
        result_.notes.insert(result_.notes.end(), size->notes.begin(), size->notes.end());
        if (dimensionOf(size->amount.unit) == Dimension::Distance) {
            result_.amount = scaled(size->amount, number.value);
            takeShape();
            return true;
        }
        result_.amount = Amount{number.value, Unit::Piece, number.upTo};
        result_.also = scaled(size->amount, number.upTo.value_or(number.value));
        takeContainerWord();
        return true;
    }

    struct Size
    {
        Amount amount;
        std::vector<std::string> notes;
        std::string_view rest;
    };

    /// A number with a measured unit: "400 g", "about 14.5-ounce".
    [[nodiscard]] std::optional<Size> measureAt(std::string_view text) const
    {
        Size size;
        text = trimmedFront(text);
        for (const std::string_view hedge : {"about", "approx.", "approx", "around"}) {
            if (text.starts_with(hedge)) {
                size.notes.emplace_back(hedge);
                text = trimmedFront(text.substr(hedge.size()));
                break;
            }
        }
        const auto number = numberAt(text);
        if (!number || number->isArticle) {
            return std::nullopt;
        }
        std::string_view rest = trimmedFront(text.substr(number->length));
        rest = rest.starts_with('-') ? trimmedFront(rest.substr(1)) : rest;
        const auto unit = unitAt(rest, system_);
        if (!unit || !isMeasured(unit->unit)) {
            return std::nullopt;
        }
        size.amount = {number->value, unit->unit, number->upTo};
        size.rest = trimmedFront(rest.substr(unit->length));
        return size;
    }

    /// "1 lb 2 oz", "1 tbsp + 1 tsp", "1 cup plus 2 tablespoons".
    void takeSum()
    {
        Amount& sum = *result_.amount;
        if (!isMeasured(sum.unit) || sum.upTo) {
            return;
        }
        std::string_view rest = text_;
        const bool isJoined = rest.starts_with('+') || after(rest, "plus") || after(rest, "and");
        if (rest.starts_with('+')) {
            rest = trimmedFront(rest.substr(1));
        }
        for (const std::string_view joint : {"plus", "and"}) {
            rest = after(rest, joint).value_or(rest);
        }
        const auto more = measureAt(rest);
        const bool isPurpose = more && (after(more->rest, "for") || after(more->rest, "to"));
        if (!more || isPurpose || !isConvertible(sum.unit, more->amount.unit) ||
            more->amount.upTo || sizeOf(more->amount.unit) > sizeOf(sum.unit) ||
            (!isJoined && sizeOf(more->amount.unit) == sizeOf(sum.unit))) {
            return;
        }
        const Amount first = *inUnit(sum, more->amount.unit);
        sum = {first.value + more->amount.value, more->amount.unit};
        text_ = more->rest;
    }

    /// "400 g tin", "250 g ball": what is counted is the tin.
    void takeContainerOf()
    {
        const Amount size = *result_.amount;
        if (!isMeasured(size.unit)) {
            return;
        }
        const auto unit = unitAt(text_, system_);
        const bool isContained = unit && isContainer(unit->unit);
        const std::string_view word = wordAt(text_);
        if (dimensionOf(size.unit) == Dimension::Distance) {
            takeShape();
        } else if (isContained || (isShapeWord(word) && word != "pieces" && word != "cubes")) {
            result_.also = size;
            result_.amount = Amount{Rational{1}, Unit::Piece};
            takeContainerWord();
        }
    }

    void takeContainerWord()
    {
        const auto unit = unitAt(text_, system_);
        if (unit && isContainer(unit->unit)) {
            result_.amount->unit = unit->unit;
            advance(unit->length);
        } else {
            takeShape();
        }
    }

    /// "(300 g)", "/ 10 oz".
    void takeSecondMeasure()
    {
        if (result_.also) {
            return;
        }
        if (text_.starts_with('/')) {
            if (const auto second = measureAt(text_.substr(1))) {
                result_.also = second->amount;
                text_ = second->rest;
            }
            return;
        }
        const std::size_t close = text_.starts_with('(') ? text_.find(')') : std::string_view::npos;
        if (close == std::string_view::npos) {
            return;
        }
        const auto second = loneAmount(text_.substr(1, close - 1), system_);
        if (!second || dimensionOf(second->amount.unit) == Dimension::ToTaste) {
            return;
        }
        const bool isEach = second->isEach || isContainer(result_.amount->unit);
        result_.also = isEach ? scaled(second->amount, result_.amount->most()) : second->amount;
        result_.notes.insert(result_.notes.end(), second->notes.begin(), second->notes.end());
        text_ = trimmedFront(text_.substr(close + 1));
    }

    std::string_view whole_;
    std::string_view text_;
    MeasureSystem system_;
    bool isAlone_;
    LineQuantity result_;
};

} // namespace

LineQuantity quantityAt(std::string_view text, MeasureSystem system)
{
    return QuantityReader(text, system, false).read();
}

std::optional<LoneAmount> loneAmount(std::string_view text, MeasureSystem system)
{
    text = trimmed(text);
    const auto ofEach = after(text, "each");
    LineQuantity read = QuantityReader(ofEach.value_or(text), system, true).read();
    if (!read.amount || read.also) {
        return std::nullopt;
    }
    LoneAmount result{*read.amount, std::move(read.notes), ofEach.has_value()};
    std::string_view rest = trimmed(read.rest);
    for (const std::string_view each : {"each", "apiece"}) {
        if (const auto tail = after(rest, each)) {
            rest = *tail;
            result.isEach = true;
        }
    }
    for (const std::string_view all : {"in total", "in all", "total", "altogether"}) {
        rest = after(rest, all).value_or(rest);
    }
    while (isDescribingWord(lowerWord(wordAt(rest)))) { // "1 small"
        result.notes.emplace_back(wordAt(rest));
        rest = trimmedFront(rest.substr(wordAt(rest).size()));
    }
    return rest.empty() ? std::optional{std::move(result)} : std::nullopt;
}

} // namespace suppertide
