// Draws the example timeline to PNG files, to be looked at: draw_timeline FOLDER. No test: what is
// right here is for the eye to say.
#include <QApplication>
#include <QDir>
#include <QPixmap>

#include <fmt/core.h>

#include <cstdio>

#include "tests/support/timeline/example_scene.h"
#include "ui/theme/application_theme.h"
#include "ui/timeline/timeline_view.h"

using namespace suppertide;     // NOLINT(google-build-using-namespace): a program, not a header
using namespace suppertide::ui; // NOLINT(google-build-using-namespace)

namespace {

struct Shot
{
    const char* name;
    int width;
    int height;
    double scale;
    AppearanceChoice look;
    bool isDragging;
    double pixelsPerHour;
};

void draw(const Shot& shot, ApplicationTheme& theme, const QDir& folder)
{
    theme.setChoice(shot.look);
    TimelineView view{theme.theme()};
    view.resize(shot.width, shot.height);
    view.setScene(ui::test::exampleScene(shot.isDragging));
    view.zoomTo(shot.pixelsPerHour < 50    ? ZoomStop::Day
                : shot.pixelsPerHour > 170 ? ZoomStop::QuarterHours
                                           : ZoomStop::Hours);
    view.showTime(
        {ui::test::at(ui::test::Day::Friday, 20), ui::test::at(ui::test::Day::Saturday, 21, 50)});
    if (shot.pixelsPerHour > 170) {
        view.showTime({ui::test::at(ui::test::Day::Saturday, 18, 45),
                       ui::test::at(ui::test::Day::Saturday, 20, 40)});
    }
    if (!shot.isDragging) {
        view.select(QStringLiteral("braise"));
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
    const Shot shots[]{
        {"light-1280.png", 1068, 606, 1, AppearanceChoice::Light, false, 86},
        {"light-drag-1920.png", 1334, 803, 1, AppearanceChoice::Light, true, 86},
        {"dark-1920.png", 1334, 803, 1, AppearanceChoice::Dark, false, 86},
        {"dark-drag-1280.png", 1068, 606, 1, AppearanceChoice::Dark, true, 86},
        {"light-200.png", 1068, 606, 2, AppearanceChoice::Light, false, 86},
        {"light-narrow.png", 600, 400, 1, AppearanceChoice::Light, false, 86},
        {"light-day.png", 1068, 606, 1, AppearanceChoice::Light, false, 28},
        {"light-quarters.png", 1334, 803, 1, AppearanceChoice::Light, false, 280},
    };
    for (const Shot& shot : shots) {
        draw(shot, theme, folder);
    }
    return 0;
}
