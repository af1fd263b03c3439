// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBoxLayout>
#include <QGridLayout>
#include <QLabel>
#include <QWidget>

namespace spoilbook::form {

/// One part of a shift sheet: a ruled box with its name, what it stands at now, and what can be done.
class Panel : public QWidget {
    Q_OBJECT

 public:
    Panel(const QString& title, const QString& icon_name, QWidget* parent);

    /// What it stands at now: one sentence beside the title.
    void set_state(const QString& state);
    [[nodiscard]] QVBoxLayout* body() const { return body_; }

 protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    void fit_state();

    QString icon_name_;
    QString words_;
    QLabel* state_;
    QVBoxLayout* body_;
};

/// A grid of boxes, two abreast, as on a paper form.
QGridLayout* form_grid();

}  // namespace spoilbook::form
