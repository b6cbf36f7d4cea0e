// Ways to spoil a JSON document at each of its places, one at a time: for tests of everything that
// reads files which a person may have edited.
#pragma once

#include <nlohmann/json.hpp>

#include <functional>
#include <string>
#include <vector>

namespace suppertide::test {

/// A place in a document, and its form: where every list index is a star, so that the steps of a
/// recipe share one.
struct JsonSpot
{
    nlohmann::json::json_pointer pointer;
    std::string form;
};

/// All places, the whole document first.
[[nodiscard]] std::vector<JsonSpot> spotsOf(const nlohmann::json& document);
/// The first place of each form.
[[nodiscard]] std::vector<JsonSpot> spotOfEachForm(const nlohmann::json& document);

/// One way to spoil a value; gives whether it could be done to this one.
struct Spoiling
{
    std::string name;
    std::function<bool(nlohmann::json& document, const nlohmann::json::json_pointer& at)> apply;
};

/// Each wrong type, numbers and texts out of all reason, what is there taken away or there twice,
/// a key that nobody knows.
[[nodiscard]] const std::vector<Spoiling>& spoilings();

} // namespace suppertide::test
