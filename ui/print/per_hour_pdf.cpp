#include "ui/print/per_hour_pdf.h"

#include <QBuffer>
#include <QFile>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

#include <fmt/core.h>

#include "ui/print/paper_text.h"
#include "ui/print/per_hour_pages.h"

namespace suppertide::ui {

namespace {

constexpr int dotsPerInch = 1200;
constexpr double pointsPerInch = 72;

QByteArray pdfOf(const PerHourPages& pages, const QString& title)
{
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer{&buffer};
    writer.setResolution(dotsPerInch);
    writer.setPageSize(QPageSize{pages.paper, QPageSize::Point, {}, QPageSize::ExactMatch});
    writer.setPageMargins({0, 0, 0, 0});
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Suppertide"));
    QPainter painter{&writer};
    painter.scale(dotsPerInch / pointsPerInch, dotsPerInch / pointsPerInch);
    for (std::size_t page = 0; page < pages.pages.size(); ++page) {
        if (page > 0) {
            writer.newPage();
        }
        paintPage(painter, pages, page);
    }
    painter.end();
    return bytes;
}

Failure notWritten(const std::filesystem::path& file, const QString& reason)
{
    return {FailureKind::Io,
            fmt::format("The per-hour plan could not be written to “{}”: {}. Choose another folder "
                        "or make room on the disk, then print again.",
                        file.string(), reason.toStdString()),
            {}};
}

} // namespace

Result<void> writePerHourPdf(const PerHourPlan& sheet, const std::filesystem::path& file,
                             PaperSize size)
{
    PageStyle style;
    style.paper = size;
    return writePerHourPdf(sheet, file, style);
}

Result<void> writePerHourPdf(const PerHourPlan& sheet, const std::filesystem::path& file,
                             const PageStyle& style)
{
    const QByteArray bytes = pdfOf(layOutPages(sheet, style), plainLine(sheet.title));
    // In one go at the end, so that a full disk leaves the previous file as it was.
    QSaveFile out{QFile::decodeName(file.c_str())};
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit()) {
        return notWritten(file, out.errorString());
    }
    return {};
}

} // namespace suppertide::ui
