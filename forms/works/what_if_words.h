// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QString>

#include "model/progress/works_supposed.h"

namespace spoilbook::form {

/// What is supposed: "What if: 3 barges, haul 5 km longer." Blank where nothing is. `as_at`: its day.
QString supposed_shown(const WorksSupposed& supposed, Day as_at, const QLocale& locale);

/// What each of dredger, tugs and barges would allow, and who holds the loads up; where the log does not
/// tell, why.
QString held_up_shown(const WorksLogged& logged, int weeks, const QLocale& locale);
/// The same of the works as they would be, with what they were and what a week would bring.
QString held_up_shown(const WorksLogged& logged, const WorksToBe& to_be, const QLocale& locale);

}  // namespace spoilbook::form
