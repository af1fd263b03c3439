// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QHostAddress>
#include <QPointer>
#include <QTcpServer>
#include <QTcpSocket>
#include <QTest>
#include <cmath>
#include <cstdio>
#include <string>

#include "model/unit/instant.h"

namespace spoilbook::tests {

/// A receiver's sentences as the standard writes them, with the right checksum unless told otherwise.
inline QByteArray sentence(const std::string& body, int off_by = 0) {
    unsigned sum = unsigned(off_by);
    for (const char c : body)
        sum ^= static_cast<unsigned char>(c);
    char end[8];
    std::snprintf(end, sizeof end, "*%02X\r\n", sum & 0xFFU);
    return QByteArray::fromStdString("$" + body) + end;
}

/// d(d)dmm.mmmmm and its side.
inline std::string nmea_angle(double degrees, int digits, const char* sides) {
    const double size = std::abs(degrees);
    const int whole = int(size);
    char text[32];
    std::snprintf(text, sizeof text, "%0*d%08.5f,%c", digits, whole, (size - whole) * 60,
                  degrees < 0 ? sides[1] : sides[0]);
    return text;
}

struct Told {
    std::string time, date;  ///< hhmmss.ss, ddmmyy; UTC
    double lat = 0, lon = 0;
};

inline std::string rmc(const Told& told, char status = 'A', char mode = 'A') {
    return "GPRMC," + told.time + "," + status + "," + nmea_angle(told.lat, 2, "NS") + "," +
           nmea_angle(told.lon, 3, "EW") + ",5.5,101.0," + told.date + ",,," + mode;
}

inline std::string gga(const Told& told, char quality = '1', const char* hdop = "0.9") {
    return "GPGGA," + told.time + "," + nmea_angle(told.lat, 2, "NS") + "," + nmea_angle(told.lon, 3, "EW") +
           "," + quality + ",09," + hdop + ",3.0,M,20.0,M,,";
}

/// A second of a log: a fix with its date and its dilution.
inline QByteArray second_of(const Told& told) {
    return sentence(rmc(told)) + sentence(gga(told));
}

/// A plotter or multiplexer that hands a receiver's log out over TCP, on a port of its own.
class NmeaFeed {
 public:
    NmeaFeed() {
        REQUIRE(server_.listen(QHostAddress::LocalHost));
        QObject::connect(&server_, &QTcpServer::newConnection, &server_,
                         [this] { line_ = server_.nextPendingConnection(); });
    }
    [[nodiscard]] int port() const { return server_.serverPort(); }
    [[nodiscard]] bool reached() const { return line_ && line_->state() == QAbstractSocket::ConnectedState; }
    void tell(const QByteArray& bytes) {
        REQUIRE(reached());
        line_->write(bytes);
        line_->flush();
    }
    void hang_up() {
        if (line_) line_->abort();
    }

 private:
    QTcpServer server_;
    QPointer<QTcpSocket> line_;
};

}  // namespace spoilbook::tests
