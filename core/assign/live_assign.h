// LiveAssign: assign for many layouts of one problem after another, as a drag makes them. It keeps
// what it derived for the parts of the last layouts that did not change. The answers are those of
// `assign`.
#pragma once

#include <memory>

#include "core/assign/assign.h"

namespace suppertide {

class LiveAssign
{
public:
    /// The problem must outlive this.
    explicit LiveAssign(const Problem& problem);
    ~LiveAssign();
    LiveAssign(LiveAssign&&) noexcept;
    LiveAssign& operator=(LiveAssign&&) noexcept;
    LiveAssign(const LiveAssign&) = delete;
    LiveAssign& operator=(const LiveAssign&) = delete;

    [[nodiscard]] Schedule assign(Schedule laidOut, const AssignmentPins& pins);

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide
