#include "ui/models/tin_rows.h"

#include <QCoreApplication>

#include "core/plan/other_tins.h"
#include "core/wording/wording.h"
#include "ui/document/state.h"
#include "ui/models/mould_fields.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("RecipeOutline", text);
}

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

/// Steps of one way may have the same words as those of another: numbers tell them apart.
RowPath numbered(const RowPath& below, const char* kind, std::size_t number)
{
    return below.with(kind, std::to_string(number));
}

class TinRows
{
public:
    void add(const OtherTin& tin)
    {
        const RowPath path = RowPath().with("tin", tin.vessel.text());
        addRow(path, 1, text(tin.name), text(nameOf(tin.mould)));
        const RowPath deep = path.with("tin-filled", "deep");
        addRow(deep, 2, menu::filledAsDeep());
        addRow(deep.with("tin-line", "serves"), 3, tr("one of them serves"), number(tin.serves));
        for (std::size_t i = 0; i < tin.asDeep.size(); ++i) {
            addRow(numbered(deep, "tin-line", i), 3, text(tin.asDeep[i].ingredient),
                   text(toText(tin.asDeep[i].amount)))
                .amount = tin.asDeep[i].amount;
        }
        if (tin.sameAmounts.empty()) {
            return; // nothing is baked
        }
        const RowPath same = path.with("tin-filled", "same");
        addRow(same, 2, menu::filledWithTheSame());
        for (std::size_t i = 0; i < tin.sameAmounts.size(); ++i) {
            const DurationRange& range = tin.sameAmounts[i].duration;
            addRow(numbered(same, "tin-step", i), 3, text(tin.sameAmounts[i].step),
                   tr("%1 (%2 to %3)")
                       .arg(text(durationText(range.likely)), text(durationText(range.least)),
                            text(durationText(range.most))));
        }
    }

    [[nodiscard]] std::vector<OutlineRow> rows() && { return std::move(rows_); }
    OutlineRow& addRow(const RowPath& path, int depth, const QString& title,
                       const QString& detail = {})
    {
        OutlineRow& row = rows_.emplace_back();
        row.id = path.text();
        row.depth = depth;
        row.title = title;
        row.detail = detail;
        return row;
    }

private:
    /// Down to a quarter: no more than it serves.
    static QString number(const Portions& portions)
    {
        const Rational quarters = portions * Rational{4};
        const Rational down{quarters.numerator() / quarters.denominator(), 4};
        return text(toText(Amount{down > Rational{0} ? down : portions, Unit::Piece}));
    }

    std::vector<OutlineRow> rows_;
};

} // namespace

std::vector<OutlineRow> tinRows(const LibraryState& library, const Recipe& recipe)
{
    const KitchenPtr kitchen = openKitchen(library);
    const auto own = mouldOf(recipe);
    if (!kitchen || !own) {
        return {};
    }
    const auto tins = otherTins(recipe, *kitchen);
    if (tins.empty()) {
        return {};
    }
    TinRows rows;
    OutlineRow& heading =
        rows.addRow({}, 0, tr("In another tin"), tr("instead of %1").arg(text(nameOf(*own))));
    heading.kind = RowKind::Heading;
    heading.id = "tins";
    for (const OtherTin& tin : tins) {
        rows.add(tin);
    }
    return std::move(rows).rows();
}

bool isTinKind(const std::string& kind)
{
    return kind == "tins" || kind == "tin" || kind == "tin-filled" || kind == "tin-line" ||
           kind == "tin-step";
}

} // namespace suppertide::ui
