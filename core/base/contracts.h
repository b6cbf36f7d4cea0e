// Contracts between functions: `expects` for what a caller owes, `ensures` for what comes back.
// On in every build. A broken contract is a defect of this program, never of the cook's input;
// it throws ContractViolation, which only the edges (main, thread entry, event delivery) catch.
#pragma once

#include <stdexcept>
#include <string>

namespace suppertide {

/// Where a call was made; stands in for std::source_location, which clang-tidy 14 lacks.
struct CallSite
{
    const char* file;
    int line;

    static constexpr CallSite here(const char* file = __builtin_FILE(),
                                   int line = __builtin_LINE()) noexcept
    {
        return {file, line};
    }
};

class ContractViolation : public std::logic_error
{
public:
    ContractViolation(const std::string& what, CallSite where);
    [[nodiscard]] CallSite where() const noexcept { return where_; }

private:
    CallSite where_;
};

[[noreturn]] void failContract(const char* kind, const char* what, CallSite where);

/// The caller owes `condition`; `what` names it in a few words.
inline void expects(bool condition, const char* what, CallSite where = CallSite::here())
{
    if (!condition) {
        failContract("expects", what, where);
    }
}

/// The function owes `condition` to its caller.
inline void ensures(bool condition, const char* what, CallSite where = CallSite::here())
{
    if (!condition) {
        failContract("ensures", what, where);
    }
}

} // namespace suppertide
