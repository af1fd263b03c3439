// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/checked_nmea.h"

#include "model/place/nmea_track.h"

namespace spoilbook::form {
namespace {

/// What a pseudo-range is worth at the receiver, m (68 %): a position's uncertainty is HDOP times it. Rather
/// cautious for one frequency without corrections; common practice, no source.
constexpr double range_u_m = 5;

}  // namespace

CheckedNmea::CheckedNmea(QObject* parent) : QNmeaPositionInfoSource(RealTimeMode, parent) {
    setUserEquivalentRangeError(range_u_m);
}

bool CheckedNmea::parsePosInfoFromNmeaData(const char* data, int size, QGeoPositionInfo* info,
                                           bool* has_fix) {
    std::string_view line(data, static_cast<std::size_t>(size));
    while (!line.empty() && (line.back() == '\n' || line.back() == '\r' || line.back() == '\0'))
        line.remove_suffix(1);
    NmeaSentence sentence;
    if (take_apart(line, sentence) != NmeaFault::none) return false;
    emit heard();
    const auto measured = measured_fix(sentence);
    if (measured && !*measured) {
        emit without_fix();
        return false;
    }
    return QNmeaPositionInfoSource::parsePosInfoFromNmeaData(data, size, info, has_fix);
}

}  // namespace spoilbook::form
