// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/leaf_index.h"

#include <QButtonGroup>
#include <QPainter>
#include <QVBoxLayout>

#include "forms/shared/icon.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int line_height = finger;
constexpr int open_width = 23 * grid;
constexpr int folded_width = 6 * grid;
constexpr int punched_edge = 3 * grid;
constexpr int leaf_icon_side = 20;
constexpr double hole = 11;

}  // namespace

IndexLine::IndexLine(const QString& icon_name, const QString& title, QWidget* parent)
    : QAbstractButton(parent), icon_name_(icon_name) {
    setText(title);
    setAccessibleName(title);
    setToolTip(title);
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setFont(type_font(Step::body));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void IndexLine::fold(bool folded) {
    folded_ = folded;
    updateGeometry();
    update();
}

QSize IndexLine::sizeHint() const {
    return {folded_ ? folded_width - grid : open_width - punched_edge, line_height};
}

void IndexLine::enterEvent(QEnterEvent*) {
    update();
}

void IndexLine::leaveEvent(QEvent*) {
    update();
}

void IndexLine::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (isChecked()) painter.fillRect(rect(), tones[Tone::selection]);
    painter.fillRect(QRect(0, height() - 1, width(), 1), tones[Tone::line]);
    if (isChecked()) painter.fillRect(QRect(0, 0, 3, height() - 1), tones[Tone::accent]);
    const QRect icon_place(grid + 2, (height() - leaf_icon_side) / 2, leaf_icon_side, leaf_icon_side);
    form::icon(icon_name_, isChecked() || underMouse() ? Tone::text : Tone::quiet)
        .paint(&painter, icon_place);
    if (!folded_) {
        painter.setFont(type_font(Step::body, isChecked() ? Weight::semibold : Weight::regular));
        painter.setPen(tones[Tone::text]);
        const QRect words = rect().adjusted(2 * grid + leaf_icon_side + half_grid, 0, -half_grid, 0);
        const QString shown = painter.fontMetrics().elidedText(text(), Qt::ElideRight, words.width());
        painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, shown);
    }
    if (hasFocus()) {
        painter.setPen(QPen(tones[Tone::accent], 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -2));
    }
}

LeafIndex::LeafIndex(QWidget* parent)
    : QWidget(parent), lines_(new QVBoxLayout(this)), group_(new QButtonGroup(this)) {
    setAccessibleName(tr("Leaves of this desk"));
    lines_->setSpacing(0);
    lines_->addStretch();
    connect(group_, &QButtonGroup::idToggled, this, [this](int id, bool on) {
        if (on) emit turned(id);
    });
    fold(false);
}

void LeafIndex::set_leaves(const std::vector<Leaf>& leaves) {
    int index = 0;
    for (const Leaf& leaf : leaves) {
        auto* line = new IndexLine(leaf.icon, leaf.title, this);
        lines_->insertWidget(index, line);
        group_->addButton(line, index++);
    }
}

void LeafIndex::set_current(int index) {
    QAbstractButton* line = group_->button(index);
    if (line == nullptr) return;
    // The ring of the focus goes with the leaf that is turned to, or it would mark another one.
    const QAbstractButton* before = group_->checkedButton();
    if (before != nullptr && before->hasFocus()) line->setFocus(Qt::OtherFocusReason);
    line->setChecked(true);
}

int LeafIndex::current() const {
    return group_->checkedId();
}

void LeafIndex::fold(bool folded) {
    lines_->setContentsMargins(folded ? half_grid : punched_edge, grid, folded ? half_grid : 0, grid);
    setFixedWidth(folded ? folded_width : open_width);
    for (QAbstractButton* line : group_->buttons())
        static_cast<IndexLine*>(line)->fold(folded);
    setProperty("folded", folded);
}

void LeafIndex::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.fillRect(QRect(width() - 1, 0, 1, height()), tones[Tone::line]);
    if (property("folded").toBool()) return;
    // Two holes at 80 mm, half of the standard's distance from the middle each (ISO 838).
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(tones[Tone::line], 1));
    painter.setBrush(tones[Tone::ground]);
    for (const double y : {height() / 2.0 - 151, height() / 2.0 + 151}) {
        painter.drawEllipse(QPointF(punched_edge / 2.0, y), hole / 2, hole / 2);
    }
}

}  // namespace spoilbook::form
