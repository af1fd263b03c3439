// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "model/folder/export_rows.h"
#include "model/folder/pretty_json.h"

namespace spoilbook {

namespace {

using nlohmann::ordered_json;

/// A feature, and what its coordinates are: blank for longitude and latitude.
struct Feature {
    ordered_json properties, geometry;
    std::string crs;
};

ordered_json crs_member(const std::string& crs) {
    const std::string code = crs.substr(crs.rfind(':') + 1);
    ordered_json member = ordered_json::object();
    member["type"] = "name";
    member["properties"] = ordered_json::object();
    member["properties"]["name"] = "urn:ogc:def:crs:EPSG::" + code;
    return member;
}

Feature feature_of(const Exporting& exporting, const Kind& kind, const Row& row) {
    Feature feature;
    feature.properties = exporting.members(kind, row, {"geometry", "crs"});
    feature.crs = text_of(kind, row.values, "crs");
    const std::string geometry = text_of(kind, row.values, "geometry");
    if (geometry.empty()) return feature;
    const ordered_json stored = ordered(nlohmann::json::parse(geometry));
    const bool outline = stored.is_object() && stored.contains("type") && stored.contains("coordinates");
    if (!outline) {
        exporting.notes.push_back(
            {kind.file, exporting.label(kind, row) + ": what it has is no outline: left out"});
        return feature;
    }
    feature.geometry = ordered_json::object();
    feature.geometry["type"] = stored.at("type");
    feature.geometry["coordinates"] = stored.at("coordinates");
    return feature;
}

/// One feature a line, so that a change of one claim is a change of one line. One `crs` for the file where
/// all features have the same, else one for each that is not longitude and latitude.
std::string collection(const std::vector<Feature>& features) {
    const std::string& crs = features.front().crs;
    const bool common = std::all_of(features.begin(), features.end(),
                                    [&](const auto& feature) { return feature.crs == crs; });
    std::string text = "{\n\"type\": \"FeatureCollection\",\n";
    if (common && !crs.empty()) text += "\"crs\": " + crs_member(crs).dump() + ",\n";
    text += "\"features\": [";
    for (std::size_t i = 0; i < features.size(); ++i) {
        const Feature& feature = features[i];
        ordered_json line = ordered_json::object();
        line["type"] = "Feature";
        if (!common && !feature.crs.empty()) line["crs"] = crs_member(feature.crs);
        line["properties"] = feature.properties;
        line["geometry"] = feature.geometry;
        text += (i > 0 ? ",\n" : "\n") + line.dump();
    }
    return text + "\n]\n}\n";
}

}  // namespace

std::string claims_file(const Exporting& exporting) {
    std::vector<Feature> features;
    for (const Row& row : exporting.held("claim"))
        features.push_back(feature_of(exporting, kind("claim"), row));
    if (features.empty()) return "";
    exporting.rows["claim"] = features.size();
    return collection(features);
}

std::string grounds_file(const Exporting& exporting) {
    const Kind& ground = kind("ground");
    const Kind& cell = kind("cell");
    std::vector<Feature> features;
    std::vector<bool> written(exporting.held("cell").size(), false);
    const auto write_cells = [&](const Id& parent, bool orphans) {
        for (std::size_t i = 0; i < written.size(); ++i) {
            const Row& row = exporting.held("cell")[i];
            if (written[i] || (!orphans && MatchBoard::reference(cell, row.values, "ground") != parent))
                continue;
            features.push_back(feature_of(exporting, cell, row));
            written[i] = true;
        }
    };
    for (const Row& row : exporting.held("ground")) {
        Feature feature = feature_of(exporting, ground, row);
        feature.properties["kind"] = "ground";
        features.push_back(std::move(feature));
        write_cells(row.id, false);
    }
    write_cells({}, true);
    if (features.empty()) return "";
    if (!exporting.held("ground").empty()) exporting.rows["ground"] = exporting.held("ground").size();
    if (!written.empty()) exporting.rows["cell"] = written.size();
    return collection(features);
}

}  // namespace spoilbook
