// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/desk_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <array>

#include "forms/shared/record_words.h"
#include "model/unit/shown.h"

namespace spoilbook::form {
namespace {

struct Word {
    const char* column;  ///< kind.column, or column for every kind
    const char* words;
};

constexpr std::array words_of_columns{
    Word{"shift.start", QT_TRANSLATE_NOOP("desk_words", "Opened")},
    Word{"shift.end", QT_TRANSLATE_NOOP("desk_words", "Ended")},
    Word{"shift.skipper", QT_TRANSLATE_NOOP("desk_words", "Skipper")},
    Word{"shift.crew", QT_TRANSLATE_NOOP("desk_words", "Crew, with ; between")},
    Word{"shift.weather", QT_TRANSLATE_NOOP("desk_words", "Weather")},
    Word{"wave_height_m", QT_TRANSLATE_NOOP("desk_words", "Wave height")},
    Word{"dredger", QT_TRANSLATE_NOOP("desk_words", "Dredger")},
    Word{"tug", QT_TRANSLATE_NOOP("desk_words", "Tug")},
    Word{"claim", QT_TRANSLATE_NOOP("desk_words", "Claim")},
    Word{"easting_m", QT_TRANSLATE_NOOP("desk_words", "Easting")},
    Word{"northing_m", QT_TRANSLATE_NOOP("desk_words", "Northing")},
    Word{"heading_deg", QT_TRANSLATE_NOOP("desk_words", "Heading, grid")},
    Word{"spuds_down", QT_TRANSLATE_NOOP("desk_words", "Spuds down")},
    Word{"spuds_up", QT_TRANSLATE_NOOP("desk_words", "Spuds up")},
    Word{"barge", QT_TRANSLATE_NOOP("desk_words", "Barge")},
    Word{"material", QT_TRANSLATE_NOOP("desk_words", "Material")},
    Word{"bucket", QT_TRANSLATE_NOOP("desk_words", "Bucket")},
    Word{"count", QT_TRANSLATE_NOOP("desk_words", "Buckets counted")},
    Word{"loading_start", QT_TRANSLATE_NOOP("desk_words", "First bucket")},
    Word{"loading_end", QT_TRANSLATE_NOOP("desk_words", "Full")},
    Word{"dips_m", QT_TRANSLATE_NOOP("desk_words", "Dips, coaming down to the spoil")},
    Word{"full_draughts_m", QT_TRANSLATE_NOOP("desk_words", "Draughts, full")},
    Word{"light_draughts_m", QT_TRANSLATE_NOOP("desk_words", "Draughts, light")},
    Word{"top_dips_m", QT_TRANSLATE_NOOP("desk_words", "Dips to the water on top")},
    Word{"water_on_top_m", QT_TRANSLATE_NOOP("desk_words", "Depth of water on top")},
    Word{"light_density_t_m3", QT_TRANSLATE_NOOP("desk_words", "Water density, light")},
    Word{"dock_density_t_m3", QT_TRANSLATE_NOOP("desk_words", "Water density, full")},
    Word{"overflow", QT_TRANSLATE_NOOP("desk_words", "Ran over")},
    Word{"stated_hopper_m3", QT_TRANSLATE_NOOP("desk_words", "Hopper volume as stated")},
    Word{"stated_in_situ_m3", QT_TRANSLATE_NOOP("desk_words", "In-situ volume as stated")},
    Word{"load.rejected", QT_TRANSLATE_NOOP("desk_words", "Turned down, and why")},
    Word{"stated_how", QT_TRANSLATE_NOOP("desk_words", "Stated how")},
    Word{"left_before_m3", QT_TRANSLATE_NOOP("desk_words", "Left in hopper before")},
    Word{"departed", QT_TRANSLATE_NOOP("desk_words", "Cast off")},
    Word{"returned", QT_TRANSLATE_NOOP("desk_words", "Alongside")},
    Word{"release_start", QT_TRANSLATE_NOOP("desk_words", "Doors open")},
    Word{"release_end", QT_TRANSLATE_NOOP("desk_words", "Empty")},
    Word{"doors_open", QT_TRANSLATE_NOOP("desk_words", "Doors open")},
    Word{"release.empty", QT_TRANSLATE_NOOP("desk_words", "Empty")},
    Word{"doors_shut", QT_TRANSLATE_NOOP("desk_words", "Doors shut")},
    Word{"ground", QT_TRANSLATE_NOOP("desk_words", "Disposal ground")},
    Word{"cell", QT_TRANSLATE_NOOP("desk_words", "Cell")},
    Word{"lat", QT_TRANSLATE_NOOP("desk_words", "Latitude, doors open")},
    Word{"lon", QT_TRANSLATE_NOOP("desk_words", "Longitude, doors open")},
    Word{"position_u_m", QT_TRANSLATE_NOOP("desk_words", "Position ± (68 %)")},
    Word{"position_from", QT_TRANSLATE_NOOP("desk_words", "Position from")},
    Word{"outcome", QT_TRANSLATE_NOOP("desk_words", "Outcome")},
    Word{"tug_master", QT_TRANSLATE_NOOP("desk_words", "Tug master")},
    Word{"tow", QT_TRANSLATE_NOOP("desk_words", "Tow")},
    Word{"tow_line_m", QT_TRANSLATE_NOOP("desk_words", "Tow line")},
    Word{"receiver_on", QT_TRANSLATE_NOOP("desk_words", "Receiver on")},
    Word{"remarks", QT_TRANSLATE_NOOP("desk_words", "Remarks")},
    Word{"share", QT_TRANSLATE_NOOP("desk_words", "Share of the load released")},
    Word{"left_m3", QT_TRANSLATE_NOOP("desk_words", "Left in hopper")},
    Word{"emptied", QT_TRANSLATE_NOOP("desk_words", "Came empty")},
    Word{"why", QT_TRANSLATE_NOOP("desk_words", "Why")},
    Word{"delay.start", QT_TRANSLATE_NOOP("desk_words", "Began")},
    Word{"delay.end", QT_TRANSLATE_NOOP("desk_words", "Ended")},
    Word{"cause", QT_TRANSLATE_NOOP("desk_words", "Cause")},
    Word{"sounding.time", QT_TRANSLATE_NOOP("desk_words", "When")},
    Word{"level_m", QT_TRANSLATE_NOOP("desk_words", "Level of the bed")},
    Word{"depth_m", QT_TRANSLATE_NOOP("desk_words", "Depth below the water")},
    Word{"tide_m", QT_TRANSLATE_NOOP("desk_words", "Level of the water")},
    Word{"by", QT_TRANSLATE_NOOP("desk_words", "By")},
    Word{"u_m", QT_TRANSLATE_NOOP("desk_words", "Sounding ± (68 %)")},
    Word{"to_shift", QT_TRANSLATE_NOOP("desk_words", "To shift")},
    Word{"station", QT_TRANSLATE_NOOP("desk_words", "Station")},
    Word{"buckets_in", QT_TRANSLATE_NOOP("desk_words", "Buckets in her so far")},
    Word{"holds", QT_TRANSLATE_NOOP("desk_words", "What holds the release")},
    Word{"next_move", QT_TRANSLATE_NOOP("desk_words", "The next move of the pontoon")},
    Word{"defects", QT_TRANSLATE_NOOP("desk_words", "What is broken")},
    Word{"said_by", QT_TRANSLATE_NOOP("desk_words", "Handed over by")},
    Word{"taken_by", QT_TRANSLATE_NOOP("desk_words", "Taken over by")},
};

}  // namespace

QString column_words(const Kind& kind, const Field& field) {
    const QString whole = QString::fromStdString(kind.name + "." + field.name);
    const QString column = QString::fromStdString(field.name);
    for (const Word& word : words_of_columns) {
        const QLatin1String key(word.column);
        if (key == whole || key == column) return QCoreApplication::translate("desk_words", word.words);
    }
    QString title = field_title(field);
    title[0] = title[0].toUpper();
    return title;
}

QString kind_words(const Kind& kind) {
    return QString::fromStdString(kind.name).replace(u'_', u' ');
}

QString estimate_words(const Estimate& estimate, const QString& unit) {
    const QLocale locale;
    // Unbreakable: a number does not lose its ± over the end of a line.
    return QCoreApplication::translate("desk_words", "%1\u00a0±\u00a0%2\u00a0%3")
        .arg(locale.toString(estimate.value, 'f', 0), locale.toString(rounded_up(estimate.u(), 0), 'f', 0),
             unit);
}

QString span_words(std::int64_t ms) {
    const qint64 minutes = (ms + ms_per_minute / 2) / ms_per_minute;
    if (minutes < 60) return QCoreApplication::translate("desk_words", "%1 min").arg(minutes);
    return QCoreApplication::translate("desk_words", "%1 h %2 min").arg(minutes / 60).arg(minutes % 60);
}

QString place_words(double easting_m, double northing_m, std::optional<double> heading_deg) {
    const QLocale locale;
    const QString place = QCoreApplication::translate("desk_words", "%1 E %2 N")
                              .arg(locale.toString(easting_m, 'f', 1), locale.toString(northing_m, 'f', 1));
    if (!heading_deg) return place;
    return QCoreApplication::translate("desk_words", "%1, heading %2°")
        .arg(place, locale.toString(*heading_deg, 'f', 1));
}

}  // namespace spoilbook::form
