// Pages of a PDF file turned into pictures by poppler's tools, and lengths measured in the pictures: knows nothing of
// the code that laid the pages out.
//
// Places are millimetres from the page's upper left corner, x to the right, y downwards.
#pragma once

#include <QDir>
#include <QFile>
#include <QImage>
#include <QPointF>
#include <QRectF>
#include <QTemporaryDir>
#include <QTransform>
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <stdexcept>
#include <vector>

#include "core/math/count.hpp"
#include "tests/app/pdf_pages.hpp"

namespace fayline::test {

// The picture in a TIFF file of eight bits of grey a pixel, black nought, not compressed; Qt alone reads none.
inline QImage greyOfTiff(const QByteArray& tiff) {
    const auto refuse = [] { throw std::runtime_error("a picture of a page is no TIFF of plain grey"); };
    const bool smallEndFirst = tiff.startsWith("II");
    const auto number = [&](qsizetype at, int bytes) {
        if (at < 0 || at + bytes > tiff.size()) refuse();
        qsizetype value = 0;
        for (int i = 0; i < bytes; ++i) {
            value = 256 * value + static_cast<unsigned char>(tiff[at + (smallEndFirst ? bytes - 1 - i : i)]);
        }
        return value;
    };
    struct Field {
        qsizetype at = 0;  // of its first value
        int bytes = 2;     // of one value
        qsizetype count = 0;
    };
    std::map<qsizetype, Field> fields;
    const qsizetype list = number(4, 4);
    for (qsizetype i = 0; i < number(list, 2); ++i) {
        const qsizetype entry = list + 2 + 12 * i;
        const int bytes = number(entry + 2, 2) == 4 ? 4 : 2;  // a long or a short
        const qsizetype count = number(entry + 4, 4);
        fields[number(entry, 2)] = {bytes * count <= 4 ? entry + 8 : number(entry + 8, 4), bytes, count};
    }
    const auto value = [&](int tag, qsizetype i = 0) {
        const Field& field = fields[tag];
        if (i >= field.count) refuse();
        return number(field.at + field.bytes * i, field.bytes);
    };
    constexpr int width = 256;  // tags of the fields
    constexpr int height = 257;
    constexpr int bits = 258;
    constexpr int compression = 259;
    constexpr int blackIs = 262;
    constexpr int strips = 273;
    constexpr int samples = 277;
    constexpr int rows = 278;
    if (value(bits) != 8 || value(compression) != 1 || value(blackIs) != 1 || value(samples) != 1) refuse();
    QImage image(static_cast<int>(value(width)), static_cast<int>(value(height)), QImage::Format_Grayscale8);
    for (int y = 0; y < image.height(); ++y) {
        const qsizetype from = value(strips, y / value(rows)) + y % value(rows) * image.width();
        if (from + image.width() > tiff.size()) refuse();
        std::copy_n(tiff.constData() + from, image.width(), image.scanLine(y));
    }
    return image;
}

// A picture of one page and how dark it is where.
class Picture {
public:
    Picture(const QImage& page, int dotsPerInch)
        : image_(page.convertToFormat(QImage::Format_Grayscale8)),
          dotsPerInch_(dotsPerInch),
          dotsPerMm_(dotsPerInch / 25.4) {}

    Picture turnedBack() const {  // what was laid out lying, on a page that stands
        return {image_.transformed(QTransform().rotate(-90)), dotsPerInch_};
    }

    const QImage& image() const { return image_; }
    double width_mm() const { return image_.width() / dotsPerMm_; }
    double height_mm() const { return image_.height() / dotsPerMm_; }
    double pixel_mm() const { return 1 / dotsPerMm_; }

    // 0 white .. 1 black at a pixel; white outside the page.
    double darkAt(int x, int y) const {
        if (x < 0 || y < 0 || x >= width_ || y >= height_) return 0;
        return 1 - grey_[y * line_ + x] / 255.0;
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
        if (2 * math::countOf(offsets) < asked) return std::nullopt;
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
    int dotsPerInch_;
    double dotsPerMm_;
    // What is asked of every pixel.
    int width_ = image_.width();
    int height_ = image_.height();
    qsizetype line_ = image_.bytesPerLine();
    const uchar* grey_ = image_.constBits();

    int runOf(int x, int y, bool upright) const {
        int run = 0;
        while (darkAt(upright ? x : x + run, upright ? y + run : y) >= 0.5) ++run;
        return run;
    }
    bool isArms(int run) const { return std::abs(run / dotsPerMm_ - 8) < 0.6; }
};

// Pictures of the pages from `first` to `last`, counted from one; to the end where `last` is nought.
//
// pdftocairo rather than pdftoppm: the latter moves thin lines to whole pixels, by up to half a pixel at every join the
// same way. TIFF rather than PNG: pressing the pictures together takes six times as long as painting them.
inline std::vector<Picture> picturesOf(const QString& pdf, int dotsPerInch, int first = 1, int last = 0) {
    const QTemporaryDir folder;
    QStringList arguments{"-tiff", "-tiffcompression",           "none", "-gray",
                          "-r",    QString::number(dotsPerInch), "-f",   QString::number(first)};
    if (last > 0) arguments << "-l" << QString::number(last);
    outputOf("pdftocairo", arguments << pdf << folder.filePath("page"));
    std::vector<Picture> pictures;
    for (const QString& name : QDir(folder.path()).entryList(QDir::Files, QDir::Name)) {  // as many digits in each
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly)) throw std::runtime_error("no picture of a page");
        pictures.emplace_back(greyOfTiff(file.readAll()), dotsPerInch);
    }
    if (pictures.empty()) throw std::runtime_error("no picture of a page");
    return pictures;
}

inline Picture pictureOf(const QString& pdf, int page, int dotsPerInch) {
    return picturesOf(pdf, dotsPerInch, page, page).front();
}

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
        // The rules of a table may stand 4 mm above.
        const auto ys = picture.linesIn(QRectF(box.left() + 8, box.bottom() - 87, 40, 104), false, 0.45);
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
