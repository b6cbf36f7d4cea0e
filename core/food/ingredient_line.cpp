#include "core/food/ingredient_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/food/describing_words.h"
#include "core/food/ingredient.h"
#include "core/food/line_quantity.h"
#include "core/food/line_text.h"
#include "core/food/quantity_words.h"

namespace suppertide {

namespace {

constexpr std::size_t nowhere = std::string_view::npos;

class LineReader
{
public:
    LineReader(std::string_view line, MeasureSystem system) : line_(line), system_(system) {}

    IngredientLineReading read()
    {
        const std::string_view text = withoutBullet(line_);
        if (text.empty() || isHeading(text)) {
            result_.rest = trimmed(line_);
            return std::move(result_);
        }
        readBody(takeMore(std::string(text)));
        result_.note = fmt::format("{}", fmt::join(notes_, ", "));
        return std::move(result_);
    }

private:
    void note(std::string_view text)
    {
        text = trimmed(text);
        if (!text.empty()) {
            notes_.emplace_back(text);
        }
    }

    /// Cuts "plus more for dusting" out of the text, with a bracket or comma that is then empty.
    std::string takeMore(std::string text)
    {
        const std::size_t at = beginOfMore(text);
        if (at == nowhere) {
            return text;
        }
        std::size_t end = text.size();
        const bool isBracket = at > 0 && text[at - 1] == '(';
        if (isBracket) {
            end = std::min(text.find(')', at), text.size());
        }
        std::string_view more = std::string_view(text).substr(at, end - at);
        more = after(more, "plus").value_or(more);
        more = after(more, "and").value_or(more);
        for (const std::string_view word : {"a little", "a bit", "some", "more", "extra"}) {
            more = after(more, word).value_or(more);
        }
        result_.more = more.empty() ? "more" : more;
        std::string head = text.substr(0, isBracket ? at - 1 : at);
        const std::string tail = isBracket && end < text.size() ? text.substr(end + 1) : "";
        while (!head.empty() && (head.back() == ' ' || head.back() == ',' || head.back() == ';')) {
            head.pop_back();
        }
        return head + tail;
    }

    [[nodiscard]] std::size_t beginOfMore(std::string_view text) const
    {
        for (const std::string_view words :
             {"plus more", "plus extra", "plus a little more", "plus a little extra",
              "plus a bit more", "plus some more", "plus some extra", "and more", "and extra",
              "and a little more", "and a little extra"}) {
            const std::size_t at = findWords(text, words);
            if (at != nowhere && at > 0) {
                return at;
            }
        }
        // "plus 1 tbsp for sprinkling": an amount with a purpose.
        const std::size_t plus = findWords(text, "plus");
        if (plus == nowhere || plus == 0) {
            return nowhere;
        }
        const LineQuantity extra = quantityAt(*after(text.substr(plus), "plus"), system_);
        return extra.amount && after(extra.rest, "for") ? plus : nowhere;
    }

    void readBody(std::string_view text)
    {
        text = takePartOf(text);
        LineQuantity quantity = quantityAt(text, system_);
        result_.amount = quantity.amount;
        result_.also = quantity.also;
        notes_.insert(notes_.end(), quantity.notes.begin(), quantity.notes.end());
        std::string_view body = quantity.rest;
        if (!quantity.amount && quantity.notes.empty()) {
            body = takeTrailingAmount(body);
        }
        readPhrase(body);
    }

    /// "finely grated zest of 2 lemons", "the juice of half a lemon".
    std::string_view takePartOf(std::string_view text)
    {
        std::string_view rest = after(text, "the").value_or(text);
        std::string described;
        while (true) {
            const std::string word = lowerWord(wordAt(rest));
            const auto tail = after(rest, word);
            if (word.empty() || !tail || (!isDescribingWord(word) && !isDegreeWord(word))) {
                break;
            }
            described += (described.empty() ? "" : " ") + std::string(wordAt(rest));
            rest = *tail;
        }
        const std::string_view word = wordAt(rest);
        const auto part = partWord(word);
        const std::string_view tail = trimmedFront(rest.substr(word.size()));
        if (const auto of = part ? after(tail, "of") : std::nullopt) {
            note(described);
            result_.part = *part;
            return after(*of, "the").value_or(*of);
        }
        // "zest and juice of 1 lemon": the whole, and how it is used.
        const auto both = part ? after(tail, "and") : std::nullopt;
        const std::string_view second = both ? wordAt(*both) : std::string_view{};
        const auto of = both && partWord(second)
                            ? after(trimmedFront(both->substr(second.size())), "of")
                            : std::nullopt;
        if (of) {
            note(described);
            note(rest.substr(0, rest.find(second) + second.size()));
            return *of;
        }
        return text;
    }

    /// "Butter 100 g", "Eggs: 3", "Plain flour – 200 g".
    std::string_view takeTrailingAmount(std::string_view text)
    {
        for (std::size_t at = text.find(' '); at != nowhere; at = text.find(' ', at + 1)) {
            const std::string_view tail = trimmedFront(text.substr(at));
            const auto number = numberAt(tail);
            const auto amount =
                number && !number->isArticle ? loneAmount(tail, system_) : std::nullopt;
            if (!amount) {
                continue;
            }
            std::string_view name = trimmed(text.substr(0, at));
            const bool isParted = name.ends_with(':') || name.ends_with("–") ||
                                  name.ends_with("-") || name.ends_with("...") ||
                                  name.ends_with("…");
            if (amount->amount.unit == Unit::Piece && !isParted) {
                continue;
            }
            for (bool isTaken = true; isTaken;) {
                isTaken = false;
                for (const std::string_view mark : {":", ",", "–", "—", "-", ".", "…", " "}) {
                    if (name.ends_with(mark)) {
                        name.remove_suffix(mark.size());
                        isTaken = true;
                    }
                }
            }
            result_.amount = amount->amount;
            return name;
        }
        return text;
    }

    struct Segment
    {
        std::string_view text;
        bool isBracket = false;
    };

    /// Parted at commas, semicolons, dashes and brackets.
    static std::vector<Segment> segmentsOf(std::string_view text)
    {
        std::vector<Segment> segments;
        while (!text.empty()) {
            const std::size_t comma = text.find_first_of(",;(");
            const std::size_t dash = text.find(" – ");
            const std::size_t at = std::min({comma, dash, text.size()});
            if (!trimmed(text.substr(0, at)).empty()) {
                segments.push_back({trimmed(text.substr(0, at)), false});
            }
            if (at == text.size()) {
                break;
            }
            if (text[at] == '(') {
                const std::size_t close = std::min(text.find(')', at), text.size());
                segments.push_back({trimmed(text.substr(at + 1, close - at - 1)), true});
                text = text.substr(std::min(close + 1, text.size()));
            } else {
                text = text.substr(at == dash ? at + std::string_view(" – ").size() : at + 1);
            }
        }
        return segments;
    }

    void readPhrase(std::string_view body)
    {
        const std::vector<Segment> segments = segmentsOf(body);
        std::size_t next = 0;
        std::string_view phrase;
        while (next < segments.size() && phrase.empty()) {
            if (segments[next].isBracket) {
                readNote(segments[next].text);
            } else {
                phrase = cut(takeDescription(segments[next].text));
            }
            ++next;
        }
        for (; next < segments.size(); ++next) {
            // After a bracket the name may go on: "flour (sifted) for dusting" is a note all the
            // same.
            readNote(segments[next].text);
        }
        readName(phrase);
    }

    /// Takes describing words off the front, joined as they are ("ripe but firm").
    std::string_view takeDescription(std::string_view text)
    {
        const bool isTinned = result_.amount && (result_.amount->unit == Unit::Tin ||
                                                 result_.amount->unit == Unit::Jar);
        std::string_view rest = text;
        while (!rest.empty() && !isNameItself(rest, isTinned)) {
            const std::size_t length = descriptionAt(rest);
            if (length == 0) {
                break;
            }
            rest = trimmedFront(rest.substr(length));
        }
        note(text.substr(0, text.size() - rest.size()));
        return rest;
    }

    /// "large", "finely chopped", "freshly ground", "ripe but firm"; 0 if it is no description.
    static std::size_t descriptionAt(std::string_view text)
    {
        std::string_view rest = text;
        std::string word = lowerWord(wordAt(rest));
        bool isDegree = false;
        while (isDegreeWord(word)) {
            isDegree = true;
            rest = trimmedFront(rest.substr(word.size()));
            word = lowerWord(wordAt(rest));
        }
        const bool isGround = isDegree && word == "ground";
        if (!isDescribingWord(word) && !isGround) {
            return 0;
        }
        const std::size_t length = text.size() - rest.size() + word.size();
        const std::string_view tail = trimmedFront(text.substr(length));
        for (const std::string_view joint : {"and", "but"}) {
            const auto second = after(tail, joint);
            const std::size_t more = second ? descriptionAt(*second) : 0;
            if (more != 0) {
                return text.size() - second->size() + more;
            }
        }
        return length;
    }

    /// Cuts off what follows the name without a comma: " to taste", " for frying", " or oil".
    std::string_view cut(std::string_view phrase)
    {
        if (const std::size_t at = findWords(phrase, "to taste"); at != nowhere && at > 0) {
            readNote(phrase.substr(at));
            return trimmed(phrase.substr(0, at));
        }
        for (const std::string_view words :
             {"for", "to serve", "to garnish", "to finish", "to dust", "to decorate", "or",
              "at room temperature"}) {
            const std::size_t at = findWords(phrase, words);
            if (at != nowhere && at > 0) {
                note(phrase.substr(at));
                return trimmed(phrase.substr(0, at));
            }
        }
        for (const std::string_view joint : {"and", "plus", "+"}) {
            const std::size_t at = findWords(phrase, joint);
            if (at == nowhere || at == 0) {
                continue;
            }
            const std::string_view tail = trimmedFront(phrase.substr(at + joint.size()));
            const auto number = numberAt(tail);
            if (number && !number->isArticle) {
                result_.rest = phrase.substr(at);
                return trimmed(phrase.substr(0, at));
            }
        }
        return phrase;
    }

    /// A part after a comma or in brackets: a second measure, a part of the whole, or a note.
    void readNote(std::string_view text)
    {
        if (lowerWord(text) == "to taste") {
            if (!result_.amount) {
                result_.amount = Amount{Rational{0}, Unit::ToTaste};
            } else {
                note(text);
            }
            return;
        }
        if (const auto second = loneAmount(text, system_);
            second && !result_.also && result_.amount &&
            dimensionOf(second->amount.unit) != Dimension::ToTaste) {
            result_.also =
                second->isEach ? scaled(second->amount, result_.amount->most()) : second->amount;
            notes_.insert(notes_.end(), second->notes.begin(), second->notes.end());
            return;
        }
        const std::string_view word = wordAt(text);
        const auto part = partWord(word);
        const std::string_view tail = trimmedFront(text.substr(word.size()));
        if (part && lowerWord(tail) == "only") {
            result_.part = *part;
            return;
        }
        if (part && tail.empty() && lowerWord(word).ends_with("ed")) {
            result_.part = *part;
        }
        note(text);
    }

    void readName(std::string_view phrase)
    {
        phrase = takeUnitBehind(phrase);
        phrase = takePartBehind(phrase);
        result_.ingredient = phrase;
    }

    /// "garlic cloves", "bay leaves", "fennel bulbs".
    std::string_view takeUnitBehind(std::string_view phrase)
    {
        const std::size_t blank = phrase.rfind(' ');
        if (blank == nowhere || !result_.amount || result_.amount->unit != Unit::Piece) {
            return phrase;
        }
        static constexpr std::array units{Unit::Clove, Unit::Leaf,  Unit::Sprig,
                                          Unit::Stalk, Unit::Stick, Unit::Head,
                                          Unit::Sheet, Unit::Slice, Unit::Bunch};
        const auto unit = unitAt(phrase.substr(blank + 1), system_);
        if (!unit || std::ranges::find(units, unit->unit) == units.end()) {
            return phrase;
        }
        result_.amount->unit = unit->unit;
        return trimmed(phrase.substr(0, blank));
    }

    /// "lemon juice", "egg yolks", "mint leaves": of what has such a part. "Sesame seeds" and
    /// "apple juice" are things of their own.
    std::string_view takePartBehind(std::string_view phrase)
    {
        const std::size_t blank = phrase.rfind(' ');
        if (blank == nowhere || result_.part != IngredientPart::Whole) {
            return phrase;
        }
        const auto part = partWord(phrase.substr(blank + 1));
        const std::string_view base = trimmed(phrase.substr(0, blank));
        const Ingredient* whole = part ? findIngredient(base) : nullptr;
        if (whole == nullptr || *part == IngredientPart::Seeds || *part == IngredientPart::Bones) {
            return phrase;
        }
        const bool hasPart =
            std::ranges::find(whole->parts, *part, &PartMass::part) != whole->parts.end();
        const bool isGreen = *part == IngredientPart::Leaves || *part == IngredientPart::Stalks ||
                             *part == IngredientPart::Zest || *part == IngredientPart::Peel;
        if (!hasPart && (!isGreen || isNamed(phrase))) {
            return phrase;
        }
        result_.part = *part;
        return base;
    }

    static bool isNamed(std::string_view phrase) { return findIngredient(phrase) != nullptr; }

    std::string_view line_;
    MeasureSystem system_;
    IngredientLineReading result_;
    std::vector<std::string> notes_;
};

} // namespace

IngredientLineReading readIngredientLine(std::string_view line, MeasureSystem system)
{
    const std::string plain = withPlainBlanks(line);
    return LineReader(plain, system).read();
}

std::vector<IngredientLineReading> readIngredientLines(std::string_view text, MeasureSystem system)
{
    std::vector<IngredientLineReading> readings;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string_view line = text.substr(0, end);
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        if (!trimmed(withPlainBlanks(line)).empty()) {
            readings.push_back(readIngredientLine(line, system));
        }
    }
    return readings;
}

} // namespace suppertide
