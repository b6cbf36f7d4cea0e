// SequenceReader: the sequence (oven_sequence.h) of the same stays, read again and again while the
// search goes on. Mostly nothing of it has changed, or only how far apart they are.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/planner/exact/oven_sequence.h"

namespace suppertide::exact {

class SequenceReader
{
public:
    /// The differences of all stays are known; their times are not looked at. What is empty is not
    /// told apart from `forgets` minutes on.
    SequenceReader(std::vector<HeldStay> stays, std::int64_t forgets);

    enum class Change
    {
        Unsure, // the order is; no sequence
        None,
        Lengths,
        Order,
    };
    /// What is otherwise than at the last time when the order was sure.
    Change read(const StartDifferences& differences, const engine::Trail& trail);
    /// After any change but `Unsure`.
    [[nodiscard]] const OvenSequence& sequence() const { return *sequence_; }
    /// At times about which it can be told in which order they are, as of the last change of order.
    [[nodiscard]] const std::vector<HeldStay>& stays() const { return stays_; }
    /// The sequence of some of them.
    [[nodiscard]] std::optional<OvenSequence> ofSome(const std::vector<HeldStay>& some,
                                                     const StartDifferences& differences,
                                                     const engine::Trail& trail) const;

private:
    [[nodiscard]] StretchLengths lengthsNow(std::size_t stretch,
                                            const StartDifferences& differences,
                                            const engine::Trail& trail) const;
    [[nodiscard]] bool isInOrder(const StartDifferences& differences,
                                 const engine::Trail& trail) const;
    [[nodiscard]] bool takeLengths(const StartDifferences& differences, const engine::Trail& trail);
    [[nodiscard]] std::vector<HeldStay> atLikelyTimes(const StartDifferences& differences,
                                                      const engine::Trail& trail) const;

    std::vector<HeldStay> stays_;
    std::int64_t forgets_;
    std::optional<OvenSequence> sequence_; // when the order was last sure
};

} // namespace suppertide::exact
