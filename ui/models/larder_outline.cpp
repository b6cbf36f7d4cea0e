#include "ui/models/larder_outline.h"

#include <array>
#include <charconv>

#include "core/food/ingredient_amount.h"
#include "core/larder/ingredient_book.h"
#include "ui/models/larder_forms.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

namespace {

constexpr const char* addKey = "add";
constexpr const char* removeKey = "remove";
constexpr const char* topRow = "larder";

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

QString translated(const char* words)
{
    return QCoreApplication::translate("LarderOutline", words);
}

Failure gone()
{
    return {FailureKind::NotFound,
            "This is not there any more; it was removed or undone. Choose another row.", ""};
}

struct Section
{
    const char* kind;
    const char* title;
    const char* fresh;  // name of a new one
    const char* faults; // how faultsOf begins its places
};

constexpr std::array sections{
    Section{"stock", QT_TRANSLATE_NOOP("LarderOutline", "At home"),
            QT_TRANSLATE_NOOP("LarderOutline", "flour"), "at home, "},
    Section{"pack", QT_TRANSLATE_NOOP("LarderOutline", "Packs and prices"),
            QT_TRANSLATE_NOOP("LarderOutline", "flour"), "pack of "},
    Section{"own", QT_TRANSLATE_NOOP("LarderOutline", "My ingredients"),
            QT_TRANSLATE_NOOP("LarderOutline", "new ingredient"), "ingredient "},
    Section{"label", QT_TRANSLATE_NOOP("LarderOutline", "Labels read"),
            QT_TRANSLATE_NOOP("LarderOutline", "stock cube"), "label of "},
};

const Section* sectionOf(const RowPath& path)
{
    for (const Section& section : sections) {
        if (path.kind() == section.kind) {
            return &section;
        }
    }
    return nullptr;
}

/// Calls `visitor(list, form)` with the list of a kind of row.
template <typename LarderType, typename Visitor>
void visitList(LarderType& larder, const std::string& kind, const Visitor& visitor)
{
    if (kind == "stock") {
        visitor(larder.stock, larder::stockForm);
    } else if (kind == "pack") {
        visitor(larder.packs, [currency = larder.currency](const Pack& pack) {
            return larder::packForm(pack, currency);
        });
    } else if (kind == "own") {
        visitor(larder.ingredients, larder::ownForm);
    } else if (kind == "label") {
        visitor(larder.labels, larder::labelForm);
    }
}

std::string& nameOf(StockItem& item)
{
    return item.ingredient;
}
std::string& nameOf(Pack& pack)
{
    return pack.ingredient;
}
std::string& nameOf(OwnIngredient& own)
{
    return own.name;
}
std::string& nameOf(ConfirmedLabel& label)
{
    return label.ingredient;
}

template <typename Thing>
std::string nameOf(const Thing& thing)
{
    Thing copy = thing;
    return nameOf(copy);
}

QString detailOf(const StockItem& item, const Larder& /*larder*/)
{
    if (item.isAlwaysThere) {
        return translated("always there");
    }
    const QString amount = text(toText(item.amount));
    return item.useBy ? translated("%1, by %2").arg(amount, text(toIso(*item.useBy))) : amount;
}

/// What is not a shop's own word, and so is said in the reader's measures.
std::optional<Amount> amountOf(const StockItem& item)
{
    return item.amount;
}

template <typename Thing>
std::optional<Amount> amountOf(const Thing& /*thing*/)
{
    return std::nullopt;
}

QString detailOf(const Pack& pack, const Larder& larder)
{
    const QString amount = text(toText(pack.amount));
    return pack.price
               ? translated("%1, %2").arg(amount, text(priceText(*pack.price, larder.currency)))
               : amount;
}

QString detailOf(const OwnIngredient& own, const Larder& /*larder*/)
{
    return own.section ? text(*own.section) : QString();
}

QString detailOf(const ConfirmedLabel& label, const Larder& /*larder*/)
{
    return label.read ? text(toIso(*label.read)) : QString();
}

/// Things have no ids: a row names its place.
std::optional<std::size_t> placeOf(const RowPath& path)
{
    const std::string id = path.id();
    std::size_t place = 0;
    const auto [end, error] = std::from_chars(id.data(), id.data() + id.size(), place);
    return error == std::errc{} && !id.empty() ? std::optional{place} : std::nullopt;
}

QString faultOf(const std::vector<LarderFault>& faults, const std::string& place)
{
    for (const LarderFault& fault : faults) {
        if (fault.place == place) {
            return text(fault.sentence);
        }
    }
    return {};
}

template <typename Thing>
Thing freshThing(const Section& section)
{
    Thing thing;
    nameOf(thing) = translated(section.fresh).toStdString();
    if constexpr (requires { thing.amount; }) {
        thing.amount = {Rational{500}, Unit::Gram};
    }
    return thing;
}

Result<Edit> add(const LibraryState& library, const Section& section)
{
    Larder next = larderOf(library);
    std::size_t place = 0;
    visitList(next, section.kind, [&](auto& list, const auto& /*form*/) {
        using Thing = typename std::decay_t<decltype(list)>::value_type;
        place = list.size();
        list.push_back(freshThing<Thing>(section));
    });
    return Edit{withLarder(library, std::move(next)),
                LarderOutline::tr("Add to “%1”").arg(translated(section.title)),
                RowPath().with(section.kind, std::to_string(place)).text()};
}

Result<Edit> remove(const LibraryState& library, const Section& section, std::size_t place)
{
    Larder next = larderOf(library);
    std::optional<QString> name;
    visitList(next, section.kind, [&](auto& list, const auto& /*form*/) {
        if (place < list.size()) {
            name = text(nameOf(list[place]));
            list.erase(list.begin() + static_cast<std::ptrdiff_t>(place));
        }
    });
    if (!name) {
        return gone();
    }
    return Edit{withLarder(library, std::move(next)), LarderOutline::tr("Delete %1").arg(*name),
                section.kind};
}

/// What speaks against a volume of what nobody measures by volume, like 3 l of eggs: it stays, but
/// nothing can be counted off for it. Empty: nothing does.
QString notByVolume(const Larder& larder, const std::string& ingredient, const Amount& amount)
{
    if (dimensionOf(amount.unit) != Dimension::Volume) {
        return {};
    }
    const IngredientBook book = ingredientBook(larder);
    const Ingredient* known = book.find(ingredient);
    const auto mass = known == nullptr ? Result<Grams>(Grams{}) : massOf(amount, *known);
    return mass ? QString() : text(mass.error().forCook);
}

} // namespace

LibraryState withLarder(const LibraryState& library, Larder larder)
{
    LibraryState next = library;
    next.larder = larder.empty() ? nullptr : std::make_shared<const Larder>(std::move(larder));
    return next;
}

std::vector<OutlineRow> LarderOutline::rows(const LibraryState& library) const
{
    const Larder& larder = larderOf(library);
    const std::vector<LarderFault> faults = faultsOf(larder);
    std::vector<OutlineRow> rows;
    OutlineRow top;
    top.id = topRow;
    top.title = tr("Prices and order of the shop");
    top.detail = text(larder.currency);
    top.fault = faultOf(faults, "currency");
    rows.push_back(std::move(top));
    for (const Section& section : sections) {
        OutlineRow heading;
        heading.id = section.kind;
        heading.kind = RowKind::Heading;
        heading.title = translated(section.title);
        rows.push_back(std::move(heading));
        visitList(larder, section.kind, [&](const auto& list, const auto& /*form*/) {
            for (std::size_t i = 0; i < list.size(); ++i) {
                const std::string name = nameOf(list[i]);
                OutlineRow row;
                row.id = RowPath().with(section.kind, std::to_string(i)).text();
                row.depth = 1;
                row.title = name.empty() ? tr("without a name") : text(name);
                row.detail = detailOf(list[i], larder);
                row.amount = amountOf(list[i]);
                row.fault = faultOf(faults, section.faults + ("“" + name + "”"));
                rows.push_back(std::move(row));
            }
        });
    }
    return rows;
}

std::vector<Field> LarderOutline::fields(const LibraryState& library, const std::string& row) const
{
    const Larder& larder = larderOf(library);
    if (row == topRow) {
        return larder::larderForm(larder).fields();
    }
    const RowPath path(row);
    std::vector<Field> result;
    visitList(larder, path.kind(), [&](const auto& list, const auto& form) {
        if (const auto place = placeOf(path); place && *place < list.size()) {
            result = form(list[*place]).fields();
            const auto amount = amountOf(list[*place]);
            const auto field = std::ranges::find(result, "amount", &Field::key);
            if (amount && field != result.end()) {
                field->help = notByVolume(larder, nameOf(list[*place]), *amount);
            }
        }
    });
    return result;
}

std::vector<RowCommand> LarderOutline::commands(const LibraryState& /*library*/,
                                                const std::string& row) const
{
    const RowPath path(row);
    std::vector<RowCommand> result;
    if (sectionOf(path) != nullptr) {
        result.push_back({addKey, tr("Add")});
        if (placeOf(path)) {
            result.push_back({removeKey, tr("Delete")});
        }
    }
    return result;
}

Result<Edit> LarderOutline::set(const LibraryState& library, const std::string& row,
                                const std::string& field, const FieldValue& value) const
{
    Larder next = larderOf(library);
    if (row == topRow) {
        auto changed = larder::larderForm(next).with(field, value);
        if (!changed) {
            return changed.error();
        }
        return Edit{withLarder(library, std::move(*changed)), tr("Change the larder"), {}};
    }
    const RowPath path(row);
    Result<Edit> result = gone();
    visitList(next, path.kind(), [&](auto& list, const auto& form) {
        const auto place = placeOf(path);
        if (!place || *place >= list.size()) {
            return;
        }
        const auto formOfThing = form(list[*place]);
        auto changed = formOfThing.with(field, value);
        if (!changed) {
            result = changed.error();
            return;
        }
        list[*place] = std::move(*changed);
        result = Edit{withLarder(library, next),
                      tr("Change %1: %2")
                          .arg(text(nameOf(list[*place])), formOfThing.labelOf(field).toLower()),
                      {}};
    });
    return result;
}

Result<Edit> LarderOutline::run(const LibraryState& library, const std::string& row,
                                const std::string& command) const
{
    const RowPath path(row);
    const Section* section = sectionOf(path);
    if (section == nullptr) {
        return gone();
    }
    if (command == addKey) {
        return add(library, *section);
    }
    const auto place = placeOf(path);
    return command == removeKey && place ? remove(library, *section, *place) : gone();
}

} // namespace suppertide::ui
