// ListsJob: what to buy for an evening, what to set out and what to measure out, worked out on a
// thread of its own. One run at a time: what is asked meanwhile waits, and only the latest of it is
// answered, for a list cannot be stopped half way.
#pragma once

#include <QObject>

#include <memory>
#include <optional>
#include <vector>

#include "core/shopping/equipment.h"
#include "core/shopping/shopping_list.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

struct EveningLists
{
    shopping::ShoppingList buy;
    shopping::EquipmentList equipment; // this and the next are empty without a plan
    std::vector<shopping::MiseEnPlace> measuring;
};

using EveningListsPtr = std::shared_ptr<const EveningLists>;

class ListsJob : public QObject
{
    Q_OBJECT

public:
    explicit ListsJob(QObject* parent = nullptr);

    void start(shopping::ShoppingInput input);
    /// Nothing more is told of what was asked.
    void drop();
    [[nodiscard]] bool isRunning() const { return runs_.isRunning(); }

Q_SIGNALS:
    /// Of the latest input only.
    void listed(const suppertide::ui::EveningListsPtr& lists);
    void failed(const suppertide::Failure& failure);

private:
    void begin(shopping::ShoppingInput input);
    void report(quint64 run, const Result<EveningListsPtr>& lists);

    std::optional<shopping::ShoppingInput> waiting_;
    ParkedRuns runs_;
};

} // namespace suppertide::ui
