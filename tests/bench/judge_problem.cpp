// Judges schedules of problems from files, for comparison with another reading of the format:
//     judge_problem PROBLEM.json SCHEDULE.json
//     judge_problem --pairs LIST        (a line a pair: PROBLEM.json, a tab, SCHEDULE.json)
// For each pair: the broken requirements as kind:id, sorted, each once, then "cost N", on one line.
// Files that cannot be read give "malformed: " and the reason. Exit status 0, or 2 for a bad
// command.
#include <fstream>
#include <iostream>
#include <map>
#include <set>
#include <string>

#include "core/check/check.h"
#include "core/exchange/problem_json.h"

namespace suppertide {

namespace {

std::string judged(const Problem& problem, const std::string& scheduleFile)
{
    const auto schedule = loadSchedule(scheduleFile, problem);
    if (!schedule) {
        return "malformed: " + schedule.error().forCook;
    }
    std::set<std::string> names;
    for (const Broken& broken : check(problem, *schedule)) {
        names.insert(broken.name());
    }
    std::string line;
    for (const std::string& name : names) {
        line += name + " ";
    }
    return line + "cost " + std::to_string(costOf(problem, *schedule).total());
}

class ProblemCache
{
public:
    const Result<Problem>& problem(const std::string& file)
    {
        auto known = problems_.find(file);
        if (known == problems_.end()) {
            known = problems_.emplace(file, loadProblem(file)).first;
        }
        return known->second;
    }

private:
    std::map<std::string, Result<Problem>> problems_;
};

void judgePair(ProblemCache& cache, const std::string& problemFile, const std::string& scheduleFile)
{
    const auto& problem = cache.problem(problemFile);
    std::cout << (problem ? judged(*problem, scheduleFile)
                          : "malformed: " + problem.error().forCook)
              << '\n';
}

} // namespace

} // namespace suppertide

int main(int count, char** words)
{
    suppertide::ProblemCache cache;
    if (count == 3 && std::string(words[1]) == "--pairs") {
        std::ifstream list(words[2]);
        for (std::string line; std::getline(list, line);) {
            const auto tab = line.find('\t');
            suppertide::judgePair(cache, line.substr(0, tab), line.substr(tab + 1));
        }
        return 0;
    }
    if (count != 3) {
        std::cerr << "judge_problem PROBLEM.json SCHEDULE.json, or --pairs LIST\n";
        return 2;
    }
    suppertide::judgePair(cache, words[1], words[2]);
    return 0;
}
