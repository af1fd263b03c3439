// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/timeline_strip.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>

#include "forms/barge/desk_words.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/time_typed.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int names_width = 9 * grid;
constexpr int hours_height = 2 * grid;
constexpr int lane_height = 20;
constexpr int lanes = 4;

int lane_of(SpanKind kind) {
    switch (kind) {
        case SpanKind::station:
            return 0;
        case SpanKind::load:
            return 1;
        case SpanKind::trip:
        case SpanKind::release:
            return 2;
        case SpanKind::delay:
        case SpanKind::gap:
            return 3;
    }
    return 0;
}

Tone fill_tone(SpanKind kind) {
    switch (kind) {
        case SpanKind::station:
            return Tone::series_2;
        case SpanKind::load:
            return Tone::series_1;
        case SpanKind::delay:
            return Tone::attention;
        default:
            return Tone::series_3;
    }
}

QColor faint(const QColor& colour, double share) {
    QColor out = colour;
    out.setAlphaF(float(share));
    return out;
}

}  // namespace

TimelineStrip::TimelineStrip(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void TimelineStrip::show_timeline(ShiftTimeline timeline, const Zone& zone) {
    timeline_ = std::move(timeline);
    zone_ = zone;
    shown_ = timeline_.time;
    // A running shift leaves room for what is to come: the usual twelve hours, or two more where it runs on.
    const Instant usual = shown_.from + 12 * ms_per_hour;
    if (shown_.to < usual) shown_.to = usual;
    say();
    update();
}

QSize TimelineStrip::sizeHint() const {
    return {80 * grid, hours_height + lanes * lane_height + half_grid};
}

QSize TimelineStrip::minimumSizeHint() const {
    return {30 * grid, sizeHint().height()};
}

double TimelineStrip::across(Instant at) const {
    const double whole = double(std::max<std::int64_t>(shown_.to - shown_.from, 1));
    return names_width + (width() - names_width - 1) * double(at - shown_.from) / whole;
}

QRectF TimelineStrip::place_of(const ShiftSpan& span) const {
    const double from = across(span.time.from);
    const double to = std::max(across(span.time.to), from + 2);
    QRectF place(from, hours_height + lane_of(span.kind) * lane_height + 2, to - from, lane_height - 4);
    if (span.kind == SpanKind::release) place.adjust(0, 3, 0, -3);
    return place;
}

QString TimelineStrip::words_of(const ShiftSpan& span) const {
    const QString label = QString::fromStdString(span.label);
    const QString words = QString::fromStdString(span.words);
    const QString time =
        span.open ? tr("since %1").arg(time_shown(span.time.from, zone_))
                  : tr("%1 to %2").arg(time_shown(span.time.from, zone_), time_shown(span.time.to, zone_));
    switch (span.kind) {
        case SpanKind::station:
            return tr("Station %1, claim %2, %3").arg(label, words, time);
        case SpanKind::load:
            return tr("Load %1, %2, %3").arg(label, words, time);
        case SpanKind::trip:
            return tr("Trip %1, %2, %3").arg(label, words, time);
        case SpanKind::release:
            return tr("Release %1, cell %2, %3")
                .arg(label, words.isEmpty() ? tr("not recorded") : words, time);
        case SpanKind::delay:
            return tr("Delay, %1, %2").arg(words.isEmpty() ? tr("cause not recorded") : words, time);
        case SpanKind::gap:
            return tr("Nothing is logged %1").arg(time);
    }
    return {};
}

void TimelineStrip::paint_hours(QPainter& painter) const {
    const Palette& tones = palette_in_use();
    painter.setFont(type_font(Step::small));
    const std::int64_t hour = ms_per_hour;
    const WallTime wall = zone_.wall(shown_.from);
    const std::int64_t into = (wall.minute * 60LL + wall.second) * ms_per_second + wall.millisecond;
    for (Instant at = shown_.from - into; at <= shown_.to; at = at + hour) {
        if (at < shown_.from) continue;
        const double x = across(at);
        painter.setPen(tones[Tone::line]);
        painter.drawLine(QPointF(x, hours_height), QPointF(x, height() - half_grid));
        painter.setPen(tones[Tone::quiet]);
        const QString text = QString::number(zone_.wall(at).hour).rightJustified(2, u'0');
        painter.drawText(QRectF(x - 20, 0, 40, hours_height), Qt::AlignCenter, text);
    }
}

void TimelineStrip::paint_span(QPainter& painter, const ShiftSpan& span) const {
    const Palette& tones = palette_in_use();
    const QRectF place = place_of(span);
    if (span.kind == SpanKind::gap) {
        painter.setPen(QPen(tones[Tone::edge], 1, Qt::DotLine));
        painter.setBrush(QBrush(tones[Tone::edge], Qt::BDiagPattern));
        painter.drawRect(place);
        return;
    }
    const QColor fill = tones[fill_tone(span.kind)];
    painter.setPen(Qt::NoPen);
    if (span.kind == SpanKind::release) {
        painter.fillRect(place, tones[Tone::text]);
        return;
    }
    painter.fillRect(place, faint(fill, 0.28));
    painter.fillRect(QRectF(place.left(), place.top(), 3, place.height()), fill);
    painter.setPen(tones[Tone::text]);
    const QString words = QString::fromStdString(span.words.empty() ? span.label : span.words);
    const QRectF room = place.adjusted(6, 0, -2, 0);
    if (room.width() < 14) return;
    painter.drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(words, Qt::ElideRight, int(room.width())));
}

void TimelineStrip::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setFont(type_font(Step::small));
    const QString names[] = {tr("Station"), tr("Load"), tr("Trip"), tr("Delay")};
    for (int lane = 0; lane < lanes; ++lane) {
        const QRect row(0, hours_height + lane * lane_height, width(), lane_height);
        painter.setPen(tones[Tone::line]);
        painter.drawLine(row.bottomLeft(), row.bottomRight());
        painter.setPen(tones[Tone::quiet]);
        painter.drawText(row.adjusted(half_grid, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, names[lane]);
    }
    if (timeline_.time.from == timeline_.time.to && timeline_.spans.empty()) return;
    paint_hours(painter);
    for (const ShiftSpan& span : timeline_.spans)
        paint_span(painter, span);
    const double now = across(timeline_.time.to);
    painter.fillRect(QRectF(now, hours_height - 2, 2, lanes * lane_height + 2), tones[Tone::accent]);
}

bool TimelineStrip::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        QStringList lines;
        for (const ShiftSpan& span : timeline_.spans) {
            if (place_of(span).adjusted(-2, -2, 2, 2).contains(help->pos())) lines << words_of(span);
        }
        QToolTip::showText(help->globalPos(), lines.join(u'\n'), this);
        return true;
    }
    return QWidget::event(event);
}

// Who cannot see it hears every entry in the order of the lanes.
void TimelineStrip::say() {
    setAccessibleName(tr("Timeline of the shift"));
    QStringList lines;
    for (const ShiftSpan& span : timeline_.spans)
        lines << words_of(span);
    setAccessibleDescription(lines.join(QStringLiteral("; ")));
}

}  // namespace spoilbook::form
