// Planning: the planner at work beside the user. “Make plan” looks for the best plan until it is
// proven or half a minute is over; nothing but the user starts it, for a laptop in a kitchen has no
// power to waste. What starts by itself is short: when a step is let go or pinned, or a course or
// job is moved in time, and something then collides, the rest is planned again within two seconds,
// changing as little as it can, with the step held where it was put. What holds is left alone.
//
// What is found is offered, and the offer is replaced by a better one in its place; nothing moves
// before it is taken. The next drag, Escape, and any change of the evening end a search; a “Make
// plan” under way begins again with the evening as it then is, unless something collides.
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

#include <chrono>
#include <map>
#include <optional>
#include <set>

#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/models/plan_words.h"
#include "ui/worker/plan_job.h"

class QTimer;

namespace suppertide::ui {

enum class PlanningAim
{
    Best, // the best plan there is
    Rest  // the rest again, after a change by hand
};

/// What is done with the rest when a step is let go and something collides.
enum class LetGo
{
    Offer,
    Take, // at once, as one change with the step's move
    Nothing
};

class Planning : public QObject
{
    Q_OBJECT

public:
    Planning(Document& document, OpenPlan& plan, QObject* parent);

    [[nodiscard]] bool isRunning() const { return !search_.isOver; }
    [[nodiscard]] PlanningAim aim() const { return search_.aim; }
    /// The best plan found that has not been taken; null: none.
    [[nodiscard]] PlanPtr offer() const;
    [[nodiscard]] std::optional<Proof> proofOfOffer() const;
    /// Of the plan as it stands; absent: not known.
    [[nodiscard]] std::optional<Proof> proof() const;
    /// Of the search under way or just ended; empty: nothing to say.
    [[nodiscard]] QString progressText() const;

    [[nodiscard]] LetGo letGo() const { return letGo_; }
    void setLetGo(LetGo letGo) { letGo_ = letGo; }
    /// The step is about to be put where the next change of the document has it.
    void hold(const QString& taskId) { heldNext_ = {taskId.toStdString()}; }

public Q_SLOTS:
    void start();
    /// Ends the search; what was found stays offered.
    void stop();
    /// Escape: ends the search, or leaves what is offered.
    void giveUp();
    /// Something is being dragged: no search, no offer.
    void makeWay();
    /// The drag was given up: a “Make plan” under way before it begins again.
    void goOn() { planRest(); }
    /// Makes the offer the plan, undoable.
    void take();
    void dismiss();

Q_SIGNALS:
    void runningChanged(bool isRunning);
    /// Another offer, or null: none any more.
    void offered(const suppertide::PlanPtr& plan);
    /// Progress, proof or what is to be said of them.
    void changed();
    void said(const QString& words);
    /// There is no plan, proven; why, a sentence each.
    void impossible(const QStringList& reasons);

private:
    void run(PlanningAim aim, PlanInput input, std::chrono::milliseconds limit);
    void progress(const PlanProgress& progress);
    void finish(const PlanOutcome& outcome);
    void sayThatNoneIs(const NoPlan& none);
    void follow(const ChangeSet& changes);
    void planRest();
    void showOrTake();
    void applyTaken(const PlanPtr& taken, bool withChangeBefore);
    void noteProof();
    void leave(const QString& note);
    [[nodiscard]] bool isBetter(const Plan& found) const;
    /// Offers the plan, or takes it, if it is better.
    void consider(const PlanPtr& found);

    struct Search
    {
        PlanningAim aim = PlanningAim::Best;
        std::uint64_t revision = 0; // of the state that is planned
        std::uint64_t begunFor = 0; // other than that once something else has changed
        std::chrono::steady_clock::time_point begun;
        std::optional<std::int64_t> bound;
        PlanPtr offer;
        std::optional<std::int64_t> toBeat;       // in cost; absent: anything that holds is better
        std::optional<std::size_t> clashesToBeat; // absent: there was no plan
        bool takesFirst = false; // the plan has clashes: the first one found is taken at once
        bool isOver = true;
        QString note; // how it ended
    };
    /// What the next search of the rest is for.
    struct Due
    {
        std::set<std::string> held;
        bool isAlsoForBest = false; // a “Make plan” was cut short by the change
        bool isAfterMove = false;
    };

    Document& document_;
    OpenPlan& plan_;
    PlanJob* job_;
    QTimer* seconds_; // of the search under way, for who waits
    QTimer* grace_;   // before what is found for the rest is shown or taken
    LetGo letGo_ = LetGo::Offer;
    Search search_;
    std::optional<Due> due_;
    std::set<std::string> heldNext_; // by the change that is about to come
    StatePtr before_;                // the state before the latest change
    std::uint64_t newest_ = 0;       // revision seen
    bool isTaking_ = false;
    std::map<std::uint64_t, Proof> proofs_; // by revision of the state
};

} // namespace suppertide::ui
