#include "ui/models/recipe_forms.h"

#include <QCoreApplication>

#include "core/recipe/read_lines.h"
#include "ui/models/attention_field.h"
#include "ui/models/ingredient_words.h"
#include "ui/models/other_heats.h"
#include "ui/models/recipe_parts.h"
#include "ui/models/use_fields.h"

namespace suppertide::ui::recipe {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("RecipeOutline", text);
}

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

const std::vector<std::pair<Scaling, QString>>& scalings()
{
    static const std::vector<std::pair<Scaling, QString>> options{
        {Scaling::Fixed, tr("the same for any number")},
        {Scaling::PerPortion, tr("in proportion to the portions")},
        {Scaling::PerBatch, tr("the same for each batch")}};
    return options;
}

template <typename Thing>
void addRange(FieldList<Thing>& form, const DurationRange& now)
{
    const auto one = [&form, &now](const char* key, const QString& label,
                                   Minutes DurationRange::*which) {
        form.add(FieldList<Thing>::plain(key, label, FieldKind::Line, fieldText(now.*which)),
                 [which](Thing& thing, const FieldValue& value) -> Result<void> {
                     const auto read = readDuration(std::get<std::string>(value));
                     if (!read) {
                         return read.error();
                     }
                     DurationRange& range = thing.duration;
                     range.*which = *read;
                     // The other two follow, so that a range is typed in any order.
                     if (which == &DurationRange::least) {
                         range.likely = std::max(range.likely, *read);
                     }
                     if (which == &DurationRange::most) {
                         range.likely = std::min(range.likely, *read);
                     }
                     range.least = std::min(range.least, range.likely);
                     range.most = std::max(range.most, range.likely);
                     return {};
                 });
    };
    one("likely", tr("Takes, likely"), &DurationRange::likely);
    one("least", tr("at least"), &DurationRange::least);
    one("most", tr("at most"), &DurationRange::most);
}

/// "peel, cut" ⇄ ids of steps or lines: ticks over what there is.
template <typename Thing, typename IdType, typename Items, typename Name>
void addTicks(FieldList<Thing>& form, const char* key, const QString& label, const Thing& thing,
              std::vector<IdType> Thing::*member, const Items& items, const Name& name)
{
    std::vector<std::string> ticked;
    for (const IdType& id : thing.*member) {
        ticked.push_back(id.text());
    }
    Field field = FieldList<Thing>::plain(key, label, FieldKind::Checks, std::move(ticked));
    for (const auto& item : items) {
        field.options.push_back({item.id.text(), name(item)});
    }
    form.add(std::move(field), [member](Thing& next, const FieldValue& value) -> Result<void> {
        (next.*member).clear();
        for (const std::string& id : std::get<std::vector<std::string>>(value)) {
            (next.*member).push_back(IdType{id});
        }
        return {};
    });
}

constexpr const char* servingKey = "/serve";

std::string keyOf(const StepPoint& point)
{
    return point.step ? point.step->text() + (point.edge == StepEdge::Start ? "/start" : "/end")
                      : servingKey;
}

StepPoint pointOf(const std::string& key)
{
    if (key == servingKey) {
        return {};
    }
    const auto cut = key.rfind('/');
    return {StepId{key.substr(0, cut)},
            key.substr(cut) == "/start" ? StepEdge::Start : StepEdge::End};
}

template <typename Thing>
void addPoint(FieldList<Thing>& form, const char* key, const QString& label, const Thing& thing,
              StepPoint Thing::*member, const RecipePart& part, bool mayServe)
{
    Field field = FieldList<Thing>::plain(key, label, FieldKind::Choice, keyOf(thing.*member));
    for (const Step& step : part.steps) {
        field.options.push_back({step.id.text() + "/start", tr("start of “%1”").arg(nameOf(step))});
        field.options.push_back({step.id.text() + "/end", tr("end of “%1”").arg(nameOf(step))});
    }
    if (mayServe) {
        field.options.push_back({servingKey, tr("serving, or use")});
    }
    form.add(std::move(field), [member](Thing& next, const FieldValue& value) -> Result<void> {
        next.*member = pointOf(std::get<std::string>(value));
        return {};
    });
}

const std::vector<std::pair<Substance, QString>>& substances()
{
    static const std::vector<std::pair<Substance, QString>> options = [] {
        std::vector<std::pair<Substance, QString>> result;
        for (const Substance substance : allSubstances) {
            result.emplace_back(substance, text(suppertide::nameOf(substance)));
        }
        return result;
    }();
    return options;
}

void addContents(FieldList<IngredientLine>& form, const IngredientLine& line)
{
    form.add(FieldList<IngredientLine>::plain("known", tr("It is known what it contains"),
                                              FieldKind::Switch, line.contains.has_value()),
             [](IngredientLine& next, const FieldValue& value) -> Result<void> {
                 if (!std::get<bool>(value)) {
                     next.contains.reset();
                 } else if (!next.contains) {
                     next.contains.emplace();
                 }
                 return {};
             })
        .help(tr("of what guests may have to avoid: read the label"));
    if (!line.contains) {
        return;
    }
    std::vector<std::string> ticked;
    Field field = FieldList<IngredientLine>::plain("contains", tr("It contains"), FieldKind::Checks,
                                                   std::vector<std::string>());
    for (const auto& [substance, name] : substances()) {
        const std::string key(suppertide::nameOf(substance));
        field.options.push_back({key, name});
        if (std::ranges::find(*line.contains, substance) != line.contains->end()) {
            ticked.push_back(key);
        }
    }
    field.value = std::move(ticked);
    form.add(std::move(field), [](IngredientLine& next, const FieldValue& value) -> Result<void> {
        std::vector<Substance> contains;
        for (const std::string& key : std::get<std::vector<std::string>>(value)) {
            if (const auto substance = findSubstance(key)) {
                contains.push_back(*substance);
            }
        }
        next.contains = std::move(contains);
        return {};
    });
}

void addPreparation(FieldList<IngredientLine>& form, const LibraryState& library,
                    const IngredientLine& line)
{
    Field field = FieldList<IngredientLine>::plain(
        "preparation", tr("Made by a recipe of its own"), FieldKind::Choice,
        line.preparation ? line.preparation->text() : std::string());
    field.options.push_back({"", tr("no")});
    for (const auto& [id, recipe] : library.recipes) {
        if (recipe->kind == RecipeKind::Preparation) {
            field.options.push_back({id.text(), text(recipe->name)});
        }
    }
    form.add(std::move(field), [](IngredientLine& next, const FieldValue& value) -> Result<void> {
        const std::string& key = std::get<std::string>(value);
        next.preparation = key.empty() ? std::nullopt : std::optional(RecipeId{key});
        return {};
    });
}

void addCautions(FieldList<Step>& form)
{
    form.checks("cautions", tr("Cautions"), &Step::cautions,
                {{Caution::HotOil, tr("hot oil")},
                 {Caution::Caramel, tr("caramel")},
                 {Caution::OpenFlame, tr("open flame")},
                 {Caution::Steam, tr("steam")},
                 {Caution::SharpBlade, tr("sharp blade")},
                 {Caution::RawMeat, tr("raw meat or fish")},
                 {Caution::RawEgg, tr("raw egg")},
                 {Caution::Alcohol, tr("alcohol")},
                 {Caution::Poisonous, tr("a part that is poisonous")}});
}

void addOtherHeats(FieldList<Step>& form, const Step& step)
{
    Field field =
        FieldList<Step>::plain("other-heats", tr("Or else"), FieldKind::Line, otherHeatsText(step));
    field.fahrenheit = otherHeatsText(step, true);
    form.add(std::move(field),
             [](Step& next, const FieldValue& value) -> Result<void> {
                 auto heats = readOtherHeats(std::get<std::string>(value), next);
                 if (!heats) {
                     return heats.error();
                 }
                 next.otherHeats = std::move(*heats);
                 return {};
             })
        .help(tr("like 45 min at 180 °C, 75 min at 150 °C; the planner chooses"),
              tr("like 45 min at 355 °F, 75 min at 300 °F; the planner chooses"));
}

void addSkill(FieldList<Step>& form, const Step& step)
{
    form.add(FieldList<Step>::plain("skill", tr("Skill"), FieldKind::Line,
                                    step.skill.value_or(std::string())),
             [](Step& next, const FieldValue& value) -> Result<void> {
                 const std::string& skill = std::get<std::string>(value);
                 next.skill = skill.empty() ? std::nullopt : std::optional(skill);
                 return {};
             })
        .help(tr("that the cook must have; empty: none"));
}

void addTableFitness(FieldList<Step>& form, const Step& step)
{
    const char* now = !step.atTable ? "" : *step.atTable ? "yes" : "no";
    Field field = FieldList<Step>::plain("at-table", tr("While its cook sits at table"),
                                         FieldKind::Choice, std::string(now));
    field.options = {{"", tr("as usual")}, {"yes", tr("may be done")}, {"no", tr("not")}};
    form.add(std::move(field), [](Step& next, const FieldValue& value) -> Result<void> {
        const std::string& key = std::get<std::string>(value);
        next.atTable = key.empty() ? std::nullopt : std::optional(key == "yes");
        return {};
    });
}

/// A span has one use; the fields edit a list of one.
struct SpanUses : Span
{
    std::vector<Use> uses;
};

} // namespace

QString nameOf(const Step& step)
{
    return text(!step.text.empty() ? step.text : !step.verb.empty() ? step.verb : step.id.text());
}

namespace {

/// A field into which ingredient lines are pasted: what is read of them joins the part's lines, and
/// the field is empty again.
template <typename Thing>
void addPaste(FieldList<Thing>& form, RecipePart Thing::*part, std::set<LineId> taken)
{
    form.add(FieldList<Thing>::plain("paste", tr("Read ingredient lines"), FieldKind::Pasted,
                                     std::string()),
             [part, taken = std::move(taken)](Thing& thing,
                                              const FieldValue& value) -> Result<void> {
                 const std::string& pasted = std::get<std::string>(value);
                 const auto lines = linesFrom(pasted, systemOf(pasted), taken);
                 if (lines.empty()) {
                     return Failure{FailureKind::BadInput,
                                    "No ingredient could be read. Paste lines like “250 g flour, "
                                    "sifted”, one to a line.",
                                    {}};
                 }
                 auto& all = (thing.*part).lines;
                 all.insert(all.end(), lines.begin(), lines.end());
                 return {};
             })
        .help(tr("paste them here, one to a line, as they are written; below stands what is read "
                 "of them"));
}

std::set<LineId> idsOf(const std::vector<const RecipePart*>& parts)
{
    std::set<LineId> ids;
    for (const RecipePart* part : parts) {
        for (const IngredientLine& line : part->lines) {
            ids.insert(line.id);
        }
    }
    return ids;
}

} // namespace

FieldList<Recipe> recipeForm(const Recipe& recipe)
{
    FieldList<Recipe> form(recipe);
    form.line("name", tr("Name"), &Recipe::name)
        .choice("kind", tr("Kind"), &Recipe::kind,
                {{RecipeKind::Dish, tr("dish")},
                 {RecipeKind::Preparation, tr("preparation that other recipes use")}})
        .readable("portions", tr("For"), &Recipe::portions, readFraction)
        .help(tr("portions; all amounts and times stand for them"));
    if (recipe.kind == RecipeKind::Preparation) {
        form.readable("yields", tr("Which is"), &Recipe::yields, readAmount).help(tr("like 1.2 l"));
    }
    form.paragraph("note", tr("Note"), &Recipe::note);
    std::string words;
    for (const std::string& word : recipe.keywords) {
        words += (words.empty() ? "" : ", ") + word;
    }
    form.add(FieldList<Recipe>::plain("keywords", tr("Keywords"), FieldKind::Line, words),
             [](Recipe& next, const FieldValue& value) -> Result<void> {
                 next.keywords.clear();
                 const QStringList parts =
                     text(std::get<std::string>(value)).split(QLatin1Char(','));
                 for (const QString& part : parts) {
                     if (!part.trimmed().isEmpty()) {
                         next.keywords.push_back(part.trimmed().toStdString());
                     }
                 }
                 return {};
             })
        .help(tr("for the search, with commas between"));
    addPaste(form, &Recipe::common, idsOf(partsOf(recipe)));
    return form;
}

FieldList<IngredientLine> lineForm(const LibraryState& library, const IngredientLine& line)
{
    FieldList<IngredientLine> form(line);
    form.line("ingredient", tr("Ingredient"), &IngredientLine::ingredient)
        .help(ingredientFacts(library, line.ingredient, line.amount, line.part))
        .readable("amount", tr("Amount"), &IngredientLine::amount, readAmount)
        .amount(line.amount)
        .help(tr("like 400 g, 2½ tbsp, 1 US cup, 2–3 cloves, 3, a pinch, to taste"))
        .readable("also", tr("The same by another measure"), &IngredientLine::also, readAmount)
        .amount(line.also)
        .help(tr("like 400 g for 1 tin; may be left empty"));
    form.choice("part", tr("Which part of it"), &IngredientLine::part,
                {{IngredientPart::Whole, tr("the whole")},
                 {IngredientPart::Zest, tr("zest")},
                 {IngredientPart::Juice, tr("juice")},
                 {IngredientPart::Yolk, tr("yolk")},
                 {IngredientPart::White, tr("white")},
                 {IngredientPart::Leaves, tr("leaves")},
                 {IngredientPart::Stalks, tr("stalks")},
                 {IngredientPart::Bones, tr("bones")},
                 {IngredientPart::Meat, tr("meat")},
                 {IngredientPart::Peel, tr("peel")},
                 {IngredientPart::Seeds, tr("seeds")}});
    form.readable("scaling", tr("With more portions"), &IngredientLine::scaling, readLineScaling)
        .help(tr("in proportion, the same, per batch, per batch of 6, square root, power 3/4, "
                 "mould round 24 cm, mould 20 × 30 cm"))
        .line("note", tr("Note"), &IngredientLine::note);
    addContents(form, line);
    addPreparation(form, library, line);
    return form;
}

FieldList<Step> stepForm(const Step& step, const RecipePart& part, const QString& batches)
{
    FieldList<Step> form(step);
    form.line("text", tr("What is done"), &Step::text)
        .line("verb", tr("In one word"), &Step::verb)
        .line("detail", tr("Worth knowing"), &Step::detail);
    addRange(form, step.duration);
    form.choice("scaling", tr("With more portions"), &Step::scaling, scalings())
        .readable("batch", tr("Portions at once, at most"), &Step::portionsPerBatch, readFraction)
        .help(tr("whatever the kitchen has; empty: as much as fits. %1").arg(batches).trimmed());
    addAttention(form, step.attention, &Step::attention);
    std::vector<Step> others = part.steps;
    std::erase_if(others, [&step](const Step& other) { return other.id == step.id; });
    addTicks(form, "after", tr("After"), step, &Step::after, others,
             [](const Step& other) { return nameOf(other); });
    UseFields<Step>(form, step, &Step::uses).add();
    if (firstUse<OvenUse>(step.uses) != nullptr) {
        form.duration("oven-in", tr("Putting in takes"), &Step::ovenIn)
            .duration("oven-out", tr("Taking out takes"), &Step::ovenOut)
            .duration("turn", tr("Turned after"), &Step::turnAfter);
        addOtherHeats(form, step);
    }
    addTicks(form, "lines", tr("Takes"), step, &Step::lines, part.lines,
             [](const IngredientLine& line) { return text(line.ingredient); });
    form.whole("cooks", tr("Cooks"), &Step::cooks, 1, 20);
    addSkill(form, step);
    addTableFitness(form, step);
    form.toggle("unwatched", tr("Its heat may run with nobody awake at home"),
                &Step::mayRunUnwatched);
    addCautions(form);
    return form;
}

FieldList<Wait> waitForm(const Wait& wait, const RecipePart& part)
{
    FieldList<Wait> form(wait);
    form.line("text", tr("What happens"), &Wait::text).help(tr("like chills, rests, keeps"));
    addPoint(form, "from", tr("From"), wait, &Wait::from, part, false);
    addPoint(form, "to", tr("To"), wait, &Wait::to, part, true);
    form.duration("least", tr("At least"), &Wait::least)
        .duration("most", tr("At most"), &Wait::most)
        .help(tr("empty: as long as you like"));
    addDegreesOrNone(form, "chills-to", tr("Until its middle is at"), &Wait::chillsTo,
                     wait.chillsTo, {-30, 60})
        .help(tr("°C; then the least is computed, where it can be"),
              tr("°F; then the least is computed, where it can be"));
    if (wait.chillsTo) {
        form.duration("sets-for", tr("Then it sets for"), &Wait::setsFor);
    }
    return form;
}

FieldList<KeepOption> keepForm(const KeepOption& keep)
{
    FieldList<KeepOption> form(keep);
    form.choice("place", tr("Place"), &KeepOption::place,
                {{KeepPlace::Nowhere, tr("nowhere special")},
                 {KeepPlace::Counter, tr("counter")},
                 {KeepPlace::Fridge, tr("fridge")},
                 {KeepPlace::Freezer, tr("freezer")},
                 {KeepPlace::Warm, tr("warm")}})
        .duration("most", tr("There at most"), &KeepOption::most);
    if (keep.place == KeepPlace::Fridge || keep.place == KeepPlace::Freezer) {
        form.readable("litres", tr("Takes up"), &KeepOption::litres, readLitres)
            .help(tr("litres, for the recipe's portions"));
        form.choice("scaling", tr("With more portions"), &KeepOption::scaling, scalings());
    }
    if (keep.place == KeepPlace::Warm) {
        form.choice("warm", tr("Kept warm"), &KeepOption::warmBy,
                    {{WarmBy::Oven, tr("in an oven")},
                     {WarmBy::Burner, tr("on a burner")},
                     {WarmBy::Flask, tr("in a flask")}});
    }
    form.whole("loss", tr("Loses quality by, an hour"), &KeepOption::lossPerHour, 0, 1000);
    return form;
}

FieldList<Span> spanForm(const Span& span, const RecipePart& part)
{
    FieldList<Span> form(span);
    form.line("text", tr("What is held"), &Span::text).help(tr("like pan held from sear to sauce"));
    addPoint(form, "from", tr("From"), span, &Span::from, part, false);
    addPoint(form, "to", tr("To"), span, &Span::to, part, true);
    SpanUses uses;
    static_cast<Span&>(uses) = span;
    uses.uses = {span.use};
    FieldList<SpanUses> inner(uses);
    UseFields<SpanUses>(inner, uses, &SpanUses::uses).add();
    for (const Field& field : inner.fields()) {
        form.add(
            field, [inner, key = field.key](Span& next, const FieldValue& value) -> Result<void> {
                const auto changed = inner.with(key, value);
                if (!changed) {
                    return changed.error();
                }
                // What was added last is what is held now.
                if (changed->uses.empty()) {
                    return Failure{FailureKind::BadInput,
                                   "Something is held for the whole span: choose another first.",
                                   {}};
                }
                next.use = changed->uses.back();
                return {};
            });
    }
    return form;
}

FieldList<MethodChoice> choiceForm(const MethodChoice& choice)
{
    FieldList<MethodChoice> form(choice);
    form.line("name", tr("What is chosen"), &MethodChoice::name)
        .help(tr("like how the roots are cooked"));
    return form;
}

FieldList<Method> methodForm(const Method& method, const Recipe& recipe)
{
    FieldList<Method> form(method);
    form.line("name", tr("Name"), &Method::name)
        .whole("cost", tr("Liked less by"), &Method::cost, 0, 10'000)
        .help(tr("points; 0: as good as any"));
    addPaste(form, &Method::part, idsOf(partsOf(recipe)));
    return form;
}

FieldList<Variant> variantForm(const Variant& variant, const RecipePart& common)
{
    FieldList<Variant> form(variant);
    form.line("name", tr("Name"), &Variant::name).paragraph("note", tr("Note"), &Variant::note);
    addTicks(form, "drop-lines", tr("Leaves out of the ingredients"), variant, &Variant::dropLines,
             common.lines, [](const IngredientLine& line) { return text(line.ingredient); });
    addTicks(form, "drop-steps", tr("Leaves out of the steps"), variant, &Variant::dropSteps,
             common.steps, [](const Step& step) { return nameOf(step); });
    addPaste(form, &Variant::adds, idsOf({&common, &variant.adds}));
    return form;
}

} // namespace suppertide::ui::recipe
