// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/duty_month.h"

#include <QPainter>
#include <QTextCharFormat>
#include <QToolButton>
#include <algorithm>

#include "forms/shared/icon.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

// hold before attention before cannot tell before clear.
int weight_of(State state) {
    switch (state) {
        case State::hold:
            return 3;
        case State::attention:
            return 2;
        case State::unknown:
            return 1;
        case State::clear:
            break;
    }
    return 0;
}

}  // namespace

DutyMonth::DutyMonth(QWidget* parent) : QCalendarWidget(parent) {
    setAccessibleName(tr("Month with what is due in it"));
    setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
    setGridVisible(false);
    setFirstDayOfWeek(Qt::Monday);
    // Weekends are said by the reasoning beside a due time, not by a colour.
    for (const Qt::DayOfWeek day : {Qt::Saturday, Qt::Sunday})
        setWeekdayTextFormat(day, QTextCharFormat());
    setMinimumWidth(34 * grid);
    setMinimumHeight(38 * grid);
    setMaximumHeight(42 * grid);
    draw_arrows();
}

// The calendar's own arrows are of another hand, and do not follow the palette.
void DutyMonth::draw_arrows() {
    for (const auto& [button, name] :
         {std::pair("qt_calendar_prevmonth", "left"), std::pair("qt_calendar_nextmonth", "right")}) {
        if (auto* arrow = findChild<QToolButton*>(QString::fromLatin1(button)))
            arrow->setIcon(icon(QString::fromLatin1(name)));
    }
}

void DutyMonth::changeEvent(QEvent* event) {
    QCalendarWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) draw_arrows();
}

void DutyMonth::show_duties(const std::vector<DutyRow>& rows, QDate today) {
    days_.clear();
    for (const DutyRow& row : rows) {
        if (!row.day.isValid() || row.state == DutyState::nil) continue;
        Due& due = days_[row.day];
        if (due.words.isEmpty() || weight_of(row.shape) > weight_of(due.shape)) due.shape = row.shape;
        due.words << tr("%1 of condition %2: %3").arg(row.what, row.condition, row.word);
    }
    if (!today_.isValid()) setSelectedDate(today);
    today_ = today;
    updateCells();
}

QString DutyMonth::words_of(QDate day) const {
    const auto found = days_.find(day);
    return found == days_.end() ? QString() : found->second.words.join(QStringLiteral("; "));
}

void DutyMonth::paintCell(QPainter* painter, const QRect& place, QDate day) const {
    const bool is_other = day.month() != monthShown();
    const Palette& tones = palette_in_use();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->fillRect(place, tones[day == selectedDate() ? Tone::selection : Tone::surface]);
    painter->setPen(tones[is_other ? Tone::quiet : Tone::text]);
    QFont font = type_font(Step::small, day == today_ ? Weight::semibold : Weight::regular);
    font.setUnderline(day == today_);
    painter->setFont(font);
    const QRect number = place.adjusted(half_grid, 0, -half_grid, 0);
    painter->drawText(number, Qt::AlignLeft | Qt::AlignVCenter, locale().toString(day.day()));
    const auto found = days_.find(day);
    if (found != days_.end()) {
        const int side = std::min(place.height() / 2, grid + half_grid);
        const QRectF shape(place.right() - side - half_grid, place.center().y() - side / 2.0 + 0.5, side,
                           side);
        draw_shape(*painter, shape, found->second.shape, tones);
    }
    painter->restore();
}

}  // namespace spoilbook::form
