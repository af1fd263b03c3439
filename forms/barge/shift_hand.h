// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/barge/receiver.h"
#include "forms/shared/book_session.h"
#include "model/logging/press.h"
#include "model/progress/next_station.h"
#include "model/progress/running.h"

namespace spoilbook::form {

/// The presses of the barge desk: each takes what runs now, the present time and the person, and writes one
/// entry. Pages ask it what runs, and press; they hold no rule of their own. A second press of a key whose
/// next press means another step, within two seconds, logs nothing and says so.
class ShiftHand : public QObject {
    Q_OBJECT

 public:
    /// `receiver` outlives the hand; null: none.
    explicit ShiftHand(BookSession& session, Receiver* receiver = nullptr, QObject* parent = nullptr);

    [[nodiscard]] BookSession& session() const { return session_; }
    [[nodiscard]] Receiver* receiver() const { return receiver_; }
    [[nodiscard]] const Season& season() const { return session_.season(); }
    /// What runs by the book as it stands.
    [[nodiscard]] Running now_running() const { return running(season()); }
    /// Where "next station" would put the pontoon.
    [[nodiscard]] std::optional<NextStation> offered_station() const { return next_station(season()); }
    /// The bucket that is counted: the one chosen here, else that of the newest tally, else the dredger's
    /// first. Blank: the dredger has none.
    [[nodiscard]] Id bucket() const;
    void choose_bucket(const Id& bucket) { bucket_ = bucket; }

    void open_shift();
    void end_shift();
    /// Spuds down at the place that is offered; with no offer, without a place.
    void spuds_down();
    void spuds_up();
    /// Ends the station and begins the next one in the lane, one entry.
    void next_station_in_lane();
    void barge_alongside(const Barge& barge);
    void count(double buckets, bool typed = false);
    /// The line that it counts on now: buckets from this station into the load alongside.
    [[nodiscard]] double counted_here() const;
    void full();
    /// Casts off what is to be sent, closed or not: what its load lacks is told after, and stops nothing.
    void cast_off();
    /// The first press of a release takes the receiver's place with it, where its fix is fresh: one entry.
    void doors_open(const Trip& trip);
    void empty(const Trip& trip);
    void doors_shut(const Trip& trip);
    /// Keeps what the receiver told since casting off as the trip's track.
    void alongside(const Trip& trip);
    /// Why the receiver's place was not taken at the first press of this trip's release; empty: it was, or
    /// there is no receiver.
    [[nodiscard]] QString why_no_place(const Trip& trip) const;
    /// A place that the receiver told at a later press of a release that has none: to be offered.
    [[nodiscard]] std::optional<LiveFix> late_place(const Trip& trip) const;
    void take_late_place(const Trip& trip);
    void turned_back(const Trip& trip);
    void delay(const std::string& cause);
    /// The label of what it began; empty: refused, and said.
    std::string sounding();
    std::string hand_over();
    /// Signs by this name. Empty: signed; otherwise why not.
    QString sign(const Shift& shift, const QString& name);

 private:
    [[nodiscard]] Press press() const { return {session_.book(), season(), session_.now()}; }
    [[nodiscard]] LogLines lines_of_spuds_down(const Running& now) const;
    using More = std::function<Checked<Done>(Change&)>;
    /// Writes the lines, and `more` with them, as one entry; a refusal is said above the sheet. Answers
    /// whether it was written.
    bool write(const QString& what, const LogLines& lines, const More& more = {});
    /// The steps that one key logs one after the other: pressed twice by a glove, it would log the next one.
    enum class Steps { station, trip, delay };
    /// Writes the lines of a step, unless the same key logged one a moment ago: then it says what that was,
    /// and asks for no lines. Answers whether it wrote.
    bool step(Steps of, const QString& what, const std::function<LogLines()>& lines, const More& more = {});
    [[nodiscard]] bool pressed_a_moment_ago(Steps of) const;
    /// The lines of a press of the release, with the receiver's place where that is taken.
    [[nodiscard]] LogLines placed(const Trip& trip, LogLines pressed);

    BookSession& session_;
    Receiver* receiver_;
    Id placed_trip_;  ///< the trip that the two below are of
    QString why_no_place_;
    std::optional<LiveFix> late_place_;
    Id bucket_;
    std::optional<Steps> stepped_;  ///< whose step is the one below
    Written step_;
};

}  // namespace spoilbook::form
