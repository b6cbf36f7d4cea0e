#include "core/assign/oven_choice.h"

#include <algorithm>
#include <limits>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

/// Far more than an evening's ovens need (measured: below 2,000); a hard stop for made-up ones.
constexpr std::int64_t mostSteps = 200'000;

/// Stays this near to each other in one oven are worth having there together.
constexpr Minutes nearby{60};

/// Stays that must be in one oven.
struct Group
{
    std::vector<std::size_t> members; // positions in the work
    PlanTime start;
    bool pinned = false;
};

class OvenSearch
{
public:
    OvenSearch(const IndexedVector<OvenIndex, Oven>& ovens, const std::vector<OvenWork>& work)
        : ovens_(ovens), work_(work), in_(ovens.size())
    {
        makeGroups();
        makeClashes();
    }

    OvenChoiceResult run();

private:
    struct Trial
    {
        std::size_t oven = 0;
        std::int64_t broken = 0;
        std::int64_t strangeness = 0; // less: fits better with what is there
    };

    void makeGroups();
    void makeClashes();
    void descend(std::size_t depth, std::int64_t broken);
    [[nodiscard]] bool clash(std::size_t oven, std::size_t a, std::size_t b) const
    {
        return clashes_[oven][a * work_.size() + b];
    }
    [[nodiscard]] Trial tried(const Group& group, std::size_t oven) const;
    [[nodiscard]] std::int64_t overloads(std::size_t oven, std::size_t item,
                                         const Group& group) const;
    [[nodiscard]] std::int64_t strangeness(std::size_t oven, std::size_t item) const;

    const IndexedVector<OvenIndex, Oven>& ovens_;
    const std::vector<OvenWork>& work_;
    std::vector<Group> groups_;
    std::vector<std::vector<bool>> clashes_; // by oven, pairs of work; the diagonal: by itself
    std::vector<std::vector<std::size_t>> in_;
    std::vector<std::size_t> chosen_; // by work
    std::vector<std::size_t> best_;
    std::int64_t leastBroken_ = std::numeric_limits<std::int64_t>::max();
    std::int64_t steps_ = 0;
};

void OvenSearch::makeGroups()
{
    for (std::size_t i = 0; i < work_.size(); ++i) {
        const auto found = std::find_if(groups_.begin(), groups_.end(), [&](const Group& group) {
            return work_[i].group && work_[group.members.front()].group == work_[i].group;
        });
        Group& group = found == groups_.end() ? groups_.emplace_back() : *found;
        const PlanTime start = work_[i].stay.during.start;
        group.start = group.members.empty() ? start : std::min(group.start, start);
        group.pinned = group.pinned || !work_[i].pinned.empty();
        group.members.push_back(i);
    }
    std::stable_sort(groups_.begin(), groups_.end(), [](const Group& a, const Group& b) {
        return a.pinned != b.pinned ? a.pinned : a.start < b.start;
    });
}

void OvenSearch::makeClashes()
{
    clashes_.resize(ovens_.size());
    const std::size_t n = work_.size();
    for (const OvenIndex index : ovens_.indices()) {
        const Oven& oven = ovens_[index];
        std::vector<bool>& clashes = clashes_[index.value()];
        clashes.resize(n * n);
        for (std::size_t a = 0; a < n; ++a) {
            const OvenWork& one = work_[a];
            clashes[a * n + a] =
                !ovenSuits(oven, one.stay) || ovenStartClash(oven, one.stay).has_value();
            for (std::size_t b = 0; b < a; ++b) {
                const OvenWork& other = work_[b];
                const bool modes = one.mode && other.mode && one.mode != other.mode &&
                                   one.stay.during.overlaps(other.stay.during);
                const bool apart = modes || ovenPairClash(oven, one.stay, other.stay).has_value();
                clashes[a * n + b] = apart;
                clashes[b * n + a] = apart;
            }
        }
    }
}

/// Whether the shelves run out at a minute that `item` shares, with its group in the oven too.
std::int64_t OvenSearch::overloads(std::size_t oven, std::size_t item, const Group& group) const
{
    const Interval during = work_[item].stay.during;
    std::vector<std::size_t> others = in_[oven];
    others.insert(others.end(), group.members.begin(), group.members.end());
    std::int64_t most = 0;
    for (const std::size_t peak : others) {
        const PlanTime at = std::max(during.start, work_[peak].stay.during.start);
        std::int64_t used = 0;
        for (const std::size_t other : others) {
            used += work_[other].stay.during.contains(at) && during.contains(at)
                        ? work_[other].shelves
                        : 0;
        }
        most = std::max(most, used);
    }
    return work_[item].shelves > 0 && most > ovens_[OvenIndex{oven}].shelves ? 1 : 0;
}

/// Degrees to the nearest stay that is near in time.
std::int64_t OvenSearch::strangeness(std::size_t oven, std::size_t item) const
{
    constexpr std::int64_t empty = 100; // as strange as this many degrees
    std::int64_t result = empty;
    const OvenStay& stay = work_[item].stay;
    for (const std::size_t other : in_[oven]) {
        const OvenStay& there = work_[other].stay;
        if (there.during.start <= stay.during.end + nearby &&
            stay.during.start <= there.during.end + nearby) {
            const std::int64_t apart =
                std::max({0, stay.acceptLow - there.acceptHigh, there.acceptLow - stay.acceptHigh});
            result = std::min(result, apart > 0 ? empty + apart : 0);
        }
    }
    return result;
}

OvenSearch::Trial OvenSearch::tried(const Group& group, std::size_t oven) const
{
    Trial trial;
    trial.oven = oven;
    for (const std::size_t item : group.members) {
        const OvenWork& work = work_[item];
        trial.broken += work.allowed[oven] ? 0 : 1;
        trial.broken += !work.pinned.empty() && work.pinned.front() != oven ? 1 : 0;
        trial.broken += clash(oven, item, item) ? 1 : 0;
        for (const std::size_t other : in_[oven]) {
            trial.broken += clash(oven, item, other) ? 1 : 0;
        }
        for (const std::size_t fellow : group.members) {
            trial.broken += fellow < item && clash(oven, item, fellow) ? 1 : 0;
        }
        trial.broken += overloads(oven, item, group);
        trial.strangeness += strangeness(oven, item);
    }
    return trial;
}

void OvenSearch::descend(std::size_t depth, std::int64_t broken)
{
    if (depth == groups_.size()) {
        leastBroken_ = broken;
        best_ = chosen_;
        return;
    }
    const Group& group = groups_[depth];
    std::vector<Trial> trials;
    for (std::size_t oven = 0; oven < in_.size(); ++oven) {
        trials.push_back(tried(group, oven));
    }
    std::stable_sort(trials.begin(), trials.end(), [](const Trial& a, const Trial& b) {
        return a.broken != b.broken ? a.broken < b.broken : a.strangeness < b.strangeness;
    });
    for (const Trial& trial : trials) {
        const bool enough = !best_.empty() && ++steps_ > mostSteps;
        if (broken + trial.broken >= leastBroken_ || enough) {
            return;
        }
        for (const std::size_t item : group.members) {
            chosen_[item] = trial.oven;
            in_[trial.oven].push_back(item);
        }
        descend(depth + 1, broken + trial.broken);
        in_[trial.oven].resize(in_[trial.oven].size() - group.members.size());
    }
}

OvenChoiceResult OvenSearch::run()
{
    chosen_.resize(work_.size());
    descend(0, 0);
    return {best_, leastBroken_};
}

} // namespace

OvenChoiceResult chooseOvens(const IndexedVector<OvenIndex, Oven>& ovens,
                             const std::vector<OvenWork>& work)
{
    expects(!ovens.empty(), "at least one oven");
    if (work.empty()) {
        return {};
    }
    return OvenSearch(ovens, work).run();
}

} // namespace suppertide
