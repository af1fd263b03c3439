// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/load_findings.h"

#include <QCoreApplication>
#include <QLocale>

namespace spoilbook::form {
namespace {

QString words(const char* text) {
    return QCoreApplication::translate("load_findings", text);
}

QString metres(double value) {
    return QLocale().toString(value, 'f', 2);
}

QString cubic(double value) {
    return QLocale().toString(value, 'f', 0);
}

}  // namespace

QString finding_words(const ReadingFinding& finding, const QString& barge) {
    const bool draughts = finding.column.find("draughts") != std::string_view::npos;
    const QString kept =
        draughts ? words("Kept, but it gives no weight: ") : words("Kept, but it gives no volume: ");
    const QString table =
        words("%1's table, %2 to %3 m").arg(barge, metres(finding.low), metres(finding.high));
    switch (finding.what) {
        case Oddity::outside_table:
            return kept + words("a mean of %1 m is outside %2.").arg(metres(finding.reading), table);
        case Oddity::centimetres:
            return kept + words("%1 m is outside %2. Typed in centimetres? That would be %3 m.")
                              .arg(metres(finding.reading), table, metres(finding.reading / 100));
        case Oddity::apart:
            return words("Kept. These dips, %1 to %2 m, lie apart by over half of her table: one misread?")
                .arg(metres(finding.low), metres(finding.high));
        case Oddity::water_below_spoil:
            return words("Kept. The water reads lower than the spoil under it: the two changed over?");
        case Oddity::no_table:
            return kept + words("%1 has no table to read it by yet.").arg(barge);
        case Oddity::marks_missing:
            return kept + words("six marks are read, or the four at the ends.");
        case Oddity::light_heavier:
            return kept + words("light she reads heavier than loaded. Light and full changed over?");
        case Oddity::no_light:
            return kept + words("she has no light draughts at or before loading. Read them here.");
        case Oddity::no_full:
            return words("Kept. It waits for the draughts of the loaded barge.");
        case Oddity::over_capacity:
            return words("Kept. It makes %1 m³ of her, more than her %2 m³.")
                .arg(cubic(finding.reading), cubic(finding.high));
        case Oddity::left_over:
            break;
    }
    return words("Kept. It is more than the %1 m³ that the whole load holds.").arg(cubic(finding.high));
}

void LoadFindings::show(const std::vector<ReadingFinding>& findings, const QString& barge) {
    std::map<std::string, QString> now;
    for (const ReadingFinding& finding : findings) {
        // The rest comes later in the day: the answer says that it is missing.
        if (finding.what == Oddity::no_full) continue;
        now[std::string(finding.column)] = finding_words(finding, barge);
    }
    for (const char* column : {"dips_m", "top_dips_m", "light_draughts_m", "full_draughts_m",
                               "stated_hopper_m3", "left_before_m3"}) {
        FieldBox* box = form_.box(column);
        if (!box) continue;
        const bool own = box->problem().isEmpty() || box->problem() == said_[column];
        if (own && box->problem() != now[column]) box->show_problem(now[column]);
        said_[column] = now[column];
    }
}

}  // namespace spoilbook::form
