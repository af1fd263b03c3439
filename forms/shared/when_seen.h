// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <functional>

#include "forms/shared/session.h"

class QWidget;

namespace spoilbook::form {

/// Runs `refresh` after each change of the session while `page` is seen; what changed while it was not is
/// caught up with when it is shown. Owned by the page.
class WhenSeen : public QObject {
    Q_OBJECT

 public:
    WhenSeen(QWidget* page, Session& session, std::function<void()> refresh);

 protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

 private:
    QWidget* page_;
    std::function<void()> refresh_;
    bool stale_ = false;
};

}  // namespace spoilbook::form
