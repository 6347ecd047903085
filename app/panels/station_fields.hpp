// What can be changed of the chosen stations: what every kind has, and what only props, screws or straps have.
//
// Shows the first of them; a field that is typed into changes all, those of a kind only the stations of that kind.
#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"
#include "app/panels/typed_fields.hpp"

namespace fayline::app {

class SteadyWords;

class StationFields : public QWidget {
    Q_OBJECT
public:
    explicit StationFields(QWidget* parent = nullptr);

    // `stations`: indices in model::Holding::stations; may be empty.
    void choose(std::vector<int> stations);
    void show(const std::shared_ptr<const Shown>& shown);

signals:
    void changeAsked(const Change& change);

private:
    void makeCommon();
    void makeProp();
    void makeScrew();
    void makeStrap();
    template <class Value, class Reach, class Concerns>
    void addOver(Fields* fields, const Fields::About& about, const Way<Value>& way, const Named& named, Reach reach,
                 Concerns concerns);
    // Over a member of every station, and over one of the part that only some kinds have.
    template <class Value>
    void add(Fields* fields, const Fields::About& about, Value model::Station::*member, const Way<Value>& way,
             const Named& named);
    template <class Value, class Of>
    void add(Fields* fields, const Fields::About& about, Of model::Station::*part, Value Of::*member,
             const Way<Value>& way, const Named& named);
    const model::Station& first(const Shown& shown) const;
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
