// The table of the shed file's keys; keys.hpp says how it is walked. Each part has the keys that it has in a project
// file.
#pragma once

#include "core/model/keys_boat.hpp"
#include "core/model/shed.hpp"

namespace fayline::model {

// Reaches a member of the glue that a struct holds.
inline constexpr auto ofItsGlue = [](auto member) {
    return [member](auto& usual) -> auto& {
        return usual.glue.*member;
    };
};

template <class Visit>
void keysOf(Visit& visit, const UsualUnits*) {
    displayKeysOf(visit);
}

template <class Visit>
void keysOf(Visit& visit, const UsualGlue*) {
    mixKeysOf(visit, ofItsGlue);
    coatKeysOf(visit, ofItsGlue);
}

template <class Visit>
void keysOf(Visit& visit, const UsualAir*) {
    airKeysOf(visit, ofItsGlue);
}

template <class Visit>
void keysOf(Visit& visit, const Shed*) {
    visit("display", &Shed::display, OrNull<Group>{});
    visit("tools", &Shed::tools, OrNull<ListOf<Group>>{{{}, 0, 1000, "tools"}});
    visit("glue", &Shed::glue, OrNull<Group>{});
    visit("air", &Shed::air, OrNull<Group>{});
    visit("crew", &Shed::crew, OrNull<Group>{});
    visit("stock", &Shed::stock, OrNull<Group>{});
    visit("adhesives", &Shed::adhesives, ListOf<Group>{{}, 0, 1000, "glues"});
    visit("species", &Shed::species, ListOf<Group>{{}, 0, 1000, "woods"});
    visit("trials", &Shed::trials, ListOf<Group>{{}, 0, 10'000, "trials"});
}

}  // namespace fayline::model
