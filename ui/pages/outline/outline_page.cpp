#include "ui/pages/outline/outline_page.h"

#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QSplitter>
#include <QTreeView>
#include <QVBoxLayout>

#include <algorithm>

#include "ui/document/document.h"
#include "ui/models/fahrenheit_fields.h"
#include "ui/models/outline_items.h"
#include "ui/models/reading_choice.h"
#include "ui/pages/outline/flow_layout.h"
#include "ui/pages/outline/form_view.h"
#include "ui/pages/outline/outline_delegate.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QTreeView* makeView(QWidget* parent, QAbstractItemModel* items, QAbstractItemDelegate* delegate,
                    const QString& name)
{
    auto* view = new QTreeView(parent);
    view->setObjectName(u"rows"_s);
    view->setAccessibleName(name);
    view->setModel(items);
    view->setItemDelegate(delegate);
    view->setHeaderHidden(true);
    view->setIndentation(12);
    view->setUniformRowHeights(false);
    view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view->setMouseTracking(true);
    view->setFrameShape(QFrame::NoFrame);
    return view;
}

/// A field has its amount as it is stored; beside it stands what that is in the reader's measures.
void addMeasures(std::vector<Field>& fields, const ReadingStyle& style)
{
    for (Field& field : fields) {
        if (!field.amount || !style.measures) {
            continue;
        }
        const std::string words = kitchenText(*field.amount, *style.measures);
        if (words != toText(*field.amount)) {
            const QString said = OutlinePage::tr("that is %1").arg(QString::fromStdString(words));
            field.help = field.help.isEmpty() ? said : said + u"; "_s + field.help;
        }
    }
}

} // namespace

OutlinePage::OutlinePage(const QString& title, std::unique_ptr<Outline> outline, Document& document,
                         const Theme& theme, QWidget* parent)
    : QWidget(parent), outline_(std::move(outline)), document_(document), theme_(theme),
      items_(new OutlineItems(this)), delegate_(new OutlineDelegate(theme, this)),
      title_(new QLabel(title, this)), empty_(new QLabel(this)),
      view_(makeView(this, items_, delegate_, title)), commands_(new QWidget(this)),
      form_(new FormView(theme, this)), splitter_(new QSplitter(Qt::Vertical, this))
{
    new FlowLayout(commands_);
    empty_->setWordWrap(true);
    empty_->hide();
    auto* upper = new QWidget(this);
    auto* rows = new QVBoxLayout(upper);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(4);
    rows->addWidget(view_, 1);
    rows->addWidget(commands_);
    splitter_->addWidget(upper);
    splitter_->addWidget(form_);
    splitter_->setStretchFactor(0, 3);
    splitter_->setStretchFactor(1, 2);
    splitter_->setChildrenCollapsible(false);
    form_->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(10, 8, 8, 6);
    column->setSpacing(6);
    column->addWidget(title_);
    column->addWidget(empty_);
    column->addWidget(splitter_, 1);

    connect(view_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        if (!isRefreshing_) {
            showRow();
        }
    });
    view_->viewport()->installEventFilter(this);
    // A press chooses the row that then lies under it, which by now may be another.
    connect(
        view_->selectionModel(), &QItemSelectionModel::currentChanged, this,
        [this] {
            QItemSelectionModel& chosen = *view_->selectionModel();
            const QModelIndex current = view_->currentIndex();
            if (current.isValid() && !chosen.isSelected(current)) {
                chosen.select(current, QItemSelectionModel::ClearAndSelect);
            }
        },
        Qt::QueuedConnection);
    connect(form_, &FormView::entered, this, &OutlinePage::enter);
    connect(&document_, &Document::changed, this, [this] { refresh(); });
    setTheme(theme);
    refresh();
}

OutlinePage::~OutlinePage() = default;

bool OutlinePage::eventFilter(QObject* watched, QEvent* event)
{
    return (event->type() == QEvent::MouseMove && watched == view_->viewport() &&
            static_cast<QMouseEvent*>(event)->buttons() != Qt::NoButton) ||
           QWidget::eventFilter(watched, event);
}

void OutlinePage::setTheme(const Theme& theme)
{
    theme_ = theme;
    title_->setFont(theme.font(TypeRole::Heading));
    delegate_->setTheme(theme);
    form_->setTheme(theme);
    view_->doItemsLayout();
}

void OutlinePage::setEmptyText(const QString& text)
{
    empty_->setText(text);
    refresh();
}

void OutlinePage::setTop(QWidget* top)
{
    qobject_cast<QVBoxLayout*>(layout())->insertWidget(1, top);
}

void OutlinePage::refresh()
{
    const std::string row = selected();
    std::vector<OutlineRow> rows = outline_->rows(document_.library());
    const ReadingStyle style = readingStyle(document_);
    for (OutlineRow& each : rows) {
        each.detail = QString::fromStdString(inStyle(each.detail.toStdString(), style));
        if (each.amount) {
            each.detail.replace(QString::fromStdString(toText(*each.amount)),
                                QString::fromStdString(kitchenText(*each.amount, style.measures)));
        }
    }
    const bool isEmpty = rows.empty();
    isRefreshing_ = true;
    items_->setRows(std::move(rows));
    isRefreshing_ = false;
    view_->expandAll();
    empty_->setVisible(isEmpty && !empty_->text().isEmpty());
    if (!row.empty() && selected() != row) {
        select(row);
    }
    showRow();
}

void OutlinePage::select(const std::string& row)
{
    const QModelIndex index = items_->find(row);
    if (index.isValid()) {
        view_->setCurrentIndex(index);
        view_->scrollTo(index);
    }
}

void OutlinePage::focusField(const std::string& key)
{
    form_->focusField(key);
}

std::string OutlinePage::selected() const
{
    return items_->idAt(view_->currentIndex());
}

void OutlinePage::showRow()
{
    const std::string row = selected();
    std::vector<Field> fields = outline_->fields(document_.library(), row);
    if (readingStyle(document_).fahrenheit) {
        std::ranges::transform(fields, fields.begin(), inFahrenheit);
    }
    addMeasures(fields, readingStyle(document_));
    const bool saysFault =
        std::ranges::any_of(fields, [](const Field& field) { return !field.fault.isEmpty(); });
    if (!fields.empty() && !saysFault) {
        fields.front().fault = view_->currentIndex().data(OutlineItems::FaultRole).toString();
    }
    form_->show(fields);
    showForm(!fields.empty());
    placeCommands(outline_->commands(document_.library(), row));
}

void OutlinePage::showForm(bool isWanted)
{
    form_->setVisible(isWanted);
    if (isWanted && !wasFormShown_) {
        // Half each at first; from then on as the user drags it.
        splitter_->setSizes({1000, 1000});
        wasFormShown_ = true;
    }
}

void OutlinePage::placeCommands(const std::vector<RowCommand>& commands)
{
    const QList<QPushButton*> buttons = commands_->findChildren<QPushButton*>();
    bool isSame = buttons.size() == static_cast<qsizetype>(commands.size());
    for (qsizetype i = 0; isSame && i < buttons.size(); ++i) {
        isSame = buttons[i]->text() == commands[static_cast<std::size_t>(i)].text;
    }
    if (isSame) {
        return;
    }
    for (QPushButton* button : buttons) {
        commands_->layout()->removeWidget(button);
        button->setParent(nullptr); // no longer found above
        button->hide();
        button->deleteLater();
    }
    for (const RowCommand& command : commands) {
        auto* button = new QPushButton(command.text, commands_);
        button->setObjectName(u"command."_s + QString::fromStdString(command.key));
        connect(button, &QPushButton::clicked, this, [this, key = command.key] { run(key); });
        commands_->layout()->addWidget(button);
        button->show();
    }
    commands_->updateGeometry();
}

void OutlinePage::run(const std::string& command)
{
    Result<Edit> edit = outline_->run(document_.library(), selected(), command);
    if (edit) {
        take(*std::move(edit));
    }
}

void OutlinePage::enter(const std::string& key, const FieldValue& value)
{
    const std::vector<Field> fields = outline_->fields(document_.library(), selected());
    const auto field = std::ranges::find(fields, key, &Field::key);
    const bool isFahrenheit = readingStyle(document_).fahrenheit && field != fields.end();
    Result<Edit> edit = outline_->set(document_.library(), selected(), key,
                                      isFahrenheit ? fromFahrenheit(*field, value) : value);
    if (edit) {
        take(*std::move(edit));
    } else {
        form_->showFault(key, QString::fromStdString(edit.error().forCook));
    }
}

void OutlinePage::take(Edit edit)
{
    document_.apply(std::move(edit.next), edit.text);
    if (!edit.select.empty()) {
        select(edit.select);
        form_->focusFirst();
    }
}

} // namespace suppertide::ui
