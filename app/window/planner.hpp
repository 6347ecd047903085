// Turns pieces into plans on a worker thread. The newest request wins; the window never waits. When no newer request
// has come for a while, what takes longer than a frame is worked out as well.
#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "core/boat/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app {

class Planner : public QObject {
    Q_OBJECT
public:
    // The longer work begins `rest_ms` after the plan was made.
    explicit Planner(QObject* parent = nullptr, int rest_ms = 200);
    ~Planner() override;  // waits for the work under way, which takes a few milliseconds

    // Asks for the plan of `piece`. A request that has not begun when a newer one comes is dropped; a result that
    // comes after a newer request's result is never sent. Returns the number of the request, ascending.
    quint64 ask(const boat::Piece& piece, const plan::Shop& shop);

    bool isWorking() const;  // the longer work and the rest before it count

signals:
    void planned(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The same plan with what takes longer. Comes after `planned` of the same request, and only if none newer was
    // asked.
    void deepened(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The piece cannot be planned: why, and the path of the place at fault from the piece on.
    void refused(quint64 request, QString path, QString why);

private:
    void work();
    void send(quint64 number, const std::shared_ptr<const plan::Plan>& plan, const QString& path, const QString& why);
    void sendDeeper(quint64 number, const std::shared_ptr<const plan::Plan>& plan);

    struct Work;
    std::unique_ptr<Work> work_;
};

}  // namespace fayline::app
