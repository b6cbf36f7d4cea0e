#include "core/exchange/value_writing.h"

#include "core/exchange/decimal.h"
#include "core/exchange/quantity_text.h"

namespace suppertide {

namespace {

/// A count of tenths as a number with at most one decimal.
JsonValue tenths(std::int64_t count)
{
    return count % 10 == 0 ? JsonValue{count / 10} : JsonValue{JsonDecimal{decimalText(count, 1)}};
}

} // namespace

JsonValue toJson(bool value)
{
    return JsonValue{value};
}

JsonValue toJson(int value)
{
    return JsonValue{std::int64_t{value}};
}

JsonValue toJson(std::int64_t value)
{
    return JsonValue{value};
}

JsonValue toJson(const std::string& text)
{
    return JsonValue{text};
}

JsonValue toJson(std::string_view text)
{
    return JsonValue{std::string(text)};
}

JsonValue toJson(Minutes minutes)
{
    return toJson(std::int64_t{minutes.count()});
}

JsonValue toJson(const DurationRange& range)
{
    if (range.least == range.likely && range.likely == range.most) {
        return toJson(range.likely);
    }
    return JsonValue{
        JsonValue::List{toJson(range.least), toJson(range.likely), toJson(range.most)}};
}

JsonValue toJson(const Amount& amount)
{
    return toJson(amountText(amount));
}

JsonValue toJson(const Portions& portions)
{
    return portions.isWhole() ? toJson(portions.numerator()) : toJson(fractionText(portions));
}

JsonValue toJson(Celsius temperature)
{
    return tenths(temperature.tenths());
}

JsonValue toJson(Length length)
{
    return tenths(length.smallest());
}

JsonValue toJson(Litres volume)
{
    return tenths(volume.smallest());
}

JsonValue toJson(Power power)
{
    return toJson(power.smallest());
}

JsonValue toJson(Attention attention)
{
    const auto name = nameIn(attentionNames, attention);
    return name ? toJson(*name) : toJson(attention.percent());
}

JsonValue toJson(Grams mass)
{
    return toJson(mass.smallest() / 1000);
}

JsonValue toJson(FoodClass food)
{
    return toJson(nameOf(food));
}

JsonValue toJson(RiskFact fact)
{
    return toJson(nameOf(fact));
}

JsonValue toJson(RiskGroup group)
{
    return toJson(nameOf(group));
}

JsonValue toJson(Substance substance)
{
    return toJson(nameOf(substance));
}

JsonValue toJson(Diet diet)
{
    return toJson(nameOf(diet));
}

JsonValue toJson(const CivilDate& date)
{
    return toJson(toIso(date));
}

JsonValue toJson(const CivilTime& time)
{
    return toJson(toIso(time));
}

JsonValue toJson(const ClockTime& clock)
{
    return toJson(toIso(clock));
}

JsonValue toJson(Instant instant)
{
    return toJson(toIso(instant));
}

} // namespace suppertide
