// The main of benchmarks that make plans.
#include <benchmark/benchmark.h>

#include "core/glue/library_errors.hpp"

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
