// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/export_folder.h"

#include <fmt/format.h>

#include <set>

#include "model/book/material_bytes.h"
#include "model/book/season.h"
#include "model/folder/csv_writer.h"
#include "model/folder/export_rows.h"
#include "model/folder/label_file.h"
#include "model/folder/match_material.h"
#include "model/folder/regular_file.h"
#include "model/folder/written_folder.h"
#include "model/record/evidence_text.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

class FolderExport {
 public:
    FolderExport(const Book& book, WrittenFolder& folder)
        : book_(book), folder_(folder), zone_(book_zone(book)), board_(empty_folder(), &book) {
        board_.contents.zone = zone_.name();
    }

    Checked<ExportOutcome> write() {
        const Exporting exporting{board_, zone_, outcome_.rows, outcome_.notes};
        write_file("harbour.json", harbour_file(exporting));
        write_file("plant.json", plant_file(exporting));
        write_file("claims.geojson", claims_file(exporting));
        write_file("grounds.geojson", grounds_file(exporting));
        write_file("consents.json", consents_file(exporting));
        for (const Kind& kind : all_kinds()) {
            if (kind.form == FileForm::csv && kind.file.ends_with(".csv"))
                write_file(kind.file, csv_file(exporting, kind));
        }
        write_tracks();
        write_logger_files();
        write_surveys();
        write_evidence();
        if (!refusals_.empty()) return refusals_;
        outcome_.files = folder_.files();
        return outcome_;
    }

 private:
    void write_file(const std::string& name, const std::string& text) {
        if (text.empty()) return;
        for (Refusal& refusal : folder_.write(name, text).refusals())
            refusals_.push_back(std::move(refusal));
    }

    void write_material(const std::string& name, const std::string& digest) {
        const auto bytes = book_.material(digest);
        if (!bytes) {
            refusals_.push_back({"no-material", name, "the book has lost this file: " + digest,
                                 "check the journal, and go back to a backup"});
            return;
        }
        for (Refusal& refusal : folder_.write(name, *bytes).refusals())
            refusals_.push_back(std::move(refusal));
    }

    void write_tracks() {
        const Kind& track = kind("track");
        for (const Row& row : board_.shelf("track").held()) {
            const std::string trip = board_.label("trip", MatchBoard::reference(track, row.values, "trip"));
            const std::string file = text_of(track, row.values, "file");
            const std::string ending = file.substr(std::min(file.rfind('.'), file.size()));
            if (trip.empty() || (ending != ".gpx" && ending != ".nmea" && ending != ".csv")) {
                outcome_.notes.push_back(
                    {"tracks", fmt::format("the track {} belongs to no trip: left out", file)});
                continue;
            }
            write_material("tracks/" + file_stem_of(trip) + ending, text_of(track, row.values, "digest"));
            ++outcome_.rows["track"];
        }
    }

    void write_logger_files() {
        const Kind& file = kind("logger_file");
        std::map<std::string, std::vector<const Row*>> by_site;
        for (const Row& row : board_.shelf("logger_file").held())
            by_site[board_.label("site", MatchBoard::reference(file, row.values, "site"))].push_back(&row);
        for (const auto& [site, rows] : by_site) {
            if (site.empty()) {
                outcome_.notes.push_back({"turbidity", "logger files that belong to no site: left out"});
                continue;
            }
            const std::string name = "turbidity/" + file_stem_of(site) + ".csv";
            if (rows.size() == 1 && text_of(file, rows.front()->values, "how").empty()) {
                write_material(name, text_of(file, rows.front()->values, "digest"));
            } else {
                write_file(name, merged(MatchBoard::reference(file, rows.front()->values, "site")));
            }
            outcome_.rows["logger_file"] += rows.size();
        }
    }

    /// What several files of one site say together, each time and value once.
    [[nodiscard]] std::string merged(const Id& site) const {
        std::string text = "time,value\n";
        for (const LoggerReading& reading : held_readings(book_, site)) {
            append_csv_row(
                text, {instant_text(reading.time, zone_), reading.value ? number_text(*reading.value) : ""});
        }
        return text;
    }

    void write_surveys() {
        const Kind& survey = kind("survey");
        std::set<std::string> written;
        for (const Row& row : board_.shelf("survey").held()) {
            std::string name = text_of(survey, row.values, "file");
            const std::string digest = text_of(survey, row.values, "digest");
            if (name.starts_with("surveys/")) name = name.substr(8);
            if (name.empty() || digest.empty() || !written.insert(name).second) continue;
            if (is_plain_name(name)) {
                write_material("surveys/" + name, digest);
            } else {
                outcome_.notes.push_back(
                    {"surveys.csv", fmt::format("\"{}\" is no name of a file: left out", name)});
            }
        }
    }

    /// Each once, under its digest; the ending of its name stays, so that it opens.
    void write_evidence() {
        const Kind& done = kind("duty_done");
        std::set<std::string> written;
        for (const Row& row : board_.shelf("duty_done").held()) {
            for (const auto& file : evidence_files(text_of(done, row.values, "evidence"))) {
                if (!written.insert(file.digest).second) continue;
                if (material_bytes(book_, file.digest)) {
                    write_material("evidence/" + file.digest + file.ending(), file.digest);
                } else {
                    outcome_.notes.push_back(
                        {"duties.csv", fmt::format("{} is not in the book: left out", file.name)});
                }
            }
        }
    }

    const Book& book_;
    WrittenFolder& folder_;
    Zone zone_;
    MatchBoard board_;
    ExportOutcome outcome_;
    Refusals refusals_;
};

}  // namespace

Checked<ExportOutcome> export_folder(const Book& book, const std::string& to) {
    auto folder = WrittenFolder::at(to);
    if (!folder) return folder.refusals();
    auto outcome = FolderExport(book, *folder).write();
    if (!outcome) return outcome;
    if (auto placed = folder->put_in_place(); !placed) return placed.refusals();
    return outcome;
}

}  // namespace spoilbook
