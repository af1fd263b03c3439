// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/factors.h"

#include <algorithm>
#include <string_view>

#include "model/unit/time_text.h"

namespace spoilbook {
namespace {

constexpr std::array<std::string_view, 4> factor_names{"bulking", "fill", "situ_density", "grain_density"};
constexpr std::array<std::string_view, 4> spoken_names{"bulking factor", "fill factor", "in-place density",
                                                       "grain density"};

std::string when_text(Instant from, const Zone& zone) {
    const Day day = zone.day_of(from);
    return zone.day_start(day) == from ? day_text(day) : instant_text(from, zone);
}

std::string version_name(std::size_t which, const std::string& material, const std::string& rest) {
    return std::string(spoken_names.at(which)) + " of " + material + rest;
}

std::string bucket_text(const Season& season, const Id& bucket) {
    const Bucket* found = season.buckets.find(bucket);
    if (found == nullptr) return "";
    const Dredger* dredger = season.dredgers.find(found->dredger);
    return " in bucket " + found->name + (dredger == nullptr ? "" : " of " + dredger->name);
}

}  // namespace

FactorBook::FactorBook(const Season& season, Sources& sources, std::optional<Instant> accepted_by) {
    add_materials(season, sources);
    add_dated(season, sources, accepted_by);
}

void FactorBook::add_materials(const Season& season, Sources& sources) {
    for (const Material& material : season.materials.rows()) {
        OfMaterial& of = by_material_[material.id];
        const std::array<std::optional<double>, 4> values{material.bulking_factor, material.fill_factor,
                                                          material.situ_density_t_m3,
                                                          material.grain_density_t_m3};
        const std::array<std::optional<double>, 4> us{
            material.bulking_factor_u, material.fill_factor_u, {}, {}};
        for (std::size_t which = 0; which < values.size(); ++which) {
            if (!values.at(which)) continue;
            const std::string name = version_name(which, material.material, ", materials.csv");
            of.at(which).first =
                FactorVersion{*values.at(which), us.at(which).value_or(0), sources.of(name), {}, {}, false};
        }
    }
}

void FactorBook::add_dated(const Season& season, Sources& sources, std::optional<Instant> accepted_by) {
    for (const Factor& row : season.factors.rows()) {
        const Material* material = season.materials.find(row.material);
        const auto* name = std::find(factor_names.begin(), factor_names.end(), row.factor);
        if (material == nullptr || name == factor_names.end() || !row.from || !row.value) continue;
        if (accepted_by && (!row.accepted || *row.accepted > *accepted_by)) continue;
        const auto which = static_cast<std::size_t>(name - factor_names.begin());
        std::string rest = bucket_text(season, row.bucket) + " from " + when_text(*row.from, season.zone);
        auto& dated = by_material_[row.material].at(which).dated;
        const auto twins = std::count_if(dated.begin(), dated.end(), [&row](const Dated& d) {
            return d.bucket == row.bucket && d.version.from == row.from;
        });
        if (twins > 0) rest += ", row " + std::to_string(twins + 1);
        const SourceId source = sources.of(version_name(which, material->material, rest));
        dated.push_back({row.bucket, {*row.value, row.u.value_or(0), source, row.from, row.accepted, true}});
    }
    for (auto& [material, of] : by_material_) {
        for (Versions& versions : of) {
            std::stable_sort(versions.dated.begin(), versions.dated.end(),
                             [](const Dated& a, const Dated& b) { return a.version.from < b.version.from; });
        }
    }
}

const FactorVersion* FactorBook::in_force(const Versions& versions, const Id& bucket,
                                          std::optional<Instant> at) {
    const FactorVersion* general = versions.first ? &*versions.first : nullptr;
    if (!at) return general;
    const FactorVersion* of_bucket = nullptr;
    for (const Dated& dated : versions.dated) {
        if (*dated.version.from > *at) break;
        if (dated.bucket.is_nil()) {
            general = &dated.version;
        } else if (dated.bucket == bucket) {
            of_bucket = &dated.version;
        }
    }
    return of_bucket != nullptr ? of_bucket : general;
}

FactorSet FactorBook::factors_for(const Id& material, const Id& bucket, std::optional<Instant> at) const {
    const auto found = by_material_.find(material);
    if (found == by_material_.end()) return {};
    const OfMaterial& of = found->second;
    return {in_force(of[0], bucket, at), in_force(of[1], bucket, at), in_force(of[2], bucket, at),
            in_force(of[3], bucket, at)};
}

}  // namespace spoilbook
