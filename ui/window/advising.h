// Advising: ways out as the window has them: looked for when a clash is chosen, or when there is no
// plan at all; shown beside the clashes as they are found; one is taken by a click and can be
// undone. What was found for a state that is no longer current is put away.
#pragma once

#include <QObject>
#include <QString>

#include <vector>

#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/worker/advice_job.h"

namespace suppertide::ui {

class WaysPanel;

class Advising : public QObject
{
    Q_OBJECT

public:
    /// All must outlive this.
    Advising(Document& document, OpenPlan& plan, WaysPanel& panel, QObject* parent);

public Q_SLOTS:
    /// For the clash of that number, from 1.
    void lookFor(int clash);
    /// For a dinner that cannot be cooked as it stands, and why.
    void lookForDinner(const QStringList& reasons);
    void stop();
    void close();

Q_SIGNALS:
    /// The panel has something to show.
    void opened();
    void said(const QString& words);

private:
    void begin(AdviceRequest request, const QString& heading, const QStringList& reasons);
    [[nodiscard]] std::optional<AdviceRequest> requestNow() const;
    void show(const WayOut& way);
    void finish(const Advice& advice);
    void take(int way);
    void checkCurrent();

    Document& document_;
    OpenPlan& plan_;
    WaysPanel& panel_;
    AdviceJob* job_;
    std::vector<WayOut> ways_; // as the panel has them
    std::uint64_t revision_ = 0;
    bool hasReasons_ = false;
};

} // namespace suppertide::ui
