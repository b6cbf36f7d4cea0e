#include "app/command_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>

namespace suppertide::app {

namespace {

struct VerbName
{
    std::string_view name;
    Verb verb;
    std::size_t least; // arguments
    std::size_t most;
};

constexpr std::size_t anyNumber = 1'000'000;

constexpr std::array verbNames{
    VerbName{"demo", Verb::Demo, 0, 0},
    VerbName{"check", Verb::Check, 1, 1},
    VerbName{"plan", Verb::Plan, 1, 1},
    VerbName{"print", Verb::Print, 1, 1},
    VerbName{"shop", Verb::Shop, 1, 1},
    VerbName{"compare", Verb::Compare, 1, 1},
    VerbName{"import", Verb::Import, 1, anyNumber},
    VerbName{"export", Verb::Export, 0, 1},
    VerbName{"help", Verb::Help, 0, 0},
};

Failure bad(std::string sentence)
{
    return {FailureKind::BadInput,
            std::move(sentence) + " “suppertide --help” lists what there is.",
            {}};
}

std::optional<int> positiveNumber(std::string_view text)
{
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value <= 0) {
        return std::nullopt;
    }
    return value;
}

Result<menus::Figure> figureNamed(const std::string& name)
{
    if (const auto figure = menus::findFigure(name)) {
        return *figure;
    }
    std::string all;
    for (const menus::Figure figure : menus::allFigures) {
        all += (all.empty() ? "" : ", ") + std::string(menus::keyOf(figure));
    }
    return bad(fmt::format("--by wants one of {}, not “{}”.", all, name));
}

/// Takes one option with its value; the name is known to be one.
Result<void> takeOption(CommandLine& line, std::string_view name, const std::string& value)
{
    if (name == "--library") {
        line.library = value;
    } else if (name == "--out") {
        line.out = value;
    } else if (name == "--pdf") {
        line.pdf = value;
    } else if (name == "--csv") {
        line.csv = value;
    } else if (name == "--log") {
        line.logLevels.push_back(value);
    } else if (name == "--by") {
        const auto figure = figureNamed(value);
        if (!figure) {
            return figure.error();
        }
        line.by = *figure;
    } else if (name == "--seconds") {
        line.seconds = positiveNumber(value);
        if (!line.seconds) {
            return bad(fmt::format("--seconds wants a whole number above 0, not “{}”.", value));
        }
    } else if (name == "--measures") {
        line.measures = findMeasureSystem(value == "us" ? "US customary" : value);
        if (!line.measures) {
            return bad(fmt::format("--measures is metric, us or imperial, not “{}”.", value));
        }
    } else if (value == "a4" || value == "letter") {
        line.paper = value == "a4" ? Paper::A4 : Paper::Letter;
    } else {
        return bad(fmt::format("--paper is a4 or letter, not “{}”.", value));
    }
    return {};
}

bool takesValue(std::string_view word)
{
    static constexpr std::array<std::string_view, 9> options{"--library", "--out",      "--pdf",
                                                             "--csv",     "--log",      "--seconds",
                                                             "--paper",   "--measures", "--by"};
    return std::ranges::find(options, word) != options.end();
}

Result<void> checkArguments(const CommandLine& line, std::string_view verb)
{
    const auto known = std::ranges::find(verbNames, line.verb, &VerbName::verb);
    if (known == verbNames.end()) {
        return {};
    }
    if (line.arguments.size() < known->least) {
        return bad(line.verb == Verb::Import ? "import wants at least one file."
                                             : fmt::format("{} wants the name of an occasion, or "
                                                           "an exchange file with one.",
                                                           verb));
    }
    if (line.arguments.size() > known->most) {
        return bad(fmt::format("“{}” is one word too many for {}; a name of several words is put "
                               "in quotes.",
                               line.arguments[known->most], verb));
    }
    if (line.verb == Verb::Export && !line.out) {
        return bad("export wants --out FILE.json.");
    }
    return {};
}

} // namespace

Result<CommandLine> parseCommandLine(const std::vector<std::string>& words)
{
    CommandLine line;
    std::string verb;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        if (word == "--help" || word == "-h") {
            line.verb = Verb::Help;
            return line;
        }
        if (word == "--version") {
            line.verb = Verb::Version;
            return line;
        }
        if (takesValue(word)) {
            if (i + 1 == words.size()) {
                return bad(fmt::format("{} wants a value after it.", word));
            }
            auto taken = takeOption(line, word, words[++i]);
            if (!taken) {
                return taken.error();
            }
        } else if (word.starts_with("-") && word.size() > 1) {
            return bad(fmt::format("There is no option “{}”.", word));
        } else if (verb.empty()) {
            const auto known = std::ranges::find(verbNames, word, &VerbName::name);
            if (known == verbNames.end()) {
                return bad(fmt::format("There is no command “{}”.", word));
            }
            verb = word;
            line.verb = known->verb;
        } else {
            line.arguments.push_back(word);
        }
    }
    auto checked = checkArguments(line, verb);
    if (!checked) {
        return checked.error();
    }
    return line;
}

std::string helpText()
{
    return R"(Suppertide plans a dinner of several courses, from shopping to serving.

suppertide                              open the window on your library
suppertide --library FILE [COMMAND …]   use this library file
suppertide demo                         open the window on a fresh copy of the demo;
                                        without a display, plan it and print it to a PDF
suppertide check OCCASION               list what clashes; exit 0 none, 1 some
suppertide plan OCCASION [--seconds S] [--out FILE.json]
                                        plan it; the plan is kept in the library, or in FILE
suppertide print OCCASION [--pdf FILE] [--paper a4|letter] [--measures metric|us|imperial]
                                        the per-hour plan, as text without --pdf; amounts as
                                        the recipes have them, or in those measures
suppertide shop OCCASION [--csv FILE] [--measures metric|us|imperial]
                                        what to buy, as text without --csv
suppertide compare OCCASION [--by FIGURE] [--seconds S] [--csv FILE]
                                        look at every menu that its alternatives make: which can be
                                        cooked here, whom they suit, what each would do to the
                                        evening; best first by hands-on, last-hour, ahead, steps,
                                        extra-steps, oven-changes, oven-on, energy, price, repeated
suppertide import FILE…                 take recipes, kitchens and occasions from files
suppertide export [OCCASION] --out FILE.json
                                        write the library, or one occasion with its recipes

OCCASION is a name in the library, or an exchange file with one occasion.
--log core.planner=debug                say more of one part
--help, --version

Exit status: 0 done, 1 clashes found, 2 bad input, 3 no plan found in time.
)";
}

} // namespace suppertide::app
