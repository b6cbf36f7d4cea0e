#include "ui/window/comparing.h"

#include "core/menus/compare.h"
#include "core/shopping/menu_price.h"
#include "ui/pages/menus/menus_page.h"

namespace suppertide::ui {

namespace {

// Longer than ten thousand menus take; Stop ends it before.
constexpr std::chrono::minutes longest{20};

} // namespace

Comparing::Comparing(Document& document, MenusPage& page, QObject* parent)
    : QObject(parent), document_(document), page_(page), job_(new CompareJob(this))
{
    connect(job_, &CompareJob::begun, this, &Comparing::begun);
    connect(job_, &CompareJob::looked, this, &Comparing::looked);
    connect(job_, &CompareJob::finished, this, &Comparing::finish);
    connect(job_, &CompareJob::failed, this, [this](const Failure& failure) {
        page_.setRunning(false);
        page_.setNote(QString::fromStdString(failure.forCook));
    });
    connect(&page_, &MenusPage::compareRequested, this, &Comparing::begin);
    connect(&page_, &MenusPage::stopRequested, this, &Comparing::stop);
    connect(&page_, &MenusPage::taken, this, &Comparing::take);
    connect(&document, &Document::changed, this, &Comparing::checkCurrent);
    page_.setRunning(false);
    checkCurrent();
}

void Comparing::begin()
{
    const auto input = planInputOf(document_.library());
    if (!input) {
        return;
    }
    menus::CompareRequest request{*input, {}, {}, document_.state()->revision};
    request.input.recipes = document_.library().recipes; // of all alternatives, cooked or not
    request.limits.wallClock = longest;
    request.price = shopping::priceOfMenus(larderOf(document_.library()));
    input_ = request.input;
    page_.show(nullptr, std::nullopt);
    comparison_.reset();
    isStale_ = false;
    page_.setRunning(true);
    page_.setNote(tr("Working out who gets what…"));
    job_->start(std::move(request));
}

void Comparing::stop()
{
    job_->stop();
}

std::optional<std::size_t> Comparing::menuNow() const
{
    const OccasionPtr record = openOccasion(document_.library());
    return record && comparison_ && !isStale_ ? comparison_->menuNow(record->occasion)
                                              : std::nullopt;
}

void Comparing::begun(const std::shared_ptr<const menus::MenuTable>& table,
                      const std::vector<menus::ComparedMenu>& menus)
{
    comparison_ = std::make_unique<MenuComparison>(input_, table, menus);
    page_.show(comparison_.get(), menuNow());
    page_.setRunning(true);
    showNote();
}

void Comparing::looked(const std::vector<menus::ComparedMenu>& menus, int done, int toDo)
{
    if (!comparison_) {
        return;
    }
    for (const menus::ComparedMenu& menu : menus) {
        comparison_->update(menu);
    }
    page_.setRunning(true, done, toDo);
    if (!menus.empty() && (!sinceShown_.isValid() || sinceShown_.elapsed() >= pause_)) {
        showLooked();
    }
}

/// Of thousands of menus, which take their time to be sorted and drawn, less often: the window
/// keeps nine tenths of its time for the user.
void Comparing::showLooked()
{
    constexpr qint64 share = 10;
    sinceShown_.start();
    page_.refresh(menuNow());
    showNote();
    pause_ = share * sinceShown_.elapsed();
}

void Comparing::finish(bool isStopped)
{
    wasStopped_ = isStopped;
    page_.setRunning(false);
    if (comparison_) {
        page_.refresh(menuNow());
    }
    showNote();
}

void Comparing::take(int menu)
{
    if (!comparison_ || menu < 0) {
        return;
    }
    auto edit = comparison_->take(document_.library(), static_cast<std::size_t>(menu));
    if (!edit) {
        return;
    }
    const QString name = comparison_->nameOf(static_cast<std::size_t>(menu));
    document_.apply(std::move(edit->next), edit->text);
    Q_EMIT said(tr("%1 is the menu now. Undo takes it back.").arg(name));
}

/// Another evening, or the same with other alternatives, guests or kitchen.
void Comparing::checkCurrent()
{
    const OccasionPtr record = openOccasion(document_.library());
    page_.setPossible(record && !record->occasion.courses.empty());
    if (comparison_) {
        isStale_ = comparison_->isStale(document_.library());
        if (isStale_) {
            job_->stop();
        }
        page_.setStale(isStale_);
        page_.setNow(menuNow());
    }
    showNote();
}

void Comparing::showNote()
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!record) {
        page_.setNote(tr("No occasion is open. Begin one under Occasion, New."));
    } else if (record->occasion.courses.empty()) {
        page_.setNote(tr("There are no courses yet. Add them, with alternatives, under Menu and "
                         "guests."));
    } else if (job_->isRunning() && !comparison_) {
        page_.setNote(tr("Working out who gets what…"));
    } else if (!comparison_) {
        page_.setNote(
            tr("Give courses alternatives under Menu and guests, and compare: which menus can be "
               "cooked here, whom they suit, and what each would do to the evening."));
    } else if (isStale_) {
        page_.setNote(tr("The evening has changed since these menus were compared. Compare again "
                         "before taking one."));
    } else {
        const QString counts =
            tr("%1 ★ and a filled dot: nothing beats it in both figures of the chart. Energy is an "
               "estimate.")
                .arg(comparison_->counts());
        page_.setNote(wasStopped_ && !job_->isRunning() ? tr("Stopped. %1").arg(counts) : counts);
    }
}

} // namespace suppertide::ui
