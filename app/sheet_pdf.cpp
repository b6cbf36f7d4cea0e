#include "app/sheet_pdf.h"

#include <QGuiApplication>

#include <memory>

#include "ui/print/per_hour_pdf.h"

namespace suppertide::app {

namespace {

/// Fonts need an application object; a verb has none. `offscreen` must be chosen before it is made.
std::unique_ptr<QGuiApplication> applicationWithoutDisplay()
{
    if (QGuiApplication::instance() != nullptr) {
        return nullptr;
    }
    static int count = 1;
    static char name[] = "suppertide";
    static char* words[] = {name, nullptr};
    qputenv("QT_QPA_PLATFORM", "offscreen");
    return std::make_unique<QGuiApplication>(count, words);
}

} // namespace

Result<void> writeSheetPdf(const PerHourPlan& sheet, const std::filesystem::path& file, Paper paper)
{
    const auto application = applicationWithoutDisplay();
    return ui::writePerHourPdf(sheet, file,
                               paper == Paper::A4 ? ui::PaperSize::A4 : ui::PaperSize::Letter);
}

} // namespace suppertide::app
