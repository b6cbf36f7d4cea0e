// How the benchmarks of the window begin and end.
#pragma once

#include <QApplication>

#include <benchmark/benchmark.h>

namespace suppertide::bench {

/// Runs all benchmarks of the program in memory, so that no window opens on a screen.
inline int runInWindow(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application{argc, argv};
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}

} // namespace suppertide::bench
