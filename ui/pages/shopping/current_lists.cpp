#include "ui/pages/shopping/current_lists.h"

#include "ui/models/reading_choice.h"
#include "ui/models/shopping_edits.h"

namespace suppertide::ui {

CurrentLists::CurrentLists(Document& document, QObject* parent)
    : QObject(parent), document_(document), job_(new ListsJob(this))
{
    connect(job_, &ListsJob::listed, this, &CurrentLists::take);
    connect(job_, &ListsJob::failed, this, [this](const Failure& failure) {
        failure_ = QString::fromStdString(failure.forCook);
        asked_.reset(); // the same may be asked again
        Q_EMIT changed();
    });
}

bool CurrentLists::isTickSince(const Asked& before, const PlanPtr& plan) const
{
    const LibraryState& now = document_.library();
    const OccasionPtr record = openOccasion(now);
    const OccasionPtr recordBefore = openOccasion(before.library);
    return record && recordBefore && plan == before.plan &&
           readingStyle(document_).measures == before.measures &&
           before.library.larder == now.larder && before.library.recipes == now.recipes &&
           before.library.kitchens == now.kitchens && record->occasion == recordBefore->occasion &&
           record->layout == recordBefore->layout;
}

void CurrentLists::look(const PlanPtr& plan)
{
    isAwaiting_ = false;
    if (asked_ && isTickSince(*asked_, plan)) {
        showTicks();
        Q_EMIT changed();
        return;
    }
    asked_ = Asked{document_.library(), plan, readingStyle(document_).measures};
    failure_.clear();
    if (auto input = shoppingInputOf(document_.library(), plan, asked_->measures)) {
        job_->start(std::move(*input));
        Q_EMIT changed();
    } else {
        job_->drop();
        take(std::make_shared<const EveningLists>());
    }
}

void CurrentLists::awaitPlan()
{
    isAwaiting_ = true;
    showTicks(); // what has changed may be one
    Q_EMIT changed();
}

void CurrentLists::take(const EveningListsPtr& lists)
{
    shown_ = lists;
    buy_ = lists->buy;
    plan_ = asked_->plan;
    showTicks();
    Q_EMIT changed();
}

void CurrentLists::showTicks()
{
    if (const OccasionPtr record = openOccasion(document_.library())) {
        buy_ = shopping::withTicks(std::move(buy_), record->bought, larderOf(document_.library()));
    }
}

} // namespace suppertide::ui
