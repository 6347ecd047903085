// Turns pieces into plans on a worker thread. The newest request wins; the window never waits.
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
    explicit Planner(QObject* parent = nullptr);
    ~Planner() override;  // waits for the work under way, which takes a few milliseconds

    // Asks for the plan of `piece`. A request that has not begun when a newer one comes is dropped; a result that
    // comes after a newer request's result is never sent. Returns the number of the request, ascending.
    quint64 ask(const boat::Piece& piece, const plan::Shop& shop);

    bool isWorking() const;

signals:
    void planned(quint64 request, std::shared_ptr<const plan::Plan> plan);
    // The piece cannot be planned: why, and the path of the place at fault from the piece on.
    void refused(quint64 request, QString path, QString why);

private:
    struct Work;
    std::unique_ptr<Work> work_;
};

}  // namespace fayline::app
