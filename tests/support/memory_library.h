// A library in memory, for tests of what stands above it. It can be told to refuse writes, and to
// hold them up until it is let go. What it has been told can be looked at, also by a second one
// that is opened on the same memory, as a restart would.
#pragma once

#include <condition_variable>
#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "core/library/library.h"

namespace suppertide::test {

/// What is kept; outlives the library, as a file does.
struct Memory
{
    std::mutex mutex;
    std::condition_variable released;
    LibraryState state;
    History history;
    std::map<std::string, std::string> settings;
    std::string readOnlyReason;
    bool isHeld = false;
    bool refuses = false;

    void release()
    {
        {
            const std::scoped_lock lock(mutex);
            isHeld = false;
        }
        released.notify_all();
    }
    void refuse(bool yes)
    {
        const std::scoped_lock lock(mutex);
        refuses = yes;
    }
    [[nodiscard]] LibraryState stateNow()
    {
        const std::scoped_lock lock(mutex);
        return state;
    }
};

class MemoryLibrary final : public Library
{
public:
    explicit MemoryLibrary(std::shared_ptr<Memory> memory) : memory_(std::move(memory)) {}

    [[nodiscard]] std::string readOnlyReason() const override { return memory_->readOnlyReason; }
    [[nodiscard]] Result<LibraryState> load() override { return memory_->stateNow(); }
    [[nodiscard]] Result<History> loadHistory() override
    {
        const std::scoped_lock lock(memory_->mutex);
        return memory_->history;
    }
    [[nodiscard]] Result<void> apply(const Change& change) override
    {
        return write([&](Memory& memory) {
            memory.state = applied(memory.state, change);
            memory.history.changes.resize(memory.history.done);
            memory.history.changes.push_back(change);
            if (memory.history.changes.size() > 100) {
                memory.history.changes.erase(memory.history.changes.begin());
            }
            memory.history.done = memory.history.changes.size();
        });
    }
    [[nodiscard]] Result<void> undo() override
    {
        return write([](Memory& memory) {
            memory.state = reverted(memory.state, memory.history.changes.at(--memory.history.done));
        });
    }
    [[nodiscard]] Result<void> redo() override
    {
        return write([](Memory& memory) {
            memory.state = applied(memory.state, memory.history.changes.at(memory.history.done++));
        });
    }
    [[nodiscard]] Result<std::optional<std::string>> setting(const std::string& name) override
    {
        const std::scoped_lock lock(memory_->mutex);
        const auto there = memory_->settings.find(name);
        return there == memory_->settings.end() ? std::optional<std::string>{} : there->second;
    }
    [[nodiscard]] Result<void> keepSetting(const std::string& name,
                                           const std::string& value) override
    {
        return write([&](Memory& memory) { memory.settings[name] = value; });
    }

private:
    template <typename Write>
    Result<void> write(const Write& how)
    {
        std::unique_lock lock(memory_->mutex);
        memory_->released.wait(lock, [this] { return !memory_->isHeld; });
        if (memory_->refuses) {
            return Failure{FailureKind::Io, "The disk is full. Make room, then try again.", ""};
        }
        how(*memory_);
        return {};
    }

    std::shared_ptr<Memory> memory_;
};

} // namespace suppertide::test
