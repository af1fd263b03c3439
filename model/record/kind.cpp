// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/kind.h"

#include <algorithm>
#include <stdexcept>

#include "model/record/instrument.h"
#include "model/record/records.h"
#include "model/record/water_sample.h"

namespace spoilbook {

std::optional<std::size_t> Kind::index_of(std::string_view field) const {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (fields[i].name == field) return i;
    }
    return std::nullopt;
}

const Field& Kind::field(std::string_view field_name) const {
    const auto index = index_of(field_name);
    if (!index) throw std::logic_error("kind " + name + " has no field " + std::string(field_name));
    return fields[*index];
}

namespace {

template <class... R>
std::vector<Kind> kinds_of() {
    return {definition<R>().kind()...};
}

}  // namespace

const std::vector<Kind>& all_kinds() {
    static const std::vector<Kind> kinds =
        kinds_of<Harbour, Person, Material, Dredger, Bucket, Tug, Barge, Claim, Ground, Cell, Consent,
                 Condition, Shift, Crew, Station, Handover, Delay, Sounding, Load, Tally, LightReading, Trip,
                 Release, Watch, Observation, Event, Find, Suitability, Factor, Opening, Tide, Notice, Fuel,
                 Site, Service, LoggerFile, Track, Survey, Removed, DutyDone, SiteCheck, Overrule, Instrument,
                 WaterSample>();
    return kinds;
}

const Kind* find_kind(std::string_view name) {
    for (const auto& kind : all_kinds()) {
        const std::string_view file = kind.file;
        const bool by_file =
            kind.form != FileForm::json && (file == name || file.substr(0, file.rfind('.')) == name);
        if (kind.name == name || by_file) return &kind;
    }
    return nullptr;
}

const Kind& kind(std::string_view name) {
    const Kind* found = find_kind(name);
    if (found == nullptr) throw std::logic_error("there is no kind " + std::string(name));
    return *found;
}

}  // namespace spoilbook
