#include "core/base/contracts.h"

namespace suppertide {

ContractViolation::ContractViolation(const std::string& what, CallSite where)
    : std::logic_error(what), where_(where)
{}

void failContract(const char* kind, const char* what, CallSite where)
{
    throw ContractViolation(std::string(kind) + ": " + what + " (" + where.file + ":" +
                                std::to_string(where.line) + ")",
                            where);
}

} // namespace suppertide
