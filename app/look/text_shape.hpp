// How much room a sentence takes that says new figures while a point is dragged.
#pragma once

#include <QFont>
#include <QString>

namespace fayline::app {

// `words` with every figure as a nought, where all figures of `font` are equally wide whatever they stand beside, else
// the words themselves: what has the same shape is as wide and wraps at the same places, so that it need not be
// measured anew.
QString textShape(const QString& words, const QFont& font);

}  // namespace fayline::app
