// What stands on the pages of a PDF file, read by poppler's tools, all pages in one go: knows nothing of the code that
// laid the pages out.
//
// Places are millimetres from the page's upper left corner, x to the right, y downwards.
#pragma once

#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <QString>
#include <QStringList>
#include <cstddef>
#include <stdexcept>
#include <vector>

#include "tests/app/patience.hpp"

namespace fayline::test {

inline QByteArray outputOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForFinished(patience_ms) || process.exitCode() != 0) {
        throw std::runtime_error((program + " failed: " + process.readAllStandardError()).toStdString());
    }
    return process.readAllStandardOutput();
}

inline int pageCount(const QString& pdf) {
    const QString info = outputOf("pdfinfo", {pdf});
    return QRegularExpression("Pages:\\s+(\\d+)").match(info).captured(1).toInt();
}

// The text of each page, laid out in lines as on paper.
inline QStringList textsOf(const QString& pdf) {
    QStringList pages = QString::fromUtf8(outputOf("pdftotext", {"-layout", pdf, "-"})).split('\f');
    pages.removeLast();  // each page ends with a form feed
    return pages;
}

struct Word {
    QString text;
    QRectF box;
};

// The words of each page.
inline std::vector<std::vector<Word>> wordsOf(const QString& pdf) {
    const QString found = QString::fromUtf8(outputOf("pdftotext", {"-bbox", pdf, "-"}));
    static const QRegularExpression pattern(
        R"re(<page |<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">([^<]*)</word>)re");
    std::vector<std::vector<Word>> pages;
    for (auto match = pattern.globalMatch(found); match.hasNext();) {
        const auto one = match.next();
        if (one.capturedLength(5) == 0 && one.captured() == "<page ") {
            pages.emplace_back();
            continue;
        }
        const auto mm = [&](int i) { return one.captured(i).toDouble() * 25.4 / 72; };
        pages.back().push_back({one.captured(5), QRectF(QPointF(mm(1), mm(2)), QPointF(mm(3), mm(4)))});
    }
    return pages;
}

// Text of all pages in one line, single blanks, joined letters parted. In the order in which it was written, so that
// the lines of a cell stay together.
inline QString wholeText(const QString& file) {
    return QString::fromUtf8(outputOf("pdftotext", {"-raw", file, "-"}))
        .normalized(QString::NormalizationForm_KC)
        .simplified();
}

// Words whose letters reach beyond `area`, with 0.2 mm for what pdftotext rounds.
inline QStringList wordsOutside(const std::vector<Word>& words, const QRectF& area) {
    QStringList outside;
    for (const Word& word : words) {
        const double space = 0.18 * word.box.height();  // above and below the letters in the line's height
        const QRectF letters = word.box.adjusted(0, space, 0, -space);
        if (!area.adjusted(-0.2, -0.2, 0.2, 0.2).contains(letters)) outside << word.text;
    }
    return outside;
}

// Pairs of words whose boxes overlap, for a person to read; the boxes are those of the letters, a little smaller than
// the line's height that pdftotext gives.
inline QStringList overlapsOf(const std::vector<Word>& words) {
    QStringList overlaps;
    const auto letters = [](const QRectF& box) {
        return box.adjusted(0.2, 0.22 * box.height(), -0.2, -0.22 * box.height());
    };
    for (std::size_t i = 0; i < words.size(); ++i) {
        for (std::size_t j = i + 1; j < words.size(); ++j) {
            if (letters(words[i].box).intersects(letters(words[j].box))) {
                overlaps << QString("'%1' on '%2'").arg(words[i].text, words[j].text);
            }
        }
    }
    return overlaps;
}

}  // namespace fayline::test
