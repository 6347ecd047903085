#include "app/window/planning.hpp"

#include <algorithm>

#include "app/window/shed_store.hpp"
#include "core/math/count.hpp"
#include "core/plan/study/studies.hpp"

namespace fayline::app {

namespace {

const std::map<plan::Study, const char*> nameOf{
    {plan::Study::closing, QT_TRANSLATE_NOOP("fayline::app::Planning", "closing order")},
    {plan::Study::overRun, QT_TRANSLATE_NOOP("fayline::app::Planning", "extra length")},
    {plan::Study::proposal, QT_TRANSLATE_NOOP("fayline::app::Planning", "suggested stations")},
    {plan::Study::carried, QT_TRANSLATE_NOOP("fayline::app::Planning", "carrying the stack")},
    {plan::Study::day, QT_TRANSLATE_NOOP("fayline::app::Planning", "simulated days")},
    {plan::Study::choices, QT_TRANSLATE_NOOP("fayline::app::Planning", "other strip thicknesses")},
    {plan::Study::breaking, QT_TRANSLATE_NOOP("fayline::app::Planning", "strips that break")},
    {plan::Study::misread, QT_TRANSLATE_NOOP("fayline::app::Planning", "misread offsets")},
    {plan::Study::learned, QT_TRANSLATE_NOOP("fayline::app::Planning", "your earlier pieces")},
    {plan::Study::corrected, QT_TRANSLATE_NOOP("fayline::app::Planning", "what misread offsets cause")},
    {plan::Study::stock, QT_TRANSLATE_NOOP("fayline::app::Planning", "strips from boards")}};

}  // namespace

Planning::Planning(const Document& document, const PlanningTimes& times, PlanningMethods methods)
    : document_(document), planner_(nullptr, times.restsAfter_ms, std::move(methods)), oldAfter_ms_(times.oldAfter_ms) {
    for (QTimer* timer : {&awaited_, &old_, &tells_}) timer->setSingleShot(true);
    awaited_.setInterval(times.awaits_ms);
    tells_.setInterval(times.toldAfter_ms);
    connect(&awaited_, &QTimer::timeout, this, &Planning::show);
    connect(&old_, &QTimer::timeout, this, &Planning::growOld);
    connect(&tells_, &QTimer::timeout, this, &Planning::tellUnderWay);
    connect(&document_, &Document::boatReplaced, this, [this] { shown_ = {}; });  // then another piece is current
    connect(&document_, &Document::boatChanged, this, &Planning::replan);
    connect(&document_, &Document::pieceChanged, this, &Planning::replan);
    connect(&document_, &Document::currentPieceChanged, this, [this] {
        if (const auto mark = markOfShown()) marks_.know(shown_.piece, *mark);
        leavePiece();
        replan();
        show();
    });
    connect(&planner_, &Planner::planned, this, &Planning::takePlan);
    connect(&planner_, &Planner::refused, this, &Planning::takeRefusal);
    connect(&planner_, &Planner::studied, this, &Planning::takeStudied);
    connect(&planner_, &Planner::failed, this, &Planning::takeFailure);
    connect(&planner_, &Planner::finished, this, [this](quint64 request) {
        if (request != last_) return;
        finished_ = true;
        askNextMark();
    });
    connect(&planner_, &Planner::marked, this, &Planning::takeMark);
    replan();
    show();
}

// What was shown is of another piece than what comes.
void Planning::leavePiece() {
    firstOfPiece_ = last_ + 1;
    asked_.clear();
    shown_ = {};
}

// The newest state of the piece goes to the planner. What is drawn waits two frames at most for its answer, so that
// piece and plan mostly appear together.
void Planning::replan() {
    marks_.follow(document_.boat());
    askedMark_.reset();
    shop_ = plan::shopOf(document_.boat());
    shown_.stopped = false;
    tells_.start();
    tellUnderWay();
    const int index = document_.currentPiece();
    if (index < 0) {
        leavePiece();
        return show();
    }
    finished_ = false;
    last_ = planner_.ask(document_.boat().pieces[index], shop_);
    asked_.emplace(last_, oldAfter_ms_);
    if (!awaited_.isActive()) awaited_.start();
    if (!old_.isActive()) old_.start(oldAfter_ms_);
}

void Planning::stop() {
    planner_.stop();
    askedMark_.reset();
    shown_.stopped = true;
    show();
}

void Planning::calculate() {
    replan();
    show();
}

// All up to `request` have their answer or need none any more.
void Planning::answered(quint64 request) {
    asked_.erase(asked_.begin(), asked_.upper_bound(request));
    awaited_.stop();
    old_.stop();
    if (!asked_.empty()) old_.start(static_cast<int>(asked_.begin()->second.remainingTime()));
    show();
}

// The hand is ahead of the planner, and has been for a while.
void Planning::growOld() {
    if (isAnswered()) return;
    shown_.outOfDate = shown_.plan != nullptr;
    shown_.reason.clear();
    shown_.reasonPath.clear();
    show();
}

void Planning::takePlan(quint64 request, const std::shared_ptr<const plan::Plan>& plan) {
    if (request < firstOfPiece_) return;
    // Where it grew old it looks so until the newest is there, which is calmer than one that comes and goes.
    shown_.outOfDate = shown_.outOfDate && shown_.reason.isEmpty() && request != last_;
    shown_.plan = plan;
    shown_.reason.clear();
    shown_.reasonPath.clear();
    shown_.failure.clear();
    answered(request);
}

void Planning::takeRefusal(quint64 request, const QString& path, const QString& why) {
    if (request < firstOfPiece_) return;
    shown_.outOfDate = true;
    shown_.reason = why;
    shown_.reasonPath = path;
    answered(request);
}

// What took longer, or as much of it as is there. A hand that has moved on since will get its own.
void Planning::takeStudied(quint64 request, const std::shared_ptr<const plan::Plan>& plan) {
    if (request < firstOfPiece_ || request != last_) return;
    shown_.plan = plan;
    show();
}

// The plan that followed the hand stays, with the studies that came.
void Planning::takeFailure(quint64 request, const QString& why) {
    if (request < firstOfPiece_ || request != last_) return;
    shown_.failure = why;
    emit failed(why);
    show();
}

void Planning::show() {
    const int index = document_.currentPiece();
    shown_.pieceIndex = index;
    shown_.boatNumber = document_.boatNumber();
    shown_.piece = index < 0 ? model::Piece{} : document_.boat().pieces[index];
    shown_.display = shop_.display;
    shown_.boatBoards = shop_.boards;
    shown_.species = shop_.species;
    shown_.adhesives = std::make_shared<const std::vector<glue::Adhesive>>(shop_.adhesives);
    shown_.shed = document_.shed();
    offerFromShed(shown_);
    emit shownChanged();
    tellUnderWay();
}

void Planning::askNextMark() {
    const model::Boat& boat = document_.boat();
    for (int i = 0; finished_ && !shown_.stopped && i < math::countOf(boat.pieces); ++i) {
        const model::Piece& piece = boat.pieces[i];
        if (i == document_.currentPiece() || marks_.of(piece)) continue;
        askedMark_.emplace(planner_.ask(piece, shop_, Planner::For::mark), piece);
        break;
    }
    tellUnderWay();
}

void Planning::takeMark(quint64 request, const PieceMark& mark) {
    if (!askedMark_ || request != askedMark_->first) return;
    marks_.know(askedMark_->second, mark);
    askedMark_.reset();
    emit marksChanged();
    askNextMark();
}

std::optional<PieceMark> Planning::markOfShown() const {
    if (shown_.pieceIndex < 0 || !isAnswered()) return std::nullopt;
    if (!shown_.reason.isEmpty()) return markOfRefusal(shown_.reason);
    if (!shown_.plan || shown_.outOfDate || !plan::isStudied(*shown_.plan)) return std::nullopt;
    return markOf(*shown_.plan);
}

std::vector<PieceMark> Planning::marks() const {
    std::vector<PieceMark> marks;
    for (int i = 0; i < math::countOf(document_.boat().pieces); ++i) {
        const PieceMark* known = marks_.of(document_.boat().pieces[i]);
        const bool current = i == document_.currentPiece();
        // While a plan is under way the last one's mark stays, which is calmer than one that comes and goes.
        marks.push_back(current && !shown_.reason.isEmpty() ? markOfRefusal(shown_.reason)
                        : current && shown_.plan            ? markOf(*shown_.plan)
                        : known                             ? *known
                                                            : PieceMark{});
    }
    return marks;
}

QString Planning::underWay() const {
    const QString words = tr("Calculating: %1");
    if (!isAnswered()) return words.arg(tr("plan"));
    if (shown_.stopped) return {};
    if (askedMark_) return words.arg(QString::fromStdString(askedMark_->second.name));
    if (finished_ || !shown_.plan || !shown_.reason.isEmpty()) return {};
    // In the order in which they are begun.
    const plan::StudyTable& all = plan::studies();
    const auto missing =
        std::ranges::find_if(all, [&](const plan::StudyWork& work) { return !plan::has(*shown_.plan, work.study); });
    return missing == all.end() ? QString() : words.arg(tr(nameOf.at(missing->study)));
}

void Planning::tellUnderWay() {
    const QString now = tells_.isActive() ? QString() : underWay();
    if (now == told_) return;
    told_ = now;
    emit underWayChanged(now);
}

}  // namespace fayline::app

#include "moc_planning.cpp"
