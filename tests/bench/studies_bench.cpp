// The studies of the sample pieces: each by itself, and all of them on one thread and more.
#include <benchmark/benchmark.h>

#include <filesystem>
#include <memory>
#include <string>
#include <utility>

#include "core/io/file.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/studies.hpp"

namespace fayline {
namespace {

const std::atomic<bool> goOn = false;

struct Made {
    model::Piece piece;
    plan::Shop shop;
    plan::Plan plan;
};

std::string nameOf(plan::Study study) {
    switch (study) {
        case plan::Study::closing:
            return "closing";
        case plan::Study::overRun:
            return "overRun";
        case plan::Study::proposal:
            return "proposal";
        case plan::Study::carried:
            return "carried";
        case plan::Study::day:
            return "day";
        case plan::Study::choices:
            return "choices";
        case plan::Study::breaking:
            return "breaking";
        case plan::Study::misread:
            return "misread";
        case plan::Study::learned:
            return "learned";
        case plan::Study::corrected:
            return "corrected";
        case plan::Study::stock:
            return "stock";
    }
    return {};
}

void addPiece(const std::string& file, const model::Boat& boat, const model::Piece& piece) {
    auto made = std::make_shared<Made>();
    made->piece = piece;
    made->shop = plan::shopOf(boat);
    made->plan = plan::makePlan(made->piece, made->shop);
    auto given = std::make_shared<plan::Plan>(made->plan);
    given->choices = plan::choicesFor(made->piece, made->shop, made->plan, goOn);
    const std::string name = file + "/" + piece.name;
    for (const plan::StudyWork& work : plan::studies()) {
        benchmark::RegisterBenchmark((name + "/" + nameOf(work.study)).c_str(), [made, given,
                                                                                 work](benchmark::State& state) {
            for (auto _ : state) benchmark::DoNotOptimize(work.work(made->piece, made->shop, *given, goOn));
        })->Unit(benchmark::kMillisecond);
    }
    for (const unsigned threads : {1u, 2u, 4u}) {
        benchmark::RegisterBenchmark(
            (name + "/all/threads:" + std::to_string(threads)).c_str(),
            [made, threads](benchmark::State& state) {
                for (auto _ : state) {
                    benchmark::DoNotOptimize(plan::deepen(made->piece, made->shop, made->plan, goOn, threads));
                }
            })
            ->Unit(benchmark::kMillisecond)
            ->MeasureProcessCPUTime()
            ->UseRealTime();
    }
}

}  // namespace
}  // namespace fayline

int main(int argc, char** argv) {
    for (const std::string file : {"marram", "minimal"}) {
        const fayline::model::Boat boat =
            fayline::io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / (file + ".fayline"));
        for (const fayline::model::Piece& piece : boat.pieces) fayline::addPiece(file, boat, piece);
    }
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
