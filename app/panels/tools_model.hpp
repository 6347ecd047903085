// What is at hand to hold with, as a table to type in.
#pragma once

#include "app/panels/list_model.hpp"

namespace fayline::app {

class ToolsModel : public ItemsModel<model::Tool> {
public:
    enum Column {
        nameColumn,
        kindColumn,
        mostColumn,
        countColumn,
        padColumn,
        openingColumn,
        throatColumn,
        pitchColumn
    };

    explicit ToolsModel(QObject* parent = nullptr);

    // Each is one step.
    void addTool(int like);  // after the row `like` and of its kind; -1: at the end
    void removeTools(const std::vector<int>& rows) { removeItems(rows, tr("Remove a tool"), tr("Remove %1 tools")); }
};

}  // namespace fayline::app
