// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/palette.h"
#include "forms/shared/session.h"

class QLabel;
class QMenu;
class QPushButton;

namespace spoilbook::form {

/// The label on the binder's cover: which book, whose hand, which instant; undo and redo; day or night.
class Cover : public QWidget {
    Q_OBJECT

 public:
    explicit Cover(QWidget* parent = nullptr);

    /// The entries under the book's name.
    void set_menu(QMenu* menu);
    /// Shows the session's state again; without one, the label of a closed binder.
    void show_session(const Session* session);
    void show_light(Light light);

 signals:
    void undo_pressed();
    void redo_pressed();
    void as_at_pressed();
    void person_pressed();
    void light_pressed();

 protected:
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_names();
    void show_undo(const Session& session);
    void fit();

    QPushButton* book_;
    QLabel* harbour_;
    QLabel* works_;
    QPushButton* as_at_;
    QPushButton* person_;
    QPushButton* undo_;
    QPushButton* redo_;
    QPushButton* light_;
    bool open_ = false;
};

}  // namespace spoilbook::form
