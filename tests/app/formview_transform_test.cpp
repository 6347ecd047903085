#include <QtTest>
#include <cmath>

#include "app/formview/labels.hpp"
#include "app/formview/transform.hpp"

using namespace fayline;
using namespace fayline::app;

class FormviewTransform : public QObject {
    Q_OBJECT

private slots:
    void APlaceComesBackFromTheScreenAtEveryScale() {
        for (const double scale : {2.0, 37.5, 800.0, 90000.0}) {
            const Transform transform{scale, {123.4, 567.8}};
            for (const line::Xy place : {line::Xy{0, 0}, line::Xy{-1.25, 3.5}, line::Xy{12.0, -0.0005}}) {
                const line::Xy back = transform.toDrawing(transform.toScreen(place));
                QVERIFY(std::abs(back.x_m - place.x_m) < 1e-12);
                QVERIFY(std::abs(back.y_m - place.y_m) < 1e-12);
                const QPointF mapped = transform.matrix().map(QPointF(place.x_m, place.y_m));
                QVERIFY(QLineF(mapped, transform.toScreen(place)).length() < 1e-6);
            }
        }
    }

    void UpOnTheDrawingIsUpOnTheScreen() {
        const Transform transform;
        QVERIFY(transform.toScreen({0, 1}).y() < transform.toScreen({0, 0}).y());
    }

    void ZoomingKeepsWhatIsUnderTheCursor() {
        const QPointF cursor(321, 87);
        Transform transform{250, {40, 400}};
        const line::Xy under = transform.toDrawing(cursor);
        for (const double factor : {1.25, 0.1, 7.0, 1e9, 1e-12}) {
            transform = transform.zoomedAbout(cursor, factor);
            QVERIFY(QLineF(transform.toScreen(under), cursor).length() < 1e-6);
            QVERIFY(std::isfinite(transform.pixelsPerMetre) && transform.pixelsPerMetre > 0);
        }
    }

    void WhatIsFittedTouchesItsRoomAndLiesInTheMiddle() {
        Bounds bounds;
        bounds.include({-1, 2});
        bounds.include({3, 3});
        bounds.include({std::nan(""), 99});
        const QRectF room(10, 20, 400, 300);
        const Transform transform = fitted(bounds, room);
        const QPointF topLeft = transform.toScreen({-1, 3});
        const QPointF lowRight = transform.toScreen({3, 2});
        QVERIFY(std::abs(topLeft.x() - room.left()) < 1e-9);
        QVERIFY(std::abs(lowRight.x() - room.right()) < 1e-9);
        QVERIFY(QLineF((topLeft + lowRight) / 2, room.center()).length() < 1e-9);
    }

    void ASinglePlaceIsFittedWithoutHarm() {
        Bounds bounds;
        bounds.include({5, 5});
        const Transform transform = fitted(bounds, QRectF(0, 0, 200, 100));
        QVERIFY(QLineF(transform.toScreen({5, 5}), QPointF(100, 50)).length() < 1e-6);
    }

    // Forty words wished for at one spot: those placed keep apart and inside, the important ones first.
    void CrowdedWordsKeepApartAndTheImportantOnesStay() {
        const QRectF view(0, 0, 300, 200);
        std::vector<Wish> wishes;
        for (int i = 0; i < 40; ++i) {
            Wish wish;
            wish.words = QString::number(i);
            wish.size = QSizeF(50, 14);
            wish.anchor = QPointF(150, 100);
            wish.towards = QPointF(1, 0);
            wish.importance = i;
            wish.tag = i;
            wishes.push_back(wish);
        }
        std::vector<Text> texts;
        placeTexts(texts, wishes, view, Occupied(view.size()));
        QVERIFY(texts.size() > 4);
        QVERIFY(texts.size() < 40);
        QCOMPARE(texts.front().tag, 39);
        for (size_t i = 0; i < texts.size(); ++i) {
            QVERIFY(view.contains(texts[i].place));
            for (size_t j = 0; j < i; ++j) QVERIFY(!texts[i].place.intersects(texts[j].place));
        }
    }

    void WordsKeepOffWhatIsDrawn() {
        const QRectF view(0, 0, 300, 200);
        Occupied occupied(view.size());
        occupied.fill(QRectF(150, 0, 150, 200));
        Wish wish;
        wish.words = QStringLiteral("WL 12");
        wish.size = QSizeF(40, 14);
        wish.anchor = QPointF(146, 100);
        wish.towards = QPointF(1, 0);
        std::vector<Text> texts;
        placeTexts(texts, {wish}, view, occupied);
        QCOMPARE(texts.size(), size_t{1});
        QVERIFY(texts.front().place.right() < 150);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, FormviewTransform>(argc, argv);
}
#include "formview_transform_test.moc"
