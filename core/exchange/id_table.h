// IdTable: the ids of one list while a file is read, each with its position.
#pragma once

#include <string>
#include <unordered_map>

#include "core/exchange/json_reader.h"

namespace suppertide {

template <typename Index>
class IdTable
{
public:
    /// `what` names one of the list in a message: "task".
    explicit IdTable(std::string what) : what_(std::move(what)) {}

    /// Gives the next id of the list its position; a fault of `at` if it stands there already.
    void add(const std::string& id, const JsonFields& at)
    {
        if (!positions_.emplace(id, Index{positions_.size()}).second) {
            at.fault("this id stands twice in its list");
        }
    }
    /// The position of `id`; the first at a fault, which is noted at `at`.
    [[nodiscard]] Index find(const std::string& id, const JsonCursor& at) const
    {
        const auto found = positions_.find(id);
        if (found == positions_.end()) {
            at.fault("there is no " + what_ + " “" + id + "”");
            return Index{};
        }
        return found->second;
    }
    [[nodiscard]] Index read(const JsonCursor& at) const { return find(at.text(), at); }

private:
    std::string what_;
    std::unordered_map<std::string, Index> positions_;
};

} // namespace suppertide
