#include "ui/models/plan_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/wording/wording.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("PlanWords", text);
}

QString duration(Minutes minutes)
{
    return QString::fromStdString(durationText(minutes));
}

QString counted(std::int64_t count, const char* one, const char* many)
{
    return count == 1 ? tr(one) : tr(many).arg(count);
}

/// The cell; the offered value only where it differs.
class Cells
{
public:
    Cells(const PlanFigures& now, const PlanFigures* offered) : now_(now), offered_(offered) {}

    template <typename Text>
    void add(const QString& label, const QString& meaning, const Text& text)
    {
        FigureCell cell{label, meaning, text(now_), {}};
        if (offered_ != nullptr && text(*offered_) != cell.now) {
            cell.offered = text(*offered_);
        }
        cells.push_back(std::move(cell));
    }

    std::vector<FigureCell> cells;

private:
    const PlanFigures& now_;
    const PlanFigures* offered_;
};

void addDifference(QStringList& said, std::int64_t before, std::int64_t after, const char* oneFewer,
                   const char* fewer, const char* oneMore, const char* more)
{
    if (after < before) {
        said.push_back(counted(before - after, oneFewer, fewer));
    } else if (after > before) {
        said.push_back(counted(after - before, oneMore, more));
    }
}

QString movedText(const PlanChange& change)
{
    if (change.empty()) {
        return tr("no step moves, only washing up or who does what");
    }
    QStringList said;
    if (!change.moved.empty()) {
        const auto count = static_cast<std::int64_t>(change.moved.size());
        said.push_back(
            counted(count, QT_TRANSLATE_NOOP("PlanWords", "1 step moves"),
                    QT_TRANSLATE_NOOP("PlanWords", "%1 steps move")) +
            (count == 1 ? tr(", by %1") : tr(", at most %1")).arg(duration(change.most())));
    }
    if (change.otherWay > 0) {
        said.push_back(counted(change.otherWay,
                               QT_TRANSLATE_NOOP("PlanWords", "1 step done another way"),
                               QT_TRANSLATE_NOOP("PlanWords", "%1 steps done another way")));
    }
    if (change.coursesMoved > 0) {
        said.push_back(counted(change.coursesMoved,
                               QT_TRANSLATE_NOOP("PlanWords", "1 course at another time"),
                               QT_TRANSLATE_NOOP("PlanWords", "%1 courses at another time")));
    }
    return said.join(QStringLiteral("; "));
}

} // namespace

QString distanceText(const std::optional<Proof>& proof)
{
    if (!proof) {
        return tr("not known yet");
    }
    if (proof->isBest()) {
        return tr("best there is");
    }
    constexpr std::int64_t all = 100;
    if (proof->bound <= 0 || proof->cost - proof->bound >= proof->bound) {
        return tr("not known yet");
    }
    const std::int64_t percent =
        ((proof->cost - proof->bound) * all + proof->bound - 1) / proof->bound;
    return tr("at most %1 % from the best").arg(percent);
}

QString FigureCell::text() const
{
    return offered.isEmpty() ? now : now + QStringLiteral(" → ") + offered;
}

std::vector<FigureCell> figureCells(const JudgedPlan& now, const std::optional<JudgedPlan>& offered)
{
    expects(now.plan != nullptr, "a plan");
    Cells cells(now.plan->figures, offered ? &offered->plan->figures : nullptr);
    cells.add(tr("last hour"), tr("Hands-on work in the hour before the first serving"),
              [](const PlanFigures& figures) { return duration(figures.handsOnLastHour); });
    cells.add(tr("oven changes"), tr("How often an oven is set to another temperature"),
              [](const PlanFigures& figures) { return QString::number(figures.ovenChanges); });
    cells.add(tr("oven on"), tr("How long ovens are on, all together"),
              [](const PlanFigures& figures) { return duration(figures.ovenOn); });
    cells.add(tr("sessions"), tr("Stretches of work, told apart by an hour without"),
              [](const PlanFigures& figures) { return QString::number(figures.sessions); });
    cells.add(tr("quality lost"),
              tr("Points lost by food that waits longer than it should, as the recipes count them"),
              [](const PlanFigures& figures) { return QString::number(figures.lossOfQuality); });
    FigureCell distance{tr("from the best"),
                        tr("How much better a plan could be at most, by your preferences"),
                        now.plan->holds() ? distanceText(now.proof) : tr("it clashes"),
                        {}};
    if (offered && distanceText(offered->proof) != distance.now) {
        distance.offered = distanceText(offered->proof);
    }
    cells.cells.push_back(std::move(distance));
    return std::move(cells.cells);
}

QString changeText(const Plan& now, const Plan& offered)
{
    QStringList said{movedText(changeBetween(now, offered))};
    addDifference(said, now.figures.ovenChanges, offered.figures.ovenChanges,
                  QT_TRANSLATE_NOOP("PlanWords", "1 oven change fewer"),
                  QT_TRANSLATE_NOOP("PlanWords", "%1 oven changes fewer"),
                  QT_TRANSLATE_NOOP("PlanWords", "1 oven change more"),
                  QT_TRANSLATE_NOOP("PlanWords", "%1 oven changes more"));
    const auto clashes = [](const Plan& plan) {
        return static_cast<std::int64_t>(plan.clashes.size());
    };
    if (!now.holds() && offered.holds()) {
        said.push_back(tr("nothing collides any more"));
    } else {
        addDifference(said, clashes(now), clashes(offered),
                      QT_TRANSLATE_NOOP("PlanWords", "1 clash fewer"),
                      QT_TRANSLATE_NOOP("PlanWords", "%1 clashes fewer"),
                      QT_TRANSLATE_NOOP("PlanWords", "1 clash more"),
                      QT_TRANSLATE_NOOP("PlanWords", "%1 clashes more"));
    }
    return said.join(QStringLiteral("; "));
}

} // namespace suppertide::ui
