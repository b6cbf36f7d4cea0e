#include "ui/document/document.h"

#include <QCoreApplication>
#include <QUndoCommand>

#include "core/base/log.h"
#include "ui/document/store_thread.h"

namespace suppertide::ui {

namespace {

constexpr int undoLimit = 100; // as many as the library keeps

StatePtr makeState(LibraryState library, std::uint64_t revision)
{
    return std::make_shared<const State>(State{std::move(library), revision});
}

} // namespace

/// The only command: swaps the state for another one, and has the store do the same.
class Document::ReplaceState : public QUndoCommand
{
public:
    ReplaceState(Document& document, StatePtr before, StatePtr after, const QString& text)
        : QUndoCommand(text), document_(document), before_(std::move(before)),
          after_(std::move(after))
    {}

    void undo() override
    {
        if (!document_.isRestoring_) {
            document_.store_->undo();
            document_.adopt(before_);
        }
    }
    void redo() override
    {
        if (document_.isRestoring_) {
            return;
        }
        if (isFirst_) {
            document_.store_->apply(
                differenceOf(before_->library, after_->library, text().toStdString()));
        } else {
            document_.store_->redo();
        }
        isFirst_ = false;
        document_.adopt(after_);
    }
    void markAsWritten() { isFirst_ = false; }

private:
    Document& document_;
    StatePtr before_;
    StatePtr after_;
    bool isFirst_ = true;
};

Result<std::unique_ptr<Document>> Document::open(std::unique_ptr<Library> library)
{
    Result<LibraryState> state = library->load();
    if (!state) {
        return state.error();
    }
    History history;
    if (library->readOnlyReason().empty()) {
        Result<History> loaded = library->loadHistory();
        if (!loaded) {
            return loaded.error();
        }
        history = *std::move(loaded);
    }
    return std::unique_ptr<Document>(new Document(std::move(library), *std::move(state), history));
}

Document::Document(std::unique_ptr<Library> library, LibraryState state, const History& history)
    : state_(makeState(std::move(state), 0)), stack_(new QUndoStack(this))
{
    const std::string readOnly = library->readOnlyReason();
    store_ = new StoreThread(std::move(library), this);
    stack_->setUndoLimit(undoLimit);
    restore(history);
    connect(store_, &StoreThread::allWritten, this, [this] { show(SaveState::Saved); });
    connect(store_, &StoreThread::failed, this, [this](const Failure& failure) {
        show(SaveState::Failed, QString::fromStdString(failure.forCook));
    });
    if (!readOnly.empty()) {
        saveState_ = SaveState::ReadOnly;
        saveReason_ = QString::fromStdString(readOnly);
    }
}

Document::~Document() = default;

void Document::restore(const History& history)
{
    expects(history.done <= history.changes.size(), "as many changes as are done");
    std::vector<StatePtr> states(history.changes.size() + 1);
    states[history.done] = state_;
    for (std::size_t i = history.done; i > 0; --i) {
        states[i - 1] =
            makeState(reverted(states[i]->library, history.changes[i - 1]), ++lastRevision_);
    }
    for (std::size_t i = history.done; i < history.changes.size(); ++i) {
        states[i + 1] = makeState(applied(states[i]->library, history.changes[i]), ++lastRevision_);
    }
    isRestoring_ = true;
    for (std::size_t i = 0; i < history.changes.size(); ++i) {
        auto* command = new ReplaceState(*this, states[i], states[i + 1],
                                         QString::fromStdString(history.changes[i].text));
        command->markAsWritten();
        stack_->push(command);
    }
    stack_->setIndex(static_cast<int>(history.done));
    isRestoring_ = false;
}

void Document::apply(LibraryState next, const QString& text)
{
    if (differenceOf(state_->library, next, {}).parts.empty()) {
        return; // perhaps other copies, but of the same
    }
    if (saveState_ == SaveState::ReadOnly) {
        Q_EMIT refused(saveReason_);
        return;
    }
    log::debug("ui.document", "{}", text.toStdString());
    StatePtr after = makeState(std::move(next), ++lastRevision_);
    stack_->push(new ReplaceState(*this, state_, std::move(after), text));
}

void Document::adopt(const StatePtr& state)
{
    const StatePtr before = std::exchange(state_, state);
    if (saveState_ != SaveState::Failed) {
        show(SaveState::Saving);
    }
    Q_EMIT changed(changesBetween(before->library, state_->library));
}

void Document::show(SaveState state, const QString& reason)
{
    saveReason_ = reason;
    if (std::exchange(saveState_, state) != state) {
        Q_EMIT saveStateChanged(state);
    }
}

void Document::retrySaving()
{
    if (saveState_ == SaveState::Failed) {
        show(SaveState::Saving);
        store_->retry();
    }
}

bool Document::finishSaving()
{
    store_->waitUntilIdle();
    QCoreApplication::sendPostedEvents(store_);
    return saveState_ == SaveState::Saved || saveState_ == SaveState::ReadOnly;
}

QString Document::setting(const QString& name) const
{
    return QString::fromStdString(store_->setting(name.toStdString()).value_or(""));
}

void Document::keepSetting(const QString& name, const QString& value)
{
    if (saveState_ != SaveState::ReadOnly) {
        store_->keepSetting(name.toStdString(), value.toStdString());
    } else {
        store_->rememberSetting(name.toStdString(), value.toStdString());
    }
}

} // namespace suppertide::ui
