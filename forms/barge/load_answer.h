// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "forms/shared/state_mark.h"
#include "model/record/season.h"

namespace spoilbook::form {

/// What is known of a load, in sentences.
struct LoadAnswer {
    QString counts;        ///< "412 ± 9 m³ in the hopper, 330 ± 21 m³ in situ"; empty: nothing is known
    QString by;            ///< "by ullage, as the consent counts"
    QString beside;        ///< the other methods, each with whether it agrees
    QString dips_trouble;  ///< why the dips give no volume; empty: they do, or there are none
    State state = State::unknown;  ///< clear: methods agree or stand alone; attention: they disagree
};

/// By the method that the consent's limits name, else the first that gives an amount.
LoadAnswer load_answer(const Season& season, const Load& load);

}  // namespace spoilbook::form
