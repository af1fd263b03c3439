// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QPushButton>
#include <functional>

class QShortcut;

namespace spoilbook::form {

/// A press for a glove: its words, its key small beside them, and below them what it would write, where that
/// is not plain. The key works wherever the keyboard is on the page that is shown; held down it is one press.
class PressButton : public QPushButton {
    Q_OBJECT

 public:
    PressButton(const QString& words, const QString& icon_name, const QKeySequence& key, QWidget* parent);

    /// Says more in small text below: a time that was stamped, the place that is offered.
    void set_note(const QString& note);
    /// The words of what it does now.
    void set_words(const QString& words);
    /// Little room: the sign alone, its key below it; `name` is what it is called.
    void set_narrow(const QString& sign, const QString& name);
    /// Another key, or none.
    void set_key(const QKeySequence& key);
    /// Whether its key is heard: not while a sheet lies over it, whose presses have the same keys.
    void hear_key(bool hear);
    /// The press that is due next stands out.
    void set_due(bool due);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
    void paintEvent(QPaintEvent* event) override;

 private:
    [[nodiscard]] int words_width() const;
    [[nodiscard]] bool on_other_sheet(const QWidget* widget) const;

    QShortcut* shortcut_;
    QString words_, note_, key_, icon_name_;
    bool due_ = false;
    bool narrow_ = false;
};

}  // namespace spoilbook::form
