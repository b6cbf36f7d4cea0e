#include "ui/window/why_asking.h"

#include "core/wording/advice_wording.h"
#include "core/wording/why_this_long.h"
#include "ui/models/layout_edits.h"
#include "ui/models/reading_choice.h"

namespace suppertide::ui {

WhyAsking::WhyAsking(Document& document, OpenPlan& plan, ApplicationTheme& theme, QWidget& window)
    : QObject(&window), document_(document), plan_(plan), theme_(theme), window_(window),
      job_(new WhyJob(this))
{
    connect(job_, &WhyJob::answered, this, &WhyAsking::answer);
}

void WhyAsking::ask(const QString& taskId, const QPoint& global)
{
    const PlanPtr plan = plan_.isCurrent() ? plan_.plan() : nullptr;
    const auto input = planInputOf(document_.library());
    const auto task = plan ? findTask(*plan, taskId.toStdString()) : std::nullopt;
    if (!input || !task || !plan->schedule.starts[*task]) {
        return;
    }
    if (card_) {
        card_->close();
    }
    card_ = new WhyCard(theme_.theme(),
                        QString::fromStdString(taskText(*plan, *task, readingStyle(document_))),
                        &window_);
    connect(card_, &QObject::destroyed, job_, &WhyJob::drop);
    card_->say({tr("Looking…")});
    card_->showAt(global);
    job_->ask(plan, *input, *task);
}

void WhyAsking::answer(const WhyHere& why, const PlanPtr& plan)
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!card_ || !record) {
        return;
    }
    const ReadingStyle style = readingStyle(document_);
    QStringList sentences;
    for (const std::string& sentence :
         {earlierSentence(why, *plan, record->occasion, style),
          laterSentence(why, *plan, record->occasion, style), alongSentence(why)}) {
        if (!sentence.empty()) {
            sentences.push_back(QString::fromStdString(sentence));
        }
    }
    for (const ComputedDuration& computed : computedAt(*plan, why.task)) {
        for (const std::string& sentence : whyThisLong(computed, style)) {
            sentences.push_back(QString::fromStdString(sentence));
        }
    }
    card_->say(sentences);
}

} // namespace suppertide::ui
