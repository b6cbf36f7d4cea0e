// NightDesk: the evening as it is carried out: takes the cooks' reports, keeps them in the document
// (or apart from it in a rehearsal), has the rest looked at each minute and planned anew after each
// report that makes it stale, and says in words what changed. The page shows it; no widget here.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>

#include <vector>

#include "core/base/clock.h"
#include "ui/document/document.h"
#include "ui/worker/night_job.h"

namespace suppertide::ui {

enum class NightStage
{
    Nothing, // no occasion, or its plan has faults
    Before,  // it has not begun
    UnderWay,
    Over
};

struct NightView
{
    NightStage stage = NightStage::Nothing;
    NightSheet sheet;
    QString headline;      // what stands where there is nothing to do
    QString news;          // what the last report changed
    QString warning;       // what does not hold
    bool hasOffer = false; // a plan that gives way in something, to be taken
    bool isRehearsal = false;
    QString undoes; // what Undo would take back; empty: nothing
};

class NightDesk : public QObject
{
    Q_OBJECT

public:
    /// Both must outlive this.
    NightDesk(Document& document, const Clock& clock, QObject* parent);

    [[nodiscard]] const NightView& view() const { return view_; }
    /// The time it goes by: the clock's, or the rehearsal's.
    [[nodiscard]] Instant now() const;
    /// While the page is not seen nothing is worked out.
    void setActive(bool isActive);

    // Reports; `task` is the id of a line of the sheet.
    void started(const QString& task);
    void done(const QString& task);
    void late(const QString& task, int minutes);
    void leaveOut(const QString& task);
    void ovenAt(const QString& oven, int celsius);
    void asPlannedUntilNow();
    void undo();

    /// Plans the rest anew, whether or not anything was reported.
    void planRest();
    void takeOffer();

    void rehearse();
    void endRehearsal();
    /// How many seconds of the rehearsal go by in one.
    void setPace(int pace) { pace_ = pace; }
    void skip(Minutes by);

    [[nodiscard]] std::vector<std::pair<QString, QString>> ovens() const; // id, name

    /// How the user reads temperatures; and after that has been chosen anew.
    [[nodiscard]] bool readsFahrenheit() const;
    void readAnew();

Q_SIGNALS:
    void changed();
    /// Another minute has come, while active.
    void minutePassed();
    void said(const QString& words);

private:
    struct Rehearsal
    {
        OccasionRecord record;
        Instant from;
        qint64 seconds = 0;
        std::vector<std::pair<OccasionRecord, QString>> undo;
    };

    void second();
    void look(bool mayMove);
    void take(const NightAnswerPtr& answer, quint64 revision);
    void tellPlanned(const RestPlan& plan);
    void tellNoPlan(const NoRest& none);
    void applyRest(const RestOfEvening& rest, const PlanPtr& plan);
    [[nodiscard]] std::optional<OccasionRecord> record() const;
    [[nodiscard]] std::optional<PlanInput> input() const;
    [[nodiscard]] std::optional<TaskIndex> find(const QString& task) const;
    [[nodiscard]] QString nameOf(TaskIndex task) const;
    [[nodiscard]] QString lastReport() const;
    [[nodiscard]] quint64 revision() const;
    template <typename Change>
    void report(const QString& task, const QString& text, const Change& change);
    void put(OccasionRecord next, const QString& text);
    void showStage();

    Document& document_;
    const Clock& clock_;
    NightJob* job_;
    QTimer timer_;
    NightView view_;
    NightAnswerPtr answer_;
    NightAnswerPtr offer_;
    std::optional<Rehearsal> rehearsal_;
    std::optional<Instant> lookedAt_;
    std::optional<std::uint64_t> planned_; // revision in which the rest was planned after a report
    quint64 rehearsed_ = 0;                // counts changes of the rehearsal
    int pace_ = 1;
    bool isActive_ = false;
    bool isPlanning_ = false;
};

} // namespace suppertide::ui
