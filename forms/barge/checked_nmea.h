// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QNmeaPositionInfoSource>

namespace spoilbook::form {

/// Qt's reader of a receiver's live sentences, strict: a sentence without a right checksum is not taken (Qt
/// checks one only where there is one), nor a position that is estimated, typed in or simulated, by the same
/// rule that reads a track's file (model/place/nmea_track.h).
class CheckedNmea : public QNmeaPositionInfoSource {
    Q_OBJECT

 public:
    explicit CheckedNmea(QObject* parent);

 signals:
    /// A whole sentence came: the receiver speaks.
    void heard();
    /// The receiver says that it has no position.
    void without_fix();

 protected:
    bool parsePosInfoFromNmeaData(const char* data, int size, QGeoPositionInfo* info, bool* has_fix) override;
};

}  // namespace spoilbook::form
