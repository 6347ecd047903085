// Keeps the machine from falling asleep and its screen from going dark, as far as the desktop lets a program ask.
#pragma once

#include <QObject>
#include <QString>

namespace fayline::app {

class Awake : public QObject {
    Q_OBJECT
public:
    explicit Awake(QObject* parent = nullptr) : QObject(parent) {}
    ~Awake() override { set(false, {}); }

    // Asked without waiting for an answer; where nobody answers nothing happens.
    void set(bool awake, const QString& why);

private:
    bool asked_ = false;
    uint cookie_ = 0;
};

}  // namespace fayline::app
