// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/trip_panel.h"

#include <QLocale>

#include "forms/barge/press_button.h"
#include "forms/barge/receiver_line.h"
#include "forms/barge/record_form.h"
#include "forms/barge/release_line.h"
#include "forms/barge/spot_line.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/time_typed.h"
#include "model/answer/named_cell.h"
#include "model/place/ground_map.h"
#include "model/progress/tow_time.h"
#include "model/record/release_view.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

void lay(QGridLayout* boxes, RecordForm* form, QWidget* parent, const std::vector<std::string>& columns) {
    int at = 0;
    for (const std::string& column : columns) {
        boxes->addWidget(form->add(column, parent), at / 2, at % 2, Qt::AlignTop);
        ++at;
    }
}

const Release* newest_row(const Season& season, const Trip& trip) {
    const auto rows = release_rows(season, trip);
    return rows.empty() ? nullptr : rows.back();
}

/// The newest release of a trip at its own time and place; nothing: no time of it is logged yet.
std::optional<PlannedRelease> begun_release(const Season& season, const Trip& trip) {
    std::optional<PlannedRelease> begun;
    for (const ReleaseView& view : releases_of(season)) {
        const auto at = view.opened ? view.opened : view.ended;
        if (view.trip->id != trip.id || !view.counts || !at) continue;
        begun = PlannedRelease{};
        begun->load = trip.load;
        begun->at = *at;
        begun->ground = view.ground;
        begun->cell = view.cell;
        begun->lat = view.lat;
        begun->lon = view.lon;
        begun->position_u_m = view.position_u_m.value_or(usual_position_u_m);
        begun->wave_height_m = trip.wave_height_m;
    }
    return begun;
}

}  // namespace

TripPanel::TripPanel(ShiftHand& hand, bool whole, QWidget* parent)
    : Panel(tr("Trip"), QStringLiteral("tug"), parent),
      hand_(hand),
      whole_(whole),
      line_(new ReleaseLine(hand.session(), this)),
      turned_(new PressButton(tr("Turned back"), QStringLiteral("back"), {}, this)),
      more_(make_button(ButtonKind::quiet, tr("All of it …"), QStringLiteral("trip"), this)),
      trip_(new RecordForm(hand.session(), kind("trip"), this)),
      release_(new RecordForm(hand.session(), kind("release"), this)),
      bound_for_(new QWidget(this)),
      released_at_(new QWidget(this)) {
    body()->addWidget(line_);
    if (hand_.receiver()) {
        receiver_line_ = new ReceiverLine(hand_.session(), *hand_.receiver(), this);
        body()->addWidget(receiver_line_);
        connect(receiver_line_, &ReceiverLine::set_up_asked, this, &TripPanel::receiver_asked);
    }
    connect(line_, &ReleaseLine::due_cell, this, &TripPanel::offer_cell);
    if (whole) {
        auto* halves = new QHBoxLayout;
        halves->setSpacing(2 * grid);
        auto* left = new QVBoxLayout;
        build_presses(left);
        left->addStretch();
        halves->addLayout(left, 2);
        auto* right = new QVBoxLayout;
        right->addWidget(build_boxes());
        right->addWidget(build_rest());
        right->addStretch();
        halves->addLayout(right, 3);
        body()->addLayout(halves);
    } else {
        build_presses(body());
        for (RecordForm* form : {trip_, release_})
            form->set_short_times();
        body()->addWidget(build_boxes());
    }
    auto* foot =
        make_quiet(tr("Whether she sails is the master's. No aid to navigation."), Step::small, this);
    foot->setWordWrap(true);
    body()->addWidget(foot);
    body()->addWidget(more_);
    more_->setVisible(!whole);
    more_->setMinimumHeight(finger);
    body()->addStretch();
    connect(more_, &QPushButton::clicked, this, &TripPanel::more_asked);
    // The release comes nearer while nothing is written.
    connect(&hand_.session(), &Session::minute_passed, this, [this] {
        const Running now = hand_.now_running();
        if (isVisible()) ask_release(shown_trip(now), now);
    });
}

void TripPanel::build_presses(QBoxLayout* into) {
    const QString words[] = {tr("Cast off"), tr("Doors open"), tr("Empty"), tr("Doors shut"),
                             tr("Alongside")};
    const QString icons[] = {QStringLiteral("trip"), QStringLiteral("release"), QStringLiteral("drop"),
                             QStringLiteral("close"), QStringLiteral("return")};
    // On the skipper's page two abreast, in the order of reading; on the tug master's one below the other.
    auto* places = new QGridLayout;
    places->setSpacing(half_grid + 2);
    for (int step = 0; step < steps; ++step) {
        auto* button = new PressButton(words[step], icons[step], {}, this);
        presses_[std::size_t(step)] = button;
        places->addWidget(button, whole_ ? step : step / 2, whole_ ? 0 : step % 2);
        connect(button, &QPushButton::clicked, this, [this, step] { press(step); });
    }
    places->addWidget(turned_, whole_ ? int(steps) : 2, whole_ ? 0 : 1);
    into->addLayout(places);
    connect(turned_, &QPushButton::clicked, this, [this] {
        if (const Trip* trip = shown_trip(hand_.now_running())) hand_.turned_back(*trip);
    });
}

QWidget* TripPanel::build_boxes() {
    auto* all = new QWidget(this);
    auto* rows = new QVBoxLayout(all);
    rows->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part : {bound_for_, released_at_}) {
        auto* boxes = form_grid();
        boxes->setContentsMargins(0, 0, 0, 0);
        RecordForm* form = part == bound_for_ ? trip_ : release_;
        lay(boxes, form, part, {"ground", "cell", "lat", "lon"});
        auto* spot = new SpotLine(hand_.session(), *form, part);
        boxes->addWidget(spot, 2, 0, 1, 2);
        if (form == release_) {
            released_spot_ = spot;
            connect(line_, &ReleaseLine::due_cell, spot, &SpotLine::set_due_cell);
        }
        if (whole_ && form == release_) {
            auto* more = form_grid();
            lay(more, form, part,
                {"position_u_m", "position_from", "doors_open", "empty", "doors_shut", "share", "left_m3",
                 "why"});
            boxes->addLayout(more, 3, 0, 1, 2);
        }
        part->setLayout(boxes);
        rows->addWidget(part);
    }
    return all;
}

QWidget* TripPanel::build_rest() {
    auto* rest = new QWidget(this);
    auto* boxes = form_grid();
    boxes->setContentsMargins(0, 0, 0, 0);
    lay(boxes, trip_, rest,
        {"departed", "returned", "tug", "tug_master", "wave_height_m", "outcome", "tow", "tow_line_m",
         "receiver_on", "remarks"});
    rest->setLayout(boxes);
    return rest;
}

const Trip* TripPanel::shown_trip(const Running& now) const {
    if (now.trip) return now.trip;
    const Trip* newest = nullptr;
    const Shift* shift = now.shift ? now.shift : now.last;
    for (const Trip& trip : hand_.season().trips.rows()) {
        if (shift && trip.departed && trip.departed >= shift->start) newest = &trip;
    }
    return newest;
}

void TripPanel::press(int step) {
    const Running now = hand_.now_running();
    if (step == off) return hand_.cast_off();
    const Trip* trip = shown_trip(now);
    if (!trip) return;
    if (step == open) hand_.doors_open(*trip);
    if (step == emptied) hand_.empty(*trip);
    if (step == shut) hand_.doors_shut(*trip);
    if (step == back) hand_.alongside(*trip);
}

void TripPanel::refresh() {
    const Running now = hand_.now_running();
    const Trip* trip = shown_trip(now);
    const Shift* shift = now.shift ? now.shift : now.last;
    for (RecordForm* form : {trip_, release_})
        form->set_after(trip && trip->departed ? trip->departed : shift ? shift->start : std::nullopt);
    // Mended, cast off is near what stands: earlier as well as later.
    trip_->set_after_of("departed", trip && trip->departed
                                        ? std::optional(*trip->departed + -12 * ms_per_hour)
                                        : std::nullopt);
    trip_->show(trip ? trip->trip : std::string());
    const Release* release = trip ? newest_row(hand_.season(), *trip) : nullptr;
    release_->show(release ? release->release : std::string());
    bound_for_->setVisible(!release);
    released_at_->setVisible(release != nullptr);
    show_places(trip);
    ask_release(trip, now);
    show_receiver(trip);
    show_steps(trip, now);
    set_state(state_of(trip));
}

// The only ground of a book is offered, not filled in.
void TripPanel::show_places(const Trip* trip) {
    for (RecordForm* form : {trip_, release_}) {
        auto* ground = qobject_cast<ChoiceField*>(form->box("ground"));
        const bool cell_open =
            form == trip_ && form->box("cell") != nullptr &&
            qobject_cast<ChoiceField*>(form->box("cell"))->chosen().value_or(QString()).isEmpty();
        if (form == trip_ && !cell_open) offer_cell({});
        const bool blank = trip && !form->label().empty() && ground->chosen().value_or(QString()).isEmpty();
        if (blank && hand_.season().grounds.size() == 1)
            ground->offer(shown(hand_.season().grounds.rows().front().ground), tr("the only one"));
        else
            ground->clear_offer();
    }
}

// Of the trip under way, or of the load that waits for its tow. What stands against a release stays in sight
// when the doors open, until she is alongside: it is then that it must be told to someone.
void TripPanel::ask_release(const Trip* trip, const Running& now) {
    const bool away = trip && !trip->returned;
    if (const auto begun = away ? begun_release(hand_.season(), *trip) : std::nullopt)
        return line_->ask(*begun, ReleaseStage::opened);
    const bool under_way = away && trip->outcome.empty();
    const bool waiting = !under_way && now.to_send && now.to_send->loading_end;
    if (!under_way && !waiting) return line_->quiet();
    const Instant present = hand_.session().now();
    const std::int64_t tow = tow_time_ms(hand_.season()).value_or(0);
    PlannedRelease planned;
    planned.load = under_way ? trip->load : now.to_send->id;
    planned.at = under_way ? std::max(*trip->departed + tow, present) : present + tow;
    if (under_way) {
        planned.ground = trip->ground;
        planned.cell = trip->cell;
        // A place that she typed before the doors open is where they are to open.
        planned.lat = trip->lat;
        planned.lon = trip->lon;
        planned.position_u_m = trip->position_u_m.value_or(0);
    }
    // The shift's wave height is of its beginning, or of the shift before: an observation tells how old it
    // is.
    if (under_way) planned.wave_height_m = trip->wave_height_m;
    line_->ask(planned);
}

void TripPanel::show_receiver(const Trip* trip) {
    if (!receiver_line_) return;
    const bool under_way = trip && !trip->returned;
    receiver_line_->follow(under_way ? trip->id : Id());
    Id cell = under_way ? trip->cell : Id();
    const auto due = cells_named(hand_.season(), due_cell_.toStdString(), under_way ? trip->ground : Id());
    if (under_way && !cell && due.size() == 1) cell = due.front()->id;
    receiver_line_->set_bound_for(cell);
    released_spot_->set_absent(trip ? hand_.why_no_place(*trip) : QString());
    FieldBox* lat = release_->box("lat");
    const auto late = trip ? hand_.late_place(*trip) : std::nullopt;
    if (!late) return lat->clear_offer();
    const QLocale locale;
    lat->set_offer(tr("%1, %2 · receiver at %3")
                       .arg(locale.toString(late->fix.place.lat_deg, 'f', 6),
                            locale.toString(late->fix.place.lon_deg, 'f', 6),
                            time_shown(late->fix.at, hand_.session().zone())),
                   [this] {
                       if (const Trip* now = shown_trip(hand_.now_running())) hand_.take_late_place(*now);
                   });
}

void TripPanel::offer_cell(const QString& cell) {
    if (!cell.isEmpty() && cell != due_cell_) {
        due_cell_ = cell;
        show_receiver(shown_trip(hand_.now_running()));
    }
    auto* box = qobject_cast<ChoiceField*>(trip_->box("cell"));
    const bool blank = !trip_->label().empty() && box->chosen().value_or(QString()).isEmpty();
    if (blank && !cell.isEmpty())
        box->offer(cell, tr("due"));
    else
        box->clear_offer();
}

void TripPanel::show_steps(const Trip* trip, const Running& now) {
    const Zone zone = hand_.session().zone();
    std::array<std::optional<Instant>, steps> at;
    const bool running = trip && !trip->returned;
    if (trip) {
        const Release* row = newest_row(hand_.season(), *trip);
        at = {trip->departed, row ? row->doors_open : trip->release_start,
              row ? row->empty : trip->release_end, row ? row->doors_shut : trip->release_end,
              trip->returned};
    }
    int due = off;
    if (running) {
        due = open;
        if (trip->outcome == "returned_loaded" || at[shut])
            due = back;
        else if (at[emptied])
            due = shut;
        else if (at[open])
            due = emptied;
    }
    const bool can_send = now.to_send != nullptr && (now.to_send->loading_end || !running);
    for (int step = 0; step < steps; ++step) {
        PressButton* button = presses_[std::size_t(step)];
        const auto& time = at[std::size_t(step)];
        button->setEnabled(hand_.session().writable() && (step == off ? can_send : running));
        QString note = time ? time_shown(*time, zone) : QString();
        const bool not_full = step == off && !running && now.to_send && !now.to_send->loading_end;
        if (step == off && !running && now.to_send)
            note = (not_full ? tr("%1, not full") : tr("load %1")).arg(shown(now.to_send->load));
        button->set_note(note);
        // F7 casts off all the same; what stands out is what closes the load.
        button->set_due(step == due && button->isEnabled() && !not_full);
        button->set_key(step == due ? QKeySequence(Qt::Key_F7) : QKeySequence());
    }
    turned_->setEnabled(running && !at[open] && trip->outcome.empty());
}

QString TripPanel::state_of(const Trip* trip) const {
    if (!trip) return tr("none on this shift");
    const Load* load = hand_.season().loads.find(trip->load);
    const Barge* barge = load ? hand_.season().barges.find(load->barge) : nullptr;
    const QString what = tr("%1, %2").arg(shown(trip->trip), barge ? shown(barge->name) : tr("no barge"));
    if (trip->outcome == "returned_loaded") return tr("%1, turned back").arg(what);
    return trip->returned ? tr("%1, alongside").arg(what) : tr("%1, under way").arg(what);
}

}  // namespace spoilbook::form
