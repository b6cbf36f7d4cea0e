#include "core/assign/span_places.h"

#include <algorithm>
#include <functional>
#include <utility>

namespace suppertide {

SpanPlaces::SpanPlaces(const std::vector<OvenSpan>& spans, std::vector<StretchLengths> open)
    : open_(std::move(open)), places_(open_.size(), Places{})
{
    std::ranges::copy_if(spans, std::back_inserter(spans_),
                         [](const OvenSpan& span) { return span.first < span.last; });
    std::ranges::stable_sort(spans_, std::greater{}, &OvenSpan::last);
    for (const OvenSpan& span : spans_) {
        for (std::size_t k = 0; k < count; ++k) {
            const auto from = places_.begin() + static_cast<std::ptrdiff_t>(span.first);
            const auto to = places_.begin() + static_cast<std::ptrdiff_t>(span.last) + 1;
            if (std::all_of(from, to, [&](const Places& at) { return at[k] == nullptr; })) {
                std::for_each(from, to, [&](Places& at) { at[k] = &span; });
                break;
            }
        }
    }
}

/// `from` to `to`: the stretches of it that are still to be walked through.
StretchLengths SpanPlaces::within(const OvenSpan& span, std::int64_t lasted, std::size_t from,
                                  std::size_t to, StretchLengths own) const
{
    std::int64_t least = span.minutes - lasted;
    std::int64_t most = least;
    for (std::size_t i = from; i < to; ++i) {
        least -= open_[i].most;
        most -= open_[i].least;
    }
    return {std::max(own.least, least), std::min(own.most, most)};
}

StretchLengths SpanPlaces::lengthsForth(std::size_t stretch, const Lasted& lasted,
                                        StretchLengths own) const
{
    for (std::size_t k = 0; k < count; ++k) {
        if (const OvenSpan* span = places_[stretch][k]) {
            own = within(*span, lasted[k], stretch + 1, span->last + 1, own);
        }
    }
    return own;
}

StretchLengths SpanPlaces::lengthsBack(std::size_t stretch, const Lasted& lasted,
                                       StretchLengths own) const
{
    for (std::size_t k = 0; k < count; ++k) {
        if (const OvenSpan* span = places_[stretch][k]) {
            own = within(*span, lasted[k], span->first, stretch, own);
        }
    }
    return own;
}

SpanPlaces::Lasted SpanPlaces::forth(std::size_t stretch, const Lasted& lasted,
                                     std::int64_t length) const
{
    Lasted after{};
    for (std::size_t k = 0; k < count; ++k) {
        const OvenSpan* span = places_[stretch][k];
        after[k] = span != nullptr && span->last > stretch ? lasted[k] + length : 0;
    }
    return after;
}

SpanPlaces::Lasted SpanPlaces::back(std::size_t stretch, const Lasted& lasted,
                                    std::int64_t length) const
{
    Lasted before{};
    for (std::size_t k = 0; k < count; ++k) {
        const OvenSpan* span = places_[stretch][k];
        before[k] = span != nullptr && span->first < stretch ? lasted[k] + length : 0;
    }
    return before;
}

bool SpanPlaces::goesForth(std::size_t stretch) const
{
    return std::ranges::any_of(places_[stretch], [&](const OvenSpan* span) {
        return span != nullptr && span->last > stretch;
    });
}

bool SpanPlaces::goesBack(std::size_t stretch) const
{
    return std::ranges::any_of(places_[stretch], [&](const OvenSpan* span) {
        return span != nullptr && span->first < stretch;
    });
}

bool SpanPlaces::fit(std::size_t stretch, const Lasted& forth, const Lasted& back) const
{
    for (std::size_t k = 0; k < count; ++k) {
        const OvenSpan* span = places_[stretch][k];
        if (span != nullptr && span->first < stretch && forth[k] + back[k] != span->minutes) {
            return false;
        }
    }
    return true;
}

} // namespace suppertide
