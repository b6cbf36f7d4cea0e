#include "ui/window/run_window.h"

#include <QApplication>
#include <QMessageBox>

#include "ui/document/document.h"
#include "ui/theme/application_theme.h"
#include "ui/window/main_window.h"

namespace suppertide::ui {

int runWindow(std::unique_ptr<Library> library, const Clock& clock)
{
    auto* application = qobject_cast<QApplication*>(QCoreApplication::instance());
    expects(application != nullptr, "a QApplication");
    ApplicationTheme theme(*application);
    auto document = Document::open(std::move(library));
    if (!document) {
        QMessageBox::critical(nullptr, QApplication::applicationName(),
                              QString::fromStdString(document.error().forCook));
        return 1;
    }
    MainWindow window(**document, theme, clock);
    window.show();
    return QApplication::exec();
}

} // namespace suppertide::ui
