// Ovens: are programs within what the oven can, is every oven demand where it may be, in its mode
// and within its band, and is there room?
#include <algorithm>

#include "core/check/band_breach.h"
#include "core/check/judges.h"
#include "core/check/overload.h"

namespace suppertide {

namespace {

class OvenJudge
{
public:
    OvenJudge(const Evidence& evidence, OvenDemandIndex demand)
        : evidence_(&evidence), index_(demand), what_(&evidence.problem().ovenDemands[demand]),
          held_(evidence.held(*what_)), oven_(evidence.schedule().ovens[demand])
    {}

    Verdict judge()
    {
        if (oven_ && !evidence_->times().bothPresent(what_->from, what_->to)) {
            fail(BrokenHow::NotPresent);
        }
        if (!held_) {
            return std::move(verdict_);
        }
        if (!oven_) {
            fail(BrokenHow::Missing);
            return std::move(verdict_);
        }
        if (what_->ovens && std::ranges::find(*what_->ovens, *oven_) == what_->ovens->end()) {
            fail(BrokenHow::NotAllowed);
        }
        judgeGroup();
        judgeMode();
        if (what_->mode == modeOff) {
            judgeOff();
        }
        judgeBand();
        return std::move(verdict_);
    }

private:
    Broken& fail(BrokenHow how, std::optional<OvenDemandIndex> other = {})
    {
        Broken& broken = verdict_.emplace_back();
        broken.kind = BrokenKind::Oven;
        broken.how = how;
        broken.id = what_->id;
        std::vector<TaskIndex> tasks{what_->from.task, what_->to.task};
        if (other) {
            const OvenDemand& second = evidence_->problem().ovenDemands[*other];
            tasks.insert(tasks.end(), {second.from.task, second.to.task});
        }
        broken.tasks = evidence_->inOrderOfStart(std::move(tasks));
        broken.when = held_;
        broken.oven = oven_;
        broken.ovenDemand = index_;
        broken.otherOvenDemand = other;
        return broken;
    }

    /// All of a group are where the first of them (in file order) that holds an oven is.
    void judgeGroup()
    {
        for (const OvenDemandIndex other : evidence_->ties().sameGroup[index_]) {
            const auto& oven = evidence_->schedule().ovens[other];
            if (other == index_) {
                return;
            }
            if (oven && evidence_->held(evidence_->problem().ovenDemands[other])) {
                if (oven != oven_) {
                    fail(BrokenHow::OtherOven, other);
                }
                return;
            }
        }
    }

    /// Calls body(other, when) for all that hold the same oven, in file order.
    template <typename Body>
    void forEachNeighbour(Body body) const
    {
        for (const OvenDemandIndex other : evidence_->problem().ovenDemands.indices()) {
            if (other == index_ || evidence_->schedule().ovens[other] != oven_) {
                continue;
            }
            if (const auto when = evidence_->held(evidence_->problem().ovenDemands[other])) {
                body(other, *when);
            }
        }
    }

    /// Of two that collide, the later in file order is broken.
    void judgeMode()
    {
        if (!what_->mode) {
            return;
        }
        forEachNeighbour([this](OvenDemandIndex other, const Interval& when) {
            const auto& mode = evidence_->problem().ovenDemands[other].mode;
            if (other < index_ && mode && mode != what_->mode && when.overlaps(*held_)) {
                fail(BrokenHow::OtherMode, other).when = when.common(*held_);
            }
        });
    }

    void judgeOff()
    {
        const OvenCurve& curve = evidence_->curve(*oven_);
        const auto on = curve.firstOn(*held_);
        if (!on) {
            return;
        }
        Interval when{*on, held_->end};
        for (const OvenCurve::Knot& knot : curve.knots()) {
            if (knot.at > *on && !knot.setC) {
                when.end = std::min(when.end, knot.at);
                break;
            }
        }
        fail(BrokenHow::NotOff).when = when;
    }

    void judgeBand()
    {
        const OvenCurve& curve = evidence_->curve(*oven_);
        const auto failAt = [this](BrokenHow how, const BandBreach& breach, int bound) {
            Broken& broken = fail(how, collidesWith(how, breach.when));
            broken.when = breach.when;
            broken.asked = breach.worstMilliC;
            broken.allowed = std::int64_t{bound} * 1000;
        };
        if (const auto cold = breachBelow(curve, *held_, what_->acceptLow)) {
            failAt(BrokenHow::TooCold, *cold, what_->acceptLow);
        }
        if (const auto hot = breachAbove(curve, *held_, what_->acceptHigh)) {
            failAt(BrokenHow::TooHot, *hot, what_->acceptHigh);
        }
    }

    /// Whose band pulls the oven that way: one that is in it at that time, else the nearest before
    /// or after if the breach reaches to that end.
    [[nodiscard]] std::optional<OvenDemandIndex> collidesWith(BrokenHow how,
                                                              const Interval& breach) const
    {
        std::optional<OvenDemandIndex> nearest;
        Minutes distance = Minutes::max();
        forEachNeighbour([&](OvenDemandIndex other, const Interval& when) {
            const OvenDemand& demand = evidence_->problem().ovenDemands[other];
            const bool pulls = how == BrokenHow::TooCold ? demand.acceptHigh < what_->acceptLow
                                                         : demand.acceptLow > what_->acceptHigh;
            if (!pulls) {
                return;
            }
            const Minutes away =
                std::max({when.start - breach.end, breach.start - when.end, Minutes{0}});
            const bool reaches = when.overlaps(breach) ||
                                 (when.start >= breach.end && breach.end == held_->end) ||
                                 (when.end <= breach.start && breach.start == held_->start);
            if (reaches && away < distance) {
                nearest = other;
                distance = away;
            }
        });
        return nearest;
    }

    const Evidence* evidence_;
    OvenDemandIndex index_;
    const OvenDemand* what_;
    std::optional<Interval> held_;
    std::optional<OvenIndex> oven_;
    Verdict verdict_;
};

} // namespace

Verdict judgeProgram(const Evidence& evidence, OvenIndex oven)
{
    const Oven& what = evidence.problem().ovens[oven];
    const OvenProgram& program = evidence.schedule().programs[oven];
    Verdict verdict;
    for (std::size_t i = 0; i < program.size(); ++i) {
        const auto& set = program[i].setC;
        if (!set || (what.minC <= *set && *set <= what.maxC)) {
            continue;
        }
        Broken broken{BrokenKind::Program, BrokenHow::OutOfRange, what.id};
        broken.when = Interval{program[i].at, i + 1 < program.size() ? program[i + 1].at
                                                                     : evidence.problem().horizon};
        broken.asked = std::int64_t{*set} * 1000;
        broken.allowed = std::int64_t{*set < what.minC ? what.minC : what.maxC} * 1000;
        broken.oven = oven;
        verdict.push_back(std::move(broken));
    }
    return verdict;
}

Verdict judgeOvenDemand(const Evidence& evidence, OvenDemandIndex demand)
{
    return OvenJudge(evidence, demand).judge();
}

Verdict judgeShelves(const Evidence& evidence, OvenIndex oven)
{
    const Problem& problem = evidence.problem();
    std::vector<Use> uses;
    for (const OvenDemandIndex index : problem.ovenDemands.indices()) {
        const OvenDemand& demand = problem.ovenDemands[index];
        if (evidence.schedule().ovens[index] != oven) {
            continue;
        }
        if (const auto held = evidence.held(demand)) {
            uses.push_back({*held, demand.shelves, demand.from, demand.to});
        }
    }
    Verdict verdict;
    for (const Overload& overload : overloads(uses, problem.ovens[oven].shelves)) {
        Broken broken{BrokenKind::Shelves, BrokenHow::OverCapacity, problem.ovens[oven].id};
        broken.tasks = evidence.inOrderOfStart(tasksDuring(uses, overload.when));
        broken.when = overload.when;
        broken.asked = overload.most;
        broken.allowed = problem.ovens[oven].shelves;
        broken.oven = oven;
        verdict.push_back(std::move(broken));
    }
    return verdict;
}

} // namespace suppertide
