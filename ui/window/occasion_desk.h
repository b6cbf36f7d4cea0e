// OccasionDesk: what the Occasion menu does: new, open, copy, delete, another day, import, export.
// Asks through Prompts, answers through the document.
#pragma once

#include <QObject>
#include <QString>

#include "core/base/clock.h"
#include "ui/document/document.h"
#include "ui/prompts/prompts.h"

class QMenu;

namespace suppertide::ui {

class OccasionDesk : public QObject
{
    Q_OBJECT

public:
    /// All must outlive this.
    OccasionDesk(Document& document, Prompts& prompts, const Clock& clock, QObject* parent);

    /// An entry for each occasion, the open one ticked.
    void fillOpenMenu(QMenu& menu);

public Q_SLOTS:
    void begin();
    void copy();
    void remove();
    void moveToDay();
    void import();
    void exportOccasion();
    void exportLibrary();

Q_SIGNALS:
    void said(const QString& words);

private:
    /// The next Saturday, as that is when most suppers are given.
    [[nodiscard]] CivilDate nextSaturday() const;
    void write(const QString& title, const QString& name, bool isWholeLibrary);

    Document& document_;
    Prompts& prompts_;
    const Clock& clock_;
};

} // namespace suppertide::ui
