#include "core/exchange/line_scaling_json.h"

#include <fmt/format.h>

#include "core/exchange/value_reading.h"
#include "core/exchange/value_writing.h"

namespace suppertide {

namespace {

Rational readExponent(const JsonCursor& at)
{
    const std::string text = at.anyText();
    const auto value = parseFraction(text);
    if (!value || *value > Rational{1}) {
        at.fault(fmt::format("“{}” is not a power from 0 to 1. Write it like \"1/2\" or \"0.75\"",
                             text));
        return ByPower{}.exponent;
    }
    return *value;
}

LineScaling readRule(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) -> LineScaling {
        if (const auto power = fields.optional("power")) {
            return ByPower{readExponent(*power)};
        }
        if (const auto mould = fields.optional("mould")) {
            return ByMould{readMould(*mould)};
        }
        const JsonCursor batch = fields.required("batch_of");
        const Portions portions = readPortions(batch);
        if (portions <= Rational{0}) {
            batch.fault("A batch is for more than 0 portions");
            return EachBatch{};
        }
        return EachBatch{portions};
    });
}

JsonValue only(std::string_view key, JsonValue value)
{
    JsonObject json;
    json.put(key, std::move(value));
    return json.take();
}

struct MouldToJson
{
    JsonValue operator()(const RoundMould& mould) const
    {
        return only("round", toJson(mould.across));
    }
    JsonValue operator()(const RectangularMould& mould) const
    {
        JsonObject json;
        json.put("length", toJson(mould.length));
        json.put("width", toJson(mould.width));
        return json.take();
    }
};

struct RuleToJson
{
    JsonValue operator()(const InProportion& /*rule*/) const { return toJson(Scaling::PerPortion); }
    JsonValue operator()(const SameForAny& /*rule*/) const { return toJson(Scaling::Fixed); }
    JsonValue operator()(const EachBatch& rule) const
    {
        return rule.portions ? only("batch_of", toJson(*rule.portions)) : toJson(Scaling::PerBatch);
    }
    JsonValue operator()(const ByPower& rule) const
    {
        return only("power", toJson(fractionText(rule.exponent)));
    }
    JsonValue operator()(const ByMould& rule) const { return only("mould", toJson(rule.mould)); }
};

} // namespace

Mould readMould(const JsonCursor& at)
{
    const Mould mould = readObject(at, [](JsonFields& fields) -> Mould {
        if (const auto across = fields.optional("round")) {
            return RoundMould{readLength(*across)};
        }
        RectangularMould sides;
        sides.length = readLength(fields.required("length"));
        sides.width = readLength(fields.required("width"));
        return sides;
    });
    if (!isPossible(mould)) {
        at.fault("A mould has sides of 1 to 150 cm. Write it like {\"round\": 24} or "
                 "{\"length\": 20, \"width\": 30}");
        return RoundMould{centimetres(24)};
    }
    return mould;
}

JsonValue toJson(const Mould& mould)
{
    return std::visit(MouldToJson{}, mould);
}

LineScaling readLineScaling(const JsonCursor& at)
{
    if (at.isObject()) {
        return readRule(at);
    }
    switch (readEnum<Scaling>(at)) {
    case Scaling::Fixed:
        return SameForAny{};
    case Scaling::PerPortion:
        return InProportion{};
    case Scaling::PerBatch:
        return EachBatch{};
    }
    return InProportion{};
}

JsonValue toJson(const LineScaling& scaling)
{
    return std::visit(RuleToJson{}, scaling);
}

} // namespace suppertide
