#include "ui/window/advising.h"

#include <algorithm>
#include <chrono>

#include "core/wording/advice_wording.h"
#include "ui/clashes/ways_panel.h"
#include "ui/models/edit.h"
#include "ui/models/plan_basis.h"
#include "ui/models/reading_choice.h"

namespace suppertide::ui {

namespace {

// To see whether a change helps at all, and then to make its plan a good one: a dozen changes are
// tried in the time in which somebody reads the first.
constexpr std::chrono::milliseconds perChange{2000};
constexpr std::chrono::milliseconds perWayOut{1200};

// What Undo shows beside the word itself.
constexpr int longestTitle = 72;

QStringList lines(const std::vector<std::string>& sentences)
{
    QStringList result;
    for (const std::string& sentence : sentences) {
        result.push_back(QString::fromStdString(sentence));
    }
    return result;
}

} // namespace

Advising::Advising(Document& document, OpenPlan& plan, WaysPanel& panel, QObject* parent)
    : QObject(parent), document_(document), plan_(plan), panel_(panel), job_(new AdviceJob(this))
{
    panel_.hide();
    connect(job_, &AdviceJob::found, this, &Advising::show);
    connect(job_, &AdviceJob::progressed, this, [this](int tried, int toTry) {
        panel_.setProgress(tr("%1 of %2 changes tried…").arg(tried).arg(std::max(tried, toTry)),
                           true);
    });
    connect(job_, &AdviceJob::finished, this, &Advising::finish);
    connect(job_, &AdviceJob::failed, this, [this](const Failure& failure) {
        panel_.setProgress({}, false);
        Q_EMIT said(QString::fromStdString(failure.forCook));
    });
    connect(&panel_, &WaysPanel::taken, this, &Advising::take);
    connect(&panel_, &WaysPanel::stopRequested, this, &Advising::stop);
    connect(&panel_, &WaysPanel::closed, this, &Advising::close);
    connect(&document, &Document::changed, this, &Advising::checkCurrent);
}

std::optional<AdviceRequest> Advising::requestNow() const
{
    const auto input = planInputOf(document_.library());
    if (!input) {
        return std::nullopt;
    }
    AdviceRequest request;
    request.input = *input;
    // Alternatives of the courses too, which are not cooked so far.
    request.input.recipes = document_.library().recipes;
    if (plan_.isCurrent()) {
        request.laidOut = plan_.plan();
    }
    request.first.wallClock = perChange;
    request.better.wallClock = perWayOut;
    return request;
}

void Advising::lookFor(int clash)
{
    auto request = requestNow();
    const auto index = static_cast<std::size_t>(clash - 1);
    if (!request || !request->laidOut || clash < 1 || index >= request->laidOut->clashes.size()) {
        return;
    }
    request->clash = request->laidOut->clashes[index];
    begin(*std::move(request), tr("Ways out of clash %1").arg(clash), {});
}

void Advising::lookForDinner(const QStringList& reasons)
{
    if (auto request = requestNow()) {
        begin(*std::move(request), tr("Ways out"), reasons);
    }
}

void Advising::begin(AdviceRequest request, const QString& heading, const QStringList& reasons)
{
    ways_.clear();
    revision_ = document_.state()->revision;
    hasReasons_ = !reasons.isEmpty();
    panel_.begin(heading);
    panel_.setReasons(reasons);
    panel_.setProgress(tr("Looking…"), true);
    panel_.show();
    Q_EMIT opened();
    job_->start(std::move(request));
}

void Advising::show(const WayOut& way)
{
    // In the order of the panel's rows.
    const auto place = std::ranges::upper_bound(ways_, way.points, {}, &WayOut::points);
    ways_.insert(place, way);
    panel_.add(wayRow(way, readingStyle(document_)));
}

void Advising::finish(const Advice& advice)
{
    panel_.setProgress(ways_.empty() ? tr("No way out was found.")
                                     : tr("%1 changes tried.").arg(advice.tried),
                       false);
    const OccasionPtr record = openOccasion(document_.library());
    if (!advice.conflict.empty() && !hasReasons_ && record) {
        panel_.setReasons(lines(conflictSentences(*advice.formulation, record->occasion,
                                                  advice.conflict, readingStyle(document_))));
    }
}

void Advising::stop()
{
    job_->stop();
}

void Advising::close()
{
    job_->drop();
    ways_.clear();
    panel_.hide();
}

void Advising::take(int way)
{
    const auto index = static_cast<std::size_t>(way);
    const OccasionPtr record = openOccasion(document_.library());
    if (way < 0 || index >= ways_.size() || !record || document_.state()->revision != revision_) {
        return;
    }
    const WayOut taken = ways_[index];
    LibraryState next = withOccasion(
        document_.library(), [&taken](Occasion& occasion) { occasion = *taken.after.occasion; });
    if (*taken.after.kitchen != *taken.before.kitchen) {
        next.kitchens[taken.after.kitchen->id] = taken.after.kitchen;
    }
    for (const auto& [id, recipe] : taken.after.recipes) {
        const auto before = taken.before.recipes.find(id);
        if (before == taken.before.recipes.end() || before->second != recipe) {
            next.recipes[id] = recipe;
        }
    }
    Layout layout = *taken.after.layout;
    layout.plannedFrom = planBasis(next);
    next = withLayout(next, std::move(layout));
    QString title = QString::fromStdString(changeTitle(taken));
    if (title.size() > longestTitle) {
        title = title.left(longestTitle - 1) + u'…';
    }
    document_.apply(std::move(next), title);
    Q_EMIT said(tr("%1 Undo takes it back.")
                    .arg(QString::fromStdString(changeSentence(taken, readingStyle(document_)))));
}

void Advising::checkCurrent()
{
    if (document_.state()->revision != revision_) {
        close();
    }
}

} // namespace suppertide::ui
