// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPushButton>
#include <QString>

namespace spoilbook::form {

/// plain: the usual; primary: the one that a sheet is for; quiet: beside others; tool: an icon alone, named
/// by its accessible name and tip; offer: pencilled, to be taken or left; press: barge desk, ≥ 48 high, hit
/// with a glove.
enum class ButtonKind { plain, primary, quiet, tool, offer, press };

/// A button with its accessible name set. `icon_name` may be empty; `text` of a tool is its name and tip.
QPushButton* make_button(ButtonKind kind, const QString& text, const QString& icon_name, QWidget* parent);

/// What make_button made of it; plain where it did not.
ButtonKind kind_of(const QWidget* widget);

}  // namespace spoilbook::form
