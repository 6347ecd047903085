// What can be changed of the chosen stations: what every kind has, and what only props, screws or straps have.
//
// Shows the first of them; a field that is typed into changes all, those of a kind only the stations of that kind.
#pragma once

#include <QWidget>
#include <functional>
#include <memory>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

class Fields;
class SteadyWords;

class StationFields : public QWidget {
    Q_OBJECT
public:
    explicit StationFields(QWidget* parent = nullptr);

    // `stations`: indices in boat::Holding::stations; may be empty.
    void choose(std::vector<int> stations);
    void show(const std::shared_ptr<const Shown>& shown);

signals:
    void changeAsked(const Change& change);

private:
    using Put = std::function<void(boat::Station&)>;
    void makeCommon();
    void makeProp();
    void makeScrew();
    void makeStrap();
    enum class Long { yes, no };  // written as a place or as a thickness
    template <class Of>
    void addLength(Fields* fields, Long isLong, const char* object, const QString& name, const QString& hint,
                   Of boat::Station::*part, std::optional<double> Of::*member, const QString& whenEmpty);
    const boat::Station& first(const Shown& shown) const;
    // Both give the change's name; the second changes only those that are such ones.
    QString change(boat::Piece& piece, const QString& what, const Put& put) const;
    template <class Of, class PutIn>
    QString changeAs(boat::Piece& piece, const QString& what, const PutIn& put) const;
    void showKind();

    std::vector<int> chosen_;
    std::shared_ptr<const Shown> shown_;
    SteadyWords* told_;
    Fields* common_;
    Fields* prop_;
    Fields* screw_;
    Fields* strap_;
};

}  // namespace fayline::app
