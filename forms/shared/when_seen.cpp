// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/when_seen.h"

#include <QEvent>
#include <QWidget>

namespace spoilbook::form {

WhenSeen::WhenSeen(QWidget* page, Session& session, std::function<void()> refresh)
    : QObject(page), page_(page), refresh_(std::move(refresh)) {
    page->installEventFilter(this);
    connect(&session, &Session::changed, this, [this] {
        stale_ = !page_->isVisible();
        if (!stale_) refresh_();
    });
}

bool WhenSeen::eventFilter(QObject* watched, QEvent* event) {
    if (watched == page_ && event->type() == QEvent::Show && stale_) {
        stale_ = false;
        refresh_();
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace spoilbook::form
