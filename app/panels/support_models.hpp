// What bears: the posts of a form and the blocks under the boat, as tables to type in with what each has to bear.
#pragma once

#include "app/panels/list_model.hpp"

namespace fayline::app {

class PostsModel : public ItemsModel<model::Post> {
public:
    enum Column { atColumn, widthColumn, holdsColumn, thrustColumn };

    explicit PostsModel(QObject* parent = nullptr);

    void addPost(double at_m);  // each is one step
    void removePost(int row) { removeItems({row}, tr("Remove a post"), {}); }
};

class BlocksModel : public ItemsModel<model::Block> {
public:
    enum Column { xColumn, yColumn, pushColumn };

    explicit BlocksModel(QObject* parent = nullptr);

    void addBlock();  // beside the last; each is one step
    void removeBlock(int row) { removeItems({row}, tr("Remove %1"), {}); }
};

}  // namespace fayline::app
