#include "ui/models/attention_field.h"

#include <QCoreApplication>

namespace suppertide::ui {

namespace {

constexpr std::array grades{undivided, handsOn, keepAnEye, unattended};

QString tr(const char* text)
{
    return QCoreApplication::translate("Attention", text);
}

} // namespace

QString attentionLabel()
{
    return tr("Attention");
}

QString attentionName(Attention attention)
{
    if (attention == undivided) {
        return tr("undivided");
    }
    if (attention == handsOn) {
        return tr("hands-on");
    }
    if (attention == keepAnEye) {
        return tr("keep an eye");
    }
    if (attention == unattended) {
        return tr("unattended");
    }
    return tr("%1 %").arg(attention.percent());
}

std::vector<std::pair<Attention, QString>> attentionOptions(Attention now)
{
    std::vector<std::pair<Attention, QString>> options;
    for (const Attention grade : grades) {
        options.emplace_back(grade, attentionName(grade));
    }
    if (std::find(grades.begin(), grades.end(), now) == grades.end()) {
        options.emplace_back(now, attentionName(now));
    }
    for (int percent = 20; percent < 100; percent += 10) {
        const Attention more = Attention::percent(percent);
        if (more != now && more != handsOn) {
            options.emplace_back(more, attentionName(more));
        }
    }
    return options;
}

} // namespace suppertide::ui
