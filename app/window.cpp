#include "app/window.h"

#include <QApplication>

#include <fmt/format.h>

#include <exception>
#include <ostream>

#include "app/evening.h"
#include "app/library_paths.h"
#include "core/base/log.h"
#include "core/store/sqlite_library.h"
#include "ui/window/run_window.h"

namespace suppertide::app {

namespace {

/// Exceptions must not cross Qt's event loop: they are said, and the program ends in order, since
/// every change is already on disk.
class Application final : public QApplication
{
public:
    using QApplication::QApplication;

    bool notify(QObject* receiver, QEvent* event) override
    {
        try {
            return QApplication::notify(receiver, event);
        } catch (const std::exception& problem) {
            log::error("app", "defect while an event was delivered: {}", problem.what());
            exit(static_cast<int>(Exit::BadInput));
            return false;
        }
    }
};

Result<std::unique_ptr<Library>> libraryFor(const CommandLine& line, const VerbContext& context)
{
    if (line.verb != Verb::Demo) {
        return openLibraryOf(line);
    }
    auto demo = freshDemo(context.clock);
    if (!demo) {
        return demo.error();
    }
    context.out << fmt::format("This demo is kept in {}.\n", demo->string()) << std::flush;
    return openLibrary(*demo, OpenMode::ReadWrite);
}

} // namespace

Exit runWindow(const CommandLine& line, const VerbContext& context, int& count, char** words)
{
    auto library = libraryFor(line, context);
    if (!library) {
        return say(library.error(), context);
    }
    if (auto folder = dataFolder()) {
        log::alsoTo(*folder / "suppertide.log");
    }
    QApplication::setApplicationName(QStringLiteral("Suppertide"));
    QApplication::setApplicationVersion(QStringLiteral(SUPPERTIDE_VERSION));
    QGuiApplication::setDesktopFileName(QStringLiteral("io.suppertide.Suppertide"));
    const Application application(count, words);
    const int status = ui::runWindow(std::move(*library), context.clock);
    return status == 0 ? Exit::Done : Exit::BadInput;
}

} // namespace suppertide::app
