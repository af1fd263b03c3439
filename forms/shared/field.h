// SPDX-License-Identifier: GPL-3.0-or-later
// One labelled box of a form. What was typed is never lost; what is wrong with it stands beside it.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>
#include <functional>

#include "forms/shared/state_mark.h"

class QHBoxLayout;
class QVBoxLayout;

namespace spoilbook::form {

class FieldBox : public QWidget {
    Q_OBJECT

 public:
    FieldBox(const QString& label, QWidget* parent);

    [[nodiscard]] QString label() const { return label_->text(); }
    /// A quiet line below: a range, an example, how a time was read.
    void set_hint(const QString& hint);
    /// Shows what is wrong and what would be right. An empty text takes it away.
    void show_problem(const QString& problem);
    [[nodiscard]] QString problem() const { return problem_; }
    /// Something possible but odd: asked once, below the box. `keep` runs where the person says that it is
    /// so.
    void ask(const QString& question, std::function<void()> keep);
    [[nodiscard]] bool asking() const;
    /// A value that the book suggests: one press takes it, nothing is filled in by itself.
    void set_offer(const QString& text, std::function<void()> take);
    void clear_offer();

 signals:
    /// What stands in the box was changed by the person and is not committed yet: for answers as one types.
    void edited();

 protected:
    /// Gives the note below the box to a reader who cannot see it.
    virtual void describe(const QString& note);
    /// The box that the person writes in; takes the label's name and buddy.
    void set_editor(QWidget* editor);
    [[nodiscard]] QWidget* editor() const { return editor_; }
    void end_question();

 private:
    void build();
    void show_note();

    QLabel* label_;
    QPushButton* offer_;
    QWidget* editor_ = nullptr;
    QVBoxLayout* all_;
    QWidget* note_;
    QLabel* note_text_;
    QWidget* note_shape_;
    QWidget* question_;
    QLabel* hint_;
    QString problem_;
    QString asked_;
    std::function<void()> keep_;
    std::function<void()> take_;
};

}  // namespace spoilbook::form
