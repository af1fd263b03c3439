// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/logging/log_record.h"
#include "model/record/field_text.h"
#include "model/unit/time_text.h"
#include "tests/support/tiny_season.h"

namespace spoilbook::tests {

/// A time of the invented shift: 4 November 2025, New Zealand daylight time.
inline Instant at(const std::string& clock) {
    return parse_instant("2025-11-04T" + clock + "+13:00", Zone::utc()).value();
}

inline void log_line(Book& book, Instant when, const std::string& kind_name, const std::string& label,
                     const std::vector<FieldInput>& inputs) {
    const Act act{EntryKind::change, when, "Bram", ""};
    log_record(book, act, kind(kind_name), label, inputs).value();
}

/// A shift that runs, its load that was full at 06:25, and the trip that cast off with it at 08:40.
inline void log_trip_under_way(Book& book) {
    log_line(book, at("05:40"), "shift", "S-0002",
             {{"start", "2025-11-04T05:40+13:00"}, {"dredger", "Heron"}, {"tug", "Plover"}});
    log_line(book, at("06:30"), "load", "L-0001",
             {{"barge", "Teal"},
              {"loading_start", "2025-11-04T06:05+13:00"},
              {"loading_end", "2025-11-04T06:25+13:00"}});
    log_line(book, at("08:40"), "trip", "T-0001",
             {{"load", "L-0001"},
              {"tug", "Plover"},
              {"ground", "Gannet Patch"},
              {"departed", "2025-11-04T08:40+13:00"}});
}

/// Plant, places and yesterday's shift: what stands in the book when the walk begins.
inline Book a_barge_book() {
    Book book = Book::in_memory("heron");
    log_row(book, by("Ana"), "harbour",
            {{"name", "Marram"}, {"zone", "Pacific/Auckland"}, {"epsg", std::int64_t{32760}}});
    const Instant before = at("01:00");
    const auto put = [&](const std::string& kind_name, const std::string& label,
                         const std::vector<FieldInput>& inputs) {
        log_line(book, before, kind_name, label, inputs);
    };
    put("person", "Bram", {{"role", "skipper"}});
    put("person", "Caro", {{"role", "skipper"}});
    put("material", "silty sand",
        {{"bulking_factor", "1.25"},
         {"bulking_factor_u", "0.05"},
         {"fill_factor", "0.9"},
         {"fill_factor_u", "0.05"}});
    put("dredger", "Heron", {});
    put("bucket", "General", {{"dredger", "Heron"}, {"capacity_m3", "4.2"}});
    put("tug", "Plover", {});
    put("barge", "Teal", {{"capacity_m3", "420"}, {"ullage_table", "[[0.2,420],[1.2,300]]"}});
    put("barge", "Wigeon", {{"capacity_m3", "560"}});
    put("claim", "FB1", {{"target_level_m", "-9.6"}, {"material", "silty sand"}});
    put("ground", "Gannet Patch", {});
    put("cell", "A1", {{"ground", "Gannet Patch"}, {"kind", "cell"}});
    put("cell", "B2", {{"ground", "Gannet Patch"}, {"kind", "cell"}});
    put("shift", "S-0001",
        {{"start", "2025-11-03T06:00+13:00"},
         {"end", "2025-11-03T18:00+13:00"},
         {"dredger", "Heron"},
         {"tug", "Plover"},
         {"skipper", "Caro"},
         {"crew", "Caro;Hal"},
         {"weather", "rain"},
         {"wave_height_m", "1.1"}});
    put("crew", "CR-0001", {{"shift", "S-0001"}, {"name", "Hal"}, {"role", "operator"}});
    put("station", "ST-0001",
        {{"shift", "S-0001"},
         {"claim", "FB1"},
         {"easting_m", "711527.7"},
         {"northing_m", "5497350.3"},
         {"heading_deg", "90"},
         {"spuds_down", "2025-11-03T07:00+13:00"},
         {"spuds_up", "2025-11-03T17:50+13:00"}});
    return book;
}

/// Every record of a kind by its label: its columns as a folder has them, references by label.
inline std::map<std::string, std::map<std::string, std::string>> texts_of(const Book& book,
                                                                          const std::string& kind_name) {
    std::map<std::string, std::map<std::string, std::string>> texts;
    const Kind& of = kind(kind_name);
    const Zone zone = Zone::named("Pacific/Auckland").value();
    for (const Row& row : book.rows(of)) {
        auto& record = texts[book.label_of(of, row.id)];
        for (std::size_t i = 0; i < of.fields.size(); ++i) {
            const Field& field = of.fields[i];
            if (is_blank(row.values[i])) continue;
            record[field.name] = field.type == FieldType::reference
                                     ? book.label_of(kind(field.refers_to), std::get<Id>(row.values[i]))
                                     : field_text(field, row.values[i], zone);
        }
    }
    return texts;
}

}  // namespace spoilbook::tests
