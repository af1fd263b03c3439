// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "forms/shared/state_mark.h"
#include "model/record/season.h"
#include "model/volume/load_figures.h"

namespace spoilbook::form {

/// One method of a load beside the others.
struct MethodSaid {
    QString name;     ///< "Ullage"
    QString amounts;  ///< "412 ± 9 m³ in the hopper, 330 ± 21 m³ in situ, 710 ± 12 t wet"; or why none
    State state = State::unknown;
    QString word;  ///< "counts", "agrees", "disagrees, E_n 1.6", "no figure"
    bool counts = false;
};

/// What is known of a load, in sentences.
struct LoadAnswer {
    QString counts;  ///< "412 ± 9 m³ in the hopper, 330 ± 21 m³ in situ"; empty: nothing is known
    QString by;      ///< "by ullage, as the consent counts"
    std::vector<MethodSaid> methods;  ///< each that has readings; the one that counts first
    QString beside;                   ///< the other methods, each with whether it agrees
    State state = State::unknown;     ///< clear: methods agree or stand alone; attention: they disagree
    QString word;                     ///< "methods agree"
};

/// By the method that the consent's limits name, else the first that gives an amount.
LoadAnswer load_answer(const LoadIndex& index, const Load& load);

/// What a load that is cast off still lacks, each a few words; empty: nothing.
QStringList load_lacks(const Season& season, const Load& load);

}  // namespace spoilbook::form
