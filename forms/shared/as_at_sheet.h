// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/session.h"

namespace spoilbook::form {

/// The instant that all figures are true for: now, or a past one.
class AsAtSheet : public QWidget {
    Q_OBJECT

 public:
    explicit AsAtSheet(Session& session, QWidget* parent = nullptr);

 signals:
    void done();
};

}  // namespace spoilbook::form
