#include "ui/worker/lists_job.h"

#include <utility>

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

Result<EveningListsPtr> listsOf(const shopping::ShoppingInput& input)
{
    try {
        EveningLists lists;
        lists.buy = shopping::shoppingListOf(input);
        if (input.plan) {
            lists.equipment = shopping::equipmentOf(*input.plan);
            lists.measuring = shopping::miseEnPlaceOf(*input.plan);
        }
        return std::make_shared<const EveningLists>(std::move(lists));
    } catch (const std::exception& error) { // a thread's entry is an edge
        log::error("ui.worker", "working out the shopping list failed: {}", error.what());
        return Failure{FailureKind::BadInput,
                       "The shopping list could not be worked out because of a defect in the "
                       "program. What is shown is the list before the last change; your evening "
                       "is as it was.",
                       error.what()};
    }
}

} // namespace

ListsJob::ListsJob(QObject* parent) : QObject(parent) {}

void ListsJob::start(shopping::ShoppingInput input)
{
    if (runs_.isRunning()) {
        waiting_ = std::move(input);
    } else {
        begin(std::move(input));
    }
}

void ListsJob::drop()
{
    waiting_.reset();
    runs_.drop();
}

void ListsJob::begin(shopping::ShoppingInput input)
{
    runs_.begin([this, input = std::move(input)](quint64 run, const std::stop_token& /*stop*/) {
        const Result<EveningListsPtr> lists = listsOf(input);
        QMetaObject::invokeMethod(
            this, [this, run, lists] { report(run, lists); }, Qt::QueuedConnection);
    });
}

void ListsJob::report(quint64 run, const Result<EveningListsPtr>& lists)
{
    if (!runs_.end(run)) {
        return;
    }
    if (waiting_) {
        begin(*std::exchange(waiting_, std::nullopt));
    } else if (lists) {
        Q_EMIT listed(*lists);
    } else {
        Q_EMIT failed(lists.error());
    }
}

} // namespace suppertide::ui
