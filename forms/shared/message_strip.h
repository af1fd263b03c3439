// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>
#include <functional>

#include "forms/shared/state_mark.h"

class QLabel;
class QPushButton;

namespace spoilbook::form {

/// notice: for information; done: something was written; warning: look at it; error: it did not happen.
enum class Message { notice, done, warning, error };

/// One line above the sheet that says what happened and what to do about it: in place of message boxes, it
/// never stops the work.
class MessageStrip : public QWidget {
    Q_OBJECT

 public:
    explicit MessageStrip(QWidget* parent = nullptr);

    /// Shows one message in place of the one before. `action` is what a button beside it would do; empty:
    /// none.
    void show_message(Message kind, const QString& text, const QString& action = {},
                      std::function<void()> act = {});
    [[nodiscard]] QString text() const;

 public slots:
    void dismiss();

 signals:
    /// It goes, and had the keyboard from nowhere that is still there: someone must take it.
    void let_go();

 protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

 private:
    [[nodiscard]] State state() const;

    Message kind_ = Message::notice;
    QLabel* text_;
    QPushButton* action_;
    std::function<void()> act_;
    QPointer<QWidget> before_;  ///< who had the keyboard before it came to the strip
};

}  // namespace spoilbook::form
