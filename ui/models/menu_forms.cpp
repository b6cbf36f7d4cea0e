#include "ui/models/menu_forms.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

#include "core/recipe/temperature_methods.h"
#include "ui/models/attention_field.h"
#include "ui/models/mould_fields.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui::menu {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("MenuOutline", text);
}

Failure badDate()
{
    return {FailureKind::BadInput, "Write the date and time like “2027-06-19T19:30”.", ""};
}

template <typename Thing>
void addCivil(FieldList<Thing>& form, const char* key, const QString& label, const Thing& thing,
              CivilTime Thing::*member)
{
    form.add(FieldList<Thing>::plain(key, label, FieldKind::DateTime, toIso(thing.*member)),
             [member](Thing& next, const FieldValue& value) -> Result<void> {
                 const auto time = parseCivil(std::get<std::string>(value));
                 if (!time) {
                     return badDate();
                 }
                 next.*member = *time;
                 return {};
             });
}

/// Anyone, or one cook of the open kitchen.
template <typename Thing>
void addCook(FieldList<Thing>& form, const LibraryState& library, const Thing& thing)
{
    Field field = FieldList<Thing>::plain("cook", tr("Cook"), FieldKind::Choice,
                                          thing.cook ? thing.cook->text() : std::string());
    field.options.push_back({"", tr("anyone")});
    if (const KitchenPtr kitchen = openKitchen(library)) {
        for (const KitchenCook& cook : kitchen->cooks) {
            field.options.push_back({cook.id.text(), QString::fromStdString(cook.name)});
        }
    }
    form.add(std::move(field), [](Thing& next, const FieldValue& value) -> Result<void> {
        const std::string& key = std::get<std::string>(value);
        next.cook = key.empty() ? std::nullopt : std::optional(CookId{key});
        return {};
    });
}

template <typename Value, std::size_t count>
std::vector<std::pair<Value, QString>> named(const std::array<Value, count>& values)
{
    std::vector<std::pair<Value, QString>> options;
    for (const Value value : values) {
        const std::string_view name = nameOf(value);
        options.emplace_back(value,
                             QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
    }
    return options;
}

void addVariantPortions(FieldList<Dish>& form, const Recipe& recipe, const Dish& dish)
{
    for (const Variant& variant : recipe.variants) {
        Portions portions;
        for (const MixEntry& mix : dish.mix) {
            if (mix.variant == variant.id) {
                portions = mix.portions;
            }
        }
        const std::string key = "portions:" + variant.id.text();
        form.add(FieldList<Dish>::plain(key.c_str(), QString::fromStdString(variant.name),
                                        FieldKind::Line, fieldText(portions)),
                 [id = variant.id](Dish& next, const FieldValue& value) -> Result<void> {
                     const auto read = readFraction(std::get<std::string>(value));
                     if (!read) {
                         return read.error();
                     }
                     const auto there =
                         std::find_if(next.mix.begin(), next.mix.end(),
                                      [&](const MixEntry& mix) { return mix.variant == id; });
                     if (*read == Portions{0}) {
                         std::erase_if(next.mix,
                                       [&](const MixEntry& mix) { return mix.variant == id; });
                     } else if (there == next.mix.end()) {
                         next.mix.push_back({id, *read, {}});
                     } else {
                         there->portions = *read; // in its place: the rows of the page stay
                     }
                     return {};
                 })
            .help(tr("portions; 0 for none"));
    }
}

void addMethods(FieldList<Dish>& form, const Recipe& recipe, const Dish& dish)
{
    for (const MethodChoice& choice : choicesOf(recipe)) {
        const std::string key = "method:" + choice.id.text();
        const auto taken = dish.methods.find(choice.id);
        Field field = FieldList<Dish>::plain(
            key.c_str(), QString::fromStdString(choice.name), FieldKind::Choice,
            taken == dish.methods.end() ? std::string() : taken->second.text());
        field.options.push_back({"", tr("whichever suits the plan")});
        for (const Method& method : choice.methods) {
            field.options.push_back({method.id.text(), QString::fromStdString(method.name)});
        }
        form.add(std::move(field),
                 [id = choice.id](Dish& next, const FieldValue& value) -> Result<void> {
                     const std::string& method = std::get<std::string>(value);
                     if (method.empty()) {
                         next.methods.erase(id);
                     } else {
                         next.methods[id] = MethodId{method};
                     }
                     return {};
                 });
    }
}

/// Choosing a recipe adds it with its first variant, for those who are not served yet.
void addDishChoice(FieldList<Course>& form, const LibraryState& library, const Occasion& occasion)
{
    Field field =
        FieldList<Course>::plain("dish", tr("Add a dish"), FieldKind::Choice, std::string());
    field.options.push_back({"", tr("choose one …")});
    for (const auto& [id, recipe] : library.recipes) {
        if (recipe->kind == RecipeKind::Dish && !recipe->variants.empty()) {
            field.options.push_back({id.text(), QString::fromStdString(recipe->name)});
        }
    }
    form.add(std::move(field),
             [&library, &occasion](Course& next, const FieldValue& value) -> Result<void> {
                 const auto recipe = library.recipes.find(RecipeId{std::get<std::string>(value)});
                 if (recipe == library.recipes.end()) {
                     return {};
                 }
                 const Portions portions = portionsWanted(occasion, next, *recipe->second);
                 const WithDish with = withDishAdded(occasion, next.id, *recipe->second,
                                                     recipe->second->variants.front().id, portions);
                 next = *findIn(with.occasion.courses, next.id);
                 return {};
             });
}

/// Ingredients with commas between them.
void addDislikes(FieldList<Guest>& form, const Guest& guest)
{
    QStringList words;
    for (const std::string& word : guest.dislikes) {
        words << QString::fromStdString(word);
    }
    form.add(FieldList<Guest>::plain("dislikes", tr("Would rather not have"), FieldKind::Line,
                                     words.join(QStringLiteral(", ")).toStdString()),
             [](Guest& next, const FieldValue& value) -> Result<void> {
                 next.dislikes.clear();
                 const auto parts =
                     QString::fromStdString(std::get<std::string>(value)).split(QLatin1Char(','));
                 for (const QString& part : parts) {
                     if (!part.trimmed().isEmpty()) {
                         next.dislikes.push_back(part.trimmed().toStdString());
                     }
                 }
                 return {};
             })
        .help(tr("ingredients, with commas between them"));
}

} // namespace

std::string dishName(const LibraryState& library, const Dish& dish)
{
    const auto recipe = library.recipes.find(dish.recipe);
    return recipe == library.recipes.end() ? dish.recipe.text() : recipe->second->name;
}

std::string variantName(const LibraryState& library, const Dish& dish, const VariantId& id)
{
    const auto recipe = library.recipes.find(dish.recipe);
    if (recipe != library.recipes.end()) {
        if (const Variant* variant = findIn(recipe->second->variants, id)) {
            return variant->name;
        }
    }
    return id.text();
}

FieldList<Occasion> occasionForm(const LibraryState& library, const Occasion& occasion)
{
    FieldList<Occasion> form(occasion);
    form.line("name", tr("Name"), &Occasion::name);
    if (const auto date = dateOf(occasion)) {
        form.add(FieldList<Occasion>::plain("date", tr("Date"), FieldKind::Date, toIso(*date)),
                 [](Occasion& next, const FieldValue& value) -> Result<void> {
                     const auto read = parseDate(std::get<std::string>(value));
                     if (!read) {
                         return badDate();
                     }
                     next = movedTo(next, *read);
                     return {};
                 })
            .help(tr("everything moves with it: courses, jobs, trips, hours"));
    }
    Field kitchen = FieldList<Occasion>::plain("kitchen", tr("Kitchen"), FieldKind::Choice,
                                               occasion.kitchen.text());
    for (const auto& [id, there] : library.kitchens) {
        kitchen.options.push_back({id.text(), QString::fromStdString(there->name)});
    }
    form.add(std::move(kitchen), [](Occasion& next, const FieldValue& value) -> Result<void> {
        next.kitchen = KitchenId{std::get<std::string>(value)};
        return {};
    });
    form.add(FieldList<Occasion>::plain("zone", tr("Time zone"), FieldKind::Line, occasion.zone),
             [](Occasion& next, const FieldValue& value) -> Result<void> {
                 const std::string& zone = std::get<std::string>(value);
                 const auto found = TimeZone::find(zone);
                 if (!found) {
                     return found.error();
                 }
                 next.zone = zone;
                 return {};
             })
        .help(tr("as in “Europe/London”"));
    Field rules =
        FieldList<Occasion>::plain("rules", tr("Food safety by"), FieldKind::Choice,
                                   std::to_string(static_cast<int>(occasion.preferences.rules)));
    for (const auto& [book, name] : named(safety::allRuleBooks)) {
        rules.options.push_back({std::to_string(static_cast<int>(book)), name});
    }
    form.add(std::move(rules),
             [](Occasion& next, const FieldValue& value) -> Result<void> {
                 next.preferences.rules =
                     safety::allRuleBooks.at(std::stoul(std::get<std::string>(value)));
                 return {};
             })
        .help(tr("local food codes and licensed practice prevail"));
    form.paragraph("note", tr("Note"), &Occasion::note);
    return form;
}

FieldList<Course> courseForm(const LibraryState& library, const Occasion& occasion,
                             const Course& course)
{
    FieldList<Course> form(course);
    form.line("name", tr("Name"), &Course::name);
    addCivil(form, "serving", tr("Served at"), course, &Course::serving);
    form.toggle("pinned", tr("Served exactly then"), &Course::isServingPinned)
        .help(tr("otherwise up to 30 minutes later"));
    form.duration("atTable", tr("At table"), &Course::atTable)
        .help(tr("eating and clearing; hosts sit so long"));
    addDishChoice(form, library, occasion);
    return form;
}

FieldList<Alternative> alternativeForm(const Alternative& alternative)
{
    FieldList<Alternative> form(alternative);
    form.line("name", tr("Name"), &Alternative::name);
    form.toggle("forEverybody", tr("For everybody"), &Alternative::isForEverybody)
        .help(tr("sides that are served beside whichever alternative leads"));
    return form;
}

FieldList<Dish> dishForm(const LibraryState& library, const Course& course, const Dish& dish)
{
    FieldList<Dish> form(dish);
    const auto recipe = library.recipes.find(dish.recipe);
    if (recipe != library.recipes.end()) {
        addVariantPortions(form, *recipe->second, dish);
    }
    if (course.alternatives.size() > 1) {
        Field field = FieldList<Dish>::plain("alternative", tr("Belongs to"), FieldKind::Choice,
                                             dish.alternative.text());
        for (const Alternative& alternative : course.alternatives) {
            field.options.push_back(
                {alternative.id.text(), QString::fromStdString(alternative.name)});
        }
        form.add(std::move(field), [](Dish& next, const FieldValue& value) -> Result<void> {
            next.alternative = AlternativeId{std::get<std::string>(value)};
            return {};
        });
    }
    addCook(form, library, dish);
    if (recipe != library.recipes.end()) {
        addMethods(form, *recipe->second, dish);
        addMould(form, *recipe->second, dish);
    }
    return form;
}

FieldList<MixEntry> mixForm(const Occasion& occasion, const MixEntry& mix)
{
    FieldList<MixEntry> form(mix);
    form.readable("portions", tr("Portions"), &MixEntry::portions, readFraction);
    std::vector<std::pair<GuestId, QString>> guests;
    for (const Guest& guest : occasion.guests) {
        guests.emplace_back(guest.id, QString::fromStdString(guest.name));
    }
    form.checks("guests", tr("For"), &MixEntry::guests, guests)
        .help(tr("nobody ticked: for whom it suits"));
    return form;
}

FieldList<Guest> guestForm(const Guest& guest)
{
    FieldList<Guest> form(guest);
    form.line("name", tr("Name"), &Guest::name);
    form.readable("portion", tr("Portion"), &Guest::portion, readFraction)
        .help(tr("of each dish; 1/2 for a child"));
    form.checks("diets", tr("Diets"), &Guest::diets, named(allDiets));
    form.checks("allergies", tr("Must not eat"), &Guest::allergies, named(allSubstances))
        .help(tr("who cannot eat one nut or shellfish often cannot eat others: ask"));
    form.checks("risks", tr("At higher risk"), &Guest::risks, named(allRiskGroups))
        .help(tr("for whom an infection would be worse: no raw egg, rare mince or raw shellfish"));
    addDislikes(form, guest);
    return form;
}

FieldList<HouseJob> jobForm(const LibraryState& library, const HouseJob& job)
{
    FieldList<HouseJob> form(job);
    form.line("name", tr("Name"), &HouseJob::name);
    form.duration("duration", tr("Takes"), &HouseJob::duration);
    addAttention(form, job.attention, &HouseJob::attention);
    addCivil(form, "earliest", tr("Not before"), job, &HouseJob::earliest);
    addCivil(form, "latest", tr("Done by"), job, &HouseJob::latest);
    addCook(form, library, job);
    return form;
}

FieldList<ShoppingTrip> tripForm(const LibraryState& library, const ShoppingTrip& trip)
{
    FieldList<ShoppingTrip> form(trip);
    form.line("name", tr("Name"), &ShoppingTrip::name);
    form.duration("duration", tr("Takes"), &ShoppingTrip::duration);
    addCivil(form, "earliest", tr("Not before"), trip, &ShoppingTrip::earliest);
    addCivil(form, "latest", tr("Back by"), trip, &ShoppingTrip::latest);
    std::vector<std::pair<DishId, QString>> dishes;
    if (const OccasionPtr open = openOccasion(library)) {
        for (const Course& course : open->occasion.courses) {
            for (const Dish& dish : course.dishes) {
                dishes.emplace_back(dish.id, QString::fromStdString(dishName(library, dish)));
            }
        }
    }
    form.checks("dishes", tr("Buys for"), &ShoppingTrip::forDishes, dishes)
        .help(tr("nothing ticked: for all"));
    form.duration("freshness", tr("Keeps"), &ShoppingTrip::freshness)
        .help(tr("from its end to the first use at most; empty: any time"));
    form.readable("fridge", tr("Litres in the fridge"), &ShoppingTrip::fridge, readLitres);
    addCook(form, library, trip);
    return form;
}

} // namespace suppertide::ui::menu
