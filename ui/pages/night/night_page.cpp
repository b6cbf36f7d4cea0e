#include "ui/pages/night/night_page.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <array>
#include <cmath>
#include <functional>

#include "ui/pages/night/night_delegate.h"
#include "ui/pages/night/night_rows.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

/// Seconds of a rehearsal that go by in one.
constexpr std::array paces{1, 10, 60, 0};
constexpr int mostMinutes = 240;

QLabel* label(const QString& name, QWidget* parent)
{
    auto* made = new QLabel(parent);
    made->setObjectName(name);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    return made;
}

} // namespace

struct NightPage::Parts
{
    Parts(const Theme& theme, NightPage& page)
        : rows(new NightRows(&page)), delegate(new NightDelegate(theme, &page)),
          clock(label(u"nightClock"_s, &page)), head(label(u"nightHeadline"_s, &page)),
          news(label(u"nightNews"_s, &page)), warning(label(u"nightWarning"_s, &page)),
          list(new QListView(&page)), reports(new QWidget(&page)), rehearsal(new QWidget(&page)),
          pace(new QComboBox(rehearsal))
    {}

    NightRows* rows;
    NightDelegate* delegate;
    QLabel* clock;
    QLabel* head;
    QLabel* news;
    QLabel* warning;
    QListView* list;
    QWidget* reports;
    QWidget* rehearsal;
    QComboBox* pace;
    QPushButton* take = nullptr;
    QPushButton* undo = nullptr;
    QPushButton* rehearse = nullptr;
    QPushButton* fill = nullptr;
    QString selected; // task, kept while rows come and go
};

NightPage::NightPage(NightDesk& desk, Prompts& prompts, const Theme& theme, QWidget* parent)
    : QWidget(parent), desk_(desk), prompts_(prompts), theme_(theme),
      parts_(std::make_unique<Parts>(theme, *this))
{
    build();
    connect(&desk_, &NightDesk::changed, this, &NightPage::refresh);
    connect(parts_->list->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) {
                if (index.isValid() && parts_->rows->row(index).kind == RowKind::Line) {
                    parts_->selected = parts_->rows->row(index).task;
                }
            });
    setTheme(theme);
    refresh();
}

NightPage::~NightPage() = default;

QPushButton* NightPage::button(const QString& text, const QString& name, const QString& key,
                               const QString& tip, const std::function<void()>& deed)
{
    auto* made = new QPushButton(text, this);
    made->setObjectName(name);
    made->setToolTip(tr("%1 (key %2)").arg(tip, key));
    made->setStatusTip(tip);
    made->setAccessibleDescription(tip);
    connect(made, &QPushButton::clicked, this, deed);
    auto* shortcut = new QShortcut(QKeySequence(key), this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, made, &QPushButton::click);
    return made;
}

void NightPage::build()
{
    QListView& list = *parts_->list;
    list.setObjectName(u"nightList"_s);
    list.setAccessibleName(tr("What to do now and next"));
    list.setModel(parts_->rows);
    list.setItemDelegate(parts_->delegate);
    list.setFrameShape(QFrame::NoFrame);
    list.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list.setResizeMode(QListView::Adjust);
    connect(&list, &QListView::activated, this, [this] { goOn(); });

    const auto withTask = [this](const std::function<void(const QString&)>& report) {
        return [this, report] { act(report); };
    };
    const auto lateBy = [this](int minutes) {
        return [this, minutes] {
            act([this, minutes](const QString& task) { desk_.late(task, minutes); });
        };
    };
    auto* grid = new QGridLayout(parts_->reports);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(button(tr("Started"), u"nightStarted"_s, u"S"_s, tr("The chosen step is begun"),
                           withTask([this](const QString& task) { desk_.started(task); })),
                    0, 0);
    grid->addWidget(button(tr("Done"), u"nightDone"_s, u"D"_s, tr("The chosen step is done"),
                           withTask([this](const QString& task) { desk_.done(task); })),
                    0, 1);
    parts_->undo = button(tr("Undo"), u"nightUndo"_s, u"U"_s, tr("Take the last report back"),
                          [this] { desk_.undo(); });
    grid->addWidget(parts_->undo, 0, 2);
    grid->addWidget(button(tr("5 min late"), u"nightLate5"_s, u"5"_s,
                           tr("The chosen step takes or begins 5 minutes longer"), lateBy(5)),
                    1, 0);
    grid->addWidget(button(tr("12 min late"), u"nightLate12"_s, u"2"_s,
                           tr("The chosen step takes or begins 12 minutes longer"), lateBy(12)),
                    1, 1);
    grid->addWidget(button(tr("Late by…"), u"nightLate"_s, u"L"_s,
                           tr("The chosen step is late by any minutes"), [this] { askLate(); }),
                    1, 2);
    grid->addWidget(button(tr("Not doing this"), u"nightLeaveOut"_s, u"N"_s,
                           tr("The chosen step, and what follows only from it, is left out"),
                           withTask([this](const QString& task) { desk_.leaveOut(task); })),
                    2, 0);
    grid->addWidget(button(tr("As planned so far"), u"nightAsPlanned"_s, u"A"_s,
                           tr("All until now went as planned"),
                           [this] { desk_.asPlannedUntilNow(); }),
                    2, 1);
    grid->addWidget(button(tr("Oven shows…"), u"nightOven"_s, u"O"_s,
                           tr("Say what an oven's thermometer shows"), [this] { askOven(); }),
                    2, 2);
    parts_->take =
        button(tr("Take this"), u"nightTake"_s, u"T"_s,
               tr("Go on by the plan that gives way as said"), [this] { desk_.takeOffer(); });
    parts_->take->setProperty("primary", true);
    auto* plan = button(tr("Plan the rest"), u"nightPlan"_s, u"P"_s,
                        tr("Plan what is left anew, moving as little as can be"),
                        [this] { desk_.planRest(); });
    grid->addWidget(plan, 3, 0);
    parts_->fill = button(tr("Large"), u"nightFill"_s, u"F11"_s,
                          tr("Fill the window with this page, in large type"),
                          [this] { Q_EMIT fillRequested(parts_->fill->isChecked()); });
    parts_->fill->setCheckable(true);
    grid->addWidget(parts_->fill, 3, 1);

    parts_->rehearse = button(tr("Rehearse now"), u"nightRehearse"_s, u"R"_s,
                              tr("Try the evening with a pretend clock; nothing is kept"), [this] {
                                  if (desk_.view().isRehearsal) {
                                      desk_.endRehearsal();
                                  } else {
                                      desk_.rehearse();
                                  }
                              });
    grid->addWidget(parts_->rehearse, 3, 2);
    parts_->pace->setObjectName(u"nightPace"_s);
    parts_->pace->setAccessibleName(tr("Pace of the rehearsal's clock"));
    parts_->pace->addItems(
        {tr("clock at its pace"), tr("10 times as fast"), tr("a minute a second"), tr("stands")});
    connect(parts_->pace, &QComboBox::currentIndexChanged, this, [this](int index) {
        desk_.setPace(paces.at(static_cast<std::size_t>(std::max(0, index))));
    });
    auto* pretend = new QHBoxLayout(parts_->rehearsal);
    pretend->setContentsMargins(0, 0, 0, 0);
    pretend->addWidget(parts_->pace, 1);
    pretend->addWidget(button(tr("+5 min"), u"nightSkip"_s, u"."_s, tr("Five minutes on"),
                              [this] { desk_.skip(Minutes{5}); }));

    auto* top = new QHBoxLayout;
    top->addWidget(parts_->clock);
    top->addWidget(parts_->head, 1);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addLayout(top);
    page->addWidget(parts_->rehearsal);
    page->addWidget(parts_->warning);
    page->addWidget(parts_->news);
    page->addWidget(parts_->take);
    page->addWidget(parts_->list, 1);
    page->addWidget(parts_->reports);
    parts_->clock->setAccessibleName(tr("Time"));
}

void NightPage::act(const std::function<void(const QString&)>& deed)
{
    if (!parts_->selected.isEmpty()) {
        deed(parts_->selected);
    }
}

/// Enter: begins what is not begun, and ends what is.
void NightPage::goOn()
{
    const QModelIndex index = parts_->rows->indexOf(parts_->selected);
    if (!index.isValid()) {
        return;
    }
    const NightRow& row = parts_->rows->row(index);
    if (row.state == LineState::UnderWay) {
        desk_.done(row.task);
    } else {
        desk_.started(row.task);
    }
}

void NightPage::askLate()
{
    if (parts_->selected.isEmpty()) {
        return;
    }
    const auto said = prompts_.askText(tr("Late by how much?"), tr("Minutes"), u"10"_s);
    bool isNumber = false;
    const int minutes = said ? said->trimmed().toInt(&isNumber) : 0;
    if (isNumber && minutes > 0 && minutes <= mostMinutes) {
        desk_.late(parts_->selected, minutes);
    } else if (said) {
        prompts_.tell(tr("That is no number of minutes"),
                      tr("Write a whole number from 1 to %1.").arg(mostMinutes));
    }
}

void NightPage::askOven()
{
    const auto ovens = desk_.ovens();
    if (ovens.empty()) {
        return;
    }
    QStringList names;
    for (const auto& [id, name] : ovens) {
        names.push_back(name);
    }
    const auto which = names.size() == 1 ? std::optional(0)
                                         : prompts_.choose(tr("Oven"), tr("Which one?"), names, 0);
    if (!which) {
        return;
    }
    const bool isFahrenheit = desk_.readsFahrenheit();
    const auto said = prompts_.askText(names.at(*which),
                                       isFahrenheit ? tr("It shows, in °F") : tr("It shows, in °C"),
                                       isFahrenheit ? u"355"_s : u"180"_s);
    bool isNumber = false;
    const int shown = said ? said->trimmed().toInt(&isNumber) : 0;
    const int coldest = isFahrenheit ? 32 : 0;
    const int hottest = isFahrenheit ? 750 : 400;
    if (isNumber && shown >= coldest && shown <= hottest) {
        const int celsius =
            isFahrenheit ? static_cast<int>(std::lround((shown - 32) / 1.8)) : shown;
        desk_.ovenAt(ovens.at(static_cast<std::size_t>(*which)).first, celsius);
    } else if (said) {
        prompts_.tell(tr("That is no temperature of an oven"),
                      tr("Write whole degrees from %1 to %2.").arg(coldest).arg(hottest));
    }
}

void NightPage::refresh()
{
    const NightView& view = desk_.view();
    const bool isUnderWay = view.stage == NightStage::UnderWay;
    parts_->clock->setText(QString::fromStdString(view.sheet.clock));
    parts_->clock->setVisible(view.stage != NightStage::Nothing);
    QString head = view.headline;
    if (isUnderWay && !view.sheet.servings.empty()) {
        const NightLine& next = view.sheet.servings.front();
        head =
            tr("%1 %2").arg(QString::fromStdString(next.deed), QString::fromStdString(next.when));
    }
    parts_->head->setText(view.isRehearsal ? tr("Rehearsal. %1").arg(head) : head);
    parts_->news->setText(view.news);
    parts_->news->setVisible(!view.news.isEmpty());
    parts_->warning->setText(view.warning);
    parts_->warning->setVisible(!view.warning.isEmpty() && isUnderWay);
    parts_->take->setVisible(view.hasOffer);
    parts_->list->setVisible(view.stage != NightStage::Nothing && view.stage != NightStage::Over);
    parts_->reports->setVisible(view.stage != NightStage::Nothing);
    parts_->rehearsal->setVisible(view.isRehearsal);
    parts_->rehearse->setText(view.isRehearsal ? tr("End rehearsal") : tr("Rehearse now"));
    for (QPushButton* report : parts_->reports->findChildren<QPushButton*>()) {
        const bool isAlways = report == parts_->rehearse || report == parts_->fill;
        report->setEnabled(isAlways || isUnderWay);
    }
    parts_->undo->setEnabled(!view.undoes.isEmpty());
    parts_->undo->setToolTip(view.undoes.isEmpty() ? tr("There is nothing to take back")
                                                   : tr("Undo %1 (key U)").arg(view.undoes));
    const QString selected = parts_->selected;
    parts_->rows->setRows(nightRows(view.sheet));
    QModelIndex index = parts_->rows->indexOf(selected);
    if (!index.isValid()) {
        index = parts_->rows->indexOf({});
    }
    if (index.isValid()) {
        parts_->list->setCurrentIndex(index);
        parts_->selected = parts_->rows->row(index).task;
    } else {
        parts_->selected.clear();
    }
}

void NightPage::setTypes()
{
    const int large = NightDelegate::largeType(width(), theme_.textScale);
    QFont clock = theme_.font(TypeRole::Title);
    clock.setPixelSize(large * 3 / 2);
    parts_->clock->setFont(clock);
    QFont head = theme_.font(TypeRole::LaneName);
    head.setPixelSize(large * 3 / 4);
    parts_->head->setFont(head);
    QFont news = theme_.font(TypeRole::Control);
    news.setPixelSize(large * 2 / 3);
    parts_->news->setFont(news);
    parts_->warning->setFont(news);
}

void NightPage::setTheme(const Theme& theme)
{
    theme_ = theme;
    parts_->delegate->setTheme(theme);
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, theme.role().unsafe.colour);
    parts_->warning->setPalette(colours);
    setTypes();
    parts_->list->doItemsLayout();
}

void NightPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    setTypes();
    parts_->list->doItemsLayout(); // the words wrap anew
}

void NightPage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    desk_.setActive(true);
    parts_->list->setFocus();
}

void NightPage::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    desk_.setActive(false);
}

} // namespace suppertide::ui
