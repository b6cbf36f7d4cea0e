#include "ui/print/place_pages.h"

#include <QBuffer>
#include <QFile>
#include <QPageSize>
#include <QPdfWriter>
#include <QSaveFile>
#include <QTextOption>

#include <fmt/core.h>

#include <algorithm>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

// In points, 72 an inch.
constexpr double margin = 40;
constexpr double gap = 5;
constexpr int dotsPerInch = 1200;
constexpr double pointsPerInch = 72;
constexpr int cardColumns = 2;
constexpr int cardRows = 4;

QSizeF paperOf(PaperSize size)
{
    return QPageSize(size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter)
        .size(QPageSize::Point);
}

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

QFont font(double points, bool isBold)
{
    QFont made(u"DejaVu Sans"_s);
    // The painter's unit is a point.
    made.setPixelSize(static_cast<int>(points));
    made.setBold(isBold);
    return made;
}

/// Broken between words, and within one that is wider than its box: nothing is cut off.
QTextOption wrapped(Qt::Alignment alignment)
{
    QTextOption option(alignment);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    return option;
}

double heightOf(QPainter& painter, const QString& words, double wide, const QFont& with)
{
    // Any height that no text reaches.
    constexpr double tall = 10'000;
    painter.setFont(with);
    return words.isEmpty()
               ? 0
               : painter.boundingRect(QRectF(0, 0, wide, tall), words, wrapped(Qt::AlignLeft))
                     .height();
}

class TablePainter
{
public:
    TablePainter(QPainter& painter, const PlaceSheet& sheet, const QSizeF& paper,
                 const std::function<void()>& nextPage)
        : painter_(painter), sheet_(sheet), paper_(paper), nextPage_(nextPage)
    {}

    void paint()
    {
        begin();
        for (const PlaceSheetRow& row : sheet_.rows) {
            const double height = heightOf(row);
            if (y_ + height > paper_.height() - margin - footHeight()) {
                foot();
                nextPage_();
                begin();
            }
            paintRow(row, height);
        }
        foot();
    }

private:
    [[nodiscard]] double width() const { return paper_.width() - 2 * margin; }
    [[nodiscard]] double columnWidth() const
    {
        return width() / static_cast<double>(sheet_.columns.size() + 1);
    }

    /// From the top of the box, as far down as it takes.
    double write(const QRectF& box, const QString& words, const QFont& with)
    {
        const double used = heightFor(words, box.width(), with);
        painter_.drawText(QRectF(box.topLeft(), QSizeF(box.width(), used)), words,
                          wrapped(Qt::AlignLeft | Qt::AlignTop));
        return used;
    }
    [[nodiscard]] double heightFor(const QString& words, double wide, const QFont& with) const
    {
        return ui::heightOf(painter_, words, wide, with);
    }

    void begin()
    {
        y_ = margin;
        y_ += write({margin, y_, width(), 60}, text(sheet_.title), font(17, true));
        y_ += write({margin, y_, width(), 30}, text(sheet_.day), font(11, false)) + 2 * gap;
        double tallest = 0;
        for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
            const double x = margin + columnWidth() * static_cast<double>(i + 1);
            tallest = std::max(tallest, write({x, y_, columnWidth() - gap, 60},
                                              text(sheet_.columns[i]), font(11, true)));
        }
        y_ += tallest + gap;
        painter_.setPen(QPen(Qt::black, 0.8));
        painter_.drawLine(QPointF(margin, y_), QPointF(margin + width(), y_));
    }

    static QString dish(const PlaceSheetCell& cell)
    {
        return cell.dish.empty() ? u"–"_s : text(cell.dish);
    }

    double heightOf(const PlaceSheetRow& row) const
    {
        const double wide = columnWidth() - gap;
        double tallest = heightFor(text(row.guest), wide, font(12, true)) +
                         heightFor(text(row.needs), wide, font(9, false));
        for (const PlaceSheetCell& cell : row.cells) {
            tallest =
                std::max(tallest, heightFor(dish(cell), wide, font(10, false)) +
                                      heightFor(text(cell.mark), wide - 2 * gap, font(10, true)));
        }
        return tallest + 2 * gap;
    }

    void paintRow(const PlaceSheetRow& row, double height)
    {
        const double wide = columnWidth() - gap;
        const double top = y_ + gap;
        const double under = write({margin, top, wide, height}, text(row.guest), font(12, true));
        write({margin, top + under, wide, height}, text(row.needs), font(9, false));
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const double x = margin + columnWidth() * static_cast<double>(i + 1);
            const double used = write({x, top, wide, height}, dish(row.cells[i]), font(10, false));
            if (!row.cells[i].mark.empty()) {
                paintMark({x, top + used, wide, height}, text(row.cells[i].mark));
            }
        }
        y_ += height;
        painter_.setPen(QPen(Qt::black, 0.4));
        painter_.drawLine(QPointF(margin, y_), QPointF(margin + width(), y_));
    }

    /// A bar beside bold words: seen without colour.
    void paintMark(const QRectF& box, const QString& words)
    {
        const double used = write(box.adjusted(2 * gap, 0, 0, 0), words, font(10, true));
        painter_.fillRect(QRectF(box.left(), box.top(), 4, used), Qt::black);
    }

    [[nodiscard]] double footHeight() const
    {
        return heightFor(text(sheet_.caution), width() - 4 * gap, font(10, true)) + 4 * gap;
    }

    void foot()
    {
        const double height = footHeight();
        const QRectF box(margin, paper_.height() - margin - height, width(), height);
        painter_.setPen(QPen(Qt::black, 1.8));
        painter_.drawRect(box);
        write(box.adjusted(2 * gap, 2 * gap, -2 * gap, 0), text(sheet_.caution), font(10, true));
    }

    QPainter& painter_;
    const PlaceSheet& sheet_;
    QSizeF paper_;
    const std::function<void()>& nextPage_;
    double y_ = 0;
};

/// The largest type in which the words take no more than that room; at the least `least`, which no
/// eye reads below.
QFont fitted(QPainter& painter, const QString& words, const QSizeF& room, double points,
             double least, bool isBold)
{
    QFont made = font(points, isBold);
    while (points > least && heightOf(painter, words, room.width(), made) > room.height()) {
        made = font(--points, isBold);
    }
    return made;
}

void paintCard(QPainter& painter, const QRectF& card, const PlaceSheet& sheet,
               const PlaceSheetRow& row)
{
    painter.setPen(QPen(Qt::black, 0.4, Qt::DotLine));
    painter.drawRect(card);
    painter.setPen(Qt::black);
    const QRectF inside = card.adjusted(14, 14, -14, -12);
    const auto write = [&](double top, double height, const QString& words, const QFont& with) {
        painter.setFont(with);
        painter.drawText(QRectF(inside.left(), top, inside.width(), height), words,
                         wrapped(Qt::AlignHCenter | Qt::AlignTop));
    };
    const QString guest = text(row.guest);
    const QFont guestFont = fitted(painter, guest, {inside.width(), 54}, 22, 9, true);
    const double guestHeight = heightOf(painter, guest, inside.width(), guestFont);
    const QString title = text(sheet.title);
    const QFont titleFont = fitted(painter, title, {inside.width(), 20}, 8, 6, false);
    const double titleHeight = heightOf(painter, title, inside.width(), titleFont);
    QStringList dishes;
    for (const PlaceSheetCell& cell : row.cells) {
        if (!cell.dish.empty()) {
            dishes.push_back(text(cell.dish));
        }
    }
    // A text option knows no line feed, but the separator of lines.
    const QString menu = dishes.join(QChar::LineSeparator);
    const double room = inside.height() - guestHeight - titleHeight - 8 - 6;
    write(inside.top(), guestHeight, guest, guestFont);
    write(inside.top() + guestHeight + 8, room, menu,
          fitted(painter, menu, {inside.width(), room}, 10, 5, false));
    write(inside.bottom() - titleHeight, titleHeight, title, titleFont);
}

void paintCards(QPainter& painter, const PlaceSheet& sheet, const QSizeF& paper,
                const std::function<void()>& nextPage)
{
    const double wide = (paper.width() - 2 * margin) / cardColumns;
    const double high = (paper.height() - 2 * margin) / cardRows;
    constexpr std::size_t perPage = std::size_t{cardColumns} * cardRows;
    for (std::size_t i = 0; i < sheet.rows.size(); ++i) {
        if (i % perPage == 0) {
            nextPage();
        }
        const auto place = static_cast<int>(i % perPage);
        const QRectF card(margin + wide * (place % cardColumns),
                          margin + high * (place / cardColumns), wide, high);
        paintCard(painter, card, sheet, sheet.rows[i]);
    }
}

} // namespace

void paintPlacePages(QPainter& painter, const PlaceSheet& sheet, PaperSize size,
                     const std::function<void()>& nextPage)
{
    const QSizeF paper = paperOf(size);
    TablePainter(painter, sheet, paper, nextPage).paint();
    paintCards(painter, sheet, paper, nextPage);
}

Result<void> writePlacesPdf(const PlaceSheet& sheet, const std::filesystem::path& file,
                            PaperSize size)
{
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer{&buffer};
    writer.setResolution(dotsPerInch);
    writer.setPageSize(QPageSize{paperOf(size), QPageSize::Point, {}, QPageSize::ExactMatch});
    writer.setPageMargins({0, 0, 0, 0});
    writer.setTitle(text(sheet.title));
    writer.setCreator(u"Suppertide"_s);
    QPainter painter{&writer};
    painter.scale(dotsPerInch / pointsPerInch, dotsPerInch / pointsPerInch);
    paintPlacePages(painter, sheet, size, [&writer] { writer.newPage(); });
    painter.end();
    // In one go at the end, so that a full disk leaves the previous file as it was.
    QSaveFile out{QFile::decodeName(file.c_str())};
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit()) {
        return Failure{FailureKind::Io,
                       fmt::format("Who gets what could not be written to “{}”: {}. Choose another "
                                   "folder or make room on the disk, then try again.",
                                   file.string(), out.errorString().toStdString()),
                       {}};
    }
    return {};
}

} // namespace suppertide::ui
