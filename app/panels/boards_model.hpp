// The boards that strips are cut from, as a table to type in; those that can be bought likewise.
#pragma once

#include "app/panels/list_model.hpp"

namespace fayline::app {

class BoardsModel : public ItemsModel<model::Board> {
public:
    enum Column { nameColumn, countColumn, lengthColumn, widthColumn, thicknessColumn };
    enum class Which { onHand, toBuy };

    explicit BoardsModel(Which which, QObject* parent = nullptr);

    // Each is one step.
    void addBoard(int like);  // after the row `like` and like it; -1: at the end
    void removeBoards(const std::vector<int>& rows) { removeItems(rows, tr("Remove a board"), tr("Remove %1 boards")); }
    // Boards from copied text, one a line: name, count, length, width, thickness and, if wanted, wood and price, with
    // tabs or ";" between them. Throws InputError and changes nothing where a line cannot be read.
    void paste(const QString& copied);

private:
    Which which_;
};

// Bad stretches as they are typed: "700 to 820; 900 to 950 across 0 to 40". Throws InputError for what cannot be read.
QString writeBad(const std::vector<model::BadStretch>& bad, const units::Display& display);
std::vector<model::BadStretch> readBad(const QString& written, const units::Display& display);

}  // namespace fayline::app
