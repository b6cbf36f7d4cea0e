// Document: what the window works on: the current state, how to change it, and how to take a
// change back. Every change of any kind goes through `apply` and comes back as one `changed`
// signal, whether it is an edit, an undo or a redo. Nothing counts as saved before the library has
// acknowledged it.
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <memory>

#include "ui/document/state.h"

namespace suppertide::ui {

class StoreThread;

enum class SaveState
{
    Saved,
    Saving,
    Failed,
    ReadOnly
};

class Document : public QObject
{
    Q_OBJECT

public:
    /// Loads the state and the changes that can be undone. Fails as the library does.
    [[nodiscard]] static Result<std::unique_ptr<Document>> open(std::unique_ptr<Library> library);
    ~Document() override;
    Document(const Document&) = delete;
    Document& operator=(const Document&) = delete;
    Document(Document&&) = delete;
    Document& operator=(Document&&) = delete;

    [[nodiscard]] const StatePtr& state() const { return state_; }
    [[nodiscard]] const LibraryState& library() const { return state_->library; }

    /// Of the latest state made; an undo or redo comes back to one before it.
    [[nodiscard]] std::uint64_t newestRevision() const { return lastRevision_; }

    /// Makes `next` the state, undoable under `text` ("Move roast roots"). Nothing happens if it
    /// equals the current one. On a library that may only be looked at: `refused`.
    void apply(LibraryState next, const QString& text);

    [[nodiscard]] QUndoStack& undoStack() { return *stack_; }
    [[nodiscard]] SaveState saveState() const { return saveState_; }
    /// Why it is not saved, or why it is read-only; empty otherwise.
    [[nodiscard]] const QString& saveReason() const { return saveReason_; }
    /// Tries to write what could not be written.
    void retrySaving();
    /// Waits for the disk; true if all is saved then.
    [[nodiscard]] bool finishSaving();

    /// Small settings of the window; no part of undo.
    [[nodiscard]] QString setting(const QString& name) const;
    void keepSetting(const QString& name, const QString& value);

Q_SIGNALS:
    void changed(const suppertide::ui::ChangeSet& changes);
    void saveStateChanged(suppertide::ui::SaveState state);
    void refused(const QString& reason);

private:
    class ReplaceState;

    Document(std::unique_ptr<Library> library, LibraryState state, const History& history);
    void restore(const History& history);
    void adopt(const StatePtr& state);
    void show(SaveState state, const QString& reason = {});

    StatePtr state_;
    std::uint64_t lastRevision_ = 0;
    SaveState saveState_ = SaveState::Saved;
    QString saveReason_;
    bool isRestoring_ = false;
    QUndoStack* stack_;
    StoreThread* store_;
};

} // namespace suppertide::ui
