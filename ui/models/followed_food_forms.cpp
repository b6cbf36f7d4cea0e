// The forms of a recipe's followed foods and of what the steps do to them.
#include <QCoreApplication>

#include "core/science/dinner_foods.h"
#include "ui/models/physical_fields.h"
#include "ui/models/recipe_forms.h"

namespace suppertide::ui::recipe {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("RecipeOutline", text);
}

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

template <typename Value, std::size_t count>
std::vector<std::pair<Value, QString>> named(const std::array<Value, count>& values)
{
    std::vector<std::pair<Value, QString>> options;
    for (const Value value : values) {
        options.emplace_back(value, text(nameOf(value)));
    }
    return options;
}

void addKind(FieldList<FollowedFood>& form, const FollowedFood& food)
{
    Field kind = FieldList<FollowedFood>::plain(
        "class", tr("To the rules it is"), FieldKind::Choice, std::string(nameOf(food.kind.food)));
    for (const FoodClass each : allFoodClasses) {
        kind.options.push_back({std::string(nameOf(each)), text(nameOf(each))});
    }
    form.add(std::move(kind), [](FollowedFood& next, const FieldValue& value) -> Result<void> {
        next.kind.food =
            findFoodClass(std::get<std::string>(value)).value_or(FoodClass::CookedDish);
        return {};
    });
    FieldList<FoodKind> inner(food.kind);
    inner.checks("facts", tr("And"), &FoodKind::facts, named(allRiskFacts));
    form.add(inner.fields().front(),
             [inner](FollowedFood& next, const FieldValue& value) -> Result<void> {
                 const auto changed = inner.with("facts", value);
                 if (!changed) {
                     return changed.error();
                 }
                 next.kind.facts = changed->facts;
                 return {};
             })
        .help(tr("by which some guests should not eat it"));
}

void addMaterial(FieldList<FollowedFood>& form, const FollowedFood& food)
{
    Field material = FieldList<FollowedFood>::plain("material", tr("Heats like"), FieldKind::Choice,
                                                    food.material);
    material.options.push_back({"", tr("not computed")});
    for (const science::DinnerFood& each : science::dinnerFoods()) {
        material.options.push_back({each.id, text(each.name)});
    }
    form.add(std::move(material), [](FollowedFood& next, const FieldValue& value) -> Result<void> {
        next.material = std::get<std::string>(value);
        return {};
    });
}

/// Empty: not said.
void addMiddle(FieldList<FoodTreatment>& form, const FoodTreatment& treatment)
{
    addDegreesOrNone(form, "to", tr("Until its middle is at"), &FoodTreatment::to, treatment.to,
                     {-40, 250})
        .help(tr("°C; empty: it is not said"), tr("°F; empty: it is not said"));
}

} // namespace

FieldList<FollowedFood> foodForm(const FollowedFood& food)
{
    FieldList<FollowedFood> form(food);
    form.line("name", tr("Name"), &FollowedFood::name);
    addKind(form, food);
    addMaterial(form, food);
    form.choice("shape", tr("Shape"), &FollowedFood::shape,
                {{FoodShape::Stirred, tr("liquid or stirred")},
                 {FoodShape::Flat, tr("flat, like a gratin or a side of fish")},
                 {FoodShape::Long, tr("long, like a rolled joint or a loaf")},
                 {FoodShape::Round, tr("round, like a whole bird")}});
    Field thickness = FieldList<FollowedFood>::plain("thickness", tr("Thick"), FieldKind::Whole,
                                                     food.thickness.smallest());
    thickness.most = 500;
    thickness.unit = QStringLiteral("mm");
    form.add(std::move(thickness),
             [](FollowedFood& next, const FieldValue& value) -> Result<void> {
                 next.thickness = millimetres(std::get<std::int64_t>(value));
                 return {};
             })
        .help(tr("from face to face, or across; of a liquid: how deep it stands when it cools"));
    Field mass = FieldList<FollowedFood>::plain("mass", tr("Weighs"), FieldKind::Whole,
                                                food.mass.smallest() / 1000);
    mass.most = 100'000;
    mass.unit = QStringLiteral("g");
    form.add(std::move(mass),
             [](FollowedFood& next, const FieldValue& value) -> Result<void> {
                 next.mass = grams(std::get<std::int64_t>(value));
                 return {};
             })
        .help(tr("all of it, for the recipe's portions"));
    form.toggle("piece", tr("For more guests a larger piece"), &FollowedFood::isOnePiece);
    form.choice("from", tr("Comes from"), &FollowedFood::from,
                {{KeepPlace::Counter, tr("the counter")},
                 {KeepPlace::Fridge, tr("the fridge")},
                 {KeepPlace::Freezer, tr("the freezer")}});
    return form;
}

FieldList<FoodTreatment> treatmentForm(const FoodTreatment& treatment, const RecipePart& part)
{
    FieldList<FoodTreatment> form(treatment);
    Field step = FieldList<FoodTreatment>::plain("step", tr("Step"), FieldKind::Choice,
                                                 treatment.step.text());
    for (const Step& each : part.steps) {
        step.options.push_back({each.id.text(), nameOf(each)});
    }
    form.add(std::move(step), [](FoodTreatment& next, const FieldValue& value) -> Result<void> {
        next.step = StepId{std::get<std::string>(value)};
        return {};
    });
    form.choice("treatment", tr("What it does"), &FoodTreatment::treatment,
                {{Treatment::Stand, tr("nothing warm or cold")},
                 {Treatment::Heat, tr("heats it in oven, pan or pot")},
                 {Treatment::Boil, tr("brings it to the boil")},
                 {Treatment::Simmer, tr("keeps it at the boil")},
                 {Treatment::Reduce, tr("boils it down")},
                 {Treatment::IceBath, tr("cools it in iced water")},
                 {Treatment::Thaw, tr("thaws it in cold water")}});
    addMiddle(form, treatment);
    if (treatment.treatment == Treatment::Reduce) {
        form.whole("leaves", tr("What is left"), &FoodTreatment::leaves, 1, 100,
                   QStringLiteral("%"));
    }
    form.toggle("lid", tr("Lid on"), &FoodTreatment::isLid);
    form.toggle("bath", tr("In a water bath"), &FoodTreatment::isInBath);
    form.toggle("sets", tr("Compute how long it takes"), &FoodTreatment::setsDuration)
        .help(tr("the step's own length stands where it cannot be computed"));
    form.toggle("reheats", tr("It was cooked before"), &FoodTreatment::isReheating);
    Field becomes = FieldList<FoodTreatment>::plain(
        "becomes", tr("Afterwards it is"), FieldKind::Choice,
        treatment.becomes ? std::string(nameOf(*treatment.becomes)) : std::string());
    becomes.options.push_back({"", tr("what it was")});
    for (const FoodClass each : allFoodClasses) {
        becomes.options.push_back({std::string(nameOf(each)), text(nameOf(each))});
    }
    form.add(std::move(becomes), [](FoodTreatment& next, const FieldValue& value) -> Result<void> {
        next.becomes = findFoodClass(std::get<std::string>(value));
        return {};
    });
    return form;
}

} // namespace suppertide::ui::recipe
