// Draws the example timeline to PNG files, to be looked at: draw_timeline FOLDER. No test: what is
// right here is for the eye to say.
#include <QApplication>
#include <QDir>
#include <QFocusEvent>
#include <QPixmap>

#include <fmt/core.h>

#include <cstdio>

#include "tests/support/timeline/example_scene.h"
#include "ui/theme/application_theme.h"
#include "ui/timeline/timeline_view.h"

using namespace suppertide;     // NOLINT(google-build-using-namespace): a program, not a header
using namespace suppertide::ui; // NOLINT(google-build-using-namespace)

namespace {

enum class Show
{
    Plan,
    Drag,
    NoSteps,
    NoKitchen,
    Pointing // hover, focus, and a clash pointed at
};

struct Shot
{
    const char* name;
    int width;
    int height;
    double scale; // device pixels for a device-independent one
    AppearanceChoice look;
    Show show = Show::Plan;
    ZoomStop stop = ZoomStop::Hours;
    double textScale = 1;
};

Scene sceneOf(Show show)
{
    switch (show) {
    case Show::Drag:
        return ui::test::exampleScene(true);
    case Show::NoSteps:
        return ui::test::emptyScene();
    case Show::NoKitchen: {
        Scene scene = ui::test::emptyScene();
        scene.lanes.clear();
        return scene;
    }
    case Show::Plan:
    case Show::Pointing:
        break;
    }
    return ui::test::exampleScene();
}

void draw(const Shot& shot, ApplicationTheme& theme, const QDir& folder)
{
    theme.setChoice(shot.look);
    Theme look = theme.theme();
    look.textScale = shot.textScale;
    TimelineView view{look};
    view.resize(shot.width, shot.height);
    view.setScene(sceneOf(shot.show));
    view.setEmptyNote(shot.show == Show::NoKitchen
                          ? QStringLiteral("Tell what your kitchen has")
                          : QStringLiteral("Drag a variant here, or choose dishes"),
                      QStringLiteral("Menu and guests"));
    view.zoomTo(shot.stop);
    view.showTime(
        {ui::test::at(ui::test::Day::Friday, 20), ui::test::at(ui::test::Day::Saturday, 21, 50)});
    if (shot.stop == ZoomStop::QuarterHours) {
        view.showTime({ui::test::at(ui::test::Day::Saturday, 18, 45),
                       ui::test::at(ui::test::Day::Saturday, 20, 40)});
    }
    if (shot.show == Show::Plan) {
        view.select(QStringLiteral("braise"));
    }
    if (shot.show == Show::Pointing) {
        view.setFocus();
        QFocusEvent focus{QEvent::FocusIn};
        QCoreApplication::sendEvent(&view, &focus);
        view.showTask(QStringLiteral("braise"));
        view.pointAtClash(1);
    }
    view.ensurePolished();
    QPixmap picture{QSize{shot.width, shot.height} * shot.scale};
    picture.setDevicePixelRatio(shot.scale);
    view.render(&picture);
    picture.save(folder.filePath(QString::fromLatin1(shot.name)));
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application{argc, argv};
    if (argc != 2) {
        fmt::print(stderr, "usage: draw_timeline FOLDER\n");
        return 2;
    }
    const QDir folder{QString::fromLocal8Bit(argv[1])};
    ApplicationTheme theme{application, AppearanceChoice::Light};
    using enum AppearanceChoice;
    const Shot shots[]{
        {"light-1280.png", 1068, 606, 1, Light},
        {"light-1920.png", 1334, 803, 1, Light},
        {"light-drag-1920.png", 1334, 803, 1, Light, Show::Drag},
        {"dark-1920.png", 1334, 803, 1, Dark},
        {"dark-drag-1280.png", 1068, 606, 1, Dark, Show::Drag},
        {"light-200.png", 1068, 606, 2, Light},
        {"dark-200.png", 1068, 606, 2, Dark, Show::Drag},
        {"light-least.png", 840, 396, 2, Light},
        {"light-narrow.png", 600, 400, 1, Light},
        {"light-day.png", 1068, 606, 1, Light, Show::Plan, ZoomStop::Day},
        {"light-quarters.png", 1334, 803, 1, Light, Show::Plan, ZoomStop::QuarterHours},
        {"light-quarters-200.png", 796, 606, 2, Light, Show::Drag, ZoomStop::QuarterHours},
        {"dark-quarters-200.png", 796, 606, 2, Dark, Show::Plan, ZoomStop::QuarterHours},
        {"light-no-steps.png", 1068, 606, 1, Light, Show::NoSteps},
        {"light-no-kitchen.png", 1068, 606, 1, Light, Show::NoKitchen},
        {"light-pointing.png", 1068, 606, 2, Light, Show::Pointing},
        {"light-large-type.png", 1068, 606, 1, Light, Show::Plan, ZoomStop::Hours, 1.6},
    };
    for (const Shot& shot : shots) {
        draw(shot, theme, folder);
    }
    return 0;
}
