// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/shift_hand.h"

#include "forms/barge/load_answer.h"
#include "forms/shared/time_typed.h"
#include "model/logging/sign_shift.h"

namespace spoilbook::form {
namespace {

/// Within this a second press of the same key is one of a glove, not of its wearer.
constexpr std::int64_t moment_ms = 2000;

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace

ShiftHand::ShiftHand(BookSession& session, Receiver* receiver, QObject* parent)
    : QObject(parent), session_(session), receiver_(receiver) {}

bool ShiftHand::write(const QString& what, const LogLines& lines, const More& more) {
    if (lines.empty()) return false;
    const Refusals refusals =
        session_.write(what, EntryKind::change, {}, [&](Book& book, const Act& by) -> Checked<Done> {
            const auto entry = book.change(by, [&](Change& change) -> Checked<Done> {
                const auto logged = log_lines_in(change, lines);
                return logged && more ? more(change) : logged;
            });
            if (!entry) return entry.refusals();
            return Done{};
        });
    if (!refusals.empty()) emit session_.trouble(refusals_shown(refusals));
    return refusals.empty();
}

// Taken back, or followed by another entry, a step is no longer the last thing that was pressed.
bool ShiftHand::pressed_a_moment_ago(Steps of) const {
    const auto last = session_.last_written();
    if (stepped_ != of || !last || last->at != step_.at || last->what != step_.what) return false;
    const std::int64_t since_ms = session_.now() - step_.at;
    return since_ms >= 0 && since_ms < moment_ms;
}

bool ShiftHand::step(Steps of, const QString& what, const std::function<LogLines()>& lines,
                     const More& more) {
    if (pressed_a_moment_ago(of)) {
        emit session_.notice(tr("Logged at %1: %2. The second press came at once and logged nothing: press "
                                "again if you meant it.")
                                 .arg(time_shown(step_.at, session_.zone()), step_.what));
        return false;
    }
    if (!write(what, lines(), more)) return false;
    stepped_ = of;
    step_ = session_.last_written().value_or(Written{});
    return true;
}

Id ShiftHand::bucket() const {
    const Running now = now_running();
    const Id dredger = now.shift ? now.shift->dredger : Id();
    const auto fits = [&](const Id& id) {
        const Bucket* bucket = season().buckets.find(id);
        return bucket && (!dredger || bucket->dredger == dredger);
    };
    if (fits(bucket_)) return bucket_;
    const auto& tallies = season().tallies.rows();
    for (auto tally = tallies.rbegin(); tally != tallies.rend(); ++tally) {
        if (fits(tally->bucket)) return tally->bucket;
    }
    for (const Bucket& one : season().buckets.rows()) {
        if (fits(one.id)) return one.id;
    }
    return {};
}

void ShiftHand::open_shift() {
    const Shift* before = now_running().last;
    std::string skipper;
    for (const Writer& writer : session_.people()) {
        if (writer.name == session_.person()) skipper = writer.name.toStdString();
    }
    step(Steps::station, tr("shift opened"), [&] { return spoilbook::open_shift(press(), before, skipper); });
}

void ShiftHand::end_shift() {
    const Running now = now_running();
    if (now.shift)
        write(tr("shift %1 ended").arg(shown(now.shift->shift)), spoilbook::end_shift(press(), *now.shift));
}

LogLines ShiftHand::lines_of_spuds_down(const Running& now) const {
    const auto offer = offered_station();
    std::optional<StationPlace> place;
    if (offer) place = StationPlace{offer->easting_m, offer->northing_m, offer->heading_deg};
    return spoilbook::spuds_down(press(), *now.shift, offer ? offer->claim : Id(), place);
}

void ShiftHand::spuds_down() {
    const Running now = now_running();
    if (now.shift && !now.station)
        step(Steps::station, tr("spuds down"), [&] { return lines_of_spuds_down(now); });
}

void ShiftHand::spuds_up() {
    const Running now = now_running();
    if (now.station)
        step(Steps::station, tr("station %1, spuds up").arg(shown(now.station->station)),
             [&] { return spoilbook::spuds_up(press(), *now.station); });
}

void ShiftHand::next_station_in_lane() {
    const Running now = now_running();
    if (!now.shift || !now.station) return spuds_down();
    step(Steps::station, tr("next station"), [&] {
        LogLines lines = spoilbook::spuds_up(press(), *now.station);
        for (LogLine& line : lines_of_spuds_down(now))
            lines.push_back(std::move(line));
        return lines;
    });
}

void ShiftHand::barge_alongside(const Barge& barge) {
    write(tr("%1 alongside").arg(shown(barge.name)), spoilbook::barge_alongside(press(), barge));
}

void ShiftHand::count(double buckets, bool typed) {
    const Running now = now_running();
    if (!now.shift || !now.station || !now.load) return;
    write(tr("tally of load %1").arg(shown(now.load->load)),
          count_buckets(press(), *now.shift, *now.station, *now.load, bucket(), buckets, typed));
}

double ShiftHand::counted_here() const {
    const Running now = now_running();
    if (!now.shift || !now.station || !now.load) return 0;
    return buckets_counted(season(), *now.shift, *now.station, *now.load, bucket());
}

void ShiftHand::full() {
    const Running now = now_running();
    if (now.load) write(tr("load %1 full").arg(shown(now.load->load)), spoilbook::full(press(), *now.load));
}

void ShiftHand::cast_off() {
    const Running now = now_running();
    const Shift* shift = now.shift ? now.shift : now.last;
    const QString load = now.to_send ? shown(now.to_send->load) : QString();
    const QStringList lacks = now.to_send ? load_lacks(season(), *now.to_send) : QStringList();
    const bool gone = step(Steps::trip, tr("cast off"), [&] {
        return spoilbook::cast_off(press(), now.to_send, shift ? shift->tug : Id());
    });
    if (gone && !lacks.isEmpty())
        emit session_.notice(tr("Cast off with load %1 not closed: %2. It can be written on the shift sheet "
                                "(F12), or the cast off taken back.")
                                 .arg(load, lacks.join(QStringLiteral(", "))));
}

void ShiftHand::turned_back(const Trip& trip) {
    step(Steps::trip, tr("trip %1, turned back").arg(shown(trip.trip)),
         [&] { return spoilbook::turned_back(press(), trip); });
}

void ShiftHand::delay(const std::string& cause) {
    const Running now = now_running();
    if (now.delay)
        step(Steps::delay, tr("delay stopped"), [&] { return delay_ends(press(), *now.delay); });
    else if (now.shift)
        step(Steps::delay, tr("delay started"), [&] { return delay_begins(press(), *now.shift, cause); });
}

std::string ShiftHand::sounding() {
    const Running now = now_running();
    const Station* station = now.station;
    if (!station && !season().stations.rows().empty()) station = &season().stations.rows().back();
    if (!station) return {};
    const std::string by = now.shift ? now.shift->skipper : std::string();
    const LogLines lines = spoilbook::sounding(press(), *station, by);
    return write(tr("sounding"), lines) ? lines.front().label : std::string();
}

std::string ShiftHand::hand_over() {
    const Running now = now_running();
    const Shift* shift = now.shift ? now.shift : now.last;
    if (!shift) return {};
    for (const Handover& row : season().handovers.rows()) {
        if (row.shift == shift->id && !row.handover.empty()) return row.handover;
    }
    const double buckets = now.load ? buckets_in(season(), *now.load) : 0;
    const LogLines lines = spoilbook::hand_over(press(), *shift, now.station, now.load, buckets);
    return write(tr("hand over"), lines) ? lines.front().label : std::string();
}

QString ShiftHand::sign(const Shift& shift, const QString& name) {
    const std::string label = shift.shift;
    return refusals_shown(session_.write(tr("shift %1 signed").arg(shown(label)), EntryKind::sign, {},
                                         [&](Book& book, const Act& by) -> Checked<Done> {
                                             Act act = by;
                                             act.who = name.simplified().toStdString();
                                             const auto entry = sign_shift(book, act, label);
                                             if (!entry) return entry.refusals();
                                             return Done{};
                                         }));
}

}  // namespace spoilbook::form
