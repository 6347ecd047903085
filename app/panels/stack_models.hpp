// The strips of the present piece as tables: each strip as planned, the groups of like strips, the widths.
#pragma once

#include "app/panels/list_model.hpp"

namespace fayline::app {

// One row for each single strip, from the form outwards; read only.
class StripsModel : public ListModel {
public:
    enum Column { placeColumn, radiusColumn, shareColumn, chanceColumn, cutColumn };

    explicit StripsModel(QObject* parent = nullptr);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown&, int rowOfA, const Shown&, int rowOfB) const override { return rowOfA == rowOfB; }
};

// One row for each group of strips that are alike. The last one stays.
class GroupsModel : public ItemsModel<model::Strips> {
public:
    enum Column { countColumn, thicknessColumn, woodColumn };

    explicit GroupsModel(QObject* parent = nullptr);

    void addGroup(int after);
    void removeGroup(int row);
    void moveGroup(int row, int by);
};

// One row for each width given along the line. The last one stays.
class WidthsModel : public ItemsModel<model::Width> {
public:
    enum Column { atColumn, widthColumn };

    explicit WidthsModel(QObject* parent = nullptr);

    void addWidth(double at_m);
    void removeWidth(int row);
};

}  // namespace fayline::app
