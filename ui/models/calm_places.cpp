#include "ui/models/calm_places.h"

#include <QCoreApplication>

#include <algorithm>
#include <cstdlib>

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("CalmPlaces", text);
}

} // namespace

QString calmName(int calm)
{
    const std::array<QString, calmPlaces.size()> names{
        tr("straight from the stove"), tr("a bit of both"), tr("sitting with the guests")};
    const auto* nearest = std::ranges::min_element(
        calmPlaces, {}, [calm](int place) { return std::abs(place - calm); });
    return names.at(static_cast<std::size_t>(nearest - calmPlaces.begin()));
}

int nextCalmPlace(int calm, int direction)
{
    if (direction > 0) {
        const auto* next = std::ranges::upper_bound(calmPlaces, calm);
        return next == calmPlaces.end() ? calm : *next;
    }
    const auto* at = std::ranges::lower_bound(calmPlaces, calm);
    return at == calmPlaces.begin() ? calm : *(at - 1);
}

QString wishName(Wish wish)
{
    switch (wish) {
    case Wish::None:
        return tr("none");
    case Wish::Some:
        return tr("some");
    case Wish::Much:
        return tr("much");
    }
    return {};
}

} // namespace suppertide::ui
