// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_paint.h"

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "forms/consent/turbidity_lines.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/type_scale.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TurbidityChart", text);
}

void draw_grid(QPainter& painter, const TurbidityFrame& frame, const TurbidityDrawn& drawn,
               const Palette& tones) {
    const QLocale locale;
    const QRectF& plot = frame.plot;
    painter.setFont(type_font(Step::small));
    const int decimals = frame.step < 1 ? int(std::ceil(-std::log10(frame.step))) : 0;
    for (double at = 0; at <= frame.most + frame.step / 2; at += frame.step) {
        const double y = frame.y(at);
        painter.setPen(QPen(tones[Tone::line], 1));
        painter.drawLine(QPointF(plot.left(), y), QPointF(plot.right(), y));
        painter.setPen(tones[Tone::text]);
        painter.drawText(QRectF(plot.left() - axis_width, y - 10, axis_width - grid, 20),
                         Qt::AlignRight | Qt::AlignVCenter, number_shown(at, decimals, locale));
    }
    const int most = int(plot.width() / (12 * grid));
    for (const TimeTick& tick : time_ticks(frame.window, std::max(2, most), drawn.zone, locale)) {
        const double x = frame.x(tick.at);
        painter.setPen(QPen(tones[Tone::line], 1));
        painter.drawLine(QPointF(x, plot.top()), QPointF(x, frame.releasing.bottom()));
        painter.setPen(tones[Tone::text]);
        QRectF words(x - 7 * grid, frame.times.top(), 14 * grid, frame.times.height());
        words.moveLeft(std::min(words.left(), plot.right() + grid - words.width()));
        painter.drawText(words, Qt::AlignHCenter | Qt::AlignVCenter, tick.text);
    }
    if (drawn.view.sites.empty()) return;
    painter.setPen(tones[Tone::quiet]);
    painter.save();
    painter.translate(plot.left() - axis_width + 8, plot.center().y());
    painter.rotate(-90);
    const QString unit = QString::fromStdString(drawn.view.sites.front().site.unit);
    painter.drawText(QRectF(-100, -10, 200, 20), Qt::AlignCenter,
                     unit.isEmpty() ? tr("turbidity") : tr("turbidity, %1").arg(unit));
    painter.restore();
}

void draw_strip(QPainter& painter, const TurbidityFrame& frame, const QRectF& strip,
                const std::vector<Period>& periods, const QString& name, const QColor& fill,
                const Palette& tones) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones[Tone::sunk]);
    painter.drawRect(strip);
    painter.setBrush(fill);
    // Periods that meet on the screen are one box: thousands of them in a wide window.
    double from = 0, to = -1;
    const auto close = [&] {
        if (to > from) painter.drawRect(QRectF(from, strip.top() + 2, to - from, strip.height() - 4));
    };
    for (const Period& period : periods) {
        const double left = std::max(strip.left(), frame.x(period.from));
        const double right = std::min(strip.right(), std::max(frame.x(period.to), left + 1.5));
        if (right <= strip.left() || left >= strip.right()) continue;
        if (left > to + 0.5) {
            close();
            from = left;
        }
        to = std::max(to, right);
    }
    close();
    painter.setPen(tones[Tone::text]);
    painter.drawText(
        QRectF(strip.left() - axis_width, strip.top() - 4, axis_width - grid, strip.height() + 8),
        Qt::AlignRight | Qt::AlignVCenter, name);
}

void draw_events(QPainter& painter, const TurbidityFrame& frame, const TurbidityDrawn& drawn, int marked,
                 const Palette& tones) {
    for (std::size_t i = 0; i < drawn.events.size(); ++i) {
        const EventBar& event = drawn.events[i];
        const QRectF bar = frame.bar(event);
        if (bar.isNull()) continue;
        const bool chosen = int(i) == marked;
        QColor wash = tones[tint_of(event.state)];
        wash.setAlphaF(chosen ? 0.9F : 0.45F);
        const double right = std::min(frame.plot.right(), bar.right());
        painter.fillRect(QRectF(bar.left(), frame.plot.top(), right - bar.left(), frame.plot.height()), wash);
        painter.setBrush(tones[tint_of(event.state)]);
        painter.setPen(QPen(tones[chosen ? Tone::accent : fill_of(event.state)], chosen ? 2 : 1,
                            event.open ? Qt::DashLine : Qt::SolidLine));
        painter.drawRect(bar);
        const double side = bar.height() - 2;
        if (bar.width() < side + 2) continue;
        draw_shape(painter, QRectF(bar.left() + 2, bar.top() + 1, side, side), event.state, tones);
        painter.setPen(tones[Tone::text]);
        const QRectF words = bar.adjusted(side + 5, -2, -1, 2);
        if (painter.fontMetrics().horizontalAdvance(event.name) <= words.width())
            painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, event.name);
    }
}

QString hours_shown(double minutes) {
    const bool whole = std::fmod(minutes, 60) == 0;
    return whole ? tr("%1 h").arg(minutes / 60) : tr("%1 min").arg(minutes);
}

QString kind_shown(const StatisticRule& rule) {
    switch (rule.kind) {
        case StatisticKind::mean:
            return tr("mean");
        case StatisticKind::median:
            return tr("median");
        case StatisticKind::percentile:
            return tr("%1 % percentile").arg(rule.p);
        case StatisticKind::ewma:
            return tr("weighted mean");
        case StatisticKind::instant:
            break;
    }
    return tr("reading");
}

}  // namespace

QString statistic_name(const TriggerCondition& condition) {
    const SeriesRule& rule = condition.trigger.versions.back().rule;
    if (rule.over_min <= 0) return kind_shown(rule.statistic);
    return tr("%1 over %2").arg(kind_shown(rule.statistic), hours_shown(rule.over_min));
}

void draw_turbidity(QPainter& painter, const TurbidityFrame& frame, const TurbidityDrawn& drawn, int marked,
                    const Palette& tones) {
    painter.save();
    draw_grid(painter, frame, drawn, tones);
    draw_strip(painter, frame, frame.digging, drawn.digging, tr("digging"), tones[Tone::series_5], tones);
    draw_strip(painter, frame, frame.releasing, drawn.releasing, tr("releases"), tones[Tone::series_3],
               tones);
    draw_events(painter, frame, drawn, marked, tones);
    painter.setClipRect(frame.plot.adjusted(-1, -1, 1, 1));
    for (std::size_t i = drawn.view.sites.size(); i-- > 0;)
        draw_readings(painter, frame, drawn.view.sites[i], look_of(drawn.view, i), tones);
    for (const ViewSite& site : drawn.view.sites)
        draw_levels(painter, frame, site, tones);
    for (std::size_t i = drawn.view.sites.size(); i-- > 0;)
        draw_statistics(painter, frame, drawn.view.sites[i], look_of(drawn.view, i), tones);
    painter.setClipping(false);
    for (const ViewSite& site : drawn.view.sites)
        name_levels(painter, frame, site, tones);
    draw_key(painter, frame, drawn.view, tones);
    painter.restore();
}

QString turbidity_said(const TurbidityDrawn& drawn) {
    const QLocale locale;
    QStringList said;
    for (const ViewSite& site : drawn.view.sites) {
        std::vector<ReadingSum> parts;
        for (const ViewColumn& column : site.columns)
            parts.push_back(column.sum);
        const ReadingSum sum = sum_of(parts);
        const QString name = QString::fromStdString(site.site.site);
        if (!sum.high) {
            said << tr("%1: no reading that counts").arg(name);
            continue;
        }
        said << tr("%1: %2 readings, %3 to %4 %5, %6 suspect, %7 failed, %8 missing")
                    .arg(name, locale.toString(qulonglong(site.readings)), number_shown(*sum.low, 1, locale),
                         number_shown(*sum.high, 1, locale), QString::fromStdString(site.site.unit))
                    .arg(sum.suspect)
                    .arg(sum.failed)
                    .arg(sum.missing);
    }
    return tr("%1 to %2. ")
               .arg(moment_shown(drawn.view.window.from, drawn.zone, locale),
                    moment_shown(drawn.view.window.to, drawn.zone, locale)) +
           said.join(QStringLiteral("; "));
}

}  // namespace spoilbook::form
