// Where the numbers come from, and what a user must know before trusting them with wood and hands.
#pragma once

#include <QWidget>

#include "app/look/shown.hpp"

namespace fayline::app {

// The sources behind the plan that is shown and of every wood, each with how sure we are of it.
void showSources(QWidget* parent, const Shown& shown);

// What the program is, its licence, and cautions.
void showAbout(QWidget* parent);

}  // namespace fayline::app
