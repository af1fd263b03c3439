// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/geojson_reader.h"

#include <fmt/format.h>

#include <cmath>

#include "model/folder/geojson_crs.h"
#include "model/folder/json_text.h"
#include "model/folder/member_reader.h"
#include "model/folder/row_check.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// Takes the features of one file apart; the two kinds of file differ in the kind of row that a feature is.
class FeatureReading {
 public:
    FeatureReading(const JsonReading& reading, const MapGround& map) : reading_(reading), map_(map) {}

    /// Calls `take(feature, path, crs)` for each feature that is one.
    template <class Take>
    void read(const json& file, Take take) {
        if (!file.is_object() || file.value("type", json()) != "FeatureCollection") {
            return reading_.refuse("wrong-shape", "", "no FeatureCollection",
                                   "the file is a GeoJSON FeatureCollection (RFC 7946)");
        }
        refuse_unknown(file, {"type", "features", "crs", "name", "bbox"}, "", reading_);
        const auto common = crs_of(file, "", "", map_, reading_);
        const auto features = items_of(file, "features", "", reading_);
        for (std::size_t i = 0; i < features.size(); ++i) {
            const json& feature = *features[i];
            const std::string path = item_path("features", i);
            if (!is_feature(feature, path)) continue;
            const auto crs = crs_of(feature, path, common.value_or(""), map_, reading_);
            if (common && crs) take(feature, path, *crs);
        }
    }

    /// Fills geometry and crs of a row; refuses what is no sound outline.
    void read_outline(const json& feature, const std::string& crs, const Kind& kind, GivenRow& row) {
        const auto found = feature.find("geometry");
        if (found == feature.end() || found->is_null()) return;
        const std::string path = member_path(row.path, "geometry");
        if (!is_outline(*found, path)) return;
        json kept = json::object();
        kept["type"] = found->at("type");
        kept["coordinates"] = canonical(found->at("coordinates"));
        const std::string geometry = kept.dump();
        auto area = area_of(geometry, crs, map_);
        for (const Refusal& refusal : area.refusals()) {
            // Without a system there is nothing to check against; harbour.json has said so already.
            if (refusal.code == "no-crs") continue;
            reading_.refuse(refusal.code, path,
                            refusal.where.empty() ? refusal.what : refusal.where + ": " + refusal.what,
                            refusal.mend);
        }
        row.values[*kind.index_of("geometry")] = geometry;
        if (!crs.empty()) row.values[*kind.index_of("crs")] = crs;
    }

 private:
    bool is_feature(const json& feature, const std::string& path) const {
        if (!feature.is_object() || feature.value("type", json()) != "Feature") {
            reading_.refuse("wrong-shape", path, "no Feature", "an item of features is a GeoJSON Feature");
            return false;
        }
        refuse_unknown(feature, {"type", "properties", "geometry", "crs", "id", "bbox"}, path, reading_);
        return true;
    }

    bool is_outline(const json& geometry, const std::string& path) const {
        const json type = geometry.is_object() ? geometry.value("type", json()) : json();
        if (type != "Polygon" && type != "MultiPolygon") {
            reading_.refuse("geometry", path, fmt::format("the type {} stands here", type.dump()),
                            "an outline is a Polygon or a MultiPolygon");
            return false;
        }
        refuse_unknown(geometry, {"type", "coordinates", "bbox"}, path, reading_);
        const auto found = geometry.find("coordinates");
        const std::string at = member_path(path, "coordinates");
        if (found == geometry.end() || !found->is_array() || found->empty()) {
            reading_.refuse("geometry", at, "no coordinates", "give at least one ring");
            return false;
        }
        if (type == "Polygon") return is_polygon(*found, at);
        bool sound = true;
        for (std::size_t i = 0; i < found->size(); ++i)
            sound = is_polygon((*found)[i], item_path(at, i)) && sound;
        return sound;
    }

    bool is_polygon(const json& rings, const std::string& path) const {
        if (!rings.is_array() || rings.empty()) {
            reading_.refuse("geometry", path, "no ring", "a polygon is a list of rings");
            return false;
        }
        for (std::size_t i = 0; i < rings.size(); ++i) {
            if (!is_ring(rings[i], item_path(path, i))) return false;
        }
        return true;
    }

    bool is_ring(const json& ring, const std::string& path) const {
        if (!ring.is_array() || ring.size() < 4) {
            reading_.refuse("geometry", path, "fewer than 4 positions",
                            "a ring has 4 or more, the last being the first again");
            return false;
        }
        for (std::size_t i = 0; i < ring.size(); ++i) {
            if (is_position(ring[i])) continue;
            reading_.refuse("geometry", item_path(path, i), fmt::format("{} is no position", ring[i].dump()),
                            "a position is [longitude, latitude] or [easting, northing]");
            return false;
        }
        if (ring.front()[0] == ring.back()[0] && ring.front()[1] == ring.back()[1]) return true;
        reading_.refuse("geometry", path, "the ring is not closed",
                        "let its last position be the first again");
        return false;
    }

    static bool is_position(const json& position) {
        if (!position.is_array() || position.size() < 2 || position.size() > 4) return false;
        for (const auto& number : position) {
            if (!number.is_number() || !std::isfinite(number.get<double>())) return false;
        }
        return true;
    }

    const JsonReading& reading_;
    const MapGround& map_;
};

const json& properties_of(const json& feature) {
    static const json none = json::object();
    const auto found = feature.find("properties");
    return found == feature.end() || found->is_null() ? none : *found;
}

GivenRow read_claim(const json& feature, const std::string& path, const Kind& kind,
                    const JsonReading& reading) {
    GivenRow row;
    row.path = member_path(path, "properties");
    read_members(properties_of(feature), kind, {"geometry", "crs"}, {}, reading, row);
    row.path = path;
    return row;
}

/// A feature of grounds.geojson: a row of kind ground or cell.
bool is_part(const json& properties) {
    const auto text = [&](const char* name) {
        const auto found = properties.is_object() ? properties.find(name) : properties.end();
        const bool given = properties.is_object() && found != properties.end() && found->is_string();
        return given ? canonical(*found).get<std::string>() : "";
    };
    return text("kind") == "cell" || text("kind") == "exclusion" || !text("cell").empty();
}

void check_ground_kind(const json& properties, const std::string& path, const JsonReading& reading) {
    if (!properties.is_object()) return;
    const auto found = properties.find("kind");
    if (found == properties.end() || found->is_null() || canonical(*found) == "ground" ||
        canonical(*found).empty())
        return;
    reading.refuse("not-a-choice", member_path(path, "properties.kind"),
                   fmt::format("{} is not a kind", found->dump()),
                   "it must be one of ground, cell, exclusion");
}

}  // namespace

void read_claims(std::string_view bytes, const Zone& zone, const MapGround& map, FolderContents& contents,
                 Complaints& complaints) {
    GivenTable& table = contents.table("claim");
    const auto file = read_json(bytes, table.file, complaints);
    if (!file) return;
    const JsonReading reading{table.file, zone, complaints};
    FeatureReading features(reading, map);
    features.read(*file, [&](const json& feature, const std::string& path, const std::string& crs) {
        GivenRow row = read_claim(feature, path, *table.kind, reading);
        features.read_outline(feature, crs, *table.kind, row);
        table.rows.push_back(std::move(row));
    });
    check_rows(table, complaints);
}

void read_grounds(std::string_view bytes, const Zone& zone, const MapGround& map, FolderContents& contents,
                  Complaints& complaints) {
    GivenTable& grounds = contents.table("ground");
    GivenTable& cells = contents.table("cell");
    const auto file = read_json(bytes, grounds.file, complaints);
    if (!file) return;
    const JsonReading reading{grounds.file, zone, complaints};
    FeatureReading features(reading, map);
    features.read(*file, [&](const json& feature, const std::string& path, const std::string& crs) {
        const json& properties = properties_of(feature);
        const bool part = is_part(properties);
        GivenTable& table = part ? cells : grounds;
        GivenRow row;
        row.path = member_path(path, "properties");
        if (part) {
            read_members(properties, *table.kind, {"geometry", "crs"}, {}, reading, row);
        } else {
            check_ground_kind(properties, path, reading);
            read_members(properties, *table.kind, {"geometry", "crs"}, {"cell", "kind"}, reading, row);
        }
        row.path = path;
        features.read_outline(feature, crs, *table.kind, row);
        table.rows.push_back(std::move(row));
    });
    check_rows(grounds, complaints);
    check_rows(cells, complaints);
}

}  // namespace spoilbook
