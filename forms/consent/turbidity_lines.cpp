// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_lines.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "forms/consent/turbidity_paint.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TurbidityChart", text);
}

/// Columns farther apart than this stand beside a gap: no line joins them.
std::int64_t gap_ms(const TurbidityFrame& frame, const ViewSite& site) {
    const double column = double(frame.window.to - frame.window.from) / std::max(1.0, frame.plot.width());
    const double interval = site.interval_min * double(ms_per_minute);
    const double day = site.whole_days ? double(ms_per_day) : 0;
    return std::int64_t(std::max({2.5 * column, 3.5 * interval, 2.5 * day}));
}

/// Half a column: a column's numbers stand in its middle.
std::int64_t middle_ms(const TurbidityFrame& frame, const ViewSite& site) {
    if (site.each_reading) return 0;
    if (site.whole_days) return ms_per_day / 2;
    return std::int64_t(double(frame.window.to - frame.window.from) / frame.plot.width() / 2);
}

/// A line that breaks at gaps.
class Broken {
 public:
    explicit Broken(std::int64_t gap) : gap_(gap) {}
    void to(Instant at, QPointF place) {
        if (begun_ && at - last_ <= gap_)
            path.lineTo(place);
        else
            path.moveTo(place);
        begun_ = true;
        last_ = at;
    }
    void cut() { begun_ = false; }
    QPainterPath path;

 private:
    std::int64_t gap_;
    bool begun_ = false;
    Instant last_;
};

void draw_triangle(QPainter& painter, double x, double y) {
    const QPointF corners[] = {{x - 4, y - 3}, {x + 4, y - 3}, {x, y + 4}};
    painter.drawPolygon(corners, 3);
}

void draw_flags(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const QColor& colour) {
    painter.setPen(QPen(colour, 1.5));
    painter.setBrush(Qt::NoBrush);
    double last_suspect = -99, last_failed = -99, last_missing = -99;
    const auto middle = middle_ms(frame, site);
    // Marks nearer than they are wide would only be a smear.
    const auto free = [](double x, double& last) { return x - last < 6 ? false : (last = x, true); };
    for (const ViewColumn& column : site.columns) {
        const double x = frame.x(column.from + middle);
        const double y = column.sum.raw_high ? frame.y_cut(*column.sum.raw_high) + 3 : frame.plot.bottom();
        if (column.sum.suspect > 0 && free(x, last_suspect)) draw_triangle(painter, x, y);
        if (column.sum.failed > 0 && free(x, last_failed)) {
            painter.drawLine(QPointF(x - 3.5, y - 3.5), QPointF(x + 3.5, y + 3.5));
            painter.drawLine(QPointF(x - 3.5, y + 3.5), QPointF(x + 3.5, y - 3.5));
        }
        if (column.sum.missing > 0 && free(x, last_missing))
            painter.drawLine(QPointF(x, frame.plot.bottom() - 7), QPointF(x, frame.plot.bottom()));
    }
}

void draw_bands(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const QColor& colour) {
    const auto middle = middle_ms(frame, site);
    QColor faint = colour;
    faint.setAlphaF(0.28F);
    QColor solid = colour;
    solid.setAlphaF(0.55F);
    const double width =
        std::max(1.0, site.whole_days ? frame.x(frame.window.from + ms_per_day) - frame.plot.left() : 1.0);
    const auto bar = [&](double x, double low, double high, const QColor& fill) {
        const double top = frame.y_cut(high), bottom = std::max(top + 1, frame.y(low));
        painter.fillRect(QRectF(x - width / 2, top, width, bottom - top), fill);
    };
    for (const ViewColumn& column : site.columns) {
        const double x = frame.x(column.from + middle);
        if (column.sum.raw_low) bar(x, *column.sum.raw_low, *column.sum.raw_high, faint);
        if (column.sum.low) bar(x, *column.sum.low, *column.sum.high, solid);
    }
}

void draw_dots(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const QColor& colour) {
    QColor faint = colour;
    faint.setAlphaF(0.4F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(faint);
    for (const ViewColumn& column : site.columns) {
        if (column.sum.raw_high)
            painter.drawEllipse(QPointF(frame.x(column.from), frame.y_cut(*column.sum.raw_high)), 2, 2);
    }
}

constexpr double stroke_width = 26;

QPen level_pen(std::size_t tier, const Palette& tones) {
    static const QList<qreal> dashes[] = {{7, 3}, {7, 3, 1.5, 3}, {2, 2}, {10, 3, 2, 3, 2, 3}};
    QPen pen(tones[Tone::over], 1.5);
    pen.setDashPattern(dashes[tier % 4]);
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

}  // namespace

SiteLook look_of(const TurbidityView& view, std::size_t site) {
    if (view.sites[site].site.role == "control") return {Tone::series_2, Qt::DashLine};
    static constexpr Tone tones[] = {Tone::series_1, Tone::series_3, Tone::series_5, Tone::series_4};
    static constexpr Qt::PenStyle strokes[] = {Qt::SolidLine, Qt::DashDotLine, Qt::DotLine,
                                               Qt::DashDotDotLine};
    std::size_t before = 0;
    for (std::size_t i = 0; i < site; ++i)
        before += view.sites[i].site.role == "control" ? 0 : 1;
    return {tones[before % 4], strokes[before % 4]};
}

void draw_readings(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, SiteLook look,
                   const Palette& tones) {
    const QColor colour = tones[look.tone];
    if (site.each_reading)
        draw_dots(painter, frame, site, colour);
    else
        draw_bands(painter, frame, site, colour);
    Broken line(gap_ms(frame, site));
    const auto middle = middle_ms(frame, site);
    for (const ViewColumn& column : site.columns) {
        const Instant at = column.from + middle;
        if (column.sum.middle)
            line.to(at, {frame.x(at), frame.y(*column.sum.middle)});
        else
            line.cut();
    }
    QPen pen(colour, 1.2);
    if (look.stroke != Qt::SolidLine) pen.setStyle(look.stroke);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen);
    painter.drawPath(line.path);
    draw_flags(painter, frame, site, tones[Tone::text]);
}

void draw_statistics(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, SiteLook look,
                     const Palette& tones) {
    QStringList drawn;
    const auto middle = middle_ms(frame, site);
    for (const ViewTrace& trace : site.traces) {
        const QString name = statistic_name(trace.of);
        if (drawn.contains(name)) continue;
        Broken line(gap_ms(frame, site));
        for (const ViewStep& step : trace.steps) {
            const Instant at = step.from + middle;
            if (step.statistic_high)
                line.to(at, {frame.x(at), frame.y(*step.statistic_high)});
            else
                line.cut();
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones[look.tone], 3.2 - 0.8 * double(drawn.size()),
                            drawn.isEmpty() ? Qt::SolidLine : Qt::DotLine));
        painter.drawPath(line.path);
        drawn << name;
    }
}

void draw_levels(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const Palette& tones) {
    const auto middle = middle_ms(frame, site);
    for (std::size_t k = 0; k < site.traces.size(); ++k) {
        Broken line(gap_ms(frame, site));
        std::optional<double> before;
        for (const ViewStep& step : site.traces[k].steps) {
            if (!step.level_low) {
                line.cut();
                before.reset();
                continue;
            }
            // The lower edge: against what a statistic had to stay below.
            const Instant at = step.from + middle;
            if (before) line.to(at, {frame.x(at), frame.y(*before)});
            line.to(at, {frame.x(at), frame.y(*step.level_low)});
            before = step.level_low;
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(level_pen(k, tones));
        painter.drawPath(line.path);
    }
}

void name_levels(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const Palette& tones) {
    painter.setFont(type_font(Step::small, Weight::semibold));
    std::vector<double> taken;
    for (const ViewTrace& trace : site.traces) {
        const auto last = std::find_if(trace.steps.rbegin(), trace.steps.rend(),
                                       [](const ViewStep& step) { return step.level_low.has_value(); });
        if (last == trace.steps.rend()) continue;
        const double y = frame.y_cut(*last->level_low);
        if (std::any_of(taken.begin(), taken.end(), [y](double other) { return std::abs(other - y) < 13; }))
            continue;
        taken.push_back(y);
        const QString name = QString::fromStdString(trace.of.number);
        QRectF words(0, 0, painter.fontMetrics().horizontalAdvance(name) + grid, 15);
        words.moveBottomRight({frame.plot.right() - 2, y - 1});
        QColor paper = tones[Tone::surface];
        paper.setAlphaF(0.85F);
        painter.fillRect(words, paper);
        painter.setPen(tones[Tone::text]);
        painter.drawText(words, Qt::AlignCenter, name);
    }
}

std::vector<KeyPart> key_parts(const TurbidityView& view, double width) {
    const QFontMetricsF letters(type_font(Step::small));
    std::vector<KeyPart> parts;
    double x = 0, y = 0;
    const auto add = [&](KeyPart part) {
        const double stroke = part.site || part.levels ? stroke_width + half_grid : 0;
        const double wide = stroke + letters.horizontalAdvance(part.words) + 2;
        if (x > 0 && x + wide > width) {
            x = 0;
            y += key_line_height;
        }
        part.place = QRectF(x, y, wide, key_line_height);
        x += wide + 2 * grid;
        parts.push_back(std::move(part));
    };
    QStringList statistics;
    for (std::size_t i = 0; i < view.sites.size(); ++i) {
        add({{}, QString::fromStdString(view.sites[i].site.site), i});
        for (const ViewTrace& trace : view.sites[i].traces) {
            const QString name = statistic_name(trace.of);
            if (statistics.contains(name)) continue;
            add({{}, name, i, std::size_t(statistics.size())});
            statistics << name;
        }
    }
    if (!statistics.isEmpty()) add({{}, tr("levels"), {}, {}, true});
    for (const QString& mark : {tr("▽ suspect"), tr("× failed"), tr("ı missing")})
        add({{}, mark});
    return parts;
}

void draw_key(QPainter& painter, const TurbidityFrame& frame, const TurbidityView& view,
              const Palette& tones) {
    painter.setFont(type_font(Step::small));
    for (const KeyPart& part : key_parts(view, frame.key.width())) {
        QRectF words = part.place.translated(frame.key.topLeft());
        if (part.site || part.levels) {
            const SiteLook look = part.site ? look_of(view, *part.site) : SiteLook();
            QPen pen = level_pen(0, tones);
            if (part.statistic)
                pen = QPen(tones[look.tone], 3.2 - 0.8 * double(*part.statistic),
                           *part.statistic == 0 ? Qt::SolidLine : Qt::DotLine);
            else if (part.site)
                pen = QPen(tones[look.tone], 1.6, look.stroke);
            painter.setPen(pen);
            const double y = words.center().y();
            painter.drawLine(QPointF(words.left(), y), QPointF(words.left() + stroke_width, y));
            words.setLeft(words.left() + stroke_width + half_grid);
        }
        painter.setPen(tones[Tone::text]);
        painter.drawText(words, Qt::AlignVCenter | Qt::TextDontClip, part.words);
    }
}

}  // namespace spoilbook::form
