#include "ui/print/list_html.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/shopping/part_words.h"
#include "core/shopping/shopping_text.h"
#include "core/wording/wording.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("ListHtml", text);
}

QString plain(const std::string& words)
{
    return QString::fromStdString(words).toHtmlEscaped();
}

QString joined(const std::vector<std::string>& words, const QString& between)
{
    QStringList list;
    for (const std::string& word : words) {
        list << plain(word);
    }
    return list.join(between);
}

QString leftOf(const shopping::ShoppingLine& line, const std::optional<MeasureSystem>& measures)
{
    QStringList left;
    if (line.leftOver.value > Rational{0}) {
        left << plain(kitchenText(line.leftOver, measures));
    }
    for (const std::string& part : line.partsLeft) {
        left << plain(part);
    }
    return left.join(u", "_s);
}

/// A line of the list on paper, with a box to tick: a table of its own, which no page's end tears.
QString row(const shopping::ShoppingLine& line, const shopping::ShoppingList& list)
{
    QStringList dishes;
    for (const shopping::ShoppingNeed& need : line.needs) {
        if (need.takenFrom.empty() && !dishes.contains(plain(need.recipeName))) {
            dishes << plain(need.recipeName);
        }
    }
    QString html = u"<table width=\"100%\" cellspacing=\"0\" cellpadding=\"2\"><tr><td "
                   u"width=\"5%\">%1</td><td width=\"42%\"><b>%2</b></td>"
                   "<td width=\"38%\">%3</td><td width=\"15%\" align=\"right\">%4</td></tr>"_s.arg(
                       line.isBought ? u"\u2611"_s : u"\u2610"_s, plain(line.ingredient),
                       plain(shopping::buyText(line, list.measures)),
                       line.cost ? plain(priceText(*line.cost, list.currency)) : QString());
    html +=
        u"<tr><td></td><td colspan=\"3\"><small>%1"_s.arg(tr("for %1").arg(dishes.join(u", "_s)));
    if (const QString left = leftOf(line, list.measures); !left.isEmpty()) {
        html += u"; "_s + tr("left over: %1").arg(left);
    }
    for (const std::string& note : line.notes) {
        html += u"<br>"_s + plain(note);
    }
    return html + u"</small></td></tr></table>"_s;
}

/// What is there already: to be looked for at home before the shop.
QString fromHome(const shopping::ShoppingList& list)
{
    QStringList rows;
    for (const shopping::ShoppingLine& line : list.lines) {
        if (line.trip) {
            continue;
        }
        QStringList needs;
        for (const shopping::ShoppingNeed& need : line.needs) {
            needs << plain(shopping::needText(need, line, list.measures));
        }
        QString html = u"<b>%1</b>: %2"_s.arg(plain(line.ingredient), needs.join(u"; "_s));
        for (const std::string& note : line.notes) {
            html += u"<br><small>%1</small>"_s.arg(plain(note));
        }
        rows << html;
    }
    return rows.isEmpty()
               ? QString()
               : u"<h3>%1</h3><p>%2</p>"_s.arg(tr("Nothing to buy of"), rows.join(u"<br>"_s));
}

/// What dishes leave that nobody takes.
QString spareOf(const shopping::ShoppingList& list)
{
    QStringList rows;
    for (std::size_t i = 0; i < list.spare.size(); ++i) {
        const shopping::SpareByProduct& spare = list.spare[i];
        const QString what =
            tr("%1, %2, from “%3”")
                .arg(plain(spare.name), plain(kitchenText(spare.amount, list.measures)),
                     plain(spare.from));
        rows << (list.spareUses[i].empty()
                     ? what
                     : tr("%1: could go into %2").arg(what, plain(list.spareUses[i])));
    }
    return rows.isEmpty() ? QString()
                          : u"<h3>%1</h3><p>%2</p>"_s.arg(tr("Left over of the cooking"),
                                                          rows.join(u"<br>"_s));
}

} // namespace

QString shoppingHtml(const shopping::ShoppingList& list)
{
    QString html = u"<h2>%1</h2>"_s.arg(tr("Shopping for “%1”").arg(plain(list.occasion)));
    for (std::size_t trip = 0; trip < list.trips.size(); ++trip) {
        html += u"<h3>%1</h3>"_s.arg(plain(shopping::tripText(list.trips[trip])));
        const std::string* section = nullptr;
        for (const shopping::ShoppingLine& line : list.lines) {
            if (line.trip != trip) {
                continue;
            }
            if (section == nullptr || *section != line.section) {
                section = &line.section;
                html += u"<h4>%1</h4>"_s.arg(section->empty() ? tr("elsewhere") : plain(*section));
            }
            html += row(line, list);
        }
    }
    html += fromHome(list) + spareOf(list);
    if (!list.sentences.empty()) {
        html += u"<h3>%1</h3><p>%2</p>"_s.arg(tr("Not counted"), joined(list.sentences, u"<br>"_s));
    }
    if (list.cost > 0) {
        html += u"<p>%1</p>"_s.arg(
            tr("Cost: %1").arg(plain(priceText(list.cost, list.currency))) +
            (list.unpriced == 0
                 ? QString()
                 : tr(", without %1 things of which nobody has said a price").arg(list.unpriced)));
    }
    return html + u"<p>%1</p>"_s.arg(plain(shopping::labelCaution()));
}

QString lineHtml(const shopping::ShoppingLine& line, const shopping::ShoppingList& list)
{
    const auto said = [&list](const Amount& amount) {
        return plain(kitchenText(amount, list.measures));
    };
    QStringList rows;
    rows << (line.trip ? u"<b>%1</b>: %2"_s.arg(plain(line.ingredient),
                                                plain(shopping::buyText(line, list.measures)))
                       : u"<b>%1</b>"_s.arg(plain(line.ingredient)));
    for (const shopping::ShoppingNeed& need : line.needs) {
        rows << plain(shopping::needText(need, line, list.measures));
    }
    if (line.boughtBefore) {
        rows << tr("%1 is bought; more is wanted now").arg(said(*line.boughtBefore));
    }
    if (line.isAlwaysThere) {
        rows << tr("always at home");
    } else if (line.fromHome.value > Rational{0}) {
        rows << tr("%1 of it is at home").arg(said(line.fromHome));
    }
    if (line.cost) {
        rows << tr("costs %1").arg(plain(priceText(*line.cost, list.currency)));
    }
    if (const QString left = leftOf(line, list.measures); !left.isEmpty()) {
        rows << (line.uses.empty()
                     ? tr("left over: %1").arg(left)
                     : tr("left over: %1; could go into %2").arg(left, joined(line.uses, u", "_s)));
    }
    for (const std::string& note : line.notes) {
        rows << plain(note);
    }
    if (!line.isInTable) {
        rows << tr("Not in the table of ingredients: it stands as the recipe has it. You can add "
                   "it under “At home and prices”.");
    }
    return rows.join(u"<br>"_s);
}

QString equipmentHtml(const shopping::EquipmentList& list, const PlanCalendar& calendar)
{
    QString html = u"<h2>%1</h2>"_s.arg(tr("Equipment"));
    for (const shopping::EquipmentLine& line : list.lines) {
        QString there = line.isTooFew()
                            ? tr("%1 at once, there %2: too few").arg(line.atOnce).arg(line.there)
                            : tr("%1 at once, of %2").arg(line.atOnce).arg(line.there);
        if (line.busiest) {
            there += tr(", first on %1").arg(plain(timeText(calendar, *line.busiest)));
        }
        html += u"<p><b>%1</b>: %2<br><small>%3</small></p>"_s.arg(plain(line.name), there,
                                                                   joined(line.uses, u"; "_s));
    }
    if (list.lines.empty()) {
        html += u"<p>%1</p>"_s.arg(tr("No step names a vessel or an appliance."));
    }
    if (!list.probes.empty()) {
        html += u"<p><b>%1</b>: %2</p>"_s.arg(tr("Thermometer"), joined(list.probes, u"; "_s));
    }
    return html;
}

QString miseEnPlaceHtml(const std::vector<shopping::MiseEnPlace>& places,
                        const PlanCalendar& calendar, const std::optional<MeasureSystem>& measures)
{
    QString html = u"<h2>%1</h2>"_s.arg(tr("To measure out"));
    if (places.empty()) {
        html += u"<p>%1</p>"_s.arg(tr("No step of the plan takes ingredients."));
    }
    std::optional<CivilDate> day;
    for (const shopping::MiseEnPlace& place : places) {
        const CivilTime when = calendar.civil(place.by);
        if (day != when.date) {
            day = when.date;
            html += u"<h3>%1</h3>"_s.arg(plain(dayText(when.date)));
        }
        QStringList lines;
        for (const ScaledLine& line : place.lines) {
            const std::string part(shopping::wordFor(line.part));
            lines << plain(kitchenText(line.amount, measures) + " " + line.ingredient +
                           (part.empty() ? "" : ", " + part) +
                           (line.note.empty() ? "" : ", " + line.note));
        }
        html += u"<p>\u2610 <b>%1</b> %2: %3<br>%4</p>"_s.arg(
            plain(toIso(when.clock)), plain(place.dish), plain(place.step), lines.join(u"; "_s));
    }
    return html;
}

} // namespace suppertide::ui
