// SPDX-License-Identifier: GPL-3.0-or-later
// The program's own line icons: one 24 px grid, one stroke, coloured from the palette each time they are
// drawn.
#pragma once

#include <QIcon>
#include <QPixmap>
#include <QStringList>

#include "forms/shared/palette.h"

namespace spoilbook::form {

/// The icon of this name (forms/shared/icons/NAME.svg) in a tone of the palette in use; disabled it is quiet.
/// A name that is not there gives an empty icon, which tests/form finds.
QIcon icon(const QString& name, Tone tone = Tone::text);

/// One picture of it, `side` device-independent pixels square, at `ratio` device pixels each.
QPixmap icon_picture(const QString& name, const QColor& colour, int side, double ratio);

/// All names, sorted.
QStringList icon_names();

}  // namespace spoilbook::form
