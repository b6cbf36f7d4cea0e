// Writes the example sheets as PDF files, to be looked at: draw_sheet FOLDER.
#include <QGuiApplication>

#include <fmt/core.h>

#include <cstdio>
#include <filesystem>

#include "tests/support/print/example_sheet.h"
#include "ui/print/per_hour_pdf.h"

namespace {

using suppertide::ui::PageStyle;
using suppertide::ui::PaperSize;
using suppertide::ui::TextSize;

bool draw(const suppertide::PerHourPlan& sheet, const std::filesystem::path& file,
          const PageStyle& style)
{
    const auto written = suppertide::ui::writePerHourPdf(sheet, file, style);
    if (!written) {
        fmt::print(stderr, "{}\n", written.error().forCook);
    }
    return written.has_value();
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QGuiApplication application{argc, argv};
    if (argc != 2) {
        fmt::print(stderr, "usage: draw_sheet FOLDER\n");
        return 2;
    }
    const std::filesystem::path folder{argv[1]};
    auto american = suppertide::ui::test::exampleSheet();
    american.style = {true, true};
    const auto example = suppertide::ui::test::exampleSheet();
    const auto crowded = suppertide::ui::test::crowdedSheet();
    PageStyle large;
    large.text = TextSize::Large;
    PageStyle letter;
    letter.paper = PaperSize::Letter;
    PageStyle largeLetter = large;
    largeLetter.paper = PaperSize::Letter;
    const bool isDone =
        draw(example, folder / "a4.pdf", {}) && draw(example, folder / "letter.pdf", letter) &&
        draw(example, folder / "a4-large.pdf", large) &&
        draw(american, folder / "letter-large.pdf", largeLetter) &&
        draw(crowded, folder / "three-cooks.pdf", {}) &&
        draw(suppertide::ui::test::wordySheet(), folder / "wordy.pdf", {}) &&
        draw(suppertide::ui::test::wordySheet(), folder / "wordy-large.pdf", largeLetter);
    return isDone ? 0 : 1;
}
