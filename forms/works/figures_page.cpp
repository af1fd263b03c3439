// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/figures_page.h"

#include <QVBoxLayout>

#include "forms/shared/busy_overlay.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

void give_height(QWidget* part, int least) {
    // Otherwise a page with wrapping words counts each part at the height that it would like.
    part->setMinimumHeight(least * grid);
    part->setSizePolicy(part->sizePolicy().horizontalPolicy(), QSizePolicy::Ignored);
}

FiguresPage::FiguresPage(FiguresSource& source, QWidget* parent)
    : QWidget(parent),
      source_(source),
      messages_(new MessageStrip(this)),
      body_(new QVBoxLayout),
      busy_(new BusyOverlay(this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(messages_);
    messages_->hide();
    body_->setContentsMargins(3 * grid, 2 * grid, 3 * grid, 2 * grid);
    body_->setSpacing(2 * grid);
    all->addLayout(body_, 1);
    connect(&source, &FiguresSource::stale, this, &FiguresPage::want);
    connect(&source, &FiguresSource::made, this, &FiguresPage::take);
    connect(&source, &FiguresSource::failed, this, [this](const QString& why) {
        busy_->end();
        tell_problem(why);
    });
}

void FiguresPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    take();
    want();
}

void FiguresPage::want() {
    if (!isVisible()) return;
    source_.want();
    // Figures that are a minute old may be read on while newer ones are made.
    if (source_.at_work() && !source_.know_the_book()) busy_->begin(tr("Working out the figures"), false);
}

void FiguresPage::take() {
    if (!isVisible() || !source_.newest()) return;
    busy_->end();
    if (shown_ == source_.newest()) return;
    shown_ = source_.newest();
    show_figures(shown_);
}

void FiguresPage::tell_written(const QString& path) {
    messages_->show_message(Message::done, tr("Written to %1").arg(path));
}

void FiguresPage::tell_problem(const QString& why) {
    messages_->show_message(Message::error, why);
}

}  // namespace spoilbook::form
