// Comparing: menus compared as the window has it: begun by the user, results on the page as they
// come, one taken by a click and undone like any change. What was compared is said to be out of
// date once the evening is another.
#pragma once

#include <QElapsedTimer>
#include <QObject>

#include <memory>

#include "ui/document/document.h"
#include "ui/models/menu_comparison.h"
#include "ui/worker/compare_job.h"

namespace suppertide::ui {

class MenusPage;

class Comparing : public QObject
{
    Q_OBJECT

public:
    /// All must outlive this.
    Comparing(Document& document, MenusPage& page, QObject* parent);

public Q_SLOTS:
    void begin();
    void stop();

Q_SIGNALS:
    void said(const QString& words);

private:
    void begun(const std::shared_ptr<const menus::MenuTable>& table,
               const std::vector<menus::ComparedMenu>& menus);
    void looked(const std::vector<menus::ComparedMenu>& menus, int done, int toDo);
    void finish(bool isStopped);
    void take(int menu);
    void checkCurrent();
    void showNote();
    void showLooked();
    [[nodiscard]] std::optional<std::size_t> menuNow() const;

    Document& document_;
    MenusPage& page_;
    CompareJob* job_;
    PlanInput input_; // of the run
    std::unique_ptr<MenuComparison> comparison_;
    QElapsedTimer sinceShown_;
    qint64 pause_ = 0; // ms to the next showing of what was looked at
    bool wasStopped_ = false;
    bool isStale_ = false;
};

} // namespace suppertide::ui
