#include "ui/document/store_thread.h"

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

constexpr auto channel = "ui.document";

} // namespace

StoreThread::StoreThread(std::unique_ptr<Library> library, QObject* parent)
    : QObject(parent), library_(std::move(library)),
      thread_([this](const std::stop_token& stop) { run(stop); })
{}

StoreThread::~StoreThread()
{
    thread_.request_stop();
}

void StoreThread::apply(Change change)
{
    push(Apply{std::move(change)});
}

void StoreThread::undo()
{
    push(Undo{});
}

void StoreThread::redo()
{
    push(Redo{});
}

void StoreThread::keepSetting(std::string name, std::string value)
{
    settings_[name] = value;
    push(KeepSetting{std::move(name), std::move(value)});
}

void StoreThread::rememberSetting(std::string name, std::string value)
{
    settings_[std::move(name)] = std::move(value);
}

std::optional<std::string> StoreThread::setting(const std::string& name)
{
    if (const auto known = settings_.find(name); known != settings_.end()) {
        return known->second;
    }
    const std::scoped_lock lock(libraryMutex_);
    Result<std::optional<std::string>> read = library_->setting(name);
    if (!read) {
        log::warn(channel, "setting {} cannot be read: {}", name, read.error().forLog);
        return std::nullopt;
    }
    settings_[name] = *read;
    return *std::move(read);
}

void StoreThread::retry()
{
    {
        const std::scoped_lock lock(mutex_);
        isHalted_ = false;
    }
    wake_.notify_all();
}

void StoreThread::waitUntilIdle()
{
    std::unique_lock lock(mutex_);
    idle_.wait(lock, [this] { return jobs_.empty() || isHalted_; });
}

void StoreThread::push(Job job)
{
    {
        const std::scoped_lock lock(mutex_);
        jobs_.push_back(std::move(job));
    }
    wake_.notify_all();
}

void StoreThread::run(const std::stop_token& stop)
{
    while (true) {
        Job job;
        {
            std::unique_lock lock(mutex_);
            wake_.wait(lock, stop, [this] { return !jobs_.empty() && !isHalted_; });
            if (jobs_.empty() || isHalted_) {
                return; // asked to stop with nothing left that could be written
            }
            job = jobs_.front();
        }
        finish(job, carryOut(job));
    }
}

Result<void> StoreThread::carryOut(const Job& job)
{
    struct Visitor
    {
        Library& library;
        Result<void> operator()(const Apply& job) const { return library.apply(job.change); }
        Result<void> operator()(const Undo& /*job*/) const { return library.undo(); }
        Result<void> operator()(const Redo& /*job*/) const { return library.redo(); }
        Result<void> operator()(const KeepSetting& job) const
        {
            return library.keepSetting(job.name, job.value);
        }
    };
    const std::scoped_lock lock(libraryMutex_);
    try {
        return std::visit(Visitor{*library_}, job);
    } catch (const std::exception& error) {
        // A thread's entry is an edge: the change stays queued and the user is told.
        return Failure{FailureKind::Io,
                       "The library could not be written. Your last change is still in the "
                       "window; try again, or export a copy.",
                       error.what()};
    }
}

void StoreThread::finish(const Job& job, const Result<void>& outcome)
{
    if (!outcome) {
        log::warn(channel, "write failed: {} {}", outcome.error().forCook, outcome.error().forLog);
    }
    {
        // The news is posted under the lock: who has waited until all was written finds it there.
        const std::scoped_lock lock(mutex_);
        const bool isSetting = std::holds_alternative<KeepSetting>(job);
        if (outcome || isSetting) { // where the window stood is not worth holding changes up for
            jobs_.pop_front();
            if (jobs_.empty()) {
                QMetaObject::invokeMethod(
                    this, [this] { tellIfAllWritten(); }, Qt::QueuedConnection);
            }
        } else {
            isHalted_ = true;
            QMetaObject::invokeMethod(
                this, [this, failure = outcome.error()] { Q_EMIT failed(failure); },
                Qt::QueuedConnection);
        }
    }
    idle_.notify_all();
}

void StoreThread::tellIfAllWritten()
{
    const bool isStillAllWritten = [this] {
        const std::scoped_lock lock(mutex_);
        return jobs_.empty();
    }();
    if (isStillAllWritten) {
        Q_EMIT allWritten();
    }
}

} // namespace suppertide::ui
