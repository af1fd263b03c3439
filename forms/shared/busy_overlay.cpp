// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/busy_overlay.h"

#include <QEvent>
#include <QLabel>
#include <QPainter>
#include <QProgressBar>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"

namespace spoilbook::form {
namespace {

constexpr int appear_after_ms = 200;
constexpr int details_after_ms = 2000;
constexpr int whole = 1000;

}  // namespace

BusyOverlay::BusyOverlay(QWidget* parent)
    : QWidget(parent),
      what_(make_label({}, Step::strong, Weight::semibold, this)),
      bar_(new QProgressBar(this)),
      stop_(make_button(ButtonKind::plain, tr("Stop"), QStringLiteral("close"), this)) {
    auto* all = new QVBoxLayout(this);
    all->addStretch();
    what_->setAlignment(Qt::AlignCenter);
    what_->setWordWrap(true);
    all->addWidget(what_);
    bar_->setTextVisible(false);
    bar_->setFixedWidth(40 * grid);
    bar_->setAccessibleName(tr("How far it is"));
    all->addWidget(bar_, 0, Qt::AlignHCenter);
    all->addWidget(stop_, 0, Qt::AlignHCenter);
    all->addStretch();
    first_.setSingleShot(true);
    second_.setSingleShot(true);
    connect(&first_, &QTimer::timeout, this, &BusyOverlay::appear);
    connect(&second_, &QTimer::timeout, this, &BusyOverlay::show_details);
    connect(stop_, &QPushButton::clicked, this, [this] {
        stop_->setEnabled(false);
        what_->setText(tr("Stopping …"));
        emit stop_asked();
    });
    parent->installEventFilter(this);
    hide();
}

void BusyOverlay::begin(const QString& what, bool can_stop) {
    what_->setText(what);
    setAccessibleName(what);
    can_stop_ = can_stop;
    bar_->setRange(0, 0);
    bar_->hide();
    stop_->hide();
    stop_->setEnabled(true);
    first_.start(appear_after_ms);
    second_.start(details_after_ms);
}

void BusyOverlay::set_progress(double share) {
    bar_->setRange(0, share < 0 ? 0 : whole);
    if (share >= 0) bar_->setValue(int(share * whole));
}

void BusyOverlay::end() {
    first_.stop();
    second_.stop();
    hide();
}

void BusyOverlay::appear() {
    setGeometry(parentWidget()->rect());
    show();
    raise();
}

void BusyOverlay::show_details() {
    bar_->show();
    stop_->setVisible(can_stop_);
    if (can_stop_) stop_->setFocus();
}

void BusyOverlay::paintEvent(QPaintEvent*) {
    QColor veil = palette_in_use()[Tone::surface];
    veil.setAlphaF(0.94F);
    QPainter(this).fillRect(rect(), veil);
}

bool BusyOverlay::eventFilter(QObject* watched, QEvent* event) {
    if (watched == parentWidget() && event->type() == QEvent::Resize) setGeometry(parentWidget()->rect());
    return QWidget::eventFilter(watched, event);
}

}  // namespace spoilbook::form
