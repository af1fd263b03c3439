// SPDX-License-Identifier: GPL-3.0-or-later
// The presses of a trip on its way, and what a receiver adds to them.
#include "forms/barge/place_words.h"
#include "forms/barge/shift_hand.h"
#include "model/logging/keep_track.h"
#include "model/place/track_text.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

ReceiverPlace place_of(const Receiver& receiver, const LiveFix& live) {
    return {live.fix.place.lat_deg, live.fix.place.lon_deg, live.u_m,
            receiver.settings().stands_on.toStdString()};
}

}  // namespace

LogLines ShiftHand::placed(const Trip& trip, LogLines pressed) {
    const bool listens = receiver_ && receiver_->state() != ReceiverState::off;
    if (!listens || pressed.empty()) return pressed;
    if (placed_trip_ != trip.id) {
        placed_trip_ = trip.id;
        why_no_place_.clear();
        late_place_.reset();
    }
    const auto live = receiver_->fresh();
    const bool first = first_of_release(season(), trip);
    if (first) why_no_place_.clear();
    if (!live) {
        const PlaceWords words = receiver_words(*receiver_);
        if (first)
            why_no_place_ = tr("the receiver's was not taken (%1, %2): type it").arg(words.word, words.text);
        return pressed;
    }
    const LogLines place = place_release(press(), trip, pressed, place_of(*receiver_, *live));
    // Later presses tell where she was then, not where the doors opened.
    if (!first && !place.empty()) late_place_ = live;
    if (first) pressed.insert(pressed.end(), place.begin(), place.end());
    return pressed;
}

QString ShiftHand::why_no_place(const Trip& trip) const {
    return trip.id == placed_trip_ ? why_no_place_ : QString();
}

std::optional<LiveFix> ShiftHand::late_place(const Trip& trip) const {
    if (!late_place_ || trip.id != placed_trip_) return std::nullopt;
    return place_release(press(), trip, {}, place_of(*receiver_, *late_place_)).empty() ? std::nullopt
                                                                                        : late_place_;
}

void ShiftHand::take_late_place(const Trip& trip) {
    if (const auto late = late_place(trip))
        write(tr("trip %1, position by the receiver").arg(shown(trip.trip)),
              place_release(press(), trip, {}, place_of(*receiver_, *late)));
}

void ShiftHand::doors_open(const Trip& trip) {
    step(Steps::trip, tr("trip %1, doors open").arg(shown(trip.trip)),
         [&] { return placed(trip, spoilbook::doors_open(press(), trip)); });
}

void ShiftHand::empty(const Trip& trip) {
    step(Steps::trip, tr("trip %1, empty").arg(shown(trip.trip)),
         [&] { return placed(trip, spoilbook::empty(press(), trip)); });
}

void ShiftHand::doors_shut(const Trip& trip) {
    step(Steps::trip, tr("trip %1, doors shut").arg(shown(trip.trip)),
         [&] { return placed(trip, spoilbook::doors_shut(press(), trip)); });
}

void ShiftHand::alongside(const Trip& trip) {
    const Instant until = session_.now();
    step(
        Steps::trip, tr("trip %1, alongside").arg(shown(trip.trip)),
        [&] { return spoilbook::alongside(press(), trip); },
        [&](Change& change) -> Checked<Done> {
            if (!receiver_ || !trip.departed) return Done{};
            const auto kept = keep_track(
                change, trip, track_csv(receiver_->fixes(), *trip.departed, until, session_.zone()));
            if (!kept) return kept.refusals();
            return Done{};
        });
}

}  // namespace spoilbook::form
