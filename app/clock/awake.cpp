#include "app/clock/awake.hpp"

#ifdef FAYLINE_HAS_DBUS
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#endif

namespace fayline::app {

#ifdef FAYLINE_HAS_DBUS

namespace {

QDBusMessage call(const QString& what) {
    return QDBusMessage::createMethodCall("org.freedesktop.ScreenSaver", "/org/freedesktop/ScreenSaver",
                                          "org.freedesktop.ScreenSaver", what);
}

}  // namespace

void Awake::set(bool awake, const QString& why) {
    if (awake == asked_) return;
    asked_ = awake;
    QDBusConnection bus = QDBusConnection::sessionBus();
    if (!bus.isConnected()) return;
    if (!awake) {
        if (cookie_ == 0) return;
        QDBusMessage message = call("UnInhibit");
        message << cookie_;
        cookie_ = 0;
        bus.call(message, QDBus::NoBlock);
        return;
    }
    QDBusMessage message = call("Inhibit");
    message << QStringLiteral("Fayline") << why;
    auto* watcher = new QDBusPendingCallWatcher(bus.asyncCall(message), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [this](QDBusPendingCallWatcher* answered) {
        const QDBusPendingReply<uint> reply = *answered;
        answered->deleteLater();
        if (reply.isError()) return;
        cookie_ = reply.value();
        if (asked_) return;  // no longer wanted when the answer came
        asked_ = true;
        set(false, {});
    });
}

#else

void Awake::set(bool awake, const QString&) {
    asked_ = awake;
}

#endif

}  // namespace fayline::app

#include "moc_awake.cpp"
