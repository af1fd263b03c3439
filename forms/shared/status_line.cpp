// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/status_line.h"

#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>

#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {

StatusLine::StatusLine(QWidget* parent)
    : QWidget(parent),
      words_(make_label({}, Step::small, Weight::regular, this)),
      book_(make_quiet({}, Step::small, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(2 * grid, 5, 2 * grid, 5);
    row->addWidget(words_, 1);
    row->addWidget(book_);
    words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    show_session(nullptr);
}

void StatusLine::show_session(const Session* session) {
    setVisible(session != nullptr);
    if (!session) return;
    const auto written = session->last_written();
    QString text = tr("Nothing has been written since the book was opened.");
    if (!session->writable()) {
        text = tr("Reading only: %1").arg(session->why_not_writable());
    } else if (written) {
        text = tr("Written %1: %2").arg(time_shown(written->at, session->zone()), written->what);
    }
    words_->setText(text);
    words_->setToolTip(text);
    setAccessibleName(text);
    book_->setText(QFileInfo(session->path()).fileName());
    book_->setToolTip(session->path());
}

QString StatusLine::text() const {
    return words_->text();
}

void StatusLine::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.fillRect(rect(), tones[Tone::raised]);
    painter.fillRect(QRect(0, 0, width(), 1), tones[Tone::line]);
}

}  // namespace spoilbook::form
