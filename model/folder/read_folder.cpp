// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/read_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "model/folder/complaints.h"
#include "model/folder/geojson_reader.h"
#include "model/folder/json_reader.h"
#include "model/folder/material_reader.h"
#include "model/folder/nearest.h"
#include "model/folder/regular_file.h"
#include "model/folder/row_check.h"
#include "model/folder/table_reader.h"

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

bool is_table_file(const Kind& kind) {
    return kind.form == FileForm::csv && kind.file.ends_with(".csv");
}

class FolderReading {
 public:
    FolderReading(const std::string& path, const std::optional<FolderBasis>& basis)
        : path_(path), basis_(basis) {}

    FolderContents read() {
        std::error_code error;
        if (fs::is_directory(path_, error)) {
            read_files();
        } else {
            complaints_.refuse(
                path_, {"not-a-folder", path_, "there is no such folder", "name the folder of a book"});
        }
        contents_.complaints = std::move(complaints_);
        contents_.zone = zone_.name();
        contents_.epsg = map_.epsg;
        return std::move(contents_);
    }

 private:
    void read_files() {
        note_strangers();
        read_basis();
        read_json("plant.json", [&](auto bytes) { read_plant(bytes, zone_, contents_, complaints_); });
        read_json("claims.geojson",
                  [&](auto bytes) { read_claims(bytes, zone_, map_, contents_, complaints_); });
        read_json("grounds.geojson",
                  [&](auto bytes) { read_grounds(bytes, zone_, map_, contents_, complaints_); });
        read_json("consents.json", [&](auto bytes) { read_consents(bytes, zone_, contents_, complaints_); });
        for (GivenTable& table : contents_.tables)
            read_table_file(table);
        read_tracks(path_, zone_, contents_, complaints_);
        read_logger_files(path_, zone_, contents_, complaints_);
        read_survey_files(path_, contents_, complaints_);
        read_evidence_files(path_, contents_, complaints_);
    }

    /// The harbour, its zone and its reference system, or the book's.
    void read_basis() {
        const bool given = stands("harbour.json");
        if (given) {
            read_json("harbour.json", [&](auto bytes) { read_harbour(bytes, contents_, complaints_); });
        } else if (!basis_) {
            complaints_.refuse("harbour.json", {"no-harbour", "harbour.json", "the file is missing",
                                                "a new book needs it: name, epsg, zone"});
        }
        set_zone(given);
        set_map(given);
    }

    void set_zone(bool given) {
        if (given) {
            if (const auto zone = zone_of_harbour(contents_)) zone_ = *zone;
            const GivenTable& harbour = contents_.table("harbour");
            if (!harbour.rows.empty() && text_of(*harbour.kind, harbour.rows.front().values, "zone").empty())
                complaints_.note("harbour.json zone", "not recorded: days are cut in UTC");
        } else if (basis_ && !basis_->zone.empty()) {
            if (const auto zone = Zone::named(basis_->zone)) zone_ = *zone;
        }
    }

    void set_map(bool given) {
        const GivenTable& harbour = contents_.table("harbour");
        if (!given && basis_) map_.epsg = basis_->epsg;
        if (!harbour.rows.empty()) {
            const Value& epsg = value_of(*harbour.kind, harbour.rows.front().values, "epsg");
            if (const auto* code = std::get_if<std::int64_t>(&epsg)) map_.epsg = static_cast<int>(*code);
            if (is_blank(epsg))
                complaints_.note("harbour.json epsg", "not recorded: places cannot be brought to metres");
        }
        if (!map_.epsg) return;
        auto crs = Crs::from_epsg(*map_.epsg);
        if (crs) {
            map_.crs = *crs;
        } else {
            for (const Refusal& refusal : crs.refusals())
                complaints_.refuse("harbour.json",
                                   {refusal.code, "harbour.json epsg", refusal.what, refusal.mend});
        }
    }

    [[nodiscard]] bool stands(const std::string& name) const {
        std::error_code error;
        return fs::symlink_status(fs::path(path_) / name, error).type() != fs::file_type::not_found;
    }

    std::optional<std::string> bytes_of(const std::string& name, std::uint64_t most) {
        if (!stands(name)) return std::nullopt;
        auto bytes = read_regular_file((fs::path(path_) / name).string(), name, most);
        if (bytes) return std::move(*bytes);
        for (const Refusal& refusal : bytes.refusals())
            complaints_.refuse(name, refusal);
        return std::nullopt;
    }

    template <class Read>
    void read_json(const std::string& name, Read read) {
        if (const auto bytes = bytes_of(name, largest_json_bytes)) read(std::string_view(*bytes));
    }

    void read_table_file(GivenTable& table) {
        if (!is_table_file(*table.kind)) return;
        const auto bytes = bytes_of(table.file, largest_file_bytes);
        if (!bytes) return;
        read_table(*bytes, zone_, table, complaints_);
        check_rows(table, complaints_);
    }

    void note_strangers() {
        std::vector<std::string> known{"harbour.json", "tracks", "turbidity", "surveys", "evidence"};
        for (const Kind& kind : all_kinds()) {
            if (kind.file.find('/') == std::string::npos) known.push_back(kind.file);
        }
        std::vector<std::string> strangers;
        std::error_code error;
        for (fs::directory_iterator it(path_, error), end; !error && it != end; it.increment(error)) {
            const std::string name = it->path().filename().string();
            const bool is_known = std::find(known.begin(), known.end(), name) != known.end();
            if (!is_known && !name.starts_with('.')) strangers.push_back(name);
        }
        std::sort(strangers.begin(), strangers.end());
        for (const std::string& name : strangers) {
            const std::string nearest = nearest_name(name, known);
            complaints_.note(name, nearest.empty()
                                       ? "left out: no file of a book folder"
                                       : "left out: no file of a book folder; did you mean " + nearest + "?");
        }
    }

    const std::string& path_;
    const std::optional<FolderBasis>& basis_;
    FolderContents contents_ = empty_folder();
    Complaints complaints_;
    Zone zone_ = Zone::utc();
    MapGround map_;
};

}  // namespace

FolderContents read_folder(const std::string& path, const std::optional<FolderBasis>& basis) {
    return FolderReading(path, basis).read();
}

}  // namespace spoilbook
