// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "forms/barge/load_answer.h"

namespace spoilbook::form {

/// One method beside the others, its amounts exact.
struct MethodRow {
    QString name;
    bool counts = false;
    State state = State::unknown;
    QString word;  ///< "counts", "agrees, E_n 0.4"
    Amounts amounts;
};

/// How two methods agree.
struct PairRow {
    QString a, b, measure;
    double e_n = 0;
    bool disagree = false;
};

/// One claim's and material's share of the load, with the in-situ volume by the method that counts.
struct PartRow {
    QString claim, material;
    double hopper_share = 1;
    std::optional<double> in_situ_share;
    std::optional<Estimate> in_situ_m3;
};

/// One version of one factor that the figures used.
struct FactorRow {
    QString what, unit;
    double value = 0, u = 0;
    std::optional<Instant> from, accepted;  ///< from blank: as the book began
    QString by, why;
};

/// A sentence about a method: what was taken where a record is blank, or why it gives nothing.
struct SaidRow {
    QString method, what, sentence;
};

/// Everything that is known of how much is in a load, ready to be read.
struct LoadView {
    LoadAnswer answer;
    QString why;  ///< which method counts, and why that one
    std::vector<MethodRow> methods;
    std::vector<PairRow> pairs;
    std::vector<PartRow> parts;
    std::vector<FactorRow> factors;
    std::vector<SaidRow> said;
};

/// The same figures as `sbk load` prints, in words.
LoadView load_view(const Season& season, const Load& load);

}  // namespace spoilbook::form
