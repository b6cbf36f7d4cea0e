#include <ostream>

#include "app/verbs.h"
#include "core/base/log.h"

namespace suppertide::app {

Exit say(const Failure& failure, const VerbContext& context)
{
    context.err << failure.forCook << '\n';
    if (!failure.forLog.empty()) {
        log::debug("app", "{} ({}:{})", failure.forLog, failure.where.file, failure.where.line);
    }
    return failure.kind == FailureKind::OutOfTime ? Exit::NoPlanInTime : Exit::BadInput;
}

} // namespace suppertide::app
