#include "ui/print/list_pdf.h"

#include <QBuffer>
#include <QFile>
#include <QFont>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>
#include <QSaveFile>
#include <QTextDocument>

#include <fmt/core.h>

namespace suppertide::ui {

namespace {

constexpr int dotsPerInch = 600;
constexpr double margin = 15;     // mm
constexpr double textSize = 10.5; // pt

} // namespace

void paintHtml(const QString& html, QPagedPaintDevice& device)
{
    QTextDocument document;
    QFont font;
    font.setPointSizeF(textSize);
    document.setDefaultFont(font);
    document.setDefaultStyleSheet(QStringLiteral("body { color: black; }"));
    document.setHtml(html);
    document.print(&device); // adds page numbers
}

Result<void> writeHtmlPdf(const QString& html, const QString& title,
                          const std::filesystem::path& file, PaperSize size)
{
    QByteArray bytes;
    {
        QBuffer buffer{&bytes};
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer{&buffer};
        writer.setResolution(dotsPerInch);
        writer.setPageSize(QPageSize{size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter});
        writer.setPageMargins({margin, margin, margin, margin}, QPageLayout::Millimeter);
        writer.setTitle(title);
        writer.setCreator(QStringLiteral("Suppertide"));
        paintHtml(html, writer);
    }
    QSaveFile out{QFile::decodeName(file.c_str())};
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit()) {
        return Failure{FailureKind::Io,
                       fmt::format("The list could not be written to “{}”: {}. Choose another "
                                   "folder or make room on the disk, then save it again.",
                                   file.string(), out.errorString().toStdString()),
                       {}};
    }
    return {};
}

} // namespace suppertide::ui
