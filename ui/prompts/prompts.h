// Prompts: every question to the user and every answer that needs a dialog goes through here, so
// that tests can answer instead. WidgetPrompts asks with dialogs.
#pragma once

#include <QString>
#include <QStringList>

#include <optional>

class QWidget;

namespace suppertide::ui {

struct FileQuestion
{
    QString title;
    QString filter;    // "Suppertide files (*.json)"
    QString suggested; // file name
};

class Prompts
{
public:
    Prompts() = default;
    Prompts(const Prompts&) = delete;
    Prompts& operator=(const Prompts&) = delete;
    Prompts(Prompts&&) = delete;
    Prompts& operator=(Prompts&&) = delete;
    virtual ~Prompts() = default;

    virtual void tell(const QString& title, const QString& text) = 0;
    /// `action` is what the button that agrees says ("Delete").
    [[nodiscard]] virtual bool confirm(const QString& title, const QString& text,
                                       const QString& action) = 0;
    [[nodiscard]] virtual std::optional<QString> askText(const QString& title, const QString& label,
                                                         const QString& now) = 0;
    /// The index of the one taken.
    [[nodiscard]] virtual std::optional<int> choose(const QString& title, const QString& label,
                                                    const QStringList& options, int now) = 0;
    [[nodiscard]] virtual std::optional<QString> openFile(const FileQuestion& question) = 0;
    [[nodiscard]] virtual std::optional<QString> saveFile(const FileQuestion& question) = 0;
};

class WidgetPrompts final : public Prompts
{
public:
    /// Dialogs belong to `window`, which must outlive this.
    explicit WidgetPrompts(QWidget& window) : window_(window) {}

    void tell(const QString& title, const QString& text) override;
    [[nodiscard]] bool confirm(const QString& title, const QString& text,
                               const QString& action) override;
    [[nodiscard]] std::optional<QString> askText(const QString& title, const QString& label,
                                                 const QString& now) override;
    [[nodiscard]] std::optional<int> choose(const QString& title, const QString& label,
                                            const QStringList& options, int now) override;
    [[nodiscard]] std::optional<QString> openFile(const FileQuestion& question) override;
    [[nodiscard]] std::optional<QString> saveFile(const FileQuestion& question) override;

private:
    QWidget& window_;
};

} // namespace suppertide::ui
