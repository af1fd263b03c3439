// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/sentence_form.h"

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QVBoxLayout>

#include "forms/shared/flow_layout.h"
#include "forms/shared/label.h"
#include "forms/shared/text_field.h"

namespace spoilbook::form {
namespace {

/// A `which` stands at the same place as what it chooses.
std::string key_of(const Blank& blank) {
    return blank.holds == BlankHolds::which ? blank.at + "?" : blank.at;
}

/// Words stand as high as what is written in the boxes beside them.
QLabel* words_beside(const QString& words, QWidget* parent) {
    QLabel* label = make_label(words, Step::body, Weight::regular, parent);
    label->setContentsMargins(0, 3 * grid + half_grid, 0, 0);
    return label;
}

}  // namespace

SentenceForm::SentenceForm(Draft& draft, Pieces pieces, QWidget* parent)
    : QWidget(parent), draft_(draft), pieces_(pieces) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    rebuild();
}

void SentenceForm::rebuild() {
    std::string held;
    // Where the keyboard is, not where it was when it was last in this part.
    for (const auto& [key, box] : boxes_) {
        if (box->isAncestorOf(QApplication::focusWidget())) held = key;
    }
    boxes_.clear();
    widths_.clear();
    if (line_) {
        line_->hide();
        line_->deleteLater();
    }
    line_ = new QWidget(this);
    auto* flow = new FlowLayout(line_);
    for (const Piece& piece : pieces_(draft_))
        flow->addWidget(piece.blank ? static_cast<QWidget*>(make_box(*piece.blank))
                                    : words_beside(piece.words, line_));
    layout()->addWidget(line_);
    const auto found = boxes_.find(held);
    if (found != boxes_.end()) found->second->setFocus();
}

QList<FieldBox*> SentenceForm::boxes() const {
    return line_->findChildren<FieldBox*>(QString(), Qt::FindDirectChildrenOnly);
}

QWidget* SentenceForm::tab_after(QWidget* before) const {
    for (FieldBox* box : boxes()) {
        QWidget::setTabOrder(before, box);
        before = box;
    }
    return before;
}

FieldBox* SentenceForm::make_box(const Blank& blank) {
    FieldBox* box = nullptr;
    if (blank.is_chosen()) {
        auto* choice = new ChoiceField(blank.name, line_);
        choice->set_choices(blank.choices);
        const QString held = held_in(draft_, blank, locale());
        const bool may_be_blank = !blank.choices.empty() && blank.choices.front().key.isEmpty();
        if (!held.isEmpty() || may_be_blank) choice->set_chosen(held);
        connect(choice, &ChoiceField::committed, this,
                [this, blank](const QString& key) { put(blank, key); });
        if (auto* list = choice->findChild<QComboBox*>())
            list->setSizeAdjustPolicy(QComboBox::AdjustToContents);
        box = choice;
    } else {
        auto* text = new TextField(blank.name, {}, line_);
        text->set_text(held_in(draft_, blank, locale()));
        connect(text, &TextField::committed, this,
                [this, blank](const QString& typed) { put(blank, typed); });
        box = text;
    }
    const QFontMetrics letters(type_font(Step::body));
    const int name = QFontMetrics(type_font(Step::small)).horizontalAdvance(blank.name) + 2 * grid;
    const int usual = qMax(name, letters.averageCharWidth() * blank.chars + 4 * grid);
    widths_[box] = blank.is_chosen() ? qMax(usual, box->sizeHint().width()) : usual;
    box->setFixedWidth(widths_[box]);
    boxes_[key_of(blank)] = box;
    // Without a policy of its own a box stays in the order of the Tab key where it was made.
    box->setFocusPolicy(Qt::StrongFocus);
    return box;
}

void SentenceForm::put(const Blank& blank, const QString& typed) {
    put_in(draft_, blank, typed, locale());
    emit edited(blank.is_chosen());
}

// A sentence below a narrow box needs more room than the box.
void SentenceForm::show_problem(FieldBox* box, const QString& problem) {
    box->show_problem(problem);
    box->setFixedWidth(problem.isEmpty() ? widths_.at(box) : qMax(widths_.at(box), 32 * grid));
}

/// A refusal names the member of the data; beside its blank it bears the blank's own name.
QString SentenceForm::in_words(const std::pair<const std::string, QString>& problem, const FieldBox& box) {
    const auto member = QString::fromStdString(problem.first.substr(problem.first.rfind('/') + 1));
    QString words = problem.second;
    words.replace(QStringLiteral("%1 is missing; add it").arg(member),
                  tr("“%1” is needed and not filled yet.").arg(box.label()));
    return words.replace(QStringLiteral("; %1 is").arg(member), QStringLiteral("; %1 is").arg(box.label()));
}

void SentenceForm::show_problems(std::map<std::string, QString>& problems) {
    for (const auto& [key, box] : boxes_)
        show_problem(box, {});
    for (auto problem = problems.begin(); problem != problems.end();) {
        // The blank itself, else the nearest one above it: "which" of the object that lacks something.
        FieldBox* box = nullptr;
        for (std::string at = problem->first; !box; at = at.substr(0, at.rfind('/'))) {
            for (const std::string& key : {at, at + "?"}) {
                if (!box && boxes_.contains(key)) box = boxes_.at(key);
            }
            if (at.empty()) break;
        }
        if (box && box->problem().isEmpty()) show_problem(box, in_words(*problem, *box));
        problem = box ? problems.erase(problem) : std::next(problem);
    }
}

}  // namespace spoilbook::form
