// CurrentLists: the lists of the evening as the document and the plan are now. What takes longer
// than a frame is left to the worker: until it has answered, the lists before are still there. A
// tick changes nothing but itself and is there at once.
#pragma once

#include <QObject>

#include "core/plan/plan.h"
#include "ui/document/document.h"
#include "ui/worker/lists_job.h"

namespace suppertide::ui {

class CurrentLists : public QObject
{
    Q_OBJECT

public:
    /// `document` must outlive this.
    explicit CurrentLists(Document& document, QObject* parent = nullptr);

    /// After a change of the document or of the plan, which may be null.
    void look(const PlanPtr& plan);
    /// A plan is being made for the document as it is now; `look` follows.
    void awaitPlan();

    [[nodiscard]] const shopping::ShoppingList& buy() const { return buy_; }
    [[nodiscard]] const shopping::EquipmentList& equipment() const { return shown_->equipment; }
    [[nodiscard]] const std::vector<shopping::MiseEnPlace>& measuring() const
    {
        return shown_->measuring;
    }
    /// Of these lists; null if there was none.
    [[nodiscard]] const PlanPtr& plan() const { return plan_; }
    /// Other lists than these are being worked out.
    [[nodiscard]] bool isWorking() const { return isAwaiting_ || job_->isRunning(); }
    /// Why these are not the lists of the document as it is now; else empty.
    [[nodiscard]] const QString& failure() const { return failure_; }

Q_SIGNALS:
    /// The lists, or whether they are being worked out.
    void changed();

private:
    void take(const EveningListsPtr& lists);
    void showTicks();

    struct Asked // that lists are, or are being, made from
    {
        LibraryState library;
        PlanPtr plan;
        std::optional<MeasureSystem> measures;
    };
    [[nodiscard]] bool isTickSince(const Asked& before, const PlanPtr& plan) const;

    Document& document_;
    ListsJob* job_;
    std::optional<Asked> asked_;
    EveningListsPtr shown_ = std::make_shared<const EveningLists>();
    shopping::ShoppingList buy_; // with the ticks of now
    PlanPtr plan_;
    QString failure_;
    bool isAwaiting_ = false;
};

} // namespace suppertide::ui
