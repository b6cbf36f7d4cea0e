#include "ui/models/kitchen_outline.h"

#include "core/night/times_to_learn.h"
#include "core/plan/step_estimate.h"
#include "core/wording/wording.h"
#include "ui/models/hours_text.h"
#include "ui/models/kitchen_forms.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {

namespace {

constexpr const char* addKey = "add";
constexpr const char* copyKey = "copy";
constexpr const char* removeKey = "remove";
constexpr const char* addDayKey = "add-day";
constexpr const char* forgetKey = "forget";
constexpr const char* learnKey = "learn:"; // and the id of a proposal

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

Failure gone()
{
    return {FailureKind::NotFound,
            "This is not there any more; it was removed or undone. Choose another row.", ""};
}

KitchenPtr shownKitchen(const LibraryState& library)
{
    if (const KitchenPtr open = openKitchen(library)) {
        return open;
    }
    return library.kitchens.empty() ? nullptr : library.kitchens.begin()->second;
}

/// Calls `visitor(list, form)` with the list that a kind of row stands for; false if there is none.
template <typename KitchenType, typename Visitor>
bool visitList(KitchenType& kitchen, const std::string& kind, const Visitor& visitor)
{
    if (kind == "oven") {
        visitor(kitchen.ovens, kitchen::ovenForm);
    } else if (kind == "burner") {
        visitor(kitchen.burners, kitchen::burnerForm);
    } else if (kind == "appliance") {
        visitor(kitchen.appliances, kitchen::applianceForm);
    } else if (kind == "vessel") {
        visitor(kitchen.vessels, kitchen::vesselForm);
    } else if (kind == "cold") {
        visitor(kitchen.coldPlaces, kitchen::coldForm);
    } else if (kind == "cook") {
        visitor(kitchen.cooks, kitchen::cookForm);
    } else if (kind == "time") {
        visitor(kitchen.timesTaken,
                [&kitchen](const TimeTaken& time) { return kitchen::timeForm(kitchen, time); });
    } else {
        return false;
    }
    return true;
}

struct Section
{
    const char* kind;
    const char* title;
    const char* one;
};

constexpr std::array sections{
    Section{"oven", QT_TRANSLATE_NOOP("KitchenOutline", "Ovens"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Oven")},
    Section{"burner", QT_TRANSLATE_NOOP("KitchenOutline", "Burners"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Burner")},
    Section{"appliance", QT_TRANSLATE_NOOP("KitchenOutline", "Appliances"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Blender")},
    Section{"vessel", QT_TRANSLATE_NOOP("KitchenOutline", "Vessels"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Pan")},
    Section{"cold", QT_TRANSLATE_NOOP("KitchenOutline", "Cold places"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Fridge")},
    Section{"cook", QT_TRANSLATE_NOOP("KitchenOutline", "Cooks"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Cook")},
    Section{"time", QT_TRANSLATE_NOOP("KitchenOutline", "Times taken"),
            QT_TRANSLATE_NOOP("KitchenOutline", "Time taken")},
};

QString translated(const char* words)
{
    return QCoreApplication::translate("KitchenOutline", words);
}

/// "oven" of a heading "oven", of a row "oven:main" and of a day under a cook.
std::string sectionOf(const RowPath& path)
{
    for (const Section& section : sections) {
        if (path.kind() == section.kind || path.has(section.kind)) {
            return section.kind;
        }
    }
    return {};
}

QString detailOf(const KitchenOven& oven)
{
    return translated("%1–%2 °C").arg(oven.low.wholeDegrees()).arg(oven.high.wholeDegrees());
}
QString detailOf(const Burner& burner)
{
    return translated("%1 cm").arg(burner.size.smallest() / 10);
}
QString detailOf(const Appliance& appliance)
{
    return text(appliance.kind);
}
QString detailOf(const Vessel& vessel)
{
    return vessel.count > 1 ? translated("%1 of them").arg(vessel.count) : text(vessel.kind);
}
QString detailOf(const ColdPlace& cold)
{
    return translated("%1 l").arg(text(fieldText(cold.room)));
}
QString detailOf(const TimeTaken& time)
{
    return translated("took %1 min, computed %2")
        .arg(time.taken.count())
        .arg(time.computed.count());
}
QString detailOf(const KitchenCook& cook)
{
    return cook.isHost ? translated("host") : QString();
}

class RowBuilder
{
public:
    RowBuilder(const LibraryState& library, const Kitchen& kitchen)
        : record_(openOccasion(library)), kitchen_(kitchen)
    {}

    std::vector<OutlineRow> build()
    {
        add("kitchen", 0, text(kitchen_.name));
        for (const Section& section : sections) {
            add(section.kind, 0, translated(section.title)).kind = RowKind::Heading;
            visitList(kitchen_, section.kind, [&](const auto& list, const auto& /*form*/) {
                for (const auto& thing : list) {
                    const RowPath path = RowPath().with(section.kind, thing.id.text());
                    add(path.text(), 1, text(thing.name), detailOf(thing) + learned(thing.id));
                    addDays(path);
                }
            });
        }
        markFaults();
        return std::move(rows_);
    }

private:
    OutlineRow& add(const std::string& id, int depth, const QString& title,
                    const QString& detail = {})
    {
        OutlineRow row;
        row.id = id;
        row.depth = depth;
        row.title = title;
        row.detail = detail;
        rows_.push_back(std::move(row));
        return rows_.back();
    }

    /// By how much estimates on an oven or burner have moved.
    template <typename ItemId>
    [[nodiscard]] QString learned(const ItemId& item) const
    {
        if constexpr (std::is_same_v<ItemId, KitchenItemId>) {
            if (const auto calibration = learnedOn(kitchen_, item)) {
                return translated(", learned: ×%1 (%2 to %3)")
                    .arg(calibration->factor.likely, 0, 'f', 2)
                    .arg(calibration->factor.least, 0, 'f', 2)
                    .arg(calibration->factor.most, 0, 'f', 2);
            }
        }
        return {};
    }

    void addDays(const RowPath& cook)
    {
        if (cook.kind() != "cook" || !record_) {
            return;
        }
        const auto days = record_->occasion.hours.find(CookId{cook.id()});
        if (days == record_->occasion.hours.end()) {
            return;
        }
        for (const HoursOfDay& day : days->second) {
            add(cook.with("day", toIso(day.date)).text(), 2, text(dayText(day.date)),
                day.hours.empty() ? translated("not there") : text(hoursText(day.hours)));
        }
    }

    void markFaults()
    {
        for (const KitchenFault& fault : faultsOf(kitchen_)) {
            for (OutlineRow& row : rows_) {
                const QString name = QStringLiteral("“%1”").arg(row.title);
                const bool isIt = row.kind == RowKind::Item &&
                                  text(fault.place).contains(name, Qt::CaseInsensitive);
                if (isIt || (row.id == "kitchen" && fault.place == "kitchen")) {
                    row.fault = text(fault.sentence);
                }
            }
        }
    }

    OccasionPtr record_;
    const Kitchen& kitchen_;
    std::vector<OutlineRow> rows_;
};

const HoursOfDay* findDay(const Occasion& occasion, const RowPath& path)
{
    const auto days = occasion.hours.find(CookId{path.idOf("cook")});
    if (days == occasion.hours.end()) {
        return nullptr;
    }
    for (const HoursOfDay& day : days->second) {
        if (toIso(day.date) == path.id()) {
            return &day;
        }
    }
    return nullptr;
}

Result<Edit> setDay(const LibraryState& library, const RowPath& path, const std::string& field,
                    const FieldValue& value)
{
    const OccasionPtr record = openOccasion(library);
    const HoursOfDay* day = record ? findDay(record->occasion, path) : nullptr;
    if (day == nullptr) {
        return gone();
    }
    const auto changed = kitchen::dayForm(*day).with(field, value);
    if (!changed) {
        return changed.error();
    }
    return Edit{withOccasion(library,
                             [&](Occasion& occasion) {
                                 for (HoursOfDay& each :
                                      occasion.hours[CookId{path.idOf("cook")}]) {
                                     each = each.date == changed->date ? *changed : each;
                                 }
                             }),
                KitchenOutline::tr("Change hours"),
                {}};
}

/// The day before the first that the cook has hours of, else the day of the occasion.
Result<Edit> addDay(const LibraryState& library, const RowPath& path, const Kitchen& kitchen)
{
    const OccasionPtr record = openOccasion(library);
    const CookId id{path.idOf("cook")};
    const KitchenCook* cook = findIn(kitchen.cooks, id);
    const auto date = record ? dateOf(record->occasion) : std::nullopt;
    if (cook == nullptr || !date) {
        return gone();
    }
    HoursOfDay day{*date, cook->usualHours};
    const auto days = record->occasion.hours.find(id);
    if (days != record->occasion.hours.end() && !days->second.empty()) {
        day.date = addDays(days->second.front().date, -1);
    }
    return Edit{withOccasion(library,
                             [&](Occasion& occasion) {
                                 auto& list = occasion.hours[id];
                                 list.insert(list.begin(), day);
                             }),
                KitchenOutline::tr("Add a day"),
                RowPath().with("cook", id.text()).with("day", toIso(day.date)).text()};
}

KitchenItemId firstHeat(const Kitchen& kitchen)
{
    if (!kitchen.ovens.empty()) {
        return kitchen.ovens.front().id;
    }
    return kitchen.burners.empty() ? KitchenItemId{} : kitchen.burners.front().id;
}

/// The day of the open occasion, on which it was most likely taken.
CivilDate today(const LibraryState& library)
{
    const OccasionPtr record = openOccasion(library);
    const auto date = record ? dateOf(record->occasion) : std::nullopt;
    return date.value_or(CivilDate{2027, 1, 1});
}

/// What the open occasion's reports have shown, if this is the kitchen in which it was cooked.
std::vector<TimeTaken> proposals(const LibraryState& library, const Kitchen& kitchen)
{
    const OccasionPtr record = openOccasion(library);
    const auto input = planInputOf(library);
    if (!record || !input || record->progress.empty() || record->occasion.kitchen != kitchen.id) {
        return {};
    }
    const auto formulation = formulate(*input);
    return formulation ? timesToLearn(**formulation, record->progress, kitchen)
                       : std::vector<TimeTaken>{};
}

Result<Edit> learnFrom(const LibraryState& library, const Kitchen& kitchen, const std::string& id)
{
    for (const TimeTaken& time : proposals(library, kitchen)) {
        if (time.id.text() == id) {
            Kitchen next = kitchen;
            next.timesTaken.push_back(time);
            return Edit{withKitchen(library, std::move(next)),
                        KitchenOutline::tr("Learn from %1").arg(text(time.name)),
                        RowPath().with("time", id).text()};
        }
    }
    return gone();
}

Result<Edit> forgetTimes(const LibraryState& library, const Kitchen& kitchen)
{
    Kitchen next = kitchen;
    next.timesTaken.clear();
    return Edit{withKitchen(library, std::move(next)), KitchenOutline::tr("Forget all times taken"),
                "time"};
}

Result<Edit> addThing(const LibraryState& library, const Kitchen& kitchen, const RowPath& path,
                      bool isCopy)
{
    const std::string kind = sectionOf(path);
    Kitchen next = kitchen;
    std::string id;
    QString name;
    visitList(next, kind, [&](auto& list, const auto& /*form*/) {
        typename std::decay_t<decltype(list)>::value_type thing;
        if (const auto* there = findIn(list, decltype(thing.id){path.idOf(kind)});
            isCopy && there != nullptr) {
            thing = *there;
        } else {
            for (const Section& section : sections) {
                thing.name =
                    section.kind == kind ? translated(section.one).toStdString() : thing.name;
            }
            if constexpr (requires { thing.kind.empty(); }) {
                thing.kind = thing.name;
            }
            if constexpr (requires { thing.power; }) {
                thing.size = centimetres(18);
            }
            if constexpr (requires { thing.taken; }) {
                thing.on = firstHeat(kitchen);
                thing.date = today(library);
                thing.computed = thing.taken = Minutes{30};
            }
        }
        // Ids are of one list for all things of a kitchen: pins name them by id alone.
        const auto isTaken = [&next](const std::string& wanted) {
            bool taken = false;
            for (const Section& section : sections) {
                visitList(next, section.kind, [&](const auto& others, const auto& /*form*/) {
                    for (const auto& other : others) {
                        taken = taken || other.id.text() == wanted;
                    }
                });
            }
            return taken;
        };
        thing.id = decltype(thing.id){freshId(thing.name, isTaken)};
        id = thing.id.text();
        name = text(thing.name);
        list.push_back(std::move(thing));
    });
    return Edit{withKitchen(library, std::move(next)),
                isCopy ? KitchenOutline::tr("Copy %1").arg(name)
                       : KitchenOutline::tr("Add %1").arg(name),
                RowPath().with(kind, id).text()};
}

Result<Edit> removeThing(const LibraryState& library, const Kitchen& kitchen, const RowPath& path)
{
    if (path.has("day")) {
        return Edit{withOccasion(library,
                                 [&](Occasion& occasion) {
                                     std::erase_if(occasion.hours[CookId{path.idOf("cook")}],
                                                   [&](const HoursOfDay& day) {
                                                       return toIso(day.date) == path.id();
                                                   });
                                 }),
                    KitchenOutline::tr("Delete a day"), path.parent().text()};
    }
    Kitchen next = kitchen;
    QString name;
    visitList(next, path.kind(), [&](auto& list, const auto& /*form*/) {
        using Thing = typename std::decay_t<decltype(list)>::value_type;
        const decltype(Thing::id) id{path.id()};
        if (const auto* there = findIn(list, id)) {
            name = text(there->name);
        }
        eraseFrom(list, id);
    });
    const KitchenId id = next.id;
    LibraryState state = withKitchen(library, std::move(next));
    if (path.kind() == "cook") {
        state = withCookForgotten(std::move(state), id, CookId{path.id()});
    }
    return Edit{std::move(state), KitchenOutline::tr("Delete %1").arg(name), path.kind()};
}

} // namespace

std::vector<OutlineRow> KitchenOutline::rows(const LibraryState& library) const
{
    const KitchenPtr shown = shownKitchen(library);
    return shown ? RowBuilder(library, *shown).build() : std::vector<OutlineRow>{};
}

std::vector<Field> KitchenOutline::fields(const LibraryState& library, const std::string& row) const
{
    const KitchenPtr shown = shownKitchen(library);
    const RowPath path(row);
    std::vector<Field> result;
    if (!shown) {
        return result;
    }
    if (path.kind() == "kitchen") {
        return kitchen::kitchenForm(*shown).fields();
    }
    if (path.kind() == "day") {
        const OccasionPtr record = openOccasion(library);
        const HoursOfDay* day = record ? findDay(record->occasion, path) : nullptr;
        return day == nullptr ? result : kitchen::dayForm(*day).fields();
    }
    visitList(*shown, path.kind(), [&](const auto& list, const auto& form) {
        using Thing = typename std::decay_t<decltype(list)>::value_type;
        if (const auto* thing = findIn(list, decltype(Thing::id){path.id()})) {
            result = form(*thing).fields();
        }
    });
    return result;
}

std::vector<RowCommand> KitchenOutline::commands(const LibraryState& library,
                                                 const std::string& row) const
{
    const RowPath path(row);
    const std::string section = sectionOf(path);
    std::vector<RowCommand> result;
    if (!shownKitchen(library) || section.empty()) {
        return result;
    }
    result.push_back({addKey, tr("Add")});
    if (path.has(section)) {
        if (!path.has("day")) {
            result.push_back({copyKey, tr("Copy")});
        }
        if (section == "cook" && openOccasion(library)) {
            result.push_back({addDayKey, tr("Hours of a day")});
        }
        result.push_back({removeKey, tr("Delete")});
    }
    if (section != "time") {
        return result;
    }
    for (const TimeTaken& time : proposals(library, *shownKitchen(library))) {
        result.push_back(
            {learnKey + time.id.text(), tr("Learn: %1 took %2, computed %3")
                                            .arg(text(time.name), text(durationText(time.taken)),
                                                 text(durationText(time.computed)))});
    }
    if (!shownKitchen(library)->timesTaken.empty()) {
        result.push_back({forgetKey, tr("Forget all")});
    }
    return result;
}

Result<Edit> KitchenOutline::set(const LibraryState& library, const std::string& row,
                                 const std::string& field, const FieldValue& value) const
{
    const KitchenPtr shown = shownKitchen(library);
    const RowPath path(row);
    if (!shown) {
        return gone();
    }
    if (path.kind() == "day") {
        return setDay(library, path, field, value);
    }
    if (path.kind() == "kitchen") {
        auto next = kitchen::kitchenForm(*shown).with(field, value);
        if (!next) {
            return next.error();
        }
        return Edit{withKitchen(library, std::move(*next)), tr("Change the kitchen"), {}};
    }
    Result<Edit> result = gone();
    Kitchen next = *shown;
    visitList(next, path.kind(), [&](auto& list, const auto& form) {
        using Thing = typename std::decay_t<decltype(list)>::value_type;
        auto* thing = findIn(list, decltype(Thing::id){path.id()});
        if (thing == nullptr) {
            return;
        }
        const auto formOfThing = form(*thing);
        auto changed = formOfThing.with(field, value);
        if (!changed) {
            result = changed.error();
            return;
        }
        *thing = std::move(*changed);
        result =
            Edit{withKitchen(library, next),
                 tr("Change %1: %2").arg(text(thing->name), formOfThing.labelOf(field).toLower()),
                 {}};
    });
    return result;
}

Result<Edit> KitchenOutline::run(const LibraryState& library, const std::string& row,
                                 const std::string& command) const
{
    const KitchenPtr shown = shownKitchen(library);
    const RowPath path(row);
    if (!shown) {
        return gone();
    }
    if (command == addKey || command == copyKey) {
        return addThing(library, *shown, path, command == copyKey);
    }
    if (command == addDayKey) {
        return addDay(library, path, *shown);
    }
    if (command.starts_with(learnKey)) {
        return learnFrom(library, *shown, command.substr(std::string_view(learnKey).size()));
    }
    if (command == forgetKey) {
        return forgetTimes(library, *shown);
    }
    return command == removeKey ? removeThing(library, *shown, path) : gone();
}

} // namespace suppertide::ui
