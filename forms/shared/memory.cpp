// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/memory.h"

#include <QCryptographicHash>
#include <QSettings>

namespace spoilbook::form {
namespace {

constexpr int most_recent = 10;
constexpr int most_baud = 921600;

QString light_key() {
    return QStringLiteral("look/light");
}
QString recent_key() {
    return QStringLiteral("books/recent");
}
QString window_key() {
    return QStringLiteral("window/geometry");
}

QString receiver_key(const char* what) {
    return QStringLiteral("receiver/") + QString::fromLatin1(what);
}

// A path may hold what a settings key must not.
QString key_of(const QString& group, const QString& book) {
    const QByteArray digest = QCryptographicHash::hash(book.toUtf8(), QCryptographicHash::Sha256);
    return group + u'/' + QString::fromLatin1(digest.toHex().left(16));
}
QString place_key(const QString& book) {
    return key_of(QStringLiteral("places"), book);
}
QString logger_folder_key(const QString& book) {
    return key_of(QStringLiteral("logger_folders"), book);
}

QString person_key(const QString& book) {
    return key_of(QStringLiteral("people"), book);
}

}  // namespace

Light Memory::light() const {
    return settings_.value(light_key()).toString() == QStringLiteral("night") ? Light::night : Light::day;
}

void Memory::set_light(Light light) {
    settings_.setValue(light_key(), light == Light::night ? QStringLiteral("night") : QStringLiteral("day"));
}

QStringList Memory::recent_books() const {
    return settings_.value(recent_key()).toStringList().mid(0, most_recent);
}

void Memory::add_recent_book(const QString& path) {
    QStringList books = recent_books();
    books.removeAll(path);
    books.prepend(path);
    settings_.setValue(recent_key(), books.mid(0, most_recent));
}

void Memory::forget_book(const QString& path) {
    QStringList books = recent_books();
    books.removeAll(path);
    settings_.setValue(recent_key(), books);
    settings_.remove(place_key(path));
    settings_.remove(person_key(path));
}

QByteArray Memory::window() const {
    return settings_.value(window_key()).toByteArray();
}

void Memory::set_window(const QByteArray& geometry) {
    settings_.setValue(window_key(), geometry);
}

QString Memory::place(const QString& book) const {
    return settings_.value(place_key(book)).toString();
}

void Memory::set_place(const QString& book, const QString& desk_and_leaf) {
    settings_.setValue(place_key(book), desk_and_leaf);
}

QString Memory::person(const QString& book) const {
    return settings_.value(person_key(book)).toString();
}

void Memory::set_person(const QString& book, const QString& name) {
    if (person(book) != name) settings_.setValue(person_key(book), name);
}

QString Memory::logger_folder(const QString& book) const {
    return settings_.value(logger_folder_key(book)).toString();
}

void Memory::set_logger_folder(const QString& book, const QString& folder) {
    settings_.setValue(logger_folder_key(book), folder);
}

ReceiverSettings Memory::receiver() const {
    const auto text = [this](const char* what) { return settings_.value(receiver_key(what)).toString(); };
    const auto number = [this](const char* what, int usual, int most) {
        const int value = settings_.value(receiver_key(what), usual).toInt();
        return value >= 1 && value <= most ? value : usual;
    };
    ReceiverSettings receiver;
    if (text("way") == QStringLiteral("network")) receiver.way = ReceiverSettings::Way::network;
    if (text("way") == QStringLiteral("serial")) receiver.way = ReceiverSettings::Way::serial;
    receiver.host = text("host");
    receiver.port = number("port", receiver.port, 65535);
    receiver.device = text("device");
    receiver.baud = number("baud", receiver.baud, most_baud);
    if (text("stands_on") == QStringLiteral("barge")) receiver.stands_on = QStringLiteral("barge");
    return receiver;
}

void Memory::set_receiver(const ReceiverSettings& receiver) {
    const bool network = receiver.way == ReceiverSettings::Way::network;
    const QString way = network ? QStringLiteral("network") : QStringLiteral("serial");
    settings_.setValue(receiver_key("way"),
                       receiver.way == ReceiverSettings::Way::off ? QStringLiteral("off") : way);
    settings_.setValue(receiver_key("host"), receiver.host);
    settings_.setValue(receiver_key("port"), receiver.port);
    settings_.setValue(receiver_key("device"), receiver.device);
    settings_.setValue(receiver_key("baud"), receiver.baud);
    settings_.setValue(receiver_key("stands_on"), receiver.stands_on);
}

}  // namespace spoilbook::form
