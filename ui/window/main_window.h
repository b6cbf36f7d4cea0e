// MainWindow: puts repertoire, timeline, clashes and pages together and connects them. One window,
// one occasion. What happens is decided by the presenters; what is kept, by the document.
#pragma once

#include <QMainWindow>

#include <memory>

#include "core/base/clock.h"
#include "core/plan/plan.h"
#include "ui/document/document.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/application_theme.h"
#include "ui/timeline/hit_test.h"
#include "ui/timeline/variant_mime.h"

namespace suppertide {
struct ReadingStyle;
}

namespace suppertide::ui {

enum class StripState;

class MainWindow : public QMainWindow
{
    Q_OBJECT

public:
    /// All must outlive this. Without `prompts` it asks with dialogs of its own.
    MainWindow(Document& document, ApplicationTheme& theme, const Clock& clock,
               Prompts* prompts = nullptr);
    ~MainWindow() override;

protected:
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Parts;

    void connectDocument();
    void connectTimeline();
    void connectPlanning();
    void connectPanels();
    void connectActions();
    void connectViewActions();
    void connectReading();
    void connectHelp();
    void showHead();
    void showClashes(const PlanPtr& plan);
    void connectPreferences();
    void connectLetGo();
    void showPlan(const PlanPtr& preview = nullptr);
    [[nodiscard]] QString planSentence(StripState state) const;
    void showSaveState();
    void say(const QString& words);
    void goToClash(int number);
    void putIntoCourse(const DraggedVariant& variant);
    void openRecipe(const QString& recipe);
    void showTemperatures(const std::string& subject);
    void newRecipe();
    void popUpForTarget(const Target& target, const QPoint& global);
    void askWhy(const QString& taskId);
    void popUpForRecipe(const DraggedVariant& variant, const QPoint& global);
    void copyRecipe(const QString& recipe);
    void deleteRecipe(const QString& recipe);
    void showOnly(QAction* shown);
    void giveWay();
    void read(const ReadingStyle& style);
    void makeRoomForPages(bool isOpen);
    void makeRoomForWays();
    void restoreSizes();
    void keepSizes();

    Document& document_;
    ApplicationTheme& theme_;
    const Clock& clock_;
    std::unique_ptr<Prompts> ownPrompts_;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide::ui
