// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>
