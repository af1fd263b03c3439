// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/receiver_sheet.h"

#include <QHBoxLayout>
#include <QLocale>
#include <QTimer>
#include <cmath>

#include "forms/barge/place_words.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/text_field.h"
#include "forms/shared/unit_field.h"

namespace spoilbook::form {
namespace {

using Way = ReceiverSettings::Way;

QString key_of(Way way) {
    if (way == Way::network) return QStringLiteral("network");
    return way == Way::serial ? QStringLiteral("serial") : QStringLiteral("off");
}

Way way_of(const QString& key) {
    if (key == QStringLiteral("network")) return Way::network;
    return key == QStringLiteral("serial") ? Way::serial : Way::off;
}

}  // namespace

ReceiverSheet::ReceiverSheet(Receiver& receiver, QWidget* parent)
    : QWidget(parent),
      receiver_(receiver),
      way_(new ChoiceField(tr("How it is reached"), this)),
      host_(new TextField(tr("Address"), {}, this)),
      port_(new UnitField(tr("Port"), {QString(), 1, 65535, 0, false}, this)),
      device_(new TextField(tr("Serial device"), {}, this)),
      baud_(new UnitField(tr("Speed"), {tr("baud"), 300, 921600, 0, false}, this)),
      stands_on_(new ChoiceField(tr("Where it stands"), this)),
      mark_(new StateMark(State::unknown, this)),
      state_(make_label({}, Step::body, Weight::regular, this)),
      place_(make_quiet({}, Step::body, this)) {
    auto* rows = new QVBoxLayout(this);
    rows->setSpacing(grid + half_grid);
    way_->set_choices({{QStringLiteral("off"), tr("no receiver, positions are typed")},
                       {QStringLiteral("network"), tr("network: NMEA 0183 over TCP")},
                       {QStringLiteral("serial"), tr("serial line: NMEA 0183")}});
    stands_on_->set_choices(
        {{QStringLiteral("tug"), tr("on the tug")}, {QStringLiteral("barge"), tr("on the barge")}});
    stands_on_->set_hint(tr("With the barge astern, the hopper is one line-length back on the tug's track."));
    device_->set_hint(tr("As the system names it, /dev/ttyUSB0"));
    auto* head = new QHBoxLayout;
    head->addWidget(mark_, 0, Qt::AlignTop);
    head->addWidget(state_, 1);
    state_->setWordWrap(true);
    rows->addLayout(head);
    rows->addWidget(place_);
    for (QWidget* box :
         {static_cast<QWidget*>(way_), static_cast<QWidget*>(host_), static_cast<QWidget*>(port_),
          static_cast<QWidget*>(device_), static_cast<QWidget*>(baud_), static_cast<QWidget*>(stands_on_)})
        rows->addWidget(box);
    auto* caution =
        make_quiet(tr("It fills the position of a release when the doors are pressed open. An aid "
                      "for the record, not for navigation."),
                   Step::small, this);
    caution->setWordWrap(true);
    rows->addWidget(caution);
    rows->addStretch();
    connect_boxes();
    show_settings();
    auto* second = new QTimer(this);
    connect(second, &QTimer::timeout, this, &ReceiverSheet::say);
    second->start(int(ms_per_second));
    connect(&receiver_, &Receiver::changed, this, &ReceiverSheet::say);
    say();
}

void ReceiverSheet::connect_boxes() {
    connect(way_, &ChoiceField::committed, this, [this](const QString& key) {
        change([&](ReceiverSettings& to) { to.way = way_of(key); });
        show_settings();
    });
    connect(host_, &TextField::committed, this,
            [this](const QString& text) { change([&](ReceiverSettings& to) { to.host = text.trimmed(); }); });
    connect(port_, &UnitField::committed, this, [this](std::optional<double> value) {
        if (value) change([&](ReceiverSettings& to) { to.port = int(std::lround(*value)); });
    });
    connect(device_, &TextField::committed, this, [this](const QString& text) {
        change([&](ReceiverSettings& to) { to.device = text.trimmed(); });
    });
    connect(baud_, &UnitField::committed, this, [this](std::optional<double> value) {
        if (value) change([&](ReceiverSettings& to) { to.baud = int(std::lround(*value)); });
    });
    connect(stands_on_, &ChoiceField::committed, this,
            [this](const QString& key) { change([&](ReceiverSettings& to) { to.stands_on = key; }); });
}

void ReceiverSheet::change(const std::function<void(ReceiverSettings&)>& by) {
    ReceiverSettings to = receiver_.settings();
    by(to);
    receiver_.set_settings(to);
}

void ReceiverSheet::show_settings() {
    const ReceiverSettings& now = receiver_.settings();
    way_->set_chosen(key_of(now.way));
    host_->set_text(now.host);
    port_->set_value(now.port);
    device_->set_text(now.device);
    baud_->set_value(now.baud);
    stands_on_->set_chosen(now.stands_on);
    host_->setVisible(now.way == Way::network);
    port_->setVisible(now.way == Way::network);
    device_->setVisible(now.way == Way::serial);
    baud_->setVisible(now.way == Way::serial);
    stands_on_->setVisible(now.way != Way::off);
}

void ReceiverSheet::say() {
    const PlaceWords words = receiver_words(receiver_);
    if (mark_->state() != words.state || mark_->word() != words.word)
        mark_->show_state(words.state, words.word);
    if (state_->text() != words.text) state_->setText(words.text);
    const auto& live = receiver_.newest();
    const QLocale locale;
    const QString place = live ? tr("%1°, %2°")
                                     .arg(locale.toString(live->fix.place.lat_deg, 'f', 6),
                                          locale.toString(live->fix.place.lon_deg, 'f', 6))
                               : QString();
    if (place_->text() != place) place_->setText(place);
    place_->setVisible(live.has_value());
}

}  // namespace spoilbook::form
