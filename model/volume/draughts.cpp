// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/draughts.h"

#include <algorithm>

#include "model/volume/assumptions.h"
#include "model/volume/hydrostatics.h"
#include "model/volume/solids.h"

namespace spoilbook {
namespace {

/// How light she was before this load, and what was in her.
struct LightSide {
    const std::vector<double>* marks_m = nullptr;
    std::optional<double> density_t_m3, hopper_water_m3;
    const LightReading* reading = nullptr;  ///< null: the load's own light draughts
};

std::optional<LightSide> light_side(const LoadReadings& readings) {
    const Load& load = *readings.load;
    if (!load.light_draughts_m.empty())
        return LightSide{&load.light_draughts_m, load.light_density_t_m3, {}, {}};
    const auto at = load.loading_start ? load.loading_start : load.loading_end;
    if (!at) return std::nullopt;
    const LightReading* reading = readings.index->light_reading(load.barge, *at);
    if (reading == nullptr) return std::nullopt;
    return LightSide{&reading->draughts_m, reading->density_t_m3, reading->hopper_water_m3, reading};
}

void assume(MethodResult& result, std::string_view sentence) {
    auto& assumed = result.assumed;
    if (std::find(assumed.begin(), assumed.end(), sentence) == assumed.end()) assumed.push_back(sentence);
}

struct Weighing {
    Uncertain wet_t;
    MethodResult result;
};

/// The two displacements and their difference, or the obstacle.
std::optional<std::string_view> weigh(const LoadReadings& readings, const LightSide& light, Weighing& into) {
    const Barge* barge = readings.barge;
    if (barge == nullptr || readings.tables->displacement_t.empty()) return obstacle::no_hydrostatic_table;
    const auto full_means = mark_means(readings.load->full_draughts_m);
    const auto light_means = mark_means(*light.marks_m);
    if (!full_means || !light_means) return obstacle::marks_missing;
    const double u = barge->draught_u_m.value_or(0);
    const Uncertain full_u = Uncertain::random(0, u, RandomInput::full_draughts);
    const Uncertain light_u = light.reading == nullptr
                                  ? Uncertain::random(0, u, RandomInput::light_draughts)
                                  : Uncertain::shared(0, u, readings.index->source_of(*light.reading));
    const double water = readings.water_t_m3();
    const auto full = displacement(*barge, *readings.tables, {*full_means, readings.load->dock_density_t_m3},
                                   water, full_u);
    const auto empty =
        displacement(*barge, *readings.tables, {*light_means, light.density_t_m3}, water, light_u);
    if (!full || !empty) return obstacle::draught_outside;
    into.wet_t = full->weight_t - empty->weight_t + water * light.hopper_water_m3.value_or(0);
    if (into.wet_t.value() <= 0) return obstacle::light_heavier;
    MethodResult& result = into.result;
    result.facts = {
        {"mean_draught_full_m", full->mean_draught_m},   {"mean_draught_light_m", empty->mean_draught_m},
        {"trim_full_m", full->trim_by_stern_m},          {"trim_light_m", empty->trim_by_stern_m},
        {"displacement_full_t", full->weight_t.value()}, {"displacement_light_t", empty->weight_t.value()}};
    for (const auto* side : {&*full, &*empty}) {
        for (const auto sentence : side->assumed)
            assume(result, sentence);
    }
    if (!barge->draught_u_m) assume(result, assumption::draughts_exact);
    assume(result, assumption::hydrostatic_exact);
    if (!light.hopper_water_m3) assume(result, assumption::no_hopper_water);
    assume(result, assumption::no_changes);
    return std::nullopt;
}

/// Σ share · (ρ_situ − ρ_w): what a cubic metre in place weighs under water.
std::optional<Uncertain> weight_under_water(const LoadReadings& readings) {
    Uncertain sum;
    for (const SplitPart& part : readings.split.parts) {
        const auto over = above_water(part.factors.situ_density, readings.water_t_m3());
        if (!over || !part.in_situ_share) return std::nullopt;
        sum = sum + *part.in_situ_share * *over;
    }
    return sum;
}

/// V_top from what was read alone; the weight says nothing of it.
void add_volumes(const LoadReadings& readings, HopperContent& content, MethodResult& result) {
    content.hopper_m3 = readings.hopper_by_dips_m3;
    content.top_m3 = top_volume(readings, readings.hopper_by_dips_m3);
    if (!content.top_m3) {
        if (!readings.top.outside_table) assume(result, assumption::no_top);
        return;
    }
    const Uncertain under_water = *content.wet_t - *content.top_m3 * readings.water_t_m3();
    result.facts.push_back({"top_m3", content.top_m3->value()});
    if (under_water.value() <= 0) {
        assume(result, assumption::lighter_than_water);
        content.top_m3.reset();
        return;
    }
    const auto per_m3 = weight_under_water(readings);
    if (!per_m3) {
        assume(result, assumption::no_density);
        return;
    }
    content.in_situ_m3 = under_water / *per_m3;
    if (!content.hopper_m3 && readings.split.situ_per_hopper) {
        content.hopper_m3 = *content.in_situ_m3 / *readings.split.situ_per_hopper;
        assume(result, assumption::hopper_from_bulking);
    }
    if (content.hopper_m3 && content.hopper_m3->value() > 0) {
        const double hopper = content.hopper_m3->value();
        const double spoil_t =
            content.wet_t->value() - readings.water_t_m3() * (content.top_m3->value() - hopper);
        result.facts.push_back({"hopper_density_t_m3", spoil_t / hopper});
    }
}

}  // namespace

std::optional<MethodResult> by_draughts(const LoadReadings& readings, std::vector<LeftOut>& left_out) {
    const Load& load = *readings.load;
    if (load.full_draughts_m.empty()) {
        if (!load.light_draughts_m.empty())
            left_out.push_back({Method::draughts, obstacle::no_full_draughts});
        return std::nullopt;
    }
    const auto light = light_side(readings);
    if (!light) {
        left_out.push_back({Method::draughts, obstacle::no_light_draughts});
        return std::nullopt;
    }
    Weighing weighing;
    weighing.result.method = Method::draughts;
    if (const auto why = weigh(readings, *light, weighing)) {
        left_out.push_back({Method::draughts, *why});
        return std::nullopt;
    }
    HopperContent content;
    content.wet_t = weighing.wet_t;
    add_volumes(readings, content, weighing.result);
    give_amounts(readings, content, weighing.result);
    return std::move(weighing.result);
}

}  // namespace spoilbook
