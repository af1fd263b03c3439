// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/field.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

// The shape of a state without its word: the note beside it has the words.
class Shape : public QWidget {
 public:
    explicit Shape(QWidget* parent) : QWidget(parent) { setFixedSize(14, 18); }
    void set(State state) {
        state_ = state;
        update();
    }

 protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        draw_shape(painter, QRectF(1, 4, 12, 12), state_, palette_in_use());
    }

 private:
    State state_ = State::hold;
};

}  // namespace

FieldBox::FieldBox(const QString& label, QWidget* parent)
    : QWidget(parent),
      label_(make_quiet(label, Step::small, this)),
      offer_(make_button(ButtonKind::offer, {}, QStringLiteral("back"), this)),
      all_(new QVBoxLayout(this)),
      note_(new QWidget(this)),
      note_text_(make_label({}, Step::small, Weight::semibold, this)),
      note_shape_(new Shape(note_)),
      question_(new QWidget(this)),
      hint_(make_quiet({}, Step::small, this)) {
    build();
}

void FieldBox::build() {
    all_->setContentsMargins(0, 0, 0, 0);
    all_->setSpacing(2);
    label_->setIndent(3);
    all_->addWidget(label_);

    auto* note = new QHBoxLayout(note_);
    note->setContentsMargins(3, 0, 0, 0);
    note->setSpacing(6);
    note->addWidget(note_shape_, 0, Qt::AlignTop);
    note_text_->setWordWrap(true);
    note->addWidget(note_text_, 1);
    note_->hide();
    all_->addWidget(note_);

    auto* answers = new QHBoxLayout(question_);
    answers->setContentsMargins(0, 0, 0, 0);
    auto* keep = make_button(ButtonKind::plain, tr("It is so"), QStringLiteral("check"), question_);
    auto* mend = make_button(ButtonKind::quiet, tr("Mend it"), {}, question_);
    answers->addWidget(keep);
    answers->addWidget(mend);
    answers->addStretch();
    question_->hide();
    all_->addWidget(question_);
    connect(keep, &QPushButton::clicked, this, [this] {
        const auto keep_it = keep_;
        end_question();
        if (keep_it) keep_it();
    });
    connect(mend, &QPushButton::clicked, this, [this] {
        end_question();
        if (editor_) editor_->setFocus();
    });

    hint_->setIndent(3);
    hint_->setWordWrap(true);
    hint_->hide();
    all_->addWidget(hint_);
    offer_->hide();
    connect(offer_, &QPushButton::clicked, this, [this] {
        if (take_) take_();
    });
}

void FieldBox::set_editor(QWidget* editor) {
    editor_ = editor;
    editor->setAccessibleName(label_->text());
    // A box with a unit in it would let itself be pressed flat.
    editor->ensurePolished();
    editor->setMinimumHeight(editor->sizeHint().height());
    label_->setBuddy(editor);
    all_->insertWidget(1, editor);
    // Below it: beside it, a box with an offer would be wider than the panel that it stands in.
    all_->insertWidget(2, offer_, 0, Qt::AlignLeft);
    setFocusProxy(editor);
}

void FieldBox::set_hint(const QString& hint) {
    hint_->setText(hint);
    hint_->setVisible(!hint.isEmpty());
}

void FieldBox::show_problem(const QString& problem) {
    problem_ = problem;
    if (!problem.isEmpty()) end_question();
    show_note();
}

void FieldBox::ask(const QString& question, std::function<void()> keep) {
    asked_ = question;
    keep_ = std::move(keep);
    show_note();
}

bool FieldBox::asking() const {
    return !asked_.isEmpty();
}

void FieldBox::end_question() {
    asked_.clear();
    keep_ = nullptr;
    show_note();
}

void FieldBox::show_note() {
    const bool wrong = !problem_.isEmpty();
    const QString text = wrong ? problem_ : asked_;
    note_text_->setText(text);
    static_cast<Shape*>(note_shape_)->set(wrong ? State::hold : State::attention);
    note_->setVisible(!text.isEmpty());
    question_->setVisible(!wrong && asking());
    if (editor_) describe(text);
}

// A reader who cannot see the note hears it with the box.
void FieldBox::describe(const QString& note) {
    editor_->setAccessibleDescription(note);
    if (note.isEmpty()) return;
    QAccessibleEvent event(editor_, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

void FieldBox::set_offer(const QString& text, std::function<void()> take) {
    offer_->setText(text);
    offer_->setAccessibleName(tr("%1: take %2").arg(label_->text(), text));
    take_ = std::move(take);
    offer_->show();
}

void FieldBox::clear_offer() {
    offer_->hide();
    take_ = nullptr;
}

}  // namespace spoilbook::form
