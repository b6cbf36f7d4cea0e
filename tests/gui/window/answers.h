// Answers: stands in for the dialogs; says what a test tells it to say, and keeps what it was told.
#pragma once

#include "ui/prompts/prompts.h"

namespace suppertide::ui::test {

class Answers final : public Prompts
{
public:
    void tell(const QString& title, const QString& what) override
    {
        told.push_back(title + QStringLiteral(": ") + what);
    }
    [[nodiscard]] bool confirm(const QString& /*title*/, const QString& /*text*/,
                               const QString& /*action*/) override
    {
        return agrees;
    }
    [[nodiscard]] std::optional<QString> askText(const QString& /*title*/, const QString& /*label*/,
                                                 const QString& /*now*/) override
    {
        return text;
    }
    [[nodiscard]] std::optional<int> choose(const QString& /*title*/, const QString& /*label*/,
                                            const QStringList& /*options*/, int /*now*/) override
    {
        return choice;
    }
    [[nodiscard]] std::optional<QString> openFile(const FileQuestion& /*question*/) override
    {
        return file;
    }
    [[nodiscard]] std::optional<QString> saveFile(const FileQuestion& /*question*/) override
    {
        return file;
    }

    QStringList told;
    bool agrees = true;
    std::optional<QString> text;
    std::optional<int> choice;
    std::optional<QString> file;
};

} // namespace suppertide::ui::test
