#include "ui/models/larder_forms.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/food/store_section.h"

namespace suppertide::ui::larder {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("LarderOutline", text);
}

QString worded(std::string_view name)
{
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

std::vector<std::pair<Substance, QString>> substances()
{
    std::vector<std::pair<Substance, QString>> options;
    for (const Substance substance : allSubstances) {
        options.emplace_back(substance, worded(nameOf(substance)));
    }
    return options;
}

bool isBlank(const std::string& text)
{
    return text.find_first_not_of(' ') == std::string::npos;
}

/// A day that may be left out.
template <typename Thing>
void addDay(FieldList<Thing>& form, const char* key, const QString& label, const Thing& thing,
            std::optional<CivilDate> Thing::*member)
{
    const auto& now = thing.*member;
    form.add(
            FieldList<Thing>::plain(key, label, FieldKind::Line, now ? toIso(*now) : std::string()),
            [member](Thing& next, const FieldValue& value) -> Result<void> {
                const std::string& text = std::get<std::string>(value);
                if (isBlank(text)) {
                    (next.*member).reset();
                    return {};
                }
                const auto day = parseDate(text);
                if (!day) {
                    return Failure{
                        FailureKind::BadInput, "Write the day like “2027-06-19”, or nothing.", {}};
                }
                next.*member = *day;
                return {};
            })
        .help(tr("like 2027-06-19; empty: not said"));
}

/// Words with commas between them.
template <typename Thing>
void addWords(FieldList<Thing>& form, const char* key, const QString& label, const Thing& thing,
              std::vector<std::string> Thing::*member)
{
    QStringList words;
    for (const std::string& word : thing.*member) {
        words << QString::fromStdString(word);
    }
    form.add(FieldList<Thing>::plain(key, label, FieldKind::Line,
                                     words.join(QStringLiteral(", ")).toStdString()),
             [member](Thing& next, const FieldValue& value) -> Result<void> {
                 (next.*member).clear();
                 const auto parts =
                     QString::fromStdString(std::get<std::string>(value)).split(QLatin1Char(','));
                 for (const QString& part : parts) {
                     if (!part.trimmed().isEmpty()) {
                         (next.*member).push_back(part.trimmed().toStdString());
                     }
                 }
                 return {};
             });
}

/// Grams that may be left out; milligrams are the finest.
void addGrams(FieldList<OwnIngredient>& form, const char* key, const QString& label,
              const OwnIngredient& own, std::optional<Grams> OwnIngredient::*member)
{
    const auto& now = own.*member;
    form.add(FieldList<OwnIngredient>::plain(key, label, FieldKind::Line,
                                             now ? fieldText(Rational{now->smallest(), 1000})
                                                 : std::string()),
             [member](OwnIngredient& next, const FieldValue& value) -> Result<void> {
                 const std::string& text = std::get<std::string>(value);
                 if (isBlank(text)) {
                     (next.*member).reset();
                     return {};
                 }
                 const auto read = readFraction(text);
                 if (!read) {
                     return read.error();
                 }
                 next.*member = Grams::ofSmallest((*read * Rational{1000}).rounded());
                 return {};
             })
        .help(tr("grams; empty: as in the table"));
}

void addWhole(FieldList<OwnIngredient>& form, const char* key, const QString& label,
              const OwnIngredient& own, std::optional<int> OwnIngredient::*member)
{
    const auto& now = own.*member;
    form.add(FieldList<OwnIngredient>::plain(key, label, FieldKind::Line,
                                             now ? std::to_string(*now) : std::string()),
             [member](OwnIngredient& next, const FieldValue& value) -> Result<void> {
                 const QString text =
                     QString::fromStdString(std::get<std::string>(value)).trimmed();
                 bool isNumber = false;
                 const int number = text.toInt(&isNumber);
                 if (!text.isEmpty() && (!isNumber || number < 0)) {
                     return Failure{FailureKind::BadInput, "Write a whole number, or nothing.", {}};
                 }
                 next.*member = text.isEmpty() ? std::nullopt : std::optional{number};
                 return {};
             });
}

/// Absent: as in the table of ingredients.
void addContains(FieldList<OwnIngredient>& form, const OwnIngredient& own)
{
    form.add(FieldList<OwnIngredient>::plain("says", tr("I say what it contains"),
                                             FieldKind::Switch, own.contains.has_value()),
             [](OwnIngredient& next, const FieldValue& value) -> Result<void> {
                 if (!std::get<bool>(value)) {
                     next.contains.reset();
                 } else if (!next.contains) {
                     next.contains.emplace();
                 }
                 return {};
             })
        .help(tr("otherwise as in the table of ingredients"));
    if (!own.contains) {
        return;
    }
    const auto options = substances();
    Field field = FieldList<OwnIngredient>::plain("contains", tr("Contains"), FieldKind::Checks,
                                                  std::vector<std::string>());
    std::vector<std::string> ticked;
    for (std::size_t i = 0; i < options.size(); ++i) {
        field.options.push_back({std::to_string(i), options[i].second});
        if (std::find(own.contains->begin(), own.contains->end(), options[i].first) !=
            own.contains->end()) {
            ticked.push_back(std::to_string(i));
        }
    }
    field.value = std::move(ticked);
    form.add(std::move(field),
             [options](OwnIngredient& next, const FieldValue& value) -> Result<void> {
                 next.contains.emplace();
                 for (const std::string& place : std::get<std::vector<std::string>>(value)) {
                     next.contains->push_back(options.at(std::stoul(place)).first);
                 }
                 return {};
             })
        .help(tr("check the label: makers change what they put in"));
}

void addSection(FieldList<OwnIngredient>& form, const OwnIngredient& own)
{
    Field field = FieldList<OwnIngredient>::plain("section", tr("Stands under"), FieldKind::Choice,
                                                  own.section.value_or(""));
    field.options.push_back({"", tr("as in the table")});
    bool isKnown = !own.section;
    for (const StoreSection section : allStoreSections) {
        const std::string name(nameOf(section));
        field.options.push_back({name, worded(name)});
        isKnown = isKnown || own.section == name;
    }
    if (!isKnown) {
        field.options.push_back({*own.section, QString::fromStdString(*own.section)});
    }
    form.add(std::move(field), [](OwnIngredient& next, const FieldValue& value) -> Result<void> {
        const std::string& name = std::get<std::string>(value);
        next.section = name.empty() ? std::nullopt : std::optional{name};
        return {};
    });
}

void addPart(FieldList<OwnIngredient>& form, const OwnIngredient& own, IngredientPart part,
             const char* key, const QString& label)
{
    const auto now = own.parts.find(part);
    form.add(FieldList<OwnIngredient>::plain(key, label, FieldKind::Line,
                                             now == own.parts.end() ? std::string()
                                                                    : fieldText(now->second)),
             [part](OwnIngredient& next, const FieldValue& value) -> Result<void> {
                 const std::string& text = std::get<std::string>(value);
                 if (isBlank(text)) {
                     next.parts.erase(part);
                     return {};
                 }
                 auto read = readAmount(text);
                 if (!read) {
                     return read.error();
                 }
                 next.parts.insert_or_assign(part, std::move(*read));
                 return {};
             })
        .help(tr("of one, like 45 ml or 17 g"));
}

Rational coinsIn(const std::string& currency)
{
    const int digits = minorDigitsOf(currency);
    return Rational{digits == 0 ? 1 : digits == 3 ? 1000 : 100};
}

std::string priceField(const Pack& pack, const std::string& currency)
{
    if (!pack.price) {
        return {};
    }
    const std::string text = priceText(*pack.price, currency);
    return text.substr(0, text.find(' '));
}

} // namespace

FieldList<Larder> larderForm(const Larder& larder)
{
    FieldList<Larder> form(larder);
    form.line("currency", tr("Currency of the prices"), &Larder::currency)
        .help(tr("three letters: GBP, EUR, USD"));
    addWords(form, "sections", tr("Order of the shop"), larder, &Larder::sections);
    form.help(tr("sections as you walk past them, with commas; empty: the usual order"));
    return form;
}

FieldList<StockItem> stockForm(const StockItem& item)
{
    FieldList<StockItem> form(item);
    form.line("ingredient", tr("What"), &StockItem::ingredient);
    form.readable("amount", tr("How much"), &StockItem::amount, readAmount);
    form.toggle("always", tr("Always there"), &StockItem::isAlwaysThere)
        .help(tr("never bought for an evening: salt, water"));
    addDay(form, "useBy", tr("Use by"), item, &StockItem::useBy);
    form.line("note", tr("Note"), &StockItem::note);
    return form;
}

FieldList<Pack> packForm(const Pack& pack, const std::string& currency)
{
    FieldList<Pack> form(pack);
    form.line("ingredient", tr("What"), &Pack::ingredient);
    form.readable("amount", tr("In one pack"), &Pack::amount, readAmount);
    form.line("name", tr("Called"), &Pack::name).help(tr("bag, tin, bunch"));
    form.add(FieldList<Pack>::plain("price", tr("Price"), FieldKind::Line,
                                    priceField(pack, currency)),
             [currency](Pack& next, const FieldValue& value) -> Result<void> {
                 const std::string& text = std::get<std::string>(value);
                 if (isBlank(text)) {
                     next.price.reset();
                     return {};
                 }
                 const auto read = readFraction(text);
                 if (!read) {
                     return Failure{FailureKind::BadInput,
                                    "Write the price as a number, like “1.25”, or nothing.",
                                    {}};
                 }
                 next.price = (*read * coinsIn(currency)).rounded();
                 return {};
             })
        .help(QString::fromStdString(currency) + tr("; empty: not known"));
    form.toggle("loose", tr("Sold loose"), &Pack::isLoose)
        .help(tr("any amount, at this price for so much"));
    return form;
}

FieldList<OwnIngredient> ownForm(const OwnIngredient& own)
{
    FieldList<OwnIngredient> form(own);
    form.line("name", tr("Name"), &OwnIngredient::name);
    addWords(form, "synonyms", tr("Also called"), own, &OwnIngredient::synonyms);
    addContains(form, own);
    addSection(form, own);
    addWhole(form, "keeps", tr("Keeps, days"), own, &OwnIngredient::keepsDays);
    addGrams(form, "piece", tr("One weighs"), own, &OwnIngredient::pieceWeighs);
    addGrams(form, "litre", tr("A litre weighs"), own, &OwnIngredient::litreWeighs);
    addWhole(form, "edible", tr("Left to eat, %"), own, &OwnIngredient::ediblePercent);
    addPart(form, own, IngredientPart::Juice, "juice", tr("Juice"));
    addPart(form, own, IngredientPart::Zest, "zest", tr("Zest"));
    addPart(form, own, IngredientPart::Yolk, "yolk", tr("Yolk"));
    addPart(form, own, IngredientPart::White, "white", tr("White"));
    form.line("source", tr("Figures from"), &OwnIngredient::source);
    return form;
}

FieldList<ConfirmedLabel> labelForm(const ConfirmedLabel& label)
{
    FieldList<ConfirmedLabel> form(label);
    form.line("ingredient", tr("What"), &ConfirmedLabel::ingredient);
    form.checks("contains", tr("Its label names"), &ConfirmedLabel::contains, substances())
        .help(tr("nothing ticked: the label names none of these"));
    addDay(form, "read", tr("Read on"), label, &ConfirmedLabel::read);
    form.line("note", tr("Which product"), &ConfirmedLabel::note);
    return form;
}

} // namespace suppertide::ui::larder
