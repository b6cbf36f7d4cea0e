#include <fmt/format.h>

#include <algorithm>

#include "core/problem/oven_curve.h"
#include "ui/models/scene_parts.h"
#include "ui/timeline/shown_degrees.h"

namespace suppertide::ui {

namespace {

ClashSeverity severityShown(Severity severity)
{
    switch (severity) {
    case Severity::Impossible:
        return ClashSeverity::Impossible;
    case Severity::Unsafe:
        return ClashSeverity::Unsafe;
    case Severity::Undesirable:
        return ClashSeverity::Undesirable;
    }
    return ClashSeverity::Impossible;
}

bool startsWith(const std::string& text, std::string_view start)
{
    return text.compare(0, start.size(), start) == 0;
}

class ClashPlacer
{
public:
    ClashPlacer(const SceneContext& context, Scene& scene) : context_(context), scene_(scene) {}

    void add(const Clash& clash, int number)
    {
        SceneClash shown;
        shown.number = number;
        shown.severity = severityShown(clash.severity);
        shown.sentence =
            sentence(context_.plan, *context_.source.occasion, clash, context_.source.style);
        shown.places = placesOf(clash);
        scene_.clashes.push_back(std::move(shown));
    }

private:
    [[nodiscard]] std::vector<ClashPlace> placesOf(const Clash& clash)
    {
        switch (clash.kind) {
        case ClashKind::OvenTemperature:
        case ClashKind::OvenRamp:
            return inOven(clash);
        case ClashKind::OvenSpace:
            return clash.oven ? atTasks(clash, ovenLane(context_.problem, *clash.oven))
                              : atTasks(clash, "oven:");
        case ClashKind::ColdSpace:
            return onLane(clash, clash.count ? countLane(context_.problem, *clash.count) : "");
        case ClashKind::Hands:
            return onLane(clash, clash.cook ? cookLane(context_.problem, *clash.cook) : "");
        case ClashKind::CookNotFree:
            return atTasks(clash, clash.cook ? cookLane(context_.problem, *clash.cook) : "cook:");
        case ClashKind::Burner:
        case ClashKind::Appliance:
        case ClashKind::Vessel:
        case ClashKind::Utensils:
        case ClashKind::UnwashedTool:
            return atTasks(
                clash, clash.pool ? "unit:" + context_.problem.pools[*clash.pool].id + "/" : "");
        case ClashKind::WaitTooShort:
        case ClashKind::WaitTooLong:
        case ClashKind::LateForServing:
        case ClashKind::OutsideWindow:
        case ClashKind::NothingChosen:
        case ClashKind::Allergen:
        case ClashKind::GuestLeftOut:
        case ClashKind::ContentsUnknown:
        case ClashKind::Unwatched:
        case ClashKind::FoodSafety:
            return atTasks(clash, "");
        }
        return {};
    }

    /// On the lane itself; around the tasks if that lane is not drawn.
    [[nodiscard]] std::vector<ClashPlace> onLane(const Clash& clash, const std::string& lane) const
    {
        if (!clash.when || !findLane(scene_, lane)) {
            return atTasks(clash, "");
        }
        return {ClashPlace{lane, std::nullopt, *clash.when, std::nullopt}};
    }

    /// Around each task, on the first of its lanes that begins like `lane`, else on the first that
    /// is drawn.
    [[nodiscard]] std::vector<ClashPlace> atTasks(const Clash& clash, const std::string& lane) const
    {
        std::vector<ClashPlace> places;
        for (const TaskIndex task : clash.tasks) {
            addPlace(places, clash, task, lane, std::nullopt);
        }
        return places;
    }

    void addPlace(std::vector<ClashPlace>& places, const Clash& clash, TaskIndex task,
                  const std::string& lane, const std::optional<DegreeRange>& degrees) const
    {
        const auto interval = context_.places.times().interval(task);
        const std::vector<Placement>& on = context_.places.of(task);
        if (!interval || on.empty()) {
            return;
        }
        const auto drawnOn = [&](const std::string& beginning) {
            return std::find_if(on.begin(), on.end(), [&](const Placement& placement) {
                return startsWith(placement.lane, beginning) && findLane(scene_, placement.lane);
            });
        };
        auto wanted = drawnOn(lane);
        if (wanted == on.end()) {
            wanted = drawnOn("");
        }
        if (wanted == on.end()) {
            return;
        }
        const Interval when = clash.when ? interval->common(*clash.when) : *interval;
        places.push_back({wanted->lane, context_.problem.tasks[task].id,
                          when.empty() ? *interval : when, degrees});
    }

    [[nodiscard]] std::vector<ClashPlace> inOven(const Clash& clash)
    {
        std::vector<ClashPlace> places;
        const std::string lane =
            clash.oven ? ovenLane(context_.problem, *clash.oven) : std::string("oven:");
        std::optional<DegreeRange> degrees;
        if (clash.kind == ClashKind::OvenTemperature && clash.asked != clash.allowed) {
            const auto [low, high] = std::minmax(clash.asked, clash.allowed);
            degrees = DegreeRange{Celsius::degrees(static_cast<int>(low)),
                                  Celsius::degrees(static_cast<int>(high))};
        }
        for (const auto& demand : clash.ovenDemands) {
            if (const auto task = demand ? context_.places.inOven(*demand) : std::nullopt) {
                addPlace(places, clash, *task, lane, degrees);
            }
            if (demand && clash.oven) {
                addAskedHeat(*clash.oven, *demand);
            }
        }
        return places.empty() ? atTasks(clash, lane) : places;
    }

    /// What a demand asks for where the oven's curve does not give it.
    void addAskedHeat(OvenIndex oven, OvenDemandIndex index)
    {
        const auto lane = findLane(scene_, ovenLane(context_.problem, oven));
        const OvenDemand& demand = context_.problem.ovenDemands[index];
        const auto when = context_.places.times().held(demand.from, demand.to);
        if (!lane || !when) {
            return;
        }
        const OvenCurve curve(context_.problem.ovens[oven], context_.plan.schedule.programs[oven]);
        const std::int64_t middle = curve.milliC(when->start + when->length() / 2) / 1000;
        const int asked = demand.prefer.value_or((demand.acceptLow + demand.acceptHigh) / 2);
        if (demand.acceptLow <= middle && middle <= demand.acceptHigh) {
            return;
        }
        const DemandSource& source = context_.formulation.ovenDemands[index];
        AskedHeat heat{
            {{when->start, Celsius::degrees(asked)}, {when->end, Celsius::degrees(asked)}},
            fmt::format("{} asks {}°", inSentence(source.dishName),
                        shownDegrees(Celsius::degrees(asked), context_.source.style.fahrenheit)),
            false};
        auto& kind = std::get<OvenLane>(scene_.lanes[*lane].kind);
        if (std::find(kind.asked.begin(), kind.asked.end(), heat) == kind.asked.end()) {
            kind.asked.push_back(std::move(heat));
        }
    }

    const SceneContext& context_;
    Scene& scene_;
};

} // namespace

void addClashes(const SceneContext& context, Scene& scene)
{
    ClashPlacer placer(context, scene);
    int number = 0;
    for (const Clash& clash : context.plan.clashes) {
        placer.add(clash, ++number);
    }
}

} // namespace suppertide::ui
