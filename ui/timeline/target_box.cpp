#include "ui/timeline/target_box.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

class Finder
{
public:
    Finder(const Scene& scene, const Geometry& geometry, std::optional<LaneBand> band)
        : scene_(scene), geometry_(geometry), band_(band)
    {}

    std::optional<Box> operator()(std::monostate /*nothing*/) const { return std::nullopt; }

    std::optional<Box> operator()(const BlockTarget& target) const
    {
        for (const BlockShape& shape : geometry_.blocks()) {
            if (isWanted(shape.band) && scene_.blocks[shape.block].id == target.id &&
                scene_.lanes[shape.lane].id == target.lane) {
                return shape.bounds();
            }
        }
        return std::nullopt;
    }

    std::optional<Box> operator()(const FlagTarget& target) const
    {
        const SceneServing* serving = findServing(scene_, target.course);
        if (serving == nullptr) {
            return std::nullopt;
        }
        const double x = geometry_.x(serving->time);
        const Strip& rail = geometry_.lanes().rail;
        return Box{x - flagNumberWidth, rail.top, x, rail.bottom()};
    }

    std::optional<Box> operator()(const PleatTarget& target) const
    {
        for (const TimeAxis::Piece& piece : geometry_.axis().pieces()) {
            if (piece.isFolded && piece.when.start == target.start) {
                return Box{geometry_.offset() + piece.x0, geometry_.lanesTop(),
                           geometry_.offset() + piece.x1, geometry_.lanesBottom()};
            }
        }
        return std::nullopt;
    }

    std::optional<Box> operator()(const TagTarget& target) const
    {
        for (const TagPlace& place : placeTags(scene_, geometry_)) {
            if (place.clash == target.clash && isWanted(place.band)) {
                return Box{place.x, place.y, place.x, place.y}.grown(leastTarget / 2);
            }
        }
        return std::nullopt;
    }

    std::optional<Box> operator()(const LaneTarget& target) const
    {
        const auto index = findLane(scene_, target.lane);
        const LaneBox* box = index ? boxOfLane(geometry_.lanes(), *index) : nullptr;
        if (box == nullptr || !isWanted(box->band)) {
            return std::nullopt;
        }
        const double right = std::min(geometry_.timeRight(), geometry_.x(scene_.horizon.end));
        return Box{geometry_.timeLeft(), box->strip.top, right, box->strip.bottom()};
    }

private:
    [[nodiscard]] bool isWanted(LaneBand band) const { return !band_ || *band_ == band; }

    const Scene& scene_;
    const Geometry& geometry_;
    std::optional<LaneBand> band_;
};

} // namespace

std::optional<Box> boxOfTarget(const Scene& scene, const Geometry& geometry, const Target& target,
                               std::optional<LaneBand> band)
{
    return std::visit(Finder{scene, geometry, band}, target);
}

} // namespace suppertide::ui
