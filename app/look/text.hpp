// Texts and file names of the core as Qt's and back; texts to be translated outside of Qt's classes.
#pragma once

#include <QObject>
#include <QString>
#include <filesystem>
#include <string>

namespace fayline::app {

inline QString text(const std::string& words) {
    return QString::fromStdString(words);
}

inline QString text(const char* words) {
    return QString::fromUtf8(words);
}

inline std::string text(const QString& words) {
    return words.toStdString();
}

inline std::filesystem::path pathOf(const QString& fileName) {
    return fileName.toStdU16String();
}

inline QString tr(const char* words) {
    return QObject::tr(words);
}

}  // namespace fayline::app
