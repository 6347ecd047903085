// Stations set out evenly: from where to where, how far apart at most, held by what.
#pragma once

#include <QWidget>
#include <memory>

#include "app/look/shown.hpp"

class QComboBox;
class QLineEdit;

namespace fayline::app {

class StationsModel;
class Words;

class EvenStations : public QWidget {
    Q_OBJECT
public:
    explicit EvenStations(StationsModel* stations, QWidget* parent = nullptr);
    void show(const std::shared_ptr<const Shown>& shown);

private:
    void setOut();

    std::shared_ptr<const Shown> shown_;
    StationsModel* stations_;  // asks for the change
    QLineEdit* from_ = nullptr;
    QLineEdit* to_ = nullptr;
    QLineEdit* spacing_ = nullptr;
    QComboBox* kind_ = nullptr;
    Words* reason_;
};

}  // namespace fayline::app
