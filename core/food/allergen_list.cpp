#include "core/food/allergen_list.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "core/base/table_text.h"

namespace suppertide::tables {

std::string_view allergenLists();
std::string_view allergenWords();

} // namespace suppertide::tables

namespace suppertide {

namespace {

constexpr std::array listWords{std::pair{std::string_view{"eu"}, AllergenList::Eu14},
                               std::pair{std::string_view{"uk"}, AllergenList::Uk14},
                               std::pair{std::string_view{"us"}, AllergenList::Us9}};

std::optional<AllergenList> findList(std::string_view word)
{
    const auto found =
        std::ranges::find(listWords, word, &std::pair<std::string_view, AllergenList>::first);
    return found == listWords.end() ? std::nullopt : std::optional{found->second};
}

Result<std::vector<Substance>> substancesCell(const TableRow& row)
{
    std::vector<Substance> substances;
    for (const std::string_view name : row.list("substances")) {
        const auto substance = findSubstance(name);
        if (!substance) {
            return row.fault("substances", "a list of substances");
        }
        substances.push_back(*substance);
    }
    return substances;
}

std::string lowerCase(std::string_view text)
{
    std::string lower(text);
    std::ranges::transform(lower, lower.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    return lower;
}

bool has(const std::vector<Substance>& substances, Substance substance)
{
    return std::ranges::find(substances, substance) != substances.end();
}

} // namespace

std::string_view nameOf(AllergenList list)
{
    switch (list) {
    case AllergenList::Eu14:
        return "EU (14)";
    case AllergenList::Uk14:
        return "UK (14)";
    case AllergenList::Us9:
        return "US (9)";
    }
    return "";
}

Result<std::vector<AllergenLabel>> readAllergenLabels(std::string_view table)
{
    const auto text = TableText::read(
        "allergen_lists", table, {"list", "number", "label", "substances", "source", "section"});
    if (!text) {
        return text.error();
    }
    std::vector<AllergenLabel> labels;
    for (const TableRow& row : text->rows()) {
        const auto list = findList(row.text("list"));
        auto substances = substancesCell(row);
        if (!list) {
            return row.fault("list", "eu, uk or us");
        }
        if (!substances) {
            return substances.error();
        }
        labels.push_back({*list, std::string(row.text("label")), std::move(*substances),
                          std::string(row.text("source")), std::string(row.text("section"))});
    }
    return labels;
}

Result<std::vector<AllergenWord>> readAllergenWords(std::string_view table)
{
    const auto text =
        TableText::read("allergen_words", table,
                        {"word", "substances", "us_tree_nut", "exempt_in", "source", "section"});
    if (!text) {
        return text.error();
    }
    std::vector<AllergenWord> words;
    for (const TableRow& row : text->rows()) {
        auto substances = substancesCell(row);
        if (!substances) {
            return substances.error();
        }
        AllergenWord word{std::string(row.text("word")),
                          std::move(*substances),
                          !row.isEmpty("us_tree_nut"),
                          row.text("us_tree_nut") == "same",
                          {},
                          std::string(row.text("source")),
                          std::string(row.text("section"))};
        for (const std::string_view name : row.list("exempt_in")) {
            const auto list = findList(name);
            if (!list) {
                return row.fault("exempt_in", "eu, uk or us");
            }
            word.exemptIn.push_back(*list);
        }
        words.push_back(std::move(word));
    }
    return words;
}

const std::vector<AllergenLabel>& allAllergenLabels()
{
    static const std::vector<AllergenLabel> labels = [] {
        auto read = readAllergenLabels(tables::allergenLists());
        ensures(read.has_value(), "the table of allergen lists can be read");
        return std::move(read).value();
    }();
    return labels;
}

const std::vector<AllergenWord>& allAllergenWords()
{
    static const std::vector<AllergenWord> words = [] {
        auto read = readAllergenWords(tables::allergenWords());
        ensures(read.has_value(), "the table of allergen words can be read");
        return std::move(read).value();
    }();
    return words;
}

std::vector<const AllergenLabel*> labelsOf(AllergenList list)
{
    std::vector<const AllergenLabel*> labels;
    for (const AllergenLabel& label : allAllergenLabels()) {
        if (label.list == list) {
            labels.push_back(&label);
        }
    }
    return labels;
}

const AllergenLabel* labelOf(AllergenList list, Substance substance)
{
    const auto found = std::ranges::find_if(allAllergenLabels(), [&](const AllergenLabel& label) {
        return label.list == list && has(label.substances, substance);
    });
    return found == allAllergenLabels().end() ? nullptr : &*found;
}

std::vector<std::string> labelsFor(AllergenList list, std::span<const Substance> substances)
{
    std::vector<std::string> names;
    for (const AllergenLabel* label : labelsOf(list)) {
        if (std::ranges::any_of(substances,
                                [&](Substance each) { return has(label->substances, each); })) {
            names.push_back(label->name);
        }
    }
    return names;
}

bool mustDeclareSulphites(AllergenList list, double milligramsPerKilogram)
{
    constexpr double limit = 10;
    return labelOf(list, Substance::Sulphite) != nullptr && milligramsPerKilogram > limit;
}

const AllergenWord* findAllergenWord(std::string_view word)
{
    const std::string lower = lowerCase(word);
    const auto found = std::ranges::find(allAllergenWords(), lower, &AllergenWord::word);
    return found == allAllergenWords().end() ? nullptr : &*found;
}

} // namespace suppertide
