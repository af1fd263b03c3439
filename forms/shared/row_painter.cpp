// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/row_painter.h"

#include <QAbstractItemView>
#include <QPainter>

#include "forms/shared/paper_style.h"
#include "forms/shared/table_model.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int row_shape_side = 12;

}  // namespace

void RowPainter::paint(QPainter* painter, const QStyleOptionViewItem& option,
                       const QModelIndex& index) const {
    const Palette& tones = palette_in_use();
    const QRect& r = option.rect;
    painter->save();
    const bool selected = option.state & QStyle::State_Selected;
    painter->fillRect(r, tones[selected ? Tone::selection : Tone::surface]);
    painter->fillRect(QRect(r.left(), r.bottom(), r.width(), 1), tones[Tone::line]);

    QRect inside = r.adjusted(grid, 0, -grid, -1);
    const QVariant mark = index.data(mark_role);
    if (mark.isValid()) {
        const QRectF place(inside.left(), inside.center().y() - row_shape_side / 2.0 + 1, row_shape_side,
                           row_shape_side);
        draw_shape(*painter, place, static_cast<State>(mark.toInt()), tones);
        inside.setLeft(inside.left() + row_shape_side + grid);
    }
    painter->setFont(option.font);
    painter->setPen(tones[Tone::text]);
    const int align = index.data(Qt::TextAlignmentRole).toInt();
    const QString text =
        option.fontMetrics.elidedText(index.data().toString(), Qt::ElideRight, inside.width());
    painter->drawText(inside, align, text);
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(QPen(tones[Tone::accent], 2));
        painter->drawRect(r.adjusted(1, 1, -1, -2));
    }
    painter->restore();
}

QSize RowPainter::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int mark = index.data(mark_role).isValid() ? row_shape_side + grid : 0;
    const int width = option.fontMetrics.horizontalAdvance(index.data().toString());
    return {width + mark + 2 * grid + 2, 4 * grid};
}

}  // namespace spoilbook::form
