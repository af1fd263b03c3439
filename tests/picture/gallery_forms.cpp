// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QRadioButton>
#include <QVBoxLayout>
#include <cmath>

#include "forms/shared/chart_frame.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/table_view.h"
#include "forms/shared/time_field.h"
#include "forms/shared/type_scale.h"
#include "forms/shared/unit_field.h"
#include "tests/picture/gallery_pages.h"

namespace spoilbook::gallery {
using namespace form;
namespace {

// 30 May 2026 18:00 in the zone of the invented harbour.
constexpr Instant gallery_now{1780120800000};

TimeContext context() {
    return {Zone::named("Pacific/Auckland").value(), gallery_now, {}};
}

void type(FieldBox* field, const QString& text) {
    auto* edit = field->findChild<QLineEdit*>();
    edit->setText(text);
    emit edit->editingFinished();
}

struct Trip {
    QString id;
    double sailed_m3;
    std::optional<double> cell;
    QString left;
    State state;
    QString word;
};

std::vector<Trip> trips() {
    std::vector<Trip> rows;
    for (int i = 0; i < 60; ++i) {
        const bool lost = i % 17 == 3;
        const bool out = i % 23 == 7;
        rows.push_back({QStringLiteral("T-%1").arg(540 + i, 4, 10, QLatin1Char('0')),
                        300 + 90 * std::fabs(std::sin(i)),
                        lost ? std::nullopt : std::optional<double>(1 + i * 5 % 12),
                        QStringLiteral("%1 May, %2:%3").arg(18 + i / 5).arg(6 + i % 5 * 3).arg(10 + i % 40),
                        out    ? State::hold
                        : lost ? State::unknown
                               : State::clear,
                        out    ? QStringLiteral("80 m outside")
                        : lost ? QStringLiteral("no position")
                               : QStringLiteral("inside")});
    }
    return rows;
}

ChartData burn_down(bool empty) {
    ChartData data;
    data.title = QStringLiteral("Carried against the limit of any 12 months");
    data.empty_text =
        QStringLiteral("No trip has been logged yet. The first closed load draws the first point.");
    data.x.title = QStringLiteral("2025–2026");
    data.y.title = QStringLiteral("in-situ volume, m³");
    data.x.most = 11;
    data.y.most = 250000;
    const char* months[] = {"Aug", "Sep", "Oct", "Nov", "Dec", "Jan",
                            "Feb", "Mar", "Apr", "May", "Jun", "Jul"};
    for (int m = 0; m < 12; ++m)
        data.x.ticks.push_back({double(m), QString::fromLatin1(months[m])});
    if (empty) return data;
    data.sentence = QStringLiteral("The 12-month limit comes first, about 9 June; the target about 22 June.");
    const double done[] = {0, 20100, 43000, 67700, 93000, 111000, 111000, 135300, 160300, 184000, 208000};
    ChartSeries carried{QStringLiteral("carried"), SeriesKind::line, 1, {}};
    ChartSeries band{QStringLiteral("forecast, 8 of 10"), SeriesKind::band, 1, {}};
    for (int m = 0; m <= 10; ++m)
        carried.points.emplace_back(m, done[m]);
    for (int m = 10; m <= 11; ++m) {
        band.points.emplace_back(m, 208000 + (m - 10) * 17000.0);
        band.upper.emplace_back(m, 208000 + (m - 10) * 29000.0);
    }
    ChartSeries plan{QStringLiteral("plan"), SeriesKind::dashed, 5, {{0, 0}, {11, 226000}}};
    ChartSeries survey{
        QStringLiteral("by survey"), SeriesKind::dots, 3, {{4, 96500}, {8, 163800}, {10, 214200}}};
    ChartSeries limit{
        QStringLiteral("215 000 m³ in any 12 months"), SeriesKind::limit, 1, {{0, 215000}, {11, 215000}}};
    data.series = {carried, band, plan, survey, limit};
    return data;
}

}  // namespace

QWidget* fields_page() {
    auto* page = new QWidget;
    auto* cells = new QGridLayout(page);
    cells->setSpacing(3 * grid);
    const UnitRule ullage{QStringLiteral("m"), 0, 50, 2};
    auto* blank = new UnitField(QStringLiteral("Ullage, forward port"), ullage);
    blank->set_hint(QStringLiteral("From the coaming down to the material."));
    auto* full = new UnitField(QStringLiteral("Ullage, forward starboard"), ullage);
    full->set_value(1.36);
    auto* wrong = new UnitField(QStringLiteral("Ullage, aft port"), ullage);
    type(wrong, QStringLiteral("1,3x"));
    auto* out = new UnitField(QStringLiteral("Ullage, aft starboard"), ullage);
    type(out, QStringLiteral("136"));
    auto* odd =
        new UnitField(QStringLiteral("Tow out"), {QStringLiteral("min"), 0, 2880, 0, true, [](double v) {
                                                      return v < 30 ? QStringLiteral(
                                                                          "7.4 nautical miles in "
                                                                          "10 minutes is 44 knots. Is it so?")
                                                                    : QString();
                                                  }});
    type(odd, QStringLiteral("10"));
    auto* offered = new UnitField(QStringLiteral("Significant wave height"), {QStringLiteral("m"), 0, 30, 1});
    offered->offer(0.8, QStringLiteral("buoy, 17:40"));
    auto* time = new TimeField(QStringLiteral("Doors open"), context);
    time->offer(gallery_now, QStringLiteral("now"));
    auto* read = new TimeField(QStringLiteral("Cast off"), context);
    type(read, QStringLiteral("1642"));
    auto* bad = new TimeField(QStringLiteral("Doors shut"), context);
    type(bad, QStringLiteral("25:70"));
    auto* choice = new ChoiceField(QStringLiteral("Cell"));
    choice->set_choices(
        {{QStringLiteral("7"), QStringLiteral("Cell 7")}, {QStringLiteral("8"), QStringLiteral("Cell 8")}});
    choice->offer(QStringLiteral("8"), QStringLiteral("due"));
    auto* chosen = new ChoiceField(QStringLiteral("Barge"));
    chosen->set_choices({{QStringLiteral("teal"), QStringLiteral("Teal, 420 m³")},
                         {QStringLiteral("wigeon"), QStringLiteral("Wigeon, 560 m³")}});
    chosen->set_chosen(QStringLiteral("wigeon"));
    auto* off = new UnitField(QStringLiteral("Hopper volume"), {QStringLiteral("m³"), 0, 5000, 0});
    off->set_value(431);
    off->findChild<QLineEdit*>()->setReadOnly(true);
    off->set_hint(QStringLiteral("Worked out from the dips."));
    QWidget* fields[] = {blank, full, wrong, out, odd, offered, time, read, bad, choice, chosen, off};
    for (int i = 0; i < 12; ++i)
        cells->addWidget(fields[i], i / 3, i % 3, Qt::AlignTop);
    auto* check = new QCheckBox(QStringLiteral("Water on top of the spoil"));
    check->setChecked(true);
    cells->addWidget(check, 4, 0);
    cells->addWidget(new QCheckBox(QStringLiteral("Barge was turned back")), 4, 1);
    auto* radio = new QRadioButton(QStringLiteral("By draughts"));
    radio->setChecked(true);
    cells->addWidget(radio, 4, 2);
    cells->setRowStretch(5, 1);
    return page;
}

QWidget* table_page(bool empty) {
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    auto* view = new TableView(QStringLiteral("Trips"), page);
    auto* model = new RowTable<Trip>(
        {Column<Trip>(QStringLiteral("Trip"), {}, [](const Trip& t) { return t.id; }),
         Column<Trip>(QStringLiteral("Cast off"), {}, [](const Trip& t) { return t.left; }),
         Column<Trip>(QStringLiteral("Carried"), QStringLiteral("m³ in-situ"),
                      [](const Trip& t) { return number_shown(t.sailed_m3, 1, QLocale()); })
             .number([](const Trip& t) { return std::optional(t.sailed_m3); }),
         Column<Trip>(QStringLiteral("Cell"), {},
                      [](const Trip& t) { return t.cell ? QString::number(*t.cell) : QString(); })
             .number([](const Trip& t) { return t.cell; }),
         Column<Trip>(QStringLiteral("Release"), {}, [](const Trip& t) { return t.word; })
             .mark([](const Trip& t) { return std::optional(t.state); })},
        page);
    if (!empty) model->set_rows(trips());
    view->set_model(model);
    view->set_empty_text(
        QStringLiteral("No trip has been logged in this shift.\nA trip begins with Cast off."));
    if (!empty) view->table()->setCurrentIndex(view->table()->model()->index(4, 1));
    view->table()->setFocus();
    all->addWidget(view);
    return page;
}

QWidget* chart_page(bool empty) {
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    auto* chart = new ChartFrame(page);
    chart->set_data(burn_down(empty));
    all->addWidget(chart);
    return page;
}

QWidget* chart_table_page() {
    QWidget* page = chart_page(false);
    page->findChild<ChartFrame*>()->show_table(true);
    return page;
}

}  // namespace spoilbook::gallery
