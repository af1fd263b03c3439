// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QFileInfo>

namespace spoilbook::form {

/// A book on the shelf: its spine with the name on a label, and where it lies. One that is gone says so.
class BookSpine : public QAbstractButton {
    Q_OBJECT

 public:
    BookSpine(const QFileInfo& file, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

 protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

 private:
    QString note_;
    bool gone_;
};

}  // namespace spoilbook::form
