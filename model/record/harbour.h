// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// What a book is about: one harbour's works.
struct Harbour {
    Id id;
    std::string name, authority, works;
    std::optional<std::int64_t> epsg;
    std::string zone;
    std::optional<double> water_density_t_m3;
    std::string vertical_datum;
    std::string campaigns;  ///< JSON: [{name, from, to}], half-open
};

struct Person {
    Id id;
    std::string name, role;
};

struct Material {
    Id id;
    std::string material;
    std::optional<double> situ_density_t_m3, grain_density_t_m3;
    std::optional<double> bulking_factor, bulking_factor_u, fill_factor, fill_factor_u;
};

/// A dated version of one factor; the newest with from ≤ the load's end is in force.
struct Factor {
    Id id;
    std::string factor_id;
    std::optional<Instant> from;
    Id material;
    Id bucket;
    std::string factor;
    std::optional<double> value, u;
    std::string by, why;
    std::optional<Instant> accepted;
    std::string evidence;
};

/// Which class a material of a claim was found to be, and so where it may go.
struct Suitability {
    Id id;
    std::string suitability;
    Id claim, material;
    std::string material_class, samples, letter;
    std::optional<Instant> from, to;
};

template <>
const Definition<Harbour>& definition<Harbour>();
template <>
const Definition<Person>& definition<Person>();
template <>
const Definition<Material>& definition<Material>();
template <>
const Definition<Factor>& definition<Factor>();
template <>
const Definition<Suitability>& definition<Suitability>();

}  // namespace spoilbook
