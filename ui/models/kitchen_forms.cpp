#include "ui/models/kitchen_forms.h"

#include <QCoreApplication>

#include "ui/models/hours_text.h"
#include "ui/models/oven_warming.h"
#include "ui/models/physical_fields.h"

namespace suppertide::ui::kitchen {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("KitchenOutline", text);
}

/// Degrees a minute with up to three decimals, as text. 9 °F is as much as 5 °C.
void addRate(FieldList<KitchenOven>& form, const char* key, const QString& label, std::int64_t now,
             std::int64_t KitchenOven::*member)
{
    static constexpr std::string_view fahrenheit = "°F";
    const Rational inFahrenheit = Rational{now, 1000} * Rational{9, 5};
    Field field =
        FieldList<KitchenOven>::plain(key, label, FieldKind::Line, fieldText(Rational{now, 1000}));
    field.fahrenheit = fieldText(Rational{(inFahrenheit * Rational{100}).rounded(), 100}) + " °F";
    form.add(std::move(field),
             [member](KitchenOven& oven, const FieldValue& value) -> Result<void> {
                 std::string_view text = trimmed(std::get<std::string>(value));
                 const bool isFahrenheit = text.ends_with(fahrenheit);
                 if (isFahrenheit) {
                     text = trimmed(text.substr(0, text.size() - fahrenheit.size()));
                 }
                 const auto rate = readFraction(std::string(text));
                 if (!rate) {
                     return rate.error();
                 }
                 const Rational milli = *rate * (isFahrenheit ? Rational{5000, 9} : Rational{1000});
                 if (milli.rounded() <= 0) {
                     return Failure{FailureKind::BadInput, "It is more than 0° a minute.", {}};
                 }
                 oven.*member = milli.rounded();
                 return {};
             })
        .help(tr("°C a minute"), tr("°F a minute"));
}

/// "7 min to 120 °C, 14 min to 200 °C"; empty: nobody has measured it.
void addWarming(FieldList<KitchenOven>& form, const KitchenOven& oven)
{
    Field field = FieldList<KitchenOven>::plain("warming", tr("Measured"), FieldKind::Line,
                                                warmingText(oven.warming));
    field.fahrenheit = warmingText(oven.warming, true);
    form.add(std::move(field),
             [](KitchenOven& next, const FieldValue& value) -> Result<void> {
                 auto warming = readWarming(std::get<std::string>(value));
                 if (!warming) {
                     return warming.error();
                 }
                 next.warming = std::move(*warming);
                 return {};
             })
        .help(tr("by a thermometer, from cold: 7 min to 120 °C, 14 min to 200 °C; then this "
                 "counts"),
              tr("by a thermometer, from cold: 7 min to 250 °F, 14 min to 390 °F; then this "
                 "counts"));
}

void addHours(FieldList<KitchenCook>& form, const KitchenCook& cook)
{
    form.add(FieldList<KitchenCook>::plain("hours", tr("Usual hours"), FieldKind::Line,
                                           hoursText(cook.usualHours)),
             [](KitchenCook& next, const FieldValue& value) -> Result<void> {
                 auto hours = readHours(std::get<std::string>(value));
                 if (!hours) {
                     return hours.error();
                 }
                 next.usualHours = std::move(*hours);
                 return {};
             })
        .help(tr("like 08:00–13:00, at home 13:00–16:00, 16:00–23:00"));
}

/// Empty: nobody has measured it.
void addMeasuredCelsius(FieldList<ColdPlace>& form, const ColdPlace& cold)
{
    addDegreesOrNone(form, "temperature", tr("Measured"), &ColdPlace::temperature, cold.temperature,
                     {-40, 15})
        .help(tr("°C by a thermometer; empty: 4 °C, −18 °C are taken"),
              tr("°F by a thermometer; empty: 39 °F, 0 °F are taken"));
}

std::string joined(const std::vector<std::string>& words)
{
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : ", ") + word;
    }
    return text;
}

std::vector<std::string> parted(const std::string& text)
{
    std::vector<std::string> words;
    const QStringList parts = QString::fromStdString(text).split(QLatin1Char(','));
    for (const QString& part : parts) {
        if (!part.trimmed().isEmpty()) {
            words.push_back(part.trimmed().toStdString());
        }
    }
    return words;
}

} // namespace

FieldList<Kitchen> kitchenForm(const Kitchen& kitchen)
{
    FieldList<Kitchen> form(kitchen);
    form.line("name", tr("Name"), &Kitchen::name);
    addCelsius<Kitchen>(form, "room", tr("Room temperature"), kitchen.roomTemperature,
                        [](Kitchen& next, Celsius value) { next.roomTemperature = value; });
    form.whole("altitude", tr("Above the sea"), &Kitchen::altitudeMetres, -400, 5000,
               QStringLiteral("m"))
        .help(tr("water boils 1 °C cooler for each 300 m"),
              tr("water boils 2 °F cooler for each 300 m"));
    return form;
}

FieldList<KitchenOven> ovenForm(const KitchenOven& oven)
{
    FieldList<KitchenOven> form(oven);
    form.line("name", tr("Name"), &KitchenOven::name)
        .whole("shelves", tr("Shelves"), &KitchenOven::shelves, 1, 20);
    addCelsius<KitchenOven>(form, "low", tr("Lowest"), oven.low,
                            [](KitchenOven& next, Celsius value) { next.low = value; });
    addCelsius<KitchenOven>(form, "high", tr("Highest"), oven.high,
                            [](KitchenOven& next, Celsius value) { next.high = value; });
    form.toggle("fan", tr("Fan"), &KitchenOven::hasFan)
        .toggle("grill", tr("Grill"), &KitchenOven::hasGrill);
    addRate(form, "heats", tr("Heats up by"), oven.heatMilliCPerMin,
            &KitchenOven::heatMilliCPerMin);
    addWarming(form, oven);
    addRate(form, "cools", tr("Cools down by"), oven.coolMilliCPerMin,
            &KitchenOven::coolMilliCPerMin);
    return form;
}

FieldList<Burner> burnerForm(const Burner& burner)
{
    FieldList<Burner> form(burner);
    form.line("name", tr("Name"), &Burner::name);
    addCentimetres<Burner>(form, "size", tr("Takes pans up to"), burner.size,
                           [](Burner& next, Length value) { next.size = value; });
    Field power =
        FieldList<Burner>::plain("power", tr("Power"), FieldKind::Whole, burner.power.smallest());
    power.most = 10'000;
    power.unit = QStringLiteral("W");
    form.add(std::move(power), [](Burner& next, const FieldValue& value) -> Result<void> {
        next.power = watts(std::get<std::int64_t>(value));
        return {};
    });
    form.choice("kind", tr("Kind"), &Burner::kind,
                {{BurnerKind::Gas, tr("gas")},
                 {BurnerKind::Electric, tr("electric")},
                 {BurnerKind::Induction, tr("induction")}})
        .help(tr("by which its power gets into the pan"));
    return form;
}

FieldList<Appliance> applianceForm(const Appliance& appliance)
{
    FieldList<Appliance> form(appliance);
    form.line("name", tr("Name"), &Appliance::name).line("kind", tr("Kind"), &Appliance::kind);
    form.readable("holds", tr("Holds"), &Appliance::holds, readLitres)
        .help(tr("litres, like a blender's jug; empty: not known"));
    form.help(tr("as recipes call it, like blender"));
    return form;
}

FieldList<Vessel> vesselForm(const Vessel& vessel)
{
    FieldList<Vessel> form(vessel);
    form.line("name", tr("Name"), &Vessel::name).line("kind", tr("Kind"), &Vessel::kind);
    form.help(tr("as recipes call it, like wide pan"));
    form.whole("count", tr("How many"), &Vessel::count, 1, 200)
        .readable("volume", tr("Holds"), &Vessel::volume, readLitres)
        .help(tr("litres"));
    addCentimetres<Vessel>(form, "diameter", tr("Across"), vessel.diameter,
                           [](Vessel& next, Length value) { next.diameter = value; });
    return form;
}

FieldList<ColdPlace> coldForm(const ColdPlace& cold)
{
    FieldList<ColdPlace> form(cold);
    form.line("name", tr("Name"), &ColdPlace::name)
        .choice("kind", tr("Kind"), &ColdPlace::kind,
                {{ColdKind::Fridge, tr("fridge")}, {ColdKind::Freezer, tr("freezer")}})
        .readable("room", tr("Room to spare"), &ColdPlace::room, readLitres)
        .help(tr("litres that the dinner may have"));
    addMeasuredCelsius(form, cold);
    return form;
}

FieldList<TimeTaken> timeForm(const Kitchen& kitchen, const TimeTaken& time)
{
    FieldList<TimeTaken> form(time);
    form.line("name", tr("What"), &TimeTaken::name);
    Field on = FieldList<TimeTaken>::plain("on", tr("In or on"), FieldKind::Choice, time.on.text());
    for (const KitchenOven& oven : kitchen.ovens) {
        on.options.push_back({oven.id.text(), QString::fromStdString(oven.name)});
    }
    for (const Burner& burner : kitchen.burners) {
        on.options.push_back({burner.id.text(), QString::fromStdString(burner.name)});
    }
    form.add(std::move(on), [](TimeTaken& next, const FieldValue& value) -> Result<void> {
        next.on = KitchenItemId{std::get<std::string>(value)};
        return {};
    });
    form.add(FieldList<TimeTaken>::plain("date", tr("On"), FieldKind::Date, toIso(time.date)),
             [](TimeTaken& next, const FieldValue& value) -> Result<void> {
                 const auto read = parseDate(std::get<std::string>(value));
                 if (!read) {
                     return Failure{FailureKind::BadInput, "This is no date.", {}};
                 }
                 next.date = *read;
                 return {};
             });
    form.duration("computed", tr("Was computed as"), &TimeTaken::computed)
        .help(tr("before anything was learned, as “Why here?” says"));
    form.duration("taken", tr("Took"), &TimeTaken::taken);
    return form;
}

FieldList<KitchenCook> cookForm(const KitchenCook& cook)
{
    FieldList<KitchenCook> form(cook);
    form.line("name", tr("Name"), &KitchenCook::name)
        .toggle("host", tr("Sits at table with the guests"), &KitchenCook::isHost);
    addHours(form, cook);
    form.add(FieldList<KitchenCook>::plain("skills", tr("Skills"), FieldKind::Line,
                                           joined(cook.skills)),
             [](KitchenCook& next, const FieldValue& value) -> Result<void> {
                 next.skills = parted(std::get<std::string>(value));
                 return {};
             })
        .help(tr("with commas between, like carving, caramel"));
    return form;
}

FieldList<HoursOfDay> dayForm(const HoursOfDay& day)
{
    FieldList<HoursOfDay> form(day);
    form.add(FieldList<HoursOfDay>::plain("hours", tr("Hours on this day"), FieldKind::Line,
                                          hoursText(day.hours)),
             [](HoursOfDay& next, const FieldValue& value) -> Result<void> {
                 auto hours = readHours(std::get<std::string>(value));
                 if (!hours) {
                     return hours.error();
                 }
                 next.hours = std::move(*hours);
                 return {};
             })
        .help(tr("empty: not there all day"));
    return form;
}

} // namespace suppertide::ui::kitchen
