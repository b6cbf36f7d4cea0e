#include "ui/pages/temperatures/temperature_page.h"

#include <QAction>
#include <QClipboard>
#include <QComboBox>
#include <QFontMetrics>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QHideEvent>
#include <QLabel>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTableView>
#include <QTextDocument>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

#include "ui/models/temperature_table.h"
#include "ui/pages/temperatures/temperature_chart.h"
#include "ui/theme/page_button.h"
#include "ui/timeline/canvas.h"
#include "ui/timeline/clash_tag.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr QSize tagRoom{30, 20}; // px: a tag 16 high, with two digits, and what stands over it

QPushButton* toggle(const QString& text, const QString& name, const QString& tip, QWidget* parent)
{
    auto* made = new QPushButton(text, parent);
    made->setObjectName(name);
    made->setCheckable(true);
    made->setToolTip(tip);
    made->setStatusTip(tip);
    made->setAccessibleDescription(tip);
    return made;
}

/// The tag of the clash, as on the timeline.
QIcon iconOf(const TemperatureSubject& subject, const Theme& theme, double scale)
{
    QPixmap pixmap(tagRoom * scale);
    pixmap.setDevicePixelRatio(scale);
    pixmap.fill(Qt::transparent);
    if (subject.worst) {
        QPainter painter(&pixmap);
        TextCache texts;
        Canvas canvas(painter, theme, texts, QRectF(QPointF(), tagRoom));
        const ClashSeverity severity =
            *subject.worst == Severity::Impossible ? ClashSeverity::Impossible
            : *subject.worst == Severity::Unsafe   ? ClashSeverity::Unsafe
                                                   : ClashSeverity::Undesirable;
        paintTag(canvas, tagRoom.width() / 2.0, tagRoom.height() / 2.0, subject.clash, severity);
    }
    return QIcon(pixmap);
}

} // namespace

TemperaturePage::TemperaturePage(const Theme& theme, QWidget* parent)
    : QWidget(parent), theme_(theme), heading_(new QLabel(tr("Temperatures"), this)),
      note_(new QLabel(this)), subjects_(new QComboBox(this)),
      asTable_(toggle(tr("As a &table"), u"temperaturesAsTable"_s,
                      tr("The stays of the chart in figures"), this)),
      fill_(
          toggle(tr("&Large"), u"temperaturesFill"_s, tr("Fill the window with this page"), this)),
      views_(new QStackedWidget(this)), chart_(new TemperatureChart(theme, this)),
      stays_(new TemperatureTable(this)), table_(new QTableView(this)),
      sentences_(new QPlainTextEdit(this))
{
    build();
    setTheme(theme);
    showNothing({});
}

/// A whole rule without scrolling, however small the window or large the type.
void TemperaturePage::keepRoomForLines(QPlainTextEdit& box)
{
    constexpr int lines = 4;
    const double margins = 2 * (box.frameWidth() + box.document()->documentMargin());
    box.setMinimumHeight(lines * QFontMetrics(box.font()).lineSpacing() +
                         static_cast<int>(std::ceil(margins)));
}

void TemperaturePage::build()
{
    subjects_->setObjectName(u"temperatureSubjects"_s);
    subjects_->setAccessibleName(tr("Food or oven"));
    subjects_->setStatusTip(tr("Whose temperature is shown; foods with a broken rule come first"));
    subjects_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    subjects_->setMinimumContentsLength(12);
    subjects_->setIconSize(tagRoom);
    chart_->setObjectName(u"temperatureChart"_s);
    chart_->setAccessibleName(tr("Chart of temperatures"));
    table_->setObjectName(u"temperatureTable"_s);
    table_->setAccessibleName(tr("Temperatures stay by stay"));
    table_->setModel(stays_);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    sentences_->setObjectName(u"temperatureSentences"_s);
    sentences_->setAccessibleName(tr("Rules of food safety"));
    sentences_->setReadOnly(true);
    sentences_->setTabChangesFocus(true);
    sentences_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    note_->setObjectName(u"temperatureNote"_s);
    note_->setTextFormat(Qt::PlainText);
    note_->setWordWrap(true);

    views_->addWidget(chart_);
    views_->addWidget(table_);
    auto* choices = new QHBoxLayout;
    choices->addWidget(asTable_);
    choices->addWidget(fill_);
    choices->addStretch();
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addWidget(heading_);
    page->addWidget(note_);
    page->addWidget(subjects_);
    page->addLayout(choices);
    page->addWidget(views_, 3);
    page->addWidget(sentences_, 1);
    page->addStretch();

    connect(subjects_, &QComboBox::currentIndexChanged, this, [this](int index) {
        if (index >= 0) {
            chosen_ = subjects_->itemData(index).toString().toStdString();
            showSubject();
        }
    });
    connect(asTable_, &QPushButton::toggled, this, [this](bool isTable) {
        views_->setCurrentWidget(isTable ? static_cast<QWidget*>(table_) : chart_);
    });
    connect(fill_, &QPushButton::toggled, this, &TemperaturePage::fillRequested);
    addChartMenu();
}

/// By the right button, or the menu key.
void TemperaturePage::addChartMenu()
{
    constexpr double closer = 0.7;
    const auto add = [this](const QString& text, const QString& name, auto&& does) {
        auto* action = new QAction(text, this);
        action->setObjectName(name);
        connect(action, &QAction::triggered, this, does);
        chart_->addAction(action);
    };
    add(tr("Look &closer"), u"temperaturesCloser"_s, [this] { chart_->zoom(closer); });
    add(tr("Look from &further"), u"temperaturesFurther"_s, [this] { chart_->zoom(1 / closer); });
    add(tr("Show &all of it"), u"temperaturesAll"_s, [this] { chart_->showAll(); });
    add(tr("As a &table"), u"temperaturesTable"_s, [this] { asTable_->setChecked(true); });
    add(tr("Copy what it &says"), u"temperaturesCopy"_s,
        [this] { QGuiApplication::clipboard()->setText(chart_->view().summary); });
    chart_->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void TemperaturePage::setTheme(const Theme& theme)
{
    theme_ = theme;
    heading_->setFont(theme.font(TypeRole::Heading));
    note_->setFont(theme.font(TypeRole::Control));
    sentences_->setFont(theme.font(TypeRole::Label));
    keepRoomForLines(*sentences_);
    table_->setFont(theme.font(TypeRole::Label));
    table_->horizontalHeader()->setFont(theme.font(TypeRole::SecondaryBold));
    for (QPushButton* button : {asTable_, fill_}) {
        keepRoomForBold(*button, theme);
    }
    chart_->setTheme(theme);
    listed_.clear(); // the tags have other colours
    if (curves_) {
        listSubjects();
    }
}

void TemperaturePage::setShown(bool hasSubject)
{
    for (QWidget* part : {static_cast<QWidget*>(subjects_), static_cast<QWidget*>(asTable_),
                          static_cast<QWidget*>(fill_), static_cast<QWidget*>(views_),
                          static_cast<QWidget*>(sentences_)}) {
        part->setVisible(hasSubject);
    }
}

void TemperaturePage::showNothing(const QString& why)
{
    curves_.reset();
    chart_->show({});
    stays_->show({});
    note_->setText(why.isEmpty() ? tr("There is no plan yet. Put dishes on the menu first.") : why);
    note_->show();
    setShown(false);
}

void TemperaturePage::show(const PlanPtr& plan, const PlanInput& input, const ReadingStyle& style)
{
    curves_ = std::make_unique<const TemperatureCurves>(plan, input, style);
    note_->setText(tr("No food of this plan is followed. Open a recipe (a double click on its "
                      "card) and add a food under “Followed for food safety”: what it is, how "
                      "thick and heavy, and what each step does to it."));
    note_->setVisible(!curves_->hasFoods());
    setShown(!curves_->subjects().empty());
    listSubjects();
}

void TemperaturePage::listSubjects()
{
    if (listed_ != curves_->subjects()) {
        listed_ = curves_->subjects();
        const QSignalBlocker quiet(subjects_);
        subjects_->clear();
        for (const TemperatureSubject& subject : curves_->subjects()) {
            subjects_->addItem(iconOf(subject, theme_, devicePixelRatioF()), subject.name,
                               QString::fromStdString(subject.key));
            if (subject.worst) {
                const int row = subjects_->count() - 1;
                subjects_->setItemData(row, tr("%1, clash %2").arg(subject.name).arg(subject.clash),
                                       Qt::AccessibleTextRole);
            }
        }
        subjects_->setCurrentIndex(
            std::max(0, subjects_->findData(QString::fromStdString(chosen_))));
    }
    showSubject();
}

void TemperaturePage::showSubject()
{
    const QString key = subjects_->currentData().toString();
    const auto view = curves_ ? curves_->viewOf(key.toStdString()) : std::nullopt;
    if (!view) {
        return;
    }
    chart_->show(*view);
    chart_->setAccessibleDescription(
        tr("%1 Plus and minus zoom, arrows move, Home shows all of it.").arg(view->summary));
    stays_->show(*view);
    const QString text = view->sentences.join(u"\n\n"_s);
    if (sentences_->toPlainText() != text) {
        sentences_->setPlainText(text);
    }
}

void TemperaturePage::choose(const std::string& subject)
{
    if (!subject.empty()) {
        chosen_ = subject;
    }
    const int row = subjects_->findData(QString::fromStdString(subject));
    if (row >= 0) {
        subjects_->setCurrentIndex(row);
    }
    subjects_->setFocus();
}

void TemperaturePage::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    if (!event->spontaneous()) {
        fill_->setChecked(false); // the next page has the room that is its own
    }
}

} // namespace suppertide::ui
