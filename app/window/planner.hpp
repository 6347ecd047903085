// The one worker of the window: turns pieces into plans on a thread of its own. The newest request wins; the window
// never waits. The piece on the table comes first; when no newer request has come for a while, what takes longer than a
// frame is worked out as well, and then, if asked, what is worst about another piece.
#pragma once

#include <QObject>
#include <QString>
#include <atomic>
#include <functional>
#include <memory>
#include <optional>

#include "app/window/piece_marks.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/deepen.hpp"

namespace fayline::app {

// What makes a plan and works out its studies: the core, unless a test says otherwise.
struct PlanningMethods {
    using Make = std::optional<plan::Plan>(const model::Piece& piece, const plan::Shop& shop, const plan::Plan* before,
                                           const std::atomic<bool>& stop);
    using Deepen = std::optional<plan::Plan>(const model::Piece& piece, const plan::Shop& shop, const plan::Plan& plan,
                                             const std::atomic<bool>& stop, const plan::OnPart& onPart);
    std::function<Make> make = static_cast<Make*>(plan::makePlan);
    std::function<Deepen> deepen = [](const auto&... given) { return plan::deepenStepwise(given...); };
};

class Planner : public QObject {
    Q_OBJECT
public:
    // The longer work begins `rest_ms` after the plan was made.
    explicit Planner(QObject* parent = nullptr, int rest_ms = 200, PlanningMethods methods = {});
    ~Planner() override;  // stops the work under way and waits for it, a few milliseconds

    // Asks for the plan of `piece`. A request that has not begun when a newer one comes is dropped, and longer work
    // under way is given up; a result that comes after a newer request's result is never sent. Returns the number of
    // the request, ascending. Of a piece that is not on the table only its mark is told, when the whole of its plan is
    // made; to be asked when the newest request for the table is `finished`.
    enum class For { table, mark };
    quint64 ask(const model::Piece& piece, const plan::Shop& shop, For what = For::table);

    // Gives up the longer work of the newest request; its plan is made all the same.
    void stop();

    bool isWorking() const;  // the longer work and the rest before it count

signals:
    void planned(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The same plan with those studies that are there by now, in the end all. Those that the window has not taken yet
    // when a newer one comes are dropped. After `planned` of the same request, and only if none newer was asked; so are
    // the next two.
    void studied(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // What takes longer met a defect of the program, or a place that only it found wrong: in words. What was sent of
    // this request before stands.
    void failed(quint64 request, QString why);
    // Nothing more comes of this request: all is there, or refused, or given up.
    void finished(quint64 request);
    // The piece cannot be planned: why, and the path of the place at fault from the piece on.
    void refused(quint64 request, QString path, QString why);
    void marked(quint64 request, fayline::app::PieceMark mark);

private:
    struct Request;
    struct Work;
    void work();
    bool answer(const Request& request);
    void deepen(const Request& request);
    void mark(const Request& request);
    std::optional<plan::Plan> wholePlan(const Request& request, const plan::OnPart& onPart);
    void sendStudied(quint64 number, const std::shared_ptr<const plan::Plan>& plan);
    template <class Deliver>
    void send(quint64 number, Deliver deliver);  // in the window's thread, if `number` is the newest by then

    std::unique_ptr<Work> work_;
};

}  // namespace fayline::app
