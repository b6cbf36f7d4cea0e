#include "ui/window/occasion_desk.h"

#include <QMenu>

#include <filesystem>

#include "core/exchange/exchange.h"
#include "core/wording/wording.h"
#include "ui/models/edit.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

} // namespace

OccasionDesk::OccasionDesk(Document& document, Prompts& prompts, const Clock& clock,
                           QObject* parent)
    : QObject(parent), document_(document), prompts_(prompts), clock_(clock)
{}

CivilDate OccasionDesk::nextSaturday() const
{
    CivilDate day = addDays(TimeZone::utc().civil(clock_.now()).date, 1);
    while (weekdayOf(day) != Weekday::Saturday) {
        day = addDays(day, 1);
    }
    return day;
}

void OccasionDesk::fillOpenMenu(QMenu& menu)
{
    menu.clear();
    const auto& open = document_.library().open;
    for (const auto& [id, record] : document_.library().occasions) {
        const auto date = dateOf(record->occasion);
        QString label = text(record->occasion.name);
        // An ampersand in a name is no mnemonic.
        label.replace(u'&', u"&&"_s);
        if (date) {
            label += u", "_s + text(dayText(*date)) + u" "_s + QString::number(date->year);
        }
        QAction* entry = menu.addAction(label);
        entry->setCheckable(true);
        entry->setChecked(open == id);
        connect(entry, &QAction::triggered, this,
                [this, chosen = id, name = record->occasion.name] {
                    document_.apply(withOpened(document_.library(), chosen),
                                    tr("Open %1").arg(text(name)));
                });
    }
    if (menu.isEmpty()) {
        menu.addAction(tr("There are none yet"))->setEnabled(false);
    }
}

void OccasionDesk::begin()
{
    const auto name = prompts_.askText(tr("New occasion"), tr("What is it called?"), tr("Supper"));
    if (name && !name->trimmed().isEmpty()) {
        document_.apply(
            withNewOccasion(document_.library(), name->trimmed().toStdString(), nextSaturday()),
            tr("New occasion"));
    }
}

void OccasionDesk::copy()
{
    if (openOccasion(document_.library())) {
        document_.apply(withOccasionCopied(document_.library()), tr("Copy the occasion"));
    }
}

void OccasionDesk::remove()
{
    const OccasionPtr record = openOccasion(document_.library());
    if (!record) {
        return;
    }
    const QString name = text(record->occasion.name);
    if (prompts_.confirm(
            tr("Delete the occasion"),
            tr("“%1” goes with its menu, guests and plan. Undo brings it back.").arg(name),
            tr("Delete"))) {
        document_.apply(withOccasionRemoved(document_.library(), record->occasion.id),
                        tr("Delete %1").arg(name));
    }
}

void OccasionDesk::moveToDay()
{
    const OccasionPtr record = openOccasion(document_.library());
    const auto date = record ? dateOf(record->occasion) : std::nullopt;
    if (!date) {
        return;
    }
    const auto answer =
        prompts_.askText(tr("Move to another day"),
                         tr("On which day? Year-month-day, like 2027-06-19"), text(toIso(*date)));
    if (!answer) {
        return;
    }
    const auto day = parseDate(answer->trimmed().toStdString());
    if (!day) {
        prompts_.tell(tr("That is no day"), text(day.error().forCook));
        return;
    }
    document_.apply(
        withOccasion(document_.library(),
                     [&day](Occasion& occasion) { occasion = movedTo(std::move(occasion), *day); }),
        tr("Move to %1").arg(text(dayText(*day))));
}

void OccasionDesk::import()
{
    const auto file = prompts_.openFile(
        {tr("Import"), tr("Suppertide exchange files (*.json);;All files (*)"), {}});
    if (!file) {
        return;
    }
    const auto content = readExchangeFile(std::filesystem::path(file->toStdString()));
    if (!content) {
        prompts_.tell(tr("Nothing was imported"), text(content.error().forCook));
        return;
    }
    LibraryState next = imported(document_.library(), *content);
    if (!content->occasions.empty()) {
        next.open = content->occasions.front().occasion.id;
    }
    document_.apply(std::move(next), tr("Import"));
    Q_EMIT said(tr("Imported: %n recipe(s)", nullptr, static_cast<int>(content->recipes.size())) +
                tr(", %n occasion(s).", nullptr, static_cast<int>(content->occasions.size())));
}

void OccasionDesk::exportOccasion()
{
    if (const OccasionPtr record = openOccasion(document_.library())) {
        write(tr("Export the occasion"), text(record->occasion.name), false);
    }
}

void OccasionDesk::exportLibrary()
{
    write(tr("Export the library"), tr("library"), true);
}

void OccasionDesk::write(const QString& title, const QString& name, bool isWholeLibrary)
{
    const auto file =
        prompts_.saveFile({title, tr("Suppertide exchange files (*.json)"), name + u".json"_s});
    if (!file) {
        return;
    }
    ExchangeContent content;
    const LibraryState& library = document_.library();
    for (const auto& [id, recipe] : library.recipes) {
        content.recipes.push_back(*recipe);
    }
    for (const auto& [id, kitchen] : library.kitchens) {
        content.kitchens.push_back(*kitchen);
    }
    for (const auto& [id, record] : library.occasions) {
        if (isWholeLibrary || library.open == id) {
            content.occasions.push_back(*record);
        }
    }
    const auto written = writeExchangeFile(content, std::filesystem::path(file->toStdString()));
    if (written) {
        Q_EMIT said(tr("Written to %1.").arg(*file));
    } else {
        prompts_.tell(tr("Nothing was written"), text(written.error().forCook));
    }
}

} // namespace suppertide::ui
