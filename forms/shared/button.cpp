// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/button.h"

#include <QShortcut>

#include "forms/shared/icon.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

QPushButton* make_button(ButtonKind kind, const QString& text, const QString& icon_name, QWidget* parent) {
    auto* button = new QPushButton(parent);
    button->setProperty("kind", static_cast<int>(kind));
    button->setAutoDefault(false);
    button->setAccessibleName(text);
    // Outside a dialog window Qt's buttons hear Space alone; a person presses Enter as well.
    for (const auto key : {Qt::Key_Return, Qt::Key_Enter}) {
        auto* enter = new QShortcut(key, button);
        enter->setContext(Qt::WidgetShortcut);
        QObject::connect(enter, &QShortcut::activated, button, &QPushButton::click);
    }
    if (!icon_name.isEmpty()) {
        button->setIcon(icon(icon_name, kind == ButtonKind::primary ? Tone::on_accent : Tone::text));
    }
    switch (kind) {
        case ButtonKind::tool:
            button->setToolTip(text);
            button->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
            return button;
        case ButtonKind::press:
            button->setIconSize(QSize(28, 28));
            button->setFont(type_font(Step::strong, Weight::semibold));
            break;
        case ButtonKind::primary:
            button->setFont(type_font(Step::body, Weight::semibold));
            break;
        case ButtonKind::plain:
        case ButtonKind::offer:
        case ButtonKind::quiet:
            break;
    }
    button->setText(text);
    return button;
}

ButtonKind kind_of(const QWidget* widget) {
    const QVariant kind = widget ? widget->property("kind") : QVariant();
    return kind.isValid() ? static_cast<ButtonKind>(kind.toInt()) : ButtonKind::plain;
}

}  // namespace spoilbook::form
