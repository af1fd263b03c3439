// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/book_spine.h"

#include <QDateTime>
#include <QLocale>
#include <QPainter>

#include "forms/shared/paper_style.h"
#include "forms/shared/state_mark.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int spine_height = 9 * grid;
constexpr int cloth = 3 * grid;

}  // namespace

BookSpine::BookSpine(const QFileInfo& file, QWidget* parent)
    : QAbstractButton(parent), gone_(!file.exists()) {
    setText(file.completeBaseName());
    note_ =
        gone_ ? tr("not there any more: %1").arg(file.absoluteFilePath())
              : tr("%1 · last written %2")
                    .arg(file.absolutePath(), QLocale().toString(file.lastModified(), QLocale::ShortFormat));
    setAccessibleName(gone_ ? tr("Book %1, %2").arg(text(), note_) : tr("Open book %1").arg(text()));
    setAccessibleDescription(note_);
    setToolTip(file.absoluteFilePath());
    setFocusPolicy(Qt::StrongFocus);
    setFont(type_font(Step::strong, Weight::semibold));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize BookSpine::sizeHint() const {
    return {40 * grid, spine_height};
}

void BookSpine::enterEvent(QEnterEvent*) {
    update();
}

void BookSpine::leaveEvent(QEvent*) {
    update();
}

void BookSpine::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF r = QRectF(rect()).adjusted(2.5, 2.5, -2.5, -2.5);
    painter.setBrush(tones[underMouse() && !gone_ ? Tone::raised : Tone::surface]);
    painter.setPen(QPen(tones[underMouse() ? Tone::edge : Tone::line], 1));
    painter.drawRoundedRect(r, 3, 3);
    // The cloth back of a bound book, with its two bands.
    const QRectF back(r.left(), r.top(), cloth, r.height());
    painter.setPen(Qt::NoPen);
    painter.setBrush(tones[gone_ ? Tone::line : Tone::accent]);
    painter.drawRoundedRect(back, 3, 3);
    painter.setPen(QPen(tones[Tone::surface], 1.5));
    for (const double y : {back.top() + 12, back.bottom() - 12}) {
        painter.drawLine(QPointF(back.left() + 4, y), QPointF(back.right() - 4, y));
    }
    QRect words = r.toRect().adjusted(cloth + 2 * grid, grid, -grid, -grid);
    if (gone_) {
        draw_shape(painter, QRectF(words.left(), words.center().y() - 7, 14, 14), State::unknown, tones);
        words.setLeft(words.left() + 3 * grid);
    }
    const int half = words.height() * 11 / 20;
    painter.setPen(tones[gone_ ? Tone::quiet : Tone::text]);
    painter.setFont(font());
    painter.drawText(words.adjusted(0, 0, 0, half - words.height()), Qt::AlignBottom | Qt::AlignLeft, text());
    painter.setFont(type_font(Step::small));
    painter.setPen(tones[Tone::quiet]);
    const QString note = painter.fontMetrics().elidedText(note_, Qt::ElideMiddle, words.width());
    painter.drawText(words.adjusted(0, half, 0, 0), Qt::AlignTop | Qt::AlignLeft, note);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones[Tone::accent], 2));
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 4, 4);
    }
}

}  // namespace spoilbook::form
