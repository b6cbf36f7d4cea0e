#include "ui/print/list_pdf.h"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <QFont>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextTable>

#include <fmt/core.h>

#include <cmath>
#include <vector>

namespace suppertide::ui {

namespace {

constexpr int dotsPerInch = 600;
constexpr double margin = 15;     // mm
constexpr double textSize = 10.5; // pt

/// Something of the list that is not to be torn apart: what stands under its headings, with them.
struct Piece
{
    QTextBlock block; // its first, if that is no table
    QTextTable* table = nullptr;
    QRectF box;

    void breakBefore() const
    {
        if (table != nullptr) {
            QTextTableFormat format = table->format();
            format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
            table->setFormat(format);
        } else {
            QTextBlockFormat format = block.blockFormat();
            format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
            QTextCursor(block).setBlockFormat(format);
        }
    }
};

std::vector<Piece> piecesOf(QTextDocument& document)
{
    std::vector<Piece> pieces;
    const QAbstractTextDocumentLayout& layout = *document.documentLayout();
    bool isHeaded = false; // the piece begun is headings only
    for (auto it = document.rootFrame()->begin(); !it.atEnd(); ++it) {
        auto* table = qobject_cast<QTextTable*>(it.currentFrame());
        const QTextBlock block = it.currentBlock();
        if (table == nullptr && (!block.isValid() || block.text().isEmpty())) {
            continue;
        }
        const QRectF box =
            table != nullptr ? layout.frameBoundingRect(table) : layout.blockBoundingRect(block);
        if (isHeaded) {
            pieces.back().box = pieces.back().box.united(box);
        } else {
            pieces.push_back({block, table, box});
        }
        isHeaded = table == nullptr && block.blockFormat().headingLevel() > 0;
    }
    return pieces;
}

/// Puts whatever would be torn by the end of a page onto the next one, if it fits there. Each break
/// moves all that follows, so the pieces are measured anew after it.
void keepTogether(QTextDocument& document)
{
    const double height = document.pageSize().height();
    for (std::size_t next = 0;;) {
        const std::vector<Piece> pieces = piecesOf(document);
        const auto isTorn = [height](const Piece& piece) {
            constexpr double rounding = 1; // a dot
            const double end = std::floor(piece.box.top() / height + 1) * height;
            return piece.box.bottom() > end + rounding && piece.box.height() <= height;
        };
        while (next < pieces.size() && !isTorn(pieces[next])) {
            ++next;
        }
        if (next == pieces.size()) {
            return;
        }
        pieces[next].breakBefore();
        ++next;
    }
}

void paintPage(QTextDocument& document, QPainter& painter, int number)
{
    const QSizeF page = document.pageSize();
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = QRectF{QPointF{0, number * page.height()}, page};
    context.palette.setColor(QPalette::Text, Qt::black);
    painter.save();
    painter.translate(0, -number * page.height());
    painter.setClipRect(context.clip);
    document.documentLayout()->draw(&painter, context);
    painter.restore();
}

} // namespace

void paintHtml(const QString& html, QPagedPaintDevice& device)
{
    QTextDocument document;
    QFont font;
    font.setPointSizeF(textSize);
    document.setDefaultFont(font);
    document.setDefaultStyleSheet(QStringLiteral("body { color: black; }"));
    document.documentLayout()->setPaintDevice(&device);
    document.setDocumentMargin(0);
    document.setHtml(html);
    QPainter painter(&device);
    painter.setFont(font);
    const double footer = 2 * painter.fontMetrics().lineSpacing();
    const QSizeF page{static_cast<double>(device.width()), device.height() - footer};
    document.setPageSize(page);
    keepTogether(document);
    const int pages = document.pageCount();
    for (int number = 0; number < pages; ++number) {
        if (number > 0) {
            device.newPage();
        }
        paintPage(document, painter, number);
        painter.drawText(
            QRectF{0, page.height(), page.width(), footer}, Qt::AlignRight | Qt::AlignBottom,
            QCoreApplication::translate("ListPdf", "Page %1 of %2").arg(number + 1).arg(pages));
    }
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
