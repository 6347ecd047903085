// Pages of a PDF file turned into pictures and words by poppler's tools, and lengths measured in the pictures: knows
// nothing of the code that laid the pages out.
//
// Places are millimetres from the page's upper left corner, x to the right, y downwards.
#pragma once

#include <QImage>
#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <QString>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <vector>

namespace fayline::test {

inline QByteArray outputOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForFinished(120000) || process.exitCode() != 0) {
        throw std::runtime_error((program + " failed: " + process.readAllStandardError()).toStdString());
    }
    return process.readAllStandardOutput();
}

inline int pageCount(const QString& pdf) {
    const QString info = outputOf("pdfinfo", {pdf});
    return QRegularExpression("Pages:\\s+(\\d+)").match(info).captured(1).toInt();
}

inline QString textOf(const QString& pdf, int page) {
    const QString number = QString::number(page);
    return QString::fromUtf8(outputOf("pdftotext", {"-layout", "-f", number, "-l", number, pdf, "-"}));
}

struct Word {
    QString text;
    QRectF box;
};

inline std::vector<Word> wordsOf(const QString& pdf, int page) {
    const QString number = QString::number(page);
    const QString found = QString::fromUtf8(outputOf("pdftotext", {"-bbox", "-f", number, "-l", number, pdf, "-"}));
    static const QRegularExpression pattern(
        R"re(<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">([^<]*)</word>)re");
    std::vector<Word> words;
    for (auto match = pattern.globalMatch(found); match.hasNext();) {
        const auto word = match.next();
        const auto mm = [&](int i) { return word.captured(i).toDouble() * 25.4 / 72; };
        words.push_back({word.captured(5), QRectF(QPointF(mm(1), mm(2)), QPointF(mm(3), mm(4)))});
    }
    return words;
}

// Text of all pages in one line, single blanks, joined letters parted. In the order in which it was written, so that
// the lines of a cell stay together.
inline QString wholeText(const QString& file) {
    return QString::fromUtf8(outputOf("pdftotext", {"-raw", file, "-"}))
        .normalized(QString::NormalizationForm_KC)
        .simplified();
}

// Words whose letters reach beyond `area`, with 0.2 mm for what pdftotext rounds.
inline QStringList wordsOutside(const QString& file, int page, const QRectF& area) {
    QStringList outside;
    for (const Word& word : wordsOf(file, page)) {
        const double space = 0.18 * word.box.height();  // above and below the letters in the line's height
        const QRectF letters = word.box.adjusted(0, space, 0, -space);
        if (!area.adjusted(-0.2, -0.2, 0.2, 0.2).contains(letters)) outside << word.text;
    }
    return outside;
}

// Pairs of words whose boxes overlap, for a person to read; the boxes are those of the letters, a little smaller than
// the line's height that pdftotext gives.
inline QStringList overlapsOn(const QString& file, int page) {
    const std::vector<Word> words = wordsOf(file, page);
    QStringList overlaps;
    const auto letters = [](const QRectF& box) {
        return box.adjusted(0.2, 0.22 * box.height(), -0.2, -0.22 * box.height());
    };
    for (std::size_t i = 0; i < words.size(); ++i) {
        for (std::size_t j = i + 1; j < words.size(); ++j) {
            if (letters(words[i].box).intersects(letters(words[j].box))) {
                overlaps << QString("page %1: '%2' on '%3'").arg(page).arg(words[i].text, words[j].text);
            }
        }
    }
    return overlaps;
}

// A picture of one page and how dark it is where.
class Picture {
public:
    Picture(const QString& pdf, int page, int dotsPerInch) : dotsPerMm_(dotsPerInch / 25.4) {
        const QString number = QString::number(page);
        // pdftocairo rather than pdftoppm: the latter moves thin lines to whole pixels, by up to half a pixel at every
        // join the same way.
        const QByteArray png = outputOf(
            "pdftocairo",
            {"-png", "-gray", "-singlefile", "-r", QString::number(dotsPerInch), "-f", number, "-l", number, pdf, "-"});
        image_ = QImage::fromData(png, "PNG").convertToFormat(QImage::Format_Grayscale8);
        if (image_.isNull()) throw std::runtime_error("no picture of a page");
    }

    Picture turnedBack() const {  // what was laid out lying, on a page that stands
        Picture turned = *this;
        turned.image_ = image_.transformed(QTransform().rotate(-90));
        return turned;
    }

    double width_mm() const { return image_.width() / dotsPerMm_; }
    double height_mm() const { return image_.height() / dotsPerMm_; }
    double pixel_mm() const { return 1 / dotsPerMm_; }

    // 0 white .. 1 black at a pixel; white outside the page.
    double darkAt(int x, int y) const {
        if (x < 0 || y < 0 || x >= image_.width() || y >= image_.height()) return 0;
        return 1 - image_.constScanLine(y)[x] / 255.0;
    }

    // The same between pixels' middles, linear.
    double darkAt(const QPointF& place) const {
        const double x = place.x() * dotsPerMm_ - 0.5;
        const double y = place.y() * dotsPerMm_ - 0.5;
        const int i = static_cast<int>(std::floor(x));
        const int j = static_cast<int>(std::floor(y));
        const double u = x - i;
        const double v = y - j;
        return (1 - v) * ((1 - u) * darkAt(i, j) + u * darkAt(i + 1, j)) +
               v * ((1 - u) * darkAt(i, j + 1) + u * darkAt(i + 1, j + 1));
    }

    // Places of the lines that cross `box` from top to bottom (`upright`) or from left to right: where the mean
    // darkness along them is above `least`, each the centre of darkness of neighbouring pixels.
    std::vector<double> linesIn(const QRectF& box, bool upright, double least) const {
        const auto pixel = [&](double mm) { return static_cast<int>(std::lround(mm * dotsPerMm_)); };
        const int from = pixel(upright ? box.left() : box.top());
        const int to = pixel(upright ? box.right() : box.bottom());
        const int first = pixel(upright ? box.top() : box.left());
        const int last = pixel(upright ? box.bottom() : box.right());
        std::vector<double> lines;
        double weight = 0;
        double moment = 0;
        double most = 0;
        for (int i = from; i <= to + 1; ++i) {
            double dark = 0;
            for (int j = first; j < last && i <= to; ++j) dark += upright ? darkAt(i, j) : darkAt(j, i);
            dark /= std::max(1, last - first);
            if (i <= to && dark > 0.05) {
                weight += dark;
                moment += dark * (i + 0.5);
                most = std::max(most, dark);
                continue;
            }
            if (most > least) lines.push_back(moment / weight / dotsPerMm_);
            weight = moment = most = 0;
        }
        return lines;
    }

    // Offset along `across` (a unit vector) from `middle` to the centre of the line that lies nearest to it, within
    // `reach_mm`: the median over a stretch of `along_mm` to either side, so that a dotted line which crosses does not
    // count. Nothing where there is no ink along half of the stretch.
    std::optional<double> inkOffset(const QPointF& middle, const QPointF& across, double reach_mm,
                                    double along_mm) const {
        const QPointF along(-across.y(), across.x());
        const double step = pixel_mm() / 4;
        std::vector<double> offsets;
        int asked = 0;
        for (double t = -along_mm; t <= along_mm; t += pixel_mm() / 2) {
            ++asked;
            std::optional<double> nearest;
            double weight = 0;
            double moment = 0;
            double most = 0;
            for (double s = -reach_mm - step; s <= reach_mm + step; s += step) {
                const bool within = std::abs(s) <= reach_mm;
                const double dark = within ? darkAt(middle + s * across + t * along) : 0;
                if (dark > 0.1) {
                    weight += dark;
                    moment += dark * s;
                    most = std::max(most, dark);
                    continue;
                }
                if (most > 0.4 && (!nearest || std::abs(moment / weight) < std::abs(*nearest)))
                    nearest = moment / weight;
                weight = moment = most = 0;
            }
            if (nearest) offsets.push_back(*nearest);
        }
        if (2 * static_cast<int>(offsets.size()) < asked) return std::nullopt;
        const auto half = offsets.begin() + static_cast<std::ptrdiff_t>(offsets.size() / 2);
        std::nth_element(offsets.begin(), half, offsets.end());
        return *half;
    }

    // The middle of the cross with arms of 4 mm that lies nearest to `near`: where an upright and a level run of ink,
    // each 8 mm long, halve each other.
    std::optional<QPointF> crossNear(const QPointF& near, double reach_mm) const {
        std::optional<QPointF> best;
        const int x0 = static_cast<int>((near.x() - reach_mm) * dotsPerMm_);
        const int y0 = static_cast<int>((near.y() - reach_mm) * dotsPerMm_);
        const int size = static_cast<int>(2 * reach_mm * dotsPerMm_);
        for (int x = x0; x < x0 + size; ++x) {
            for (int y = y0; y < y0 + size; ++y) {
                if (darkAt(x, y) < 0.5 || darkAt(x, y - 1) >= 0.5) continue;  // only where a run begins
                const int run = runOf(x, y, true);
                if (!isArms(run)) continue;
                const int middle = y + run / 2;
                int left = x;
                while (darkAt(left - 1, middle) >= 0.5) --left;
                if (!isArms(runOf(left, middle, false))) continue;
                const QPointF at((x + 0.5) / dotsPerMm_, (middle + 0.5) / dotsPerMm_);
                if (!best || QLineF(at, near).length() < QLineF(*best, near).length()) best = at;
            }
        }
        if (!best) return std::nullopt;
        // The ring leaves the arms' last millimetre alone: the centre of darkness there is exact.
        const auto centre = [&](const QPointF& across) {
            const QPointF arm = 3.2 * QPointF(across.y(), across.x());
            return (inkOffset(*best + arm, across, 1, 0.5).value_or(1) +
                    inkOffset(*best - arm, across, 1, 0.5).value_or(1)) /
                   2;
        };
        return *best + QPointF(centre({1, 0}), centre({0, 1}));
    }

private:
    QImage image_;
    double dotsPerMm_;

    int runOf(int x, int y, bool upright) const {
        int run = 0;
        while (darkAt(upright ? x : x + run, upright ? y + run : y) >= 0.5) ++run;
        return run;
    }
    bool isArms(int run) const { return std::abs(run / dotsPerMm_ - 8) < 0.6; }
};

// The check squares as measured: sides of the inner and the outer one.
struct CheckSquares {
    double innerWidth_mm = 0;
    double innerHeight_mm = 0;
    double outerWidth_mm = 0;
    double outerHeight_mm = 0;
};

// Found by the words that stand in their lower left corner.
inline CheckSquares checkSquares(const Picture& picture, const std::vector<Word>& words) {
    const auto measure =
        std::find_if(words.begin(), words.end(), [](const Word& word) { return word.text == "Measure"; });
    for (auto word = measure; word != words.end(); ++word) {
        if (word->text != "Measure" || std::next(word) == words.end() || std::next(word)->text != "me:") continue;
        const QRectF& box = word->box;
        const auto xs = picture.linesIn(QRectF(box.left() - 8, box.top() - 40, 115, 30), true, 0.45);
        const auto ys = picture.linesIn(QRectF(box.left() + 8, box.bottom() - 100, 40, 117), false, 0.45);
        const auto spread = [](const std::vector<double>& lines, double wanted) {
            for (const double a : lines) {
                for (const double b : lines) {
                    if (std::abs(b - a - wanted) < 0.7) return b - a;
                }
            }
            return 0.0;
        };
        return {spread(xs, 100), spread(ys, 100), spread(xs, 101.6), spread(ys, 101.6)};
    }
    return {};
}

}  // namespace fayline::test
