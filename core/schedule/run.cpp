#include "core/schedule/run.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>

#include "core/units/input_error.hpp"

namespace fayline::schedule {

namespace {

constexpr int atAStrip = 2;  // pairs of hands that can stand at one strip
constexpr int atAStation = 2;

void check(const Job& job) {
    using units::InputError;
    if (job.hands < 1) {
        throw InputError("crew.hands", "nobody is there to do it", "give a whole number above 0");
    }
    const auto checkRate = [](double rate, const char* path) {
        if (!(rate > 0)) throw InputError(path, "at this rate it is never done", "give a number above 0");
    };
    if (!job.strips.empty()) {
        checkRate(job.wetOut_m2_s, "crew.rates.wet_out_m2_min");
        checkRate(job.spread_m2_s, "crew.rates.spread_m2_min");
    }
}

// In the order of Work.
constexpr std::array<std::string_view, 10> workWords{"wipe",   "sand",  "mix",   "wet_out", "soak",
                                                     "spread", "carry", "place", "close",   "scrape"};

std::string stripName(const StripJob& strip) {
    if (strip.strip == 0) return "the joint on the boat";
    return (strip.hasCured ? "the cured side of strip " : "strip ") + std::to_string(strip.strip);
}

// Puts the tasks of a job in order.
class Listing {
public:
    Listing(const Job& job, Run& run) : job_(job), run_(run) {}

    void list() {
        if (job_.sand_s > 0) addPlain(Work::sand, "sand the strips", job_.sand_s, job_.hands);
        if (job_.wipe_s > 0) addPlain(Work::wipe, "wipe the strips", job_.wipe_s, job_.hands);
        listPortions(portions());
        const int together = std::max(1, job_.hands);
        if (!job_.strips.empty()) {
            addPlain(Work::carry, "carry the stack to its place", job_.carry_s * 1.0, together);
            addPlain(Work::place, "lay the fixed end down", job_.place_s, std::min(job_.hands, atAStation));
        }
        for (const StationJob& station : job_.stations) {
            Task& close = addPlain(Work::close, "close " + station.kind + " " + std::to_string(station.number),
                                   station.takes_s, std::min(job_.hands, atAStation));
            close.station = station.number;
        }
        if (job_.scrape_s > 0) addPlain(Work::scrape, "scrape the squeeze-out", job_.scrape_s, job_.hands);
    }

private:
    // Something spread from cups, piece after piece.
    struct Portion {
        Work work = Work::wetOut;
        int strip = 0;
        std::string name;
        double area_m2 = 0;
        double rate_m2_s = 0;  // by one pair of hands
        double extra_s = 0;    // handling of the strip
        int cup = 0;           // number; 0: from none
        bool soaksBefore = false;
    };

    Task& add(Work work, const std::string& name, double takes_s, int hands) {
        Task task{.work = work, .name = name, .takes_s = takes_s, .hands = hands};
        run_.tasks.push_back(std::move(task));
        return run_.tasks.back();
    }

    int index(const Task& task) const { return static_cast<int>(&task - run_.tasks.data()); }

    // Work by one pair of hands that `hands` of them share, after all before it.
    Task& addPlain(Work work, const std::string& name, double byOne_s, int hands) {
        const bool shared = work == Work::sand || work == Work::wipe || work == Work::scrape;
        Task& task = add(work, name, shared ? byOne_s / hands : byOne_s, hands);
        if (last_ >= 0) task.after = {last_};
        last_ = index(task);
        return task;
    }

    // All that is wetted out and spread, in order, each from its cup.
    std::vector<Portion> portions() const {
        std::vector<Portion> all;
        const auto append = [this, &all](std::vector<Portion> some, CupFor use) {
            assignCups(some, use);
            all.insert(all.end(), some.begin(), some.end());
        };
        append(endGrain(), CupFor::endGrain);
        append(wetOut(), CupFor::wetOut);
        std::vector<Portion> coats = spread();
        if (job_.soak_s > 0 && !coats.empty()) coats.front().soaksBefore = true;
        append(std::move(coats), CupFor::spread);
        return all;
    }

    // Each portion comes from the cup in which the middle of its area lies. Where several cups go on one portion, so
    // that some would be passed over, it is cut into as many parts.
    void assignCups(std::vector<Portion>& portions, CupFor use) const {
        std::vector<int> cups;
        for (const CupJob& cup : job_.cups) {
            if (cup.use == use) cups.push_back(cup.number);
        }
        double all_m2 = 0;
        for (const Portion& portion : portions) all_m2 += portion.area_m2;
        if (cups.empty() || !(all_m2 > 0)) return;
        std::vector<Portion> parts;
        std::size_t next = 0;  // the first cup not yet in use
        double before_m2 = 0;
        for (std::size_t i = 0; i < portions.size(); ++i) {
            const double middle = (before_m2 + portions[i].area_m2 / 2) / all_m2;
            const auto at = static_cast<std::size_t>(middle * static_cast<double>(cups.size()));
            const std::size_t last = i + 1 == portions.size() ? cups.size() - 1 : std::min(at, cups.size() - 1);
            const std::size_t first = std::min(next, last);
            for (std::size_t cup = first; cup <= last; ++cup) {
                parts.push_back(partOf(portions[i], cup - first, last - first + 1));
                parts.back().cup = cups[cup];
            }
            before_m2 += portions[i].area_m2;
            next = last + 1;
        }
        portions = std::move(parts);
    }

    // Of `count` equal parts one. What is done once a strip is done with its first or its last.
    static Portion partOf(const Portion& whole, std::size_t part, std::size_t count) {
        Portion one = whole;
        if (count == 1) return one;
        one.name += ", part " + std::to_string(part + 1) + " of " + std::to_string(count);
        one.area_m2 /= static_cast<double>(count);
        if (part + 1 < count) one.extra_s = 0;
        if (part > 0) one.soaksBefore = false;
        return one;
    }

    static bool needsNewCup(const std::vector<Portion>& portions, std::size_t i) {
        return portions[i].cup > 0 && (i == 0 || portions[i].cup != portions[i - 1].cup);
    }

    void listPortions(const std::vector<Portion>& portions) {
        for (std::size_t i = 0; i < portions.size(); ++i) {
            const Portion& portion = portions[i];
            const bool newCup = needsNewCup(portions, i);
            if (portion.soaksBefore) listSoak(newCup);
            int mixed = -1;
            if (newCup) {
                // With others there it is mixed while they do the portion before: from when that begins.
                const bool beside = job_.hands > 1 && i > 0 && !portion.soaksBefore;
                mixed = listMix(portion, beside ? run_.tasks[last_].after : waits());
            }
            const bool nextIsMixedBeside =
                i + 1 < portions.size() && needsNewCup(portions, i + 1) && !portions[i + 1].soaksBefore;
            const int hands = std::min(nextIsMixedBeside ? std::max(1, job_.hands - 1) : job_.hands, atAStrip);
            Task& task =
                add(portion.work, portion.name, portion.area_m2 / (portion.rate_m2_s * hands) + portion.extra_s, hands);
            task.strip = portion.strip;
            task.cup = portion.cup;
            task.after = waits();
            if (mixed >= 0) task.after.push_back(mixed);
            last_ = index(task);
        }
    }

    std::vector<int> waits() const { return last_ < 0 ? std::vector<int>{} : std::vector<int>{last_}; }

    int listMix(const Portion& portion, std::vector<int> after) {
        const std::string what = portion.work == Work::spread ? "thickened" : "thin";
        Task& mix = add(Work::mix, "mix batch " + std::to_string(portion.cup) + ", " + what, job_.mix_s, 1);
        mix.cup = portion.cup;
        mix.after = std::move(after);
        return index(mix);
    }

    void listSoak(bool mixesAfter) {
        const double takes_s = job_.soak_s - (mixesAfter ? job_.mix_s : 0);
        if (!(takes_s > 0)) return;
        const char* name = mixesAfter ? "let the wet-out soak in, on into the mixing" : "let the wet-out soak in";
        Task& soak = add(Work::soak, name, takes_s, 0);
        soak.after = waits();
        last_ = index(soak);
    }

    std::vector<Portion> endGrain() const {
        if (!(job_.endGrain_m2 > 0)) return {};
        return {{Work::wetOut, -1, "wet the end grain of the scarf", job_.endGrain_m2, job_.wetOut_m2_s}};
    }

    std::vector<Portion> wetOut() const {
        std::vector<Portion> portions;
        // A face that stays where it is comes last, just before its mate is spread.
        for (const bool fixed : {false, true}) {
            for (const StripJob& strip : job_.strips) {
                if (!(strip.wet_m2 > 0) || strip.isFixed() != fixed) continue;
                portions.push_back({Work::wetOut, strip.strip,
                                    "wet out " + stripName(strip) + (fixed ? "" : ", turn it over"), strip.wet_m2,
                                    job_.wetOut_m2_s, fixed ? 0 : job_.stackStrip_s});
            }
        }
        return portions;
    }

    std::vector<Portion> spread() const {
        std::vector<Portion> portions;
        for (auto strip = job_.strips.rbegin(); strip != job_.strips.rend(); ++strip) {
            const bool laid = !strip->isFixed();
            if (!(strip->spread_m2 > 0) && !laid) continue;
            portions.push_back({Work::spread, strip->strip,
                                (strip->spread_m2 > 0 ? "spread " : "lay down ") + stripName(*strip), strip->spread_m2,
                                job_.spread_m2_s, laid ? job_.stackStrip_s : 0});
        }
        return portions;
    }

    const Job& job_;
    Run& run_;
    int last_ = -1;  // the task that what follows waits for
};

// Times by the order of the list; `lanes` also says which hands. `timed` sets a task's start and end, given when it can
// begin; `handsOf` how many pairs of hands it holds until then.
template <typename Timed, typename HandsOf>
void time(Run& run, bool lanes, const Timed& timed, const HandsOf& handsOf) {
    const auto hands = static_cast<std::size_t>(run.hands);
    std::vector<double> free_s(hands, 0.0);
    std::vector<double> soonest_s(hands);
    std::vector<std::size_t> chosen;
    run.end_s = run.closed_s = 0;
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        Task& task = run.tasks[i];
        double start_s = 0;
        for (const int before : task.after) {
            start_s = std::max(start_s, run.tasks[before].end_s);
        }
        // As many hands as it wants are free by the time at which the last of those that are free first comes.
        const auto wanted = std::min(static_cast<std::size_t>(handsOf(i)), hands);
        if (wanted > 0) {
            soonest_s = free_s;
            const auto last = soonest_s.begin() + static_cast<std::ptrdiff_t>(wanted) - 1;
            std::nth_element(soonest_s.begin(), last, soonest_s.end());
            start_s = std::max(start_s, *last);
        }
        chosen.clear();
        for (std::size_t h = 0; h < hands && chosen.size() < wanted; ++h) {
            if (free_s[h] <= start_s) chosen.push_back(h);
        }
        timed(i, start_s, task);
        for (const std::size_t hand : chosen) free_s[hand] = task.end_s;
        if (lanes) task.lanes.assign(chosen.begin(), chosen.end());
        run.end_s = std::max(run.end_s, task.end_s);
        if (task.work != Work::scrape) run.closed_s = std::max(run.closed_s, task.end_s);
    }
}

// As planned, task i taking `factors[i]` times as long and beginning `delays_s[i]` later than it could.
void timeAsPlanned(Run& run, const std::vector<double>& factors, const std::vector<double>& delays_s, bool lanes) {
    time(
        run, lanes,
        [&](std::size_t i, double start_s, Task& task) {
            task.start_s = start_s + (delays_s.empty() ? 0 : delays_s[i]);
            task.end_s = task.start_s + task.takes_s * (factors.empty() ? 1 : factors[i]);
        },
        [&](std::size_t i) { return run.tasks[i].hands; });
}

// When work that begins at `start_s` is done, with the pauses between, which are in order.
double endOfWork(double start_s, double takes_s, const std::vector<Pause>& pauses) {
    double end_s = start_s + takes_s;
    for (const Pause& pause : pauses) {
        if (pause.to_s > start_s && pause.from_s < end_s) end_s += pause.to_s - std::max(pause.from_s, start_s);
    }
    return end_s;
}

void timeFaces(const Job& job, Run& run) {
    for (FaceTimes& face : run.faces) {
        face.wetted_s = INFINITY;
        for (const Task& task : run.tasks) {
            const bool ofIt = task.strip == face.inner || task.strip == face.inner + 1;
            if (ofIt && (task.work == Work::wetOut || task.work == Work::spread)) {
                face.wetted_s = std::min(face.wetted_s, task.start_s);
            }
        }
        face.closed_s = run.closed_s;
        face.openUntil_s = face.wetted_s + job.openTime_s;
    }
    for (std::size_t i = 0; i < run.cups.size(); ++i) {
        CupTimes& cup = run.cups[i];
        for (const Task& task : run.tasks) {
            if (task.cup != cup.number) continue;
            if (task.work == Work::mix) cup.mixedFrom_s = task.start_s;
            cup.emptied_s = std::max(task.work == Work::mix ? task.end_s : cup.emptied_s, task.end_s);
        }
        cup.useBy_s = cup.mixedFrom_s + job.cups[i].useWithin_s;
    }
    const auto worst = [](const auto& all) {
        int found = -1;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (found < 0 || all[i].margin_s() < all[found].margin_s()) {
                found = static_cast<int>(i);
            }
        }
        return found;
    };
    run.worstFace = worst(run.faces);
    run.worstCup = worst(run.cups);
}

}  // namespace

Run runOf(const Job& job) {
    check(job);
    Run run;
    run.hands = job.hands;
    run.tasks.reserve(4 * job.strips.size() + 2 * job.cups.size() + job.stations.size() + 16);
    Listing(job, run).list();
    for (const int inner : job.faces) run.faces.push_back({inner, 0, 0, 0});
    for (const CupJob& cup : job.cups) run.cups.push_back({cup.number, 0, 0, 0});
    timeAsPlanned(run, {}, {}, true);
    timeFaces(job, run);
    return run;
}

void retime(const Job& job, const std::vector<double>& factors, const std::vector<double>& delays_s, Run& run) {
    timeAsPlanned(run, factors, delays_s, false);
    timeFaces(job, run);
}

void retimeAsHappened(const Job& job, const std::vector<Happened>& happened, const std::vector<Pause>& pauses,
                      double now_s, Run& run) {
    const auto timed = [&](std::size_t i, double start_s, Task& task) {
        const Happened& known = happened[i];
        if (known.leftOut) {
            task.start_s = task.end_s = start_s;
            return;
        }
        for (const Pause& pause : pauses) {
            if (pause.from_s <= start_s && start_s < pause.to_s) start_s = pause.to_s;
        }
        if (known.end_s) {
            if (start_s > *known.end_s) start_s = std::max(0.0, *known.end_s - task.takes_s);
            task.start_s = std::min(known.start_s.value_or(start_s), *known.end_s);
            task.end_s = *known.end_s;
            return;
        }
        task.start_s = known.start_s.value_or(start_s);
        if (task.hands == 0) {
            task.end_s = task.start_s + task.takes_s;
        } else {
            task.end_s = std::max(now_s, endOfWork(task.start_s, task.takes_s, pauses));
        }
    };
    time(run, true, timed, [&](std::size_t i) { return happened[i].leftOut ? 0 : run.tasks[i].hands; });
    timeFaces(job, run);
}

std::vector<std::string> taskWords(const Run& run) {
    std::vector<std::string> words;
    words.reserve(run.tasks.size());
    std::map<std::string, int> parts;
    for (const Task& task : run.tasks) {
        std::string word(workWords[static_cast<std::size_t>(task.work)]);
        if (task.work == Work::mix) {
            word += ":" + std::to_string(task.cup);
        } else if (task.work == Work::close) {
            word += ":" + std::to_string(task.station);
        } else if (task.work == Work::wetOut || task.work == Work::spread) {
            word += task.strip < 0 ? ":end_grain" : ":" + std::to_string(task.strip);
        }
        const int part = ++parts[word];
        words.push_back(part == 1 ? word : word + ":" + std::to_string(part));
    }
    return words;
}

double workedFor(double start_s, double end_s, const std::vector<Pause>& pauses) {
    double worked_s = end_s - start_s;
    for (const Pause& pause : pauses) {
        worked_s -= std::max(0.0, std::min(pause.to_s, end_s) - std::max(pause.from_s, start_s));
    }
    return std::max(0.0, worked_s);
}

}  // namespace fayline::schedule
