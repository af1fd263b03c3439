// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/shift_page.h"

#include <QLocale>
#include <QStackedWidget>

#include "forms/barge/choices.h"
#include "forms/barge/load_panel.h"
#include "forms/barge/press_button.h"
#include "forms/barge/receiver_sheet.h"
#include "forms/barge/record_form.h"
#include "forms/barge/sign_sheet.h"
#include "forms/barge/station_panel.h"
#include "forms/barge/timeline_strip.h"
#include "forms/barge/trip_panel.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/record_sheet.h"
#include "forms/shared/sheet.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {
namespace {

constexpr int panel_width = 37 * grid;
/// Presses and a box abreast need this much.
constexpr int one_line_width = 110 * grid;

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

template <class R>
QString named(const Shelf<R>& shelf, const Id& id, std::string R::*name) {
    const R* found = shelf.find(id);
    return found ? shown(found->*name) : QString();
}

}  // namespace

ShiftPage::ShiftPage(BookSession& session, QWidget* parent, Receiver* receiver)
    : QWidget(parent), hand_(session, receiver), pages_(new QStackedWidget(this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(grid + half_grid, half_grid, grid + half_grid, half_grid);
    all->addWidget(pages_);
    pages_->addWidget(build_none());
    pages_->addWidget(build_work());
    connect(&session, &Session::changed, this, &ShiftPage::refresh);
    refresh();
}

QWidget* ShiftPage::build_none() {
    auto* page = new QWidget(this);
    auto* rows = new QVBoxLayout(page);
    rows->addStretch(1);
    none_ = make_label({}, Step::strong, Weight::regular, page);
    none_->setWordWrap(true);
    rows->addWidget(none_);
    rows->addSpacing(grid);
    open_ = new PressButton(tr("Open a shift"), QStringLiteral("shift"), Qt::Key_F2, page);
    open_->set_due(true);
    sign_last_ = new PressButton(tr("Read through and sign the last shift"), QStringLiteral("sign"),
                                 Qt::Key_F12, page);
    rows->addWidget(open_);
    rows->addWidget(sign_last_);
    rows->addStretch(2);
    connect(open_, &QPushButton::clicked, this, [this] { hand_.open_shift(); });
    connect(sign_last_, &QPushButton::clicked, this, &ShiftPage::open_sign);
    return page;
}

QWidget* ShiftPage::build_work() {
    auto* page = new QWidget(this);
    auto* rows = new QVBoxLayout(page);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(grid);
    rows->addWidget(build_head());
    strip_ = new TimelineStrip(page);
    rows->addWidget(strip_);
    // What may happen at any moment stays in sight, whatever is scrolled.
    rows->addWidget(build_any_time());
    panels_ = new QGridLayout;
    panels_->setSpacing(grid);
    station_ = new StationPanel(hand_, page);
    load_ = new LoadPanel(hand_, page);
    trip_ = new TripPanel(hand_, false, page);
    connect(trip_, &TripPanel::more_asked, this, &ShiftPage::open_trip);
    connect(trip_, &TripPanel::receiver_asked, this, &ShiftPage::open_receiver);
    connect(load_, &LoadPanel::ticket_asked, this, &ShiftPage::open_ticket);
    rows->addLayout(panels_, 1);
    place_panels();
    return page;
}

QWidget* ShiftPage::build_head() {
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    who_ = make_label({}, Step::strong, Weight::semibold, head);
    with_ = make_quiet({}, Step::body, head);
    for (QLabel* label : {who_, with_}) {
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
        words->addWidget(label);
    }
    row->addLayout(words, 1);
    auto* mend = new PressButton(tr("Crew, plant, weather"), QStringLiteral("person"), Qt::Key_F1, head);
    mend->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    row->addWidget(mend);
    connect(mend, &QPushButton::clicked, this, [this] {
        const Running now = hand_.now_running();
        if (now.shift)
            open_fields(tr("Shift %1").arg(shown(now.shift->shift)), "shift", now.shift->shift,
                        {"start", "skipper", "crew", "weather", "wave_height_m", "dredger", "tug"});
    });
    return head;
}

QWidget* ShiftPage::build_any_time() {
    auto* foot = new QWidget(this);
    any_time_ = new QGridLayout(foot);
    any_time_->setContentsMargins(0, 0, 0, 0);
    any_time_->setSpacing(grid);
    cause_ = new ChoiceField(tr("Cause of the delay"), foot);
    cause_->set_choices(delay_cause_choices());
    delay_ = new PressButton(tr("Delay starts"), QStringLiteral("delay"), Qt::Key_F8, foot);
    auto* sound = new PressButton(tr("Sounding"), QStringLiteral("sounding"), Qt::Key_F9, foot);
    auto* hand_over = new PressButton(tr("Hand over"), QStringLiteral("person"), Qt::Key_F11, foot);
    auto* sign = new PressButton(tr("End and sign"), QStringLiteral("sign"), Qt::Key_F12, foot);
    at_any_time_ = {cause_, delay_, sound, hand_over, sign};
    place_any_time();
    connect(delay_, &QPushButton::clicked, this,
            [this] { hand_.delay(cause_->chosen().value_or(QString()).toStdString()); });
    connect(cause_, &ChoiceField::committed, this, [this](const QString& cause) {
        const Running now = hand_.now_running();
        if (!now.delay) return;
        const Refusals refusals = hand_.session().log(tr("cause of the delay"), kind("delay"),
                                                      now.delay->delay, {{"cause", cause.toStdString()}});
        cause_->show_problem(refusals_shown(refusals));
    });
    connect(sound, &QPushButton::clicked, this, &ShiftPage::open_sounding);
    connect(hand_over, &QPushButton::clicked, this, &ShiftPage::open_hand_over);
    connect(sign, &QPushButton::clicked, this, &ShiftPage::open_sign);
    return foot;
}

void ShiftPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    place_panels();
    place_any_time();
}

// In one line on a wheelhouse screen; two abreast where the scale is large.
void ShiftPage::place_any_time() {
    const bool wide = width() >= one_line_width;
    if (any_time_->count() > 0 && wide == any_time_wide_) return;
    any_time_wide_ = wide;
    const int abreast = wide ? int(at_any_time_.size()) : 2;
    int at = 0;
    for (QWidget* part : at_any_time_) {
        any_time_->removeWidget(part);
        const bool last_alone = !wide && part == at_any_time_.back();
        any_time_->addWidget(part, at / abreast, at % abreast, 1, last_alone ? 2 : 1, Qt::AlignBottom);
        ++at;
    }
    for (int column = 0; column < int(at_any_time_.size()); ++column)
        any_time_->setColumnStretch(column, column >= abreast ? 0 : wide && column >= 2 ? 1 : 2);
}

// Three abreast on a wheelhouse screen, below each other where the scale is large.
void ShiftPage::place_panels() {
    const int wanted = std::clamp(width() / panel_width, 1, 3);
    if (wanted == abreast_) return;
    abreast_ = wanted;
    QWidget* parts[] = {station_, load_, trip_};
    for (QWidget* part : parts)
        panels_->removeWidget(part);
    for (int i = 0; i < 3; ++i)
        panels_->addWidget(parts[i], i / wanted, i % wanted);
    for (int column = 0; column < 3; ++column)
        panels_->setColumnStretch(column, column < wanted ? 1 : 0);
}

void ShiftPage::refresh() {
    const Running now = hand_.now_running();
    pages_->setCurrentIndex(now.shift ? 1 : 0);
    if (!now.shift) return show_none(now);
    show_head(now);
    strip_->show_timeline(shift_timeline(hand_.season(), *now.shift, hand_.session().figures_at()),
                          hand_.session().zone());
    station_->refresh();
    load_->refresh();
    trip_->refresh();
    show_delay(now);
}

void ShiftPage::show_head(const Running& now) {
    const Shift& shift = *now.shift;
    const Zone zone = hand_.session().zone();
    const QString who = shift.skipper.empty() ? tr("nobody named yet") : shown(shift.skipper);
    who_->setText(
        tr("Shift %1, %2, since %3")
            .arg(shown(shift.shift), who, shift.start ? day_and_time_shown(*shift.start, zone) : tr("?")));
    QStringList with;
    with << named(hand_.season().dredgers, shift.dredger, &Dredger::name)
         << named(hand_.season().tugs, shift.tug, &Tug::name) << shown(shift.weather);
    if (shift.wave_height_m) with << tr("waves %1 m").arg(QLocale().toString(*shift.wave_height_m, 'f', 1));
    with << shown(shift.crew).replace(u';', QStringLiteral(" "));
    with.removeAll(QString());
    with_->setText(with.join(QStringLiteral("  ·  ")));
    with_->setToolTip(with_->text());
}

void ShiftPage::show_none(const Running& now) {
    open_->setEnabled(hand_.session().writable());
    sign_last_->setVisible(now.last && now.last->end && !now.last->signed_at);
    if (!now.last) {
        none_->setText(tr("No shift was opened in this book yet. Opening one begins the log of the work."));
        open_->set_note({});
        return;
    }
    const Zone zone = hand_.session().zone();
    const QString ended = now.last->end ? day_and_time_shown(*now.last->end, zone) : tr("?");
    const QString sheet = now.last->signed_at ? tr("It was signed by %1.").arg(shown(now.last->signed_by))
                                              : tr("Its sheet is not signed yet.");
    none_->setText(tr("No shift is running. Shift %1, %2, ended %3. %4")
                       .arg(shown(now.last->shift), shown(now.last->skipper), ended, sheet));
    open_->set_note(
        tr("crew, plant and weather are carried over from %1, to be corrected").arg(shown(now.last->shift)));
}

void ShiftPage::show_delay(const Running& now) {
    delay_->set_words(now.delay ? tr("Delay stops") : tr("Delay starts"));
    delay_->set_due(now.delay != nullptr);
    delay_->set_note(now.delay && now.delay->start
                         ? tr("since %1").arg(time_shown(*now.delay->start, hand_.session().zone()))
                         : QString());
    if (now.delay)
        cause_->set_chosen(now.delay->cause.empty() ? std::nullopt : std::optional(shown(now.delay->cause)));
    if (!now.delay && cause_->chosen() && hand_.session().last_written() &&
        hand_.session().last_written()->what == tr("delay stopped"))
        cause_->set_chosen(std::nullopt);
}

Sheet* ShiftPage::sheet() {
    // Over what is seen of the page, not over what is scrolled away.
    if (!sheet_) {
        sheet_ = new Sheet(parentWidget() ? parentWidget() : this);
        connect(sheet_, &Sheet::closed, this, [this] { hear_keys(true); });
    }
    return sheet_;
}

void ShiftPage::hear_keys(bool hear) {
    for (PressButton* button : pages_->findChildren<PressButton*>())
        button->hear_key(hear);
}

void ShiftPage::lay(const QString& title, QWidget* content, int width) {
    hear_keys(false);
    sheet()->open(title, content, width);
}

void ShiftPage::open_fields(const QString& title, const std::string& kind_name, const std::string& label,
                            const std::vector<std::string>& columns) {
    auto* content = new QWidget;
    auto* rows = new QVBoxLayout(content);
    rows->setSpacing(grid + half_grid);
    auto* form = new RecordForm(hand_.session(), kind(kind_name), content);
    const Running now = hand_.now_running();
    if (kind_name != "shift" && now.shift) form->set_after(now.shift->start);
    for (const std::string& column : columns)
        rows->addWidget(form->add(column, content));
    rows->addStretch();
    form->show(label);
    lay(title, content, 60 * grid);
}

void ShiftPage::open_sounding() {
    const std::string label = hand_.sounding();
    if (label.empty()) return;
    open_fields(tr("Sounding %1").arg(shown(label)), "sounding", label,
                {"depth_m", "tide_m", "level_m", "easting_m", "northing_m", "u_m", "time", "by"});
}

void ShiftPage::open_hand_over() {
    const std::string label = hand_.hand_over();
    if (label.empty()) return;
    open_fields(tr("Hand over %1").arg(shown(label)), "handover", label,
                {"station", "barge", "buckets_in", "holds", "next_move", "defects", "said_by", "taken_by"});
}

void ShiftPage::open_trip() {
    auto* content = new QWidget;
    auto* rows = new QVBoxLayout(content);
    auto* panel = new TripPanel(hand_, true, content);
    rows->addWidget(panel);
    panel->refresh();
    connect(&hand_.session(), &Session::changed, panel, &TripPanel::refresh);
    connect(panel, &TripPanel::receiver_asked, this, &ShiftPage::open_receiver);
    lay(tr("Trip"), content, 100 * grid);
}

void ShiftPage::open_receiver() {
    if (hand_.receiver()) lay(tr("Receiver"), new ReceiverSheet(*hand_.receiver()), 60 * grid);
}

void ShiftPage::open_ticket(const QString& load) {
    auto* content = new BargeTicket(hand_, load.toStdString(), waiting_);
    lay(tr("Barge ticket, load %1, %2").arg(load, content->barge_name()), content, 112 * grid);
}

void ShiftPage::open_sign() {
    const Running now = hand_.now_running();
    const Shift* shift = now.shift ? now.shift : now.last;
    if (!shift) return;
    auto* content = new SignSheet(hand_, shift->shift);
    connect(content, &SignSheet::line_opened, this, [this](const QString& of, const QString& label) {
        sheet()->open(tr("%1 %2").arg(of, label),
                      new RecordSheet(hand_.session(), kind(of.toStdString()), label.toStdString()));
    });
    connect(content, &SignSheet::signed_now, this, [this] { sheet()->close_sheet(); });
    lay(tr("Shift sheet %1").arg(shown(shift->shift)), content, 90 * grid);
}

}  // namespace spoilbook::form
