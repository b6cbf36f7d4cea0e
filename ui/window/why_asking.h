// WhyAsking: “Why here?” as the window has it: a card beside the step, filled as soon as the answer
// is found on a thread of its own.
#pragma once

#include <QObject>
#include <QPointer>

#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/theme/application_theme.h"
#include "ui/window/why_card.h"
#include "ui/worker/why_job.h"

namespace suppertide::ui {

class WhyAsking : public QObject
{
    Q_OBJECT

public:
    /// All must outlive this.
    WhyAsking(Document& document, OpenPlan& plan, ApplicationTheme& theme, QWidget& window);

    void ask(const QString& taskId, const QPoint& global);

private:
    void answer(const WhyHere& why, const PlanPtr& plan);

    Document& document_;
    OpenPlan& plan_;
    ApplicationTheme& theme_;
    QWidget& window_;
    WhyJob* job_;
    QPointer<WhyCard> card_;
};

} // namespace suppertide::ui
