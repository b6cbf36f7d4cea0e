// Things held from one step to another (formulate rule 5).
#include <algorithm>

#include "core/plan/tied_points.h"

namespace suppertide {

namespace {

class SpanWriter
{
public:
    SpanWriter(Evening& evening, std::size_t making, const SharedTie<Span>& shared)
        : evening_(evening), index_(making), making_(evening.makings[making]), span_(shared.tie),
          method_(shared.method)
    {}

    /// One thing for each batch that it begins with, held until the last that it ends with.
    void write(const std::vector<TiedPair>& pairs)
    {
        std::vector<Tied> begins;
        for (const TiedPair& pair : pairs) {
            if (std::ranges::find(begins, pair.from) == begins.end()) {
                begins.push_back(pair.from);
            }
        }
        for (const Tied& from : begins) {
            std::vector<Tied> ends;
            for (const TiedPair& pair : pairs) {
                if (pair.from == from) {
                    ends.push_back(pair.to);
                }
            }
            writeFrom(from, ends);
        }
    }

private:
    [[nodiscard]] std::string idFor(const Tied& from) const
    {
        const Batch& batch = making_.batches[from.batch.value_or(0)];
        const std::string number = batch.number > 0 ? "#" + std::to_string(batch.number) : "";
        return evening_.prefix(making_, making_.steps[batch.step]) + "/" + span_.id.text() + number;
    }

    void writeFrom(const Tied& start, const std::vector<Tied>& ends)
    {
        const std::string id = idFor(start);
        const TaskPoint from =
            conditional(evening_, index_, method_, start.point, ends.front().point);
        const TaskPoint until = ends.size() == 1 ? ends.front().point : lastOf(ends, id);
        DemandSource source = demandSource(making_, Rule::Spans, "", span_.text);
        if (const auto* oven = std::get_if<OvenUse>(&span_.use)) {
            holdShelf(*oven, start, ends, from, until, id);
        } else {
            auto demands = hold(evening_, span_.use, from, until, id, source);
            rememberWashing(std::move(demands), from, until);
        }
        const auto* oven = std::get_if<OvenUse>(&span_.use);
        const bool isOn = oven != nullptr ? oven->mode != OvenMode::Off
                                          : std::holds_alternative<BurnerUse>(span_.use);
        if (isOn) {
            keepWatch(evening_, from, until, id, source);
        }
    }

    /// An event after all of them; nothing else holds it back.
    TaskPoint lastOf(const std::vector<Tied>& ends, const std::string& id)
    {
        TaskSource source;
        source.role = TaskRole::KeepTo;
        source.rule = Rule::Spans;
        source.dish = making_.dish->id;
        source.dishName = making_.name;
        const TaskIndex last = evening_.draft.addEvent(id + ".over", std::move(source));
        for (const Tied& end : ends) {
            evening_.draft.addLag(end.point, startOf(last), Gap::atLeast(Minutes{0}),
                                  orderSource(making_, Rule::Spans));
        }
        return startOf(last);
    }

    /// The shelf stays taken between a hot start and a lower finish, in the one oven.
    void holdShelf(const OvenUse& oven, const Tied& start, const std::vector<Tied>& ends,
                   const TaskPoint& from, const TaskPoint& until, const std::string& id)
    {
        const OvenDemandIndex held =
            holdOven(evening_, oven, from, until, id,
                     demandSource(making_, Rule::Spans, "oven", span_.text));
        join(held, start);
        for (const Tied& end : ends) {
            join(held, end);
        }
    }

    void join(OvenDemandIndex held, const Tied& end)
    {
        if (end.batch) {
            const auto step = evening_.ovenOf.find({index_, *end.batch});
            if (step != evening_.ovenOf.end()) {
                joinOvens(evening_, held, step->second);
            }
        }
    }

    void rememberWashing(std::vector<DemandIndex> demands, const TaskPoint& from,
                         const TaskPoint& until)
    {
        KitchenThing thing;
        Minutes washing{0};
        if (const auto* appliance = std::get_if<ApplianceUse>(&span_.use)) {
            thing = thingOf(evening_, ResourceKind::Appliance, appliance->kind);
            washing = appliance->washing;
        } else if (const auto* vessel = std::get_if<VesselUse>(&span_.use)) {
            thing = thingOf(evening_, ResourceKind::Vessel, vessel->kind);
            washing = vessel->washing;
        } else {
            return;
        }
        evening_.washes.push_back(
            {index_, std::nullopt, thing, std::move(demands), washing, from, until});
    }

    Evening& evening_;
    std::size_t index_;
    const Making& making_;
    const Span& span_;
    const std::optional<MethodKey>& method_;
};

} // namespace

void addSpans(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        for (const SharedTie<Span>& shared : sharedSpans(evening.makings[making])) {
            SpanWriter(evening, making, shared)
                .write(tiedPairs(evening, making, shared.tie.from, shared.tie.to, shared.variants));
        }
    }
}

} // namespace suppertide
