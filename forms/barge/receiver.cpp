// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/receiver.h"

#include <QGeoPositionInfo>
#include <QSerialPort>
#include <QTcpSocket>
#include <algorithm>
#include <cstdlib>
#include <utility>

#include "forms/barge/checked_nmea.h"
#include "model/place/ground_map.h"

namespace spoilbook::form {
namespace {

// Tried again soon, then ever later: a receiver that is switched off at night costs nothing.
constexpr int first_wait_ms = 1000;
constexpr int longest_wait_ms = 15000;
constexpr std::int64_t thinned_ms = 5 * ms_per_second;
constexpr std::size_t most_fixes = 24 * 3600 / 5;

}  // namespace

Receiver::Receiver(std::function<Instant()> clock, ReceiverSettings settings, Keep keep, QObject* parent)
    : QObject(parent), clock_(std::move(clock)), settings_(std::move(settings)), keep_(std::move(keep)) {
    again_.setSingleShot(true);
    connect(&again_, &QTimer::timeout, this, &Receiver::reach);
    reach();
}

Receiver::~Receiver() {
    // A device that closes says so: there is nobody left to hear it.
    if (device_) device_->disconnect(this);
    delete source_;
}

void Receiver::set_settings(const ReceiverSettings& settings) {
    if (settings == settings_) return;
    const bool same_line = settings.way == settings_.way && settings.host == settings_.host &&
                           settings.port == settings_.port && settings.device == settings_.device &&
                           settings.baud == settings_.baud;
    settings_ = settings;
    if (keep_) keep_(settings_);
    if (!same_line) {
        newest_.reset();
        fixes_.clear();
        wait_ms_ = 0;
        reach();
    }
    emit changed();
}

void Receiver::reach() {
    again_.stop();
    for (QObject* old : {static_cast<QObject*>(source_), static_cast<QObject*>(device_)}) {
        if (!old) continue;
        old->disconnect(this);
        old->deleteLater();
    }
    source_ = nullptr;
    device_ = nullptr;
    open_ = false;
    says_none_ = false;
    problem_.clear();
    if (settings_.way == ReceiverSettings::Way::network) reach_network();
    if (settings_.way == ReceiverSettings::Way::serial) reach_serial();
}

void Receiver::reach_network() {
    if (settings_.host.isEmpty()) return gone(tr("no address is given"));
    auto* socket = new QTcpSocket(this);
    device_ = socket;
    connect(socket, &QTcpSocket::connected, this, &Receiver::reached);
    connect(socket, &QTcpSocket::errorOccurred, this, [this, socket] { gone(socket->errorString()); });
    connect(socket, &QTcpSocket::disconnected, this, [this] { gone(tr("it hung up")); });
    socket->connectToHost(settings_.host, static_cast<quint16>(settings_.port), QIODevice::ReadOnly);
}

void Receiver::reach_serial() {
    if (settings_.device.isEmpty()) return gone(tr("no serial device is given"));
    auto* port = new QSerialPort(settings_.device, this);
    device_ = port;
    port->setBaudRate(settings_.baud);
    connect(port, &QSerialPort::errorOccurred, this, [this, port](QSerialPort::SerialPortError error) {
        if (error != QSerialPort::NoError) gone(port->errorString());
    });
    if (port->open(QIODevice::ReadOnly)) reached();
}

void Receiver::reached() {
    open_ = true;
    wait_ms_ = 0;
    problem_.clear();
    source_ = new CheckedNmea(this);
    source_->setDevice(device_);
    connect(source_, &CheckedNmea::positionUpdated, this, &Receiver::take);
    connect(source_, &CheckedNmea::without_fix, this, [this] {
        if (std::exchange(says_none_, true)) return;
        emit changed();
    });
    source_->startUpdates();
    emit changed();
}

void Receiver::gone(const QString& why) {
    if (again_.isActive()) return;
    open_ = false;
    problem_ = why;
    wait_ms_ = std::clamp(2 * wait_ms_, first_wait_ms, longest_wait_ms);
    again_.start(wait_ms_);
    emit changed();
}

void Receiver::take(const QGeoPositionInfo& info) {
    if (!info.isValid()) return;
    const QGeoCoordinate at = info.coordinate();
    LiveFix live;
    live.fix = {Instant{info.timestamp().toMSecsSinceEpoch()}, {at.latitude(), at.longitude()}};
    live.u_assumed = !info.hasAttribute(QGeoPositionInfo::HorizontalAccuracy);
    // Qt's is twice HDOP times the range's uncertainty: 95 %.
    live.u_m = live.u_assumed ? usual_position_u_m : info.attribute(QGeoPositionInfo::HorizontalAccuracy) / 2;
    says_none_ = false;
    // A receiver that starts anew may tell an older time; its track must stay in order.
    if (!newest_ || live.fix.at > newest_->fix.at) keep(live.fix);
    newest_ = live;
    came_ = clock_();
    emit changed();
}

void Receiver::keep(const ReceiverFix& fix) {
    // The newest stands last, and stays where the one before it is far enough back.
    const std::size_t count = fixes_.size();
    if (count >= 2 && fixes_[count - 1].at - fixes_[count - 2].at < thinned_ms) fixes_.pop_back();
    if (fixes_.size() >= most_fixes) fixes_.erase(fixes_.begin(), fixes_.begin() + most_fixes / 8);
    fixes_.push_back(fix);
}

std::optional<std::int64_t> Receiver::age_ms() const {
    if (!newest_) return std::nullopt;
    return clock_() - newest_->fix.at;
}

std::optional<LiveFix> Receiver::fresh() const {
    return state() == ReceiverState::fix ? newest_ : std::nullopt;
}

bool Receiver::clocks_differ() const {
    return newest_ && std::abs(clock_() - came_) <= fresh_ms && std::abs(came_ - newest_->fix.at) > fresh_ms;
}

ReceiverState Receiver::state() const {
    if (settings_.way == ReceiverSettings::Way::off) return ReceiverState::off;
    const auto age = age_ms();
    if (!age) return open_ ? ReceiverState::waiting : ReceiverState::no_receiver;
    // A line that drops for a moment, or one sentence without a position, changes nothing: the age tells.
    if (std::abs(*age) <= fresh_ms) return ReceiverState::fix;
    return open_ && !says_none_ ? ReceiverState::stale : ReceiverState::lost;
}

}  // namespace spoilbook::form
