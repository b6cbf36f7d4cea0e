// StoreThread: the one thread on which the library is written, so that the window never waits for
// a disk. Changes are written in the order in which they were made; each is acknowledged when it
// is on disk. When a write fails everything behind it waits until `retry`.
#pragma once

#include <QObject>

#include <condition_variable>
#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <variant>

#include "core/library/library.h"

namespace suppertide::ui {

class StoreThread : public QObject
{
    Q_OBJECT

public:
    explicit StoreThread(std::unique_ptr<Library> library, QObject* parent = nullptr);
    /// Writes what is still to be written first, unless writing fails.
    ~StoreThread() override;
    StoreThread(const StoreThread&) = delete;
    StoreThread& operator=(const StoreThread&) = delete;
    StoreThread(StoreThread&&) = delete;
    StoreThread& operator=(StoreThread&&) = delete;

    void apply(Change change);
    void undo();
    void redo();
    void keepSetting(std::string name, std::string value);
    /// As keepSetting, but for as long as this lives, and not on disk.
    void rememberSetting(std::string name, std::string value);
    /// What was kept last, written or not. The first time a name is asked for it is read, and waits
    /// for a write under way (some tens of ms at most). On the thread that owns this.
    [[nodiscard]] std::optional<std::string> setting(const std::string& name);
    /// Tries the write that failed again.
    void retry();
    /// Waits until all is written or a write fails.
    void waitUntilIdle();

Q_SIGNALS:
    /// All changes made so far are on disk.
    void allWritten();
    void failed(const suppertide::Failure& failure);

private:
    struct Apply
    {
        Change change;
    };
    struct Undo
    {};
    struct Redo
    {};
    struct KeepSetting
    {
        std::string name;
        std::string value;
    };
    using Job = std::variant<Apply, Undo, Redo, KeepSetting>;

    void push(Job job);
    void run(const std::stop_token& stop);
    [[nodiscard]] Result<void> carryOut(const Job& job);
    void finish(const Job& job, const Result<void>& outcome);
    void tellIfAllWritten();

    std::unique_ptr<Library> library_;
    std::map<std::string, std::optional<std::string>> settings_; // as asked for or kept
    std::mutex libraryMutex_;
    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::condition_variable_any idle_;
    std::deque<Job> jobs_; // the first one may be under way
    bool isHalted_ = false;
    std::jthread thread_; // last: joined before the rest goes
};

} // namespace suppertide::ui
