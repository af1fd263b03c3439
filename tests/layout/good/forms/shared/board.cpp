// SPDX-License-Identifier: GPL-3.0-or-later
#include <QWidget>

#include "forms/print/page.h"
#include "model/unit/metres.h"
#include "ui_board.h"
