// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/place_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "forms/barge/desk_words.h"
#include "model/unit/shown.h"

namespace spoilbook::form {
namespace {

constexpr double metres_until = 10'000;

QString words(const char* text) {
    return QCoreApplication::translate("place_words", text);
}

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

/// Whole metres, whole kilometres where they are many.
QString way(double distance_m) {
    const double off_m = std::abs(distance_m);
    if (off_m < metres_until) return words("%1 m").arg(QLocale().toString(off_m, 'f', 0));
    return words("%1 km").arg(QLocale().toString(off_m / 1000, 'f', 0));
}

/// ± at 95 %, rounded up.
QString plus_minus(double u_m) {
    return words("± %1 m (95 %)").arg(QLocale().toString(rounded_up(2 * u_m, 0), 'f', 0));
}

QString slip_words(Slip slip) {
    switch (slip) {
        case Slip::latitude_sign:
            return words("is the latitude's sign right?");
        case Slip::longitude_sign:
            return words("is the longitude's sign right?");
        case Slip::both_signs:
            return words("are both signs right?");
        case Slip::exchanged:
            return words("are latitude and longitude exchanged?");
        case Slip::none:
            break;
    }
    return words("is it typed right?");
}

QString age_words(const Receiver& receiver) {
    const std::int64_t age = receiver.age_ms().value_or(0);
    if (receiver.clocks_differ()) {
        return (age > 0 ? words("its time is %1 behind this machine's clock: set the clock")
                        : words("its time is %1 ahead of this machine's clock: set the clock"))
            .arg(span_words(std::abs(age)));
    }
    const std::int64_t seconds = std::max<std::int64_t>(age, 0) / ms_per_second;
    return seconds < 60 ? words("%1 s old").arg(seconds) : words("%1 old").arg(span_words(age));
}

}  // namespace

PlaceWords spot_words(const Spot& spot) {
    if (spot.ground.empty()) return {State::unknown, words("no ground"), words("none is on the map")};
    const QString ground = shown(spot.ground);
    if (spot.odd) return {State::attention, words("odd"), odd_place_words(spot)};
    const bool inside = spot.distance_m >= 0;
    const QString off = words("%1, %2 from its edge").arg(ground, way(spot.distance_m));
    switch (spot.verdict) {
        case PlaceVerdict::inside:
            return {State::clear, words("inside"), off};
        case PlaceVerdict::outside:
            return {State::hold, words("outside"), off};
        case PlaceVerdict::cannot_tell:
            break;
    }
    return {
        State::unknown, words("cannot tell"),
        (inside ? words("inside %1 %2") : words("outside %1 %2")).arg(off, plus_minus(spot.position_u_m))};
}

QString odd_place_words(const Spot& spot) {
    if (!spot.odd) return {};
    return words("%1 from %2: %3").arg(way(spot.distance_m), shown(spot.ground), slip_words(spot.slip));
}

PlaceWords cell_words(const CellSaid& said) {
    const QString written = shown(said.written), lies_in = shown(said.lies_in), ground = shown(said.ground);
    switch (said.says) {
        case CellSays::nothing:
            break;
        case CellSays::by_position:
            return {State::attention, words("no cell"),
                    words("By its position limits count it in %1. Write the cell.").arg(lies_in)};
        case CellSays::no_cell:
            return {State::attention, words("no cell"),
                    words("It counts under no cell of %1. Write the cell.").arg(ground)};
        case CellSays::contradicts:
            return {State::attention, words("not in %1").arg(written),
                    (lies_in.isEmpty() ? words("The position lies %1 outside cell %2, in no cell.")
                                       : words("The position lies %1 outside cell %2, in %3."))
                        .arg(way(said.outside_m), written, lies_in)};
        case CellSays::beside:
            return {State::unknown, words("cannot tell"),
                    words("The position lies %1 outside cell %2, %3.")
                        .arg(way(said.outside_m), written, plus_minus(said.position_u_m))};
    }
    return {State::clear, {}, {}};
}

PlaceWords receiver_words(const Receiver& receiver) {
    switch (receiver.state()) {
        case ReceiverState::off:
            return {State::unknown, words("no receiver"), words("positions are typed")};
        case ReceiverState::no_receiver:
            return {State::unknown, words("no receiver"), receiver.problem()};
        case ReceiverState::waiting:
            return {State::attention, words("waiting"), words("no position with a time and a date yet")};
        case ReceiverState::fix:
            return {State::clear, words("fix"),
                    words("%1, %2").arg(age_words(receiver), plus_minus(receiver.newest()->u_m))};
        case ReceiverState::stale:
            return {State::attention, words("stale"), age_words(receiver)};
        case ReceiverState::lost:
            break;
    }
    return {State::hold, words("lost"), age_words(receiver)};
}

QString hopper_words(const HopperNow& now) {
    const Spot& spot = now.spot;
    if (spot.ground.empty()) return words("No ground is on the map.");
    const QString who = now.astern ? words("Hopper") : words("Receiver");
    const QString side = spot.distance_m >= 0 ? words("%1 %2 inside %3, %4") : words("%1 %2 outside %3, %4");
    return side.arg(who, way(spot.distance_m), shown(spot.ground), plus_minus(spot.position_u_m));
}

QString cell_way_words(const HopperNow& now) {
    if (!now.to_cell) return {};
    return words("Cell %1: %2° true, %3")
        .arg(shown(now.to_cell->cell),
             QStringLiteral("%1").arg(int(std::lround(now.to_cell->course_deg)) % 360, 3, 10, QChar(u'0')),
             way(now.to_cell->distance_m));
}

}  // namespace spoilbook::form
