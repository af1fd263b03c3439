// SPDX-License-Identifier: GPL-3.0-or-later
#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/busy_overlay.h"
#include "forms/shared/button.h"
#include "forms/shared/figure.h"
#include "forms/shared/icon.h"
#include "forms/shared/label.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/sheet.h"
#include "forms/shared/unit_field.h"
#include "tests/picture/gallery_pages.h"

namespace spoilbook::gallery {
using namespace form;
namespace {

Figure* figure(const FigureText& text, QWidget* parent) {
    auto* made = new Figure(parent);
    made->show_figure(text);
    return made;
}

void add_figures(QVBoxLayout* all, QWidget* page) {
    auto* row = new QHBoxLayout;
    Figure* near = figure({QStringLiteral("Headroom, May"), QStringLiteral("780"), QStringLiteral("m³"),
                           QStringLiteral("420"), QStringLiteral("in-situ, by ullage")},
                          page);
    near->show_state(State::attention, QStringLiteral("bites on 31 May"));
    Figure* gone =
        figure({QStringLiteral("Headroom, any 12 months"), QStringLiteral("−140"), QStringLiteral("m³"),
                QStringLiteral("3 900"), QStringLiteral("in-situ, by ullage")},
               page);
    gone->show_state(State::hold, QStringLiteral("passed on 28 May"));
    Figure* known = figure({QStringLiteral("Trips today"),
                            QStringLiteral("3"),
                            QStringLiteral("of 6"),
                            {},
                            QStringLiteral("logged")},
                           page);
    known->show_state(State::clear, {});
    Figure* none = figure({QStringLiteral("Dry solids, May"),
                           {},
                           QStringLiteral("t"),
                           {},
                           QStringLiteral("no density was taken")},
                          page);
    none->show_state(State::unknown, {});
    for (Figure* f : {near, gone, known, none})
        row->addWidget(f, 1);
    all->addLayout(row);
}

void add_buttons(QVBoxLayout* all, QWidget* page) {
    auto* row = new QHBoxLayout;
    row->addWidget(
        make_button(ButtonKind::primary, QStringLiteral("Sign the shift"), QStringLiteral("sign"), page));
    row->addWidget(
        make_button(ButtonKind::plain, QStringLiteral("Close the load"), QStringLiteral("barge"), page));
    row->addWidget(make_button(ButtonKind::quiet, QStringLiteral("Evidence"), QStringLiteral("right"), page));
    row->addWidget(make_button(ButtonKind::tool, QStringLiteral("Undo"), QStringLiteral("undo"), page));
    auto* off =
        make_button(ButtonKind::plain, QStringLiteral("Seal the return"), QStringLiteral("return"), page);
    off->setEnabled(false);
    row->addWidget(off);
    row->addStretch();
    all->addLayout(row);
    auto* presses = new QHBoxLayout;
    const char* names[][2] = {{"Bucket", "bucket"}, {"Spuds down", "station"}, {"Delay", "delay"},
                              {"Cast off", "trip"}, {"Doors open", "release"}, {"Sounding", "sounding"}};
    for (const auto& [text, icon_name] : names) {
        presses->addWidget(
            make_button(ButtonKind::press, QString::fromLatin1(text), QString::fromLatin1(icon_name), page));
    }
    all->addLayout(presses);
}

}  // namespace

QWidget* marks_page() {
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    all->setSpacing(2 * grid);
    for (const auto& [kind, text, action] :
         {std::tuple{Message::notice, "The office sent 14 entries. They are in the book.", "Show them"},
          std::tuple{Message::done, "Load L-0597 was closed by ullage: 371 m³ in-situ ± 19.", ""},
          std::tuple{Message::warning, "The receiver on Plover has been silent for 12 minutes.",
                     "Type the position"},
          std::tuple{Message::error,
                     "The disk is full. The last entry was not written; the book is as it was.",
                     "Try again"}}) {
        auto* strip = new MessageStrip(page);
        strip->show_message(kind, QString::fromUtf8(text), QString::fromLatin1(action), [] {});
        all->addWidget(strip);
    }
    auto* marks = new QHBoxLayout;
    for (const State state : {State::clear, State::attention, State::hold, State::unknown}) {
        marks->addWidget(new StateMark(state, page));
    }
    auto* large = new StateMark(State::clear, page);
    large->set_large(true);
    large->show_state(State::clear, QStringLiteral("nothing stops this release"));
    marks->addWidget(large);
    marks->addStretch();
    all->addLayout(marks);
    add_figures(all, page);
    add_buttons(all, page);
    const Step steps[] = {Step::figure, Step::title, Step::strong, Step::body, Step::small};
    for (const Step step : steps) {
        all->addWidget(make_label(QStringLiteral("Ferry Basin, claim FB4: −9.6 m, 0123456789 m³ ± 11 117"),
                                  step, Weight::regular, page));
    }
    all->addStretch();
    return page;
}

QWidget* icons_page() {
    auto* page = new QWidget;
    auto* cells = new QGridLayout(page);
    int n = 0;
    for (const QString& name : icon_names()) {
        auto* picture = new QLabel(page);
        picture->setPixmap(icon(name).pixmap(QSize(40, 40)));
        cells->addWidget(picture, 2 * (n / 10), n % 10, Qt::AlignHCenter | Qt::AlignBottom);
        cells->addWidget(make_quiet(name, Step::small, page), 2 * (n / 10) + 1, n % 10,
                         Qt::AlignHCenter | Qt::AlignTop);
        ++n;
    }
    return page;
}

QWidget* busy_page() {
    QWidget* page = marks_page();
    auto* busy = new BusyOverlay(page);
    busy->begin(QStringLiteral("Reading the logger's file: 34 112 of 52 560 readings"), true);
    busy->set_progress(0.65);
    return page;
}

QWidget* sheet_page() {
    QWidget* page = marks_page();
    auto* sheet = new Sheet(page);
    auto* content = new QWidget;
    auto* all = new QVBoxLayout(content);
    all->addWidget(
        make_quiet(QStringLiteral("The shift was signed at 18:04. A change to it needs a reason; both "
                                  "values stay in the book."),
                   Step::body, content));
    all->addWidget(
        new UnitField(QStringLiteral("Share released"), {QStringLiteral("%"), 0, 100, 0}, content));
    auto* why =
        new UnitField(QStringLiteral("Ullage, forward port"), {QStringLiteral("m"), 0, 50, 2}, content);
    why->set_value(1.36);
    all->addWidget(why);
    all->addStretch();
    all->addWidget(make_button(ButtonKind::primary, QStringLiteral("Write the correction"),
                               QStringLiteral("sign"), content));
    for (QLabel* label : content->findChildren<QLabel*>())
        label->setWordWrap(true);
    // A sheet takes its size from its parent, which has one only when it is shown.
    QMetaObject::invokeMethod(
        sheet, [sheet, content] { sheet->open(QStringLiteral("Correct trip T-0598"), content); },
        Qt::QueuedConnection);
    return page;
}

}  // namespace spoilbook::gallery
