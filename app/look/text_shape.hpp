// How much room a sentence takes that says new figures while a point is dragged.
#pragma once

#include <QFont>
#include <QString>

namespace fayline::app {

// `words` with every figure as a nought, where all figures of `font` are equally wide whatever they stand beside, else
// the words themselves: what has the same shape is as wide and wraps at the same places, so that it need not be
// measured anew.
QString textShape(const QString& words, const QFont& font);

// How wide `words` are on one line, as QFontMetricsF has it, measured once for all words of one shape: views that
// follow the hand ask for the same few shapes again and again, and shaping a line of text costs as much as drawing it.
double textWidth(const QString& words, const QFont& font);

// The same in whole pixels.
int wholeTextWidth(const QString& words, const QFont& font);

// `words` cut short to `width` as QFontMetricsF::elidedText does; words that fit are not measured anew.
QString elided(const QString& words, const QFont& font, double width);

// `words` in lines of at most `most` letters, broken between words, for what does not wrap by itself: a tool tip.
QString wrapped(const QString& words, qsizetype most = 70);

}  // namespace fayline::app
