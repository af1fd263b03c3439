// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/cover.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/icon.h"
#include "forms/shared/label.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {
namespace {

// Below this width the words give way to their icons.
constexpr int narrow = 100 * grid;

}  // namespace

Cover::Cover(QWidget* parent)
    : QWidget(parent),
      book_(make_button(ButtonKind::tool, tr("Book (F10)"), QStringLiteral("book"), this)),
      harbour_(make_label({}, Step::strong, Weight::semibold, this)),
      works_(make_quiet({}, Step::small, this)),
      as_at_(make_button(ButtonKind::quiet, {}, QStringLiteral("clock"), this)),
      person_(make_button(ButtonKind::quiet, {}, QStringLiteral("person"), this)),
      undo_(make_button(ButtonKind::tool, tr("Undo"), QStringLiteral("undo"), this)),
      redo_(make_button(ButtonKind::tool, tr("Redo"), QStringLiteral("redo"), this)),
      light_(make_button(ButtonKind::tool, tr("Night palette"), QStringLiteral("moon"), this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(grid, half_grid, grid, half_grid);
    row->setSpacing(half_grid);
    row->addWidget(book_);
    row->addSpacing(half_grid);
    row->addWidget(build_names(), 1);
    for (QPushButton* button : {as_at_, person_, undo_, redo_, light_})
        row->addWidget(button);
    connect(undo_, &QPushButton::clicked, this, &Cover::undo_pressed);
    connect(redo_, &QPushButton::clicked, this, &Cover::redo_pressed);
    connect(as_at_, &QPushButton::clicked, this, &Cover::as_at_pressed);
    connect(person_, &QPushButton::clicked, this, &Cover::person_pressed);
    connect(light_, &QPushButton::clicked, this, &Cover::light_pressed);
    show_session(nullptr);
}

QWidget* Cover::build_names() {
    auto* names = new QWidget(this);
    auto* lines = new QVBoxLayout(names);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addWidget(harbour_);
    lines->addWidget(works_);
    // Long names are cut rather than make the window wide.
    for (QLabel* label : {harbour_, works_})
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    return names;
}

void Cover::set_menu(QMenu* menu) {
    connect(book_, &QPushButton::clicked, menu,
            [this, menu] { menu->popup(book_->mapToGlobal(QPoint(0, book_->height()))); });
}

void Cover::show_session(const Session* session) {
    open_ = session != nullptr;
    for (QWidget* part : {static_cast<QWidget*>(as_at_), static_cast<QWidget*>(person_),
                          static_cast<QWidget*>(undo_), static_cast<QWidget*>(redo_)}) {
        part->setVisible(open_);
    }
    if (!session) {
        harbour_->setText(tr("Spoilbook"));
        works_->setText(tr("No book is open"));
        return;
    }
    harbour_->setText(session->harbour());
    harbour_->setToolTip(session->path());
    works_->setText(session->writable() ? session->works()
                                        : tr("Reading only: %1").arg(session->why_not_writable()));
    const auto as_at = session->as_at();
    as_at_->setProperty("words", as_at ? day_and_time_shown(*as_at, session->zone()) : tr("now"));
    person_->setProperty("words", session->person().isEmpty() ? tr("nobody yet") : session->person());
    show_undo(*session);
    fit();
}

void Cover::show_undo(const Session& session) {
    const auto show = [](QPushButton* button, const QString& verb, const QString& what, const QString& keys) {
        button->setEnabled(!what.isEmpty());
        button->setToolTip(what.isEmpty() ? verb
                                          : verb + QStringLiteral(": ") + what + QStringLiteral("  ") + keys);
        button->setAccessibleName(what.isEmpty() ? verb : verb + QStringLiteral(": ") + what);
    };
    show(undo_, tr("Undo"), session.undo_text(),
         QKeySequence(QKeySequence::Undo).toString(QKeySequence::NativeText));
    show(redo_, tr("Redo"), session.redo_text(),
         QKeySequence(QKeySequence::Redo).toString(QKeySequence::NativeText));
}

void Cover::show_light(Light light) {
    const bool day = light == Light::day;
    light_->setIcon(icon(day ? QStringLiteral("moon") : QStringLiteral("sun")));
    light_->setToolTip(day ? tr("Night palette") : tr("Day palette"));
    light_->setAccessibleName(light_->toolTip());
}

void Cover::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit();
}

void Cover::fit() {
    if (!open_) return;
    const bool wide = width() >= narrow;
    const QString at = as_at_->property("words").toString();
    const QString by = person_->property("words").toString();
    as_at_->setText(wide ? tr("as at %1").arg(at) : QString());
    person_->setText(wide ? tr("by %1").arg(by) : QString());
    as_at_->setAccessibleName(tr("Figures as at %1").arg(at));
    as_at_->setToolTip(as_at_->accessibleName());
    person_->setAccessibleName(tr("Written by %1").arg(by));
    person_->setToolTip(person_->accessibleName());
}

}  // namespace spoilbook::form
