// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace spoilbook::form {

/// How a receiver's sentences (NMEA 0183) come to this machine.
struct ReceiverSettings {
    enum class Way { off, network, serial };

    Way way = Way::off;
    QString host = {};                          ///< network: a name or an address
    int port = 10110;                           ///< IANA's port for NMEA 0183
    QString device = {};                        ///< serial: "/dev/ttyUSB0", "COM3"
    int baud = 4800;                            ///< NMEA 0183's own speed
    QString stands_on = QStringLiteral("tug");  ///< "tug" or "barge"

    bool operator==(const ReceiverSettings&) const = default;
};

}  // namespace spoilbook::form
