// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/session.h"

class QLabel;

namespace spoilbook::form {

/// The foot of the sheet: what was last written down, and when; or that nothing can be written, and why.
class StatusLine : public QWidget {
    Q_OBJECT

 public:
    explicit StatusLine(QWidget* parent = nullptr);

    void show_session(const Session* session);
    [[nodiscard]] QString text() const;

 protected:
    void paintEvent(QPaintEvent* event) override;

 private:
    QLabel* words_;
    QLabel* book_;
};

}  // namespace spoilbook::form
