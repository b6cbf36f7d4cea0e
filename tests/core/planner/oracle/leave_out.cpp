#include "tests/core/planner/oracle/leave_out.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

#include "core/exchange/problem_json.h"

namespace suppertide::test {

namespace {

using nlohmann::json;

/// Takes away from the document of a problem; the format's own words name what goes.
class LeavingOut
{
public:
    LeavingOut(json document, const std::set<std::string>& kept)
        : document_(std::move(document)), kept_(kept)
    {}

    json done()
    {
        for (const json& choice : listOf(document_, "choices")) {
            for (const json& option : choice["options"]) {
                for (const json& task : listOf(option, "tasks")) {
                    if (isOut("choice", choice)) {
                        gone_.insert(task.get<std::string>());
                    }
                }
            }
        }
        strip(document_, "choices", [&](const json& each) { return isOut("choice", each); });
        strip(document_, "tasks", [&](const json& each) { return isGone(each["id"]); });
        for (const auto& [key, kind] :
             {std::pair("lags", "lag"), {"demands", "demand"}, {"oven_demands", "oven"}}) {
            strip(document_, key, [&, kind = kind](const json& each) {
                return isOut(kind, each) || isGone(each["from"][0]) || isGone(each["to"][0]);
            });
        }
        for (json& task : membersOf("tasks")) {
            for (const char* part : {"window", "hands"}) {
                if (isOut(part, task)) {
                    task.erase(part);
                }
            }
        }
        forgetTheGone();
        return document_;
    }

private:
    static json listOf(const json& object, const char* key)
    {
        return object.value(key, json::array());
    }
    json& membersOf(const char* key)
    {
        static json none = json::array();
        return document_.contains(key) ? document_[key] : none;
    }
    template <typename Condition>
    static void strip(json& object, const char* key, const Condition& goes)
    {
        if (!object.contains(key)) {
            return;
        }
        json stays = json::array();
        for (const json& each : listOf(object, key)) {
            if (!goes(each)) {
                stays.push_back(each);
            }
        }
        object[key] = std::move(stays);
    }
    [[nodiscard]] bool isOut(const std::string& kind, const json& item) const
    {
        return kept_.count(kind + ":" + item["id"].get<std::string>()) == 0;
    }
    [[nodiscard]] bool isGone(const json& task) const
    {
        return gone_.count(task.get<std::string>()) > 0;
    }
    void forgetTheGone()
    {
        for (json& cook : membersOf("cooks")) {
            strip(cook, "table_after", [&](const json& each) { return isGone(each["event"]); });
        }
        if (!document_.contains("costs")) {
            return;
        }
        json& costs = document_["costs"];
        strip(costs, "quiet",
              [&](const json& each) { return each.contains("before") && isGone(each["before"]); });
        if (costs.contains("before")) {
            for (const std::string& task : gone_) {
                costs["before"]["starts"].erase(task);
            }
        }
    }

    json document_;
    const std::set<std::string>& kept_;
    std::set<std::string> gone_;
};

} // namespace

std::set<std::string> requirementsOf(const Problem& problem)
{
    std::set<std::string> ids;
    const auto add = [&](const std::string& kind, const auto& list) {
        for (const auto& each : list) {
            ids.insert(kind + ":" + each.id);
        }
    };
    add("lag", problem.lags);
    add("demand", problem.demands);
    add("oven", problem.ovenDemands);
    add("window", problem.tasks);
    add("choice", problem.choices);
    for (const Task& task : problem.tasks) {
        if (task.needsCooks()) {
            ids.insert("hands:" + task.id);
        }
    }
    return ids;
}

Problem withOnly(const Problem& problem, const std::set<std::string>& kept)
{
    const json fewer = LeavingOut(json::parse(writeProblem(problem)), kept).done();
    const auto read = readProblem(fewer.dump());
    if (!read) {
        ADD_FAILURE() << read.error().forCook << "\n" << fewer.dump(1);
        return problem;
    }
    return *read;
}

} // namespace suppertide::test
