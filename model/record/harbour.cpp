// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/harbour.h"

namespace spoilbook {

template <>
const Definition<Harbour>& definition() {
    static const auto d =
        Definition<Harbour>("harbour", "harbour.json", "what the book is about; one only")
            .in(FileForm::json)
            .label("name", &Harbour::name, "the port's name")
            .text("authority", &Harbour::authority, "who grants the consents")
            .text("works", &Harbour::works, "the works")
            .integer("epsg", &Harbour::epsg, 1024, 998999, "projected reference system in metres, EPSG code")
            .text("zone", &Harbour::zone, "IANA time zone in which days, months and years are cut")
            .number("water_density_t_m3", &Harbour::water_density_t_m3, "t/m³", 0.95, 1.1,
                    "density of the harbour's water; blank: 1.025")
            .text("vertical_datum", &Harbour::vertical_datum, "to which levels refer")
            .json("campaigns", &Harbour::campaigns, "list of {name, from, to}, half-open");
    return d;
}

template <>
const Definition<Person>& definition() {
    static const auto d =
        Definition<Person>("person", "people.csv", "who logs, manages, signs or reads")
            .label("name", &Person::name, "name as it is signed")
            .choice("role", &Person::role, {"skipper", "tug_master", "manager", "officer", "reader"},
                    "what they may do");
    return d;
}

template <>
const Definition<Material>& definition() {
    static const auto d =
        Definition<Material>("material", "materials.csv", "a material and its factors when the book began")
            .label("material", &Material::material, "name of the material")
            .number("situ_density_t_m3", &Material::situ_density_t_m3, "t/m³", 1, 4, "bulk density in place")
            .number("grain_density_t_m3", &Material::grain_density_t_m3, "t/m³", 1, 8,
                    "density of the grains")
            .number("bulking_factor", &Material::bulking_factor, "", 0.2, 5, "hopper volume / in-situ volume")
            .number("bulking_factor_u", &Material::bulking_factor_u, "", 0, 5, "its standard uncertainty")
            .number("fill_factor", &Material::fill_factor, "", 0.01, 3, "bucket volume / rated capacity")
            .number("fill_factor_u", &Material::fill_factor_u, "", 0, 3, "its standard uncertainty");
    return d;
}

template <>
const Definition<Factor>& definition() {
    static const auto d =
        Definition<Factor>("factor", "factors.csv", "a dated version of a factor, with who and why")
            .own_label("id", &Factor::factor_id)
            .instant_or_day("from", &Factor::from, "in force from this instant")
            .ref("material", &Factor::material, "material", "the material it is for")
            .ref("bucket", &Factor::bucket, "bucket", "the bucket it is for; blank: every bucket")
            .choice("factor", &Factor::factor, {"bulking", "fill", "situ_density", "grain_density"},
                    "which factor")
            .number("value", &Factor::value, "", 0.01, 10, "its value")
            .number("u", &Factor::u, "", 0, 10, "its standard uncertainty")
            .text("by", &Factor::by, "who decided")
            .text("why", &Factor::why, "the evidence")
            .instant_or_day("accepted", &Factor::accepted, "when the authority accepted it")
            .text("evidence", &Factor::evidence, "claim-periods of removed.csv it rests on, `;` between")
            .added()
            .since(2);
    return d;
}

template <>
const Definition<Suitability>& definition() {
    static const auto d =
        Definition<Suitability>("suitability", "suitability.csv", "class of a material in a claim")
            .own_label("id", &Suitability::suitability)
            .ref("claim", &Suitability::claim, "claim", "where it lies")
            .ref("material", &Suitability::material, "material", "the material")
            .choice("class", &Suitability::material_class, {"sea", "land"}, "where it may go")
            .text("samples", &Suitability::samples, "samples it rests on")
            .text("letter", &Suitability::letter, "the authority's letter")
            .instant_or_day("from", &Suitability::from, "from")
            .instant_or_day("to", &Suitability::to, "to, not included")
            .ordered("from", "to");
    return d;
}

}  // namespace spoilbook
