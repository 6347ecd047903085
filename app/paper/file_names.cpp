#include "app/paper/file_names.hpp"

#include <QSet>

namespace fayline::app::paper {

namespace {

constexpr int longest = 40;

QString stemOf(const QString& name) {
    QString stem;
    int length = 0;
    for (const char32_t letter : name.normalized(QString::NormalizationForm_C).toUcs4()) {
        if (length == longest) break;
        const bool kept = QChar::isLetterOrNumber(letter) || QChar::isMark(letter);
        if (!kept && (stem.isEmpty() || stem.endsWith('-'))) continue;
        stem += kept ? QString::fromUcs4(&letter, 1) : QString('-');
        ++length;
    }
    while (stem.endsWith('-')) stem.chop(1);
    return stem.isEmpty() ? QString("piece") : stem;
}

}  // namespace

QStringList fileStems(const QStringList& names) {
    QStringList stems;
    QSet<QString> taken;
    for (const QString& name : names) {
        const QString stem = stemOf(name);
        QString unique = stem;
        for (int i = 2; taken.contains(unique.toCaseFolded()); ++i) unique = stem + "-" + QString::number(i);
        taken.insert(unique.toCaseFolded());
        stems << unique;
    }
    return stems;
}

}  // namespace fayline::app::paper
