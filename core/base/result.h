// Result: a value, or the reason why the world did not give one (disk full, file too new, text
// that cannot be read). Members are named as in std::expected, so that C++23 can replace it.
// Outcomes of the domain (a clash, no plan) are values of their own and never a Failure.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "core/base/contracts.h"

namespace suppertide {

enum class FailureKind
{
    BadInput,  // what was given cannot be read or does not make sense
    NotFound,  // a name, file or zone that is not there
    TooNew,    // written by a later version of this program
    Busy,      // held by another program
    ReadOnly,  // may be looked at only
    Io,        // the disk or the system refused
    OutOfTime, // stopped before anything was found
};

/// What went wrong. `forCook` is whole sentences: what happened, where, and what to do now.
/// `forLog` adds what a developer needs; it may be empty.
struct Failure
{
    FailureKind kind = FailureKind::BadInput;
    std::string forCook;
    std::string forLog;
    CallSite where = CallSite::here();

    /// Two failures are equal if they say the same, wherever they arose.
    friend bool operator==(const Failure& a, const Failure& b)
    {
        return a.kind == b.kind && a.forCook == b.forCook;
    }
};

template <typename T>
class [[nodiscard]] Result
{
public:
    using value_type = T; // NOLINT(readability-identifier-naming): as in std::expected

    // Both convert, as std::expected's do. NOLINTBEGIN(google-explicit-constructor)
    Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
    Result(Failure failure) : state_(std::in_place_index<1>, std::move(failure)) {}
    // NOLINTEND(google-explicit-constructor)

    // NOLINTNEXTLINE(readability-identifier-naming): as in std::expected
    [[nodiscard]] bool has_value() const noexcept { return state_.index() == 0; }
    explicit operator bool() const noexcept { return has_value(); }

    [[nodiscard]] const T& value() const&
    {
        expects(has_value(), "Result holds a value");
        return *std::get_if<0>(&state_);
    }
    [[nodiscard]] T& value() &
    {
        expects(has_value(), "Result holds a value");
        return *std::get_if<0>(&state_);
    }
    [[nodiscard]] T&& value() &&
    {
        expects(has_value(), "Result holds a value");
        return std::move(*std::get_if<0>(&state_));
    }
    [[nodiscard]] const Failure& error() const
    {
        expects(!has_value(), "Result holds a failure");
        return *std::get_if<1>(&state_);
    }

    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    T&& operator*() && { return std::move(*this).value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

private:
    std::variant<T, Failure> state_;
};

template <>
class [[nodiscard]] Result<void>
{
public:
    Result() = default;
    // NOLINTNEXTLINE(google-explicit-constructor): as in std::expected
    Result(Failure failure) : failure_(std::move(failure)) {}

    // NOLINTNEXTLINE(readability-identifier-naming): as in std::expected
    [[nodiscard]] bool has_value() const noexcept { return !failure_.has_value(); }
    explicit operator bool() const noexcept { return has_value(); }
    [[nodiscard]] const Failure& error() const
    {
        expects(failure_.has_value(), "Result holds a failure");
        return *failure_;
    }

private:
    std::optional<Failure> failure_;
};

} // namespace suppertide
