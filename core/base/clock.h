// Clock: the only way to ask what time it is, so that tests can say.
#pragma once

#include "core/base/civil_time.h"

namespace suppertide {

class Clock
{
public:
    Clock() = default;
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;
    Clock(Clock&&) = delete;
    Clock& operator=(Clock&&) = delete;
    virtual ~Clock() = default;
    [[nodiscard]] virtual Instant now() const = 0;
};

class SystemClock final : public Clock
{
public:
    [[nodiscard]] Instant now() const override;
};

/// A clock that stands where it is put.
class FixedClock final : public Clock
{
public:
    explicit FixedClock(Instant now) : now_(now) {}
    [[nodiscard]] Instant now() const override { return now_; }
    void set(Instant now) { now_ = now; }

private:
    Instant now_;
};

} // namespace suppertide
