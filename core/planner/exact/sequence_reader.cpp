#include "core/planner/exact/sequence_reader.h"

#include <algorithm>
#include <utility>

namespace suppertide::exact {

namespace {

using engine::Trail;

bool isEmpty(const OvenStretch& stretch)
{
    return stretch.low <= -SettingLevels::unbounded;
}

} // namespace

SequenceReader::SequenceReader(std::vector<HeldStay> stays, std::int64_t forgets)
    : stays_(std::move(stays)), forgets_(forgets)
{}

/// In the middle of those that are possible.
std::vector<HeldStay> SequenceReader::atLikelyTimes(const StartDifferences& differences,
                                                    const Trail& trail) const
{
    std::vector<HeldStay> result = stays_;
    const engine::Term& zero = stays_.front().from;
    const auto middle = [&](const engine::Term& term) {
        return (std::int64_t{differences.least(trail, zero, term)} +
                differences.most(trail, zero, term)) /
               2;
    };
    for (HeldStay& stay : result) {
        const std::int64_t from = middle(stay.from);
        stay.stay.during = interval(from, std::max(from + 1, middle(stay.to)));
    }
    return result;
}

std::optional<OvenSequence> SequenceReader::ofSome(const std::vector<HeldStay>& some,
                                                   const StartDifferences& differences,
                                                   const Trail& trail) const
{
    auto result = possibleSequence(some, differences, trail);
    if (result) {
        for (OvenStretch& stretch : result->box.stretches) {
            stretch.most = isEmpty(stretch) ? std::min(stretch.most, forgets_) : stretch.most;
            stretch.least = std::min(stretch.least, stretch.most);
        }
    }
    return result;
}

StretchLengths SequenceReader::lengthsNow(std::size_t stretch, const StartDifferences& differences,
                                          const Trail& trail) const
{
    const auto& [from, to] = sequence_->ends[stretch];
    const std::int64_t longest = differences.most(trail, from, to);
    const std::int64_t most =
        isEmpty(sequence_->box.stretches[stretch]) ? std::min(longest, forgets_) : longest;
    return {std::min<std::int64_t>(differences.least(trail, from, to), most), most};
}

/// As the sequence was, with the same points at one moment, and the same surely apart.
bool SequenceReader::isInOrder(const StartDifferences& differences, const Trail& trail) const
{
    const bool tied = std::ranges::all_of(sequence_->ties, [&](const OvenSequence::Ends& ends) {
        return differences.least(trail, ends.first, ends.second) >= 0 &&
               differences.most(trail, ends.first, ends.second) <= 0;
    });
    for (std::size_t i = 0; tied && i < sequence_->ends.size(); ++i) {
        const StretchLengths now = lengthsNow(i, differences, trail);
        const bool wasApart = sequence_->box.stretches[i].least > 0;
        if (now.least < 0 || now.most <= 0 || wasApart != (now.least > 0)) {
            return false;
        }
    }
    return tied;
}

/// Whether any is another.
bool SequenceReader::takeLengths(const StartDifferences& differences, const Trail& trail)
{
    bool anyOther = false;
    for (std::size_t i = 0; i < sequence_->ends.size(); ++i) {
        const StretchLengths now = lengthsNow(i, differences, trail);
        OvenStretch& stretch = sequence_->box.stretches[i];
        anyOther = anyOther || now.least != stretch.least || now.most != stretch.most;
        stretch.least = now.least;
        stretch.most = now.most;
    }
    return anyOther;
}

SequenceReader::Change SequenceReader::read(const StartDifferences& differences, const Trail& trail)
{
    if (sequence_ && isInOrder(differences, trail)) {
        return takeLengths(differences, trail) ? Change::Lengths : Change::None;
    }
    std::vector<HeldStay> likely = atLikelyTimes(differences, trail);
    auto sequence = ofSome(likely, differences, trail);
    if (!sequence) {
        return Change::Unsure;
    }
    stays_ = std::move(likely);
    sequence_ = std::move(sequence);
    return Change::Order;
}

} // namespace suppertide::exact
