#include "tests/support/broken/broken_json.h"

#include <limits>
#include <set>
#include <utility>

namespace suppertide::test {

namespace {

using nlohmann::json;
using Pointer = json::json_pointer;

void collect(const json& value, const Pointer& at, const std::string& form,
             std::vector<JsonSpot>& spots)
{
    spots.push_back({at, form});
    if (value.is_object()) {
        for (const auto& [key, member] : value.items()) {
            collect(member, at / key, form + "/" + key, spots);
        }
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            collect(value[i], at / i, form + "/*", spots);
        }
    }
}

Spoiling replacing(std::string name, json by)
{
    return {std::move(name), [by = std::move(by)](json& document, const Pointer& at) {
                if (document.at(at) == by) {
                    return false;
                }
                document.at(at) = by;
                return true;
            }};
}

bool takeAway(json& document, const Pointer& at)
{
    if (at.empty()) {
        return false;
    }
    json& parent = document.at(at.parent_pointer());
    if (parent.is_object()) {
        parent.erase(at.back());
    } else {
        parent.erase(std::stoul(at.back()));
    }
    return true;
}

/// An item of a list stands there once more, its id with it.
bool putTwice(json& document, const Pointer& at)
{
    if (at.empty() || !document.at(at.parent_pointer()).is_array()) {
        return false;
    }
    const json copy = document.at(at);
    document.at(at.parent_pointer()).push_back(copy);
    return true;
}

bool addAKey(json& document, const Pointer& at)
{
    if (!document.at(at).is_object()) {
        return false;
    }
    document.at(at)["unheard-of"] = 7;
    return true;
}

/// A list within a list within a list…
json deepList()
{
    json deep = json::array();
    for (int i = 0; i < 100; ++i) {
        deep = json::array({std::move(deep)});
    }
    return deep;
}

} // namespace

std::vector<JsonSpot> spotsOf(const json& document)
{
    std::vector<JsonSpot> spots;
    collect(document, Pointer(""), "", spots);
    return spots;
}

std::vector<JsonSpot> spotOfEachForm(const json& document)
{
    std::vector<JsonSpot> spots = spotsOf(document);
    std::set<std::string> seen;
    std::erase_if(spots, [&seen](const JsonSpot& spot) { return !seen.insert(spot.form).second; });
    return spots;
}

const std::vector<Spoiling>& spoilings()
{
    static const std::vector<Spoiling> all{
        replacing("null", nullptr),
        replacing("true", true),
        replacing("zero", 0),
        replacing("minus one", -1),
        replacing("a fraction", 0.5),
        replacing("a thousandth", 0.001),
        replacing("a huge number", std::numeric_limits<std::int64_t>::max()),
        replacing("a number beyond all", 1e300),
        replacing("an empty text", ""),
        replacing("nonsense", "no such thing"),
        replacing("marks and letters from right to left",
                  "\"”'\\ 🍲 \u200F\u0639\u0634\u0627\u0621"),
        replacing("control characters", "\x01\n\t\x7f"),
        replacing("a long text", std::string(20'000, 'x')),
        replacing("a day long past", "0001-01-01T00:00"),
        replacing("a day long past in UTC", "0001-01-01T00:00Z"),
        replacing("the last day", "9999-12-31T23:59"),
        replacing("the last day in UTC", "9999-12-31T23:59Z"),
        replacing("an empty list", json::array()),
        replacing("an empty object", json::object()),
        replacing("a deep list", deepList()),
        {"taken away", takeAway},
        {"there twice", putTwice},
        {"one key more", addAKey},
    };
    return all;
}

} // namespace suppertide::test
