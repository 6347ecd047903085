// Turns pieces into plans on a worker thread. The newest request wins; the window never waits. When no newer request
// has come for a while, what takes longer than a frame is worked out as well.
#pragma once

#include <QObject>
#include <QString>
#include <atomic>
#include <functional>
#include <memory>
#include <optional>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/deepen.hpp"

namespace fayline::app {

class Planner : public QObject {
    Q_OBJECT
public:
    // What works out the studies of a plan, as plan::deepenStepwise does.
    using Deepen = std::function<std::optional<plan::Plan>(const model::Piece& piece, const plan::Shop& shop,
                                                           const plan::Plan& plan, const std::atomic<bool>& stop,
                                                           const plan::OnPart& onPart)>;

    // The longer work begins `rest_ms` after the plan was made.
    explicit Planner(QObject* parent = nullptr, int rest_ms = 200, Deepen deepen = allCores());
    ~Planner() override;  // stops the work under way and waits for it, a few milliseconds

    // Asks for the plan of `piece`. A request that has not begun when a newer one comes is dropped; a result that
    // comes after a newer request's result is never sent. Returns the number of the request, ascending.
    quint64 ask(const model::Piece& piece, const plan::Shop& shop);

    bool isWorking() const;  // the longer work and the rest before it count

signals:
    void planned(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The same plan with those studies that are there by now, and more to come. Several in a row; those that the
    // window has not taken yet when a newer one comes are dropped. After `planned` of the same request, and only if
    // none newer was asked; so is the next.
    void studied(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The same plan with every study.
    void deepened(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The piece cannot be planned: why, and the path of the place at fault from the piece on.
    void refused(quint64 request, QString path, QString why);
    // What takes longer met a defect of the program, or a place that only it found wrong: in words. What was sent of
    // this request before stands; `deepened` does not come.
    void failed(quint64 request, QString why);

private:
    static Deepen allCores();
    void work();
    void send(quint64 number, const std::shared_ptr<const plan::Plan>& plan, const QString& path, const QString& why);
    void deepen(quint64 number, const model::Piece& piece, const plan::Shop& shop);
    void sendDeeper(quint64 number, std::shared_ptr<const plan::Plan> plan, bool whole);
    void sendFailure(quint64 number, const QString& why);
    bool isNewest(quint64 number) const;

    struct Work;
    std::unique_ptr<Work> work_;
};

}  // namespace fayline::app
