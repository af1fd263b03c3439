// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <vector>

#include "forms/shared/desk.h"

class QButtonGroup;
class QHBoxLayout;

namespace spoilbook::form {

/// One divider of a ring binder: a tab of card that stands above the sheets, in front where it is turned to.
class Divider : public QAbstractButton {
    Q_OBJECT

 public:
    Divider(const QString& icon_name, const QString& title, const QString& reader, QWidget* parent);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

 private:
    [[nodiscard]] bool shows_reader() const;

    QString icon_name_;
    QString reader_;
};

/// The row of dividers. Left and right arrows turn to the neighbour, as in any row of tabs.
class Dividers : public QWidget {
    Q_OBJECT

 public:
    explicit Dividers(QWidget* parent = nullptr);

    void set_desks(const std::vector<Desk>& desks);
    void set_current(int index);
    [[nodiscard]] int current() const;

 signals:
    void turned(int index);

 private:
    QHBoxLayout* row_;
    QButtonGroup* group_;
};

}  // namespace spoilbook::form
