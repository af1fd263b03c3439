// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/condition_members.h"

#include "model/folder/condition_kinds.h"
#include "model/folder/json_text.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

using H = Holds;
using nlohmann::json;

const ObjectShape& applies() {
    static const ObjectShape shape{{
        {"activity", H::choice, false, {"dredge", "release", "both"}},
        {"claims", H::texts},
        {"grounds", H::texts},
        {"cells", H::texts},
        {"materials", H::texts},
        {"classes", H::some_of, false, {"sea", "land"}},
        {"plant", H::texts},
    }};
    return shape;
}

const ObjectShape& within() {
    static const ObjectShape shape{{
        {"n", H::number, true, {}, nullptr, 0, 100000},
        {"unit", H::choice, true, {"hours", "days", "working_days", "months"}},
    }};
    return shape;
}

const ObjectShape& response() {
    static const ObjectShape shape{{
        {"tier", H::number, false, {}, nullptr, 0, 100},
        {"action", H::choice, true, {"tell", "check", "slow", "move", "change_cell", "stop"}},
        {"within", H::object, false, {}, within},
        {"to", H::text},
        {"clear", H::object, false, {}, all_clear_shape},
    }};
    return shape;
}

const ObjectShape& settled() {
    static const ObjectShape shape{{{"by", H::text}, {"on", H::when}, {"letter", H::text}}};
    return shape;
}

/// One name or a list of names.
void add_names(const json& object, const char* member, const char* kind, const std::string& path,
               std::vector<NamedInCondition>& names) {
    const auto found = object.find(member);
    if (found == object.end()) return;
    const std::string at = member_path(path, member);
    if (found->is_string()) names.push_back({kind, std::string(trimmed(found->get<std::string>())), at});
    if (!found->is_array()) return;
    for (std::size_t i = 0; i < found->size(); ++i) {
        const json& item = found->at(i);
        if (item.is_string())
            names.push_back({kind, std::string(trimmed(item.get<std::string>())), item_path(at, i)});
    }
}

}  // namespace

const ObjectShape& all_clear_shape() {
    static const ObjectShape shape{{
        {"sites", H::choice, false, {"all", "same"}},
        {"sites", H::texts},
        {"held_hours", H::number, false, {}, nullptr, 0, 100000},
    }};
    return shape;
}

const ObjectShape& not_working_shape() {
    static const ObjectShape shape{{{"weekends", H::truth}, {"dates", H::days}, {"yearly", H::month_days}}};
    return shape;
}

const ObjectShape& campaign_shape() {
    static const ObjectShape shape{{{"name", H::text, true}, {"from", H::when}, {"to", H::when}}};
    return shape;
}

ObjectShape condition_shape(const std::string& kind) {
    ObjectShape shape = members_of_kind(kind);
    const std::vector<ObjectMember> common{
        {"applies", H::object, false, {}, applies},
        {"warn_at", H::numbers, false, {}, nullptr, 0, 10},
        {"responses", H::objects, false, {}, response},
        {"open_question", H::text},
        {"settled", H::object, false, {}, settled},
        // Fields of their own, never in a body: named so that a slip of the pen is told the nearest.
        {"condition", H::text},
        {"text", H::text},
        {"wording", H::text},
        {"kind", H::text},
        {"from", H::when},
        {"to", H::when},
    };
    shape.members.insert(shape.members.end(), common.begin(), common.end());
    return shape;
}

void check_condition(const json& body, const std::string& kind, const std::string& path,
                     const JsonReading& reading) {
    check_object(body, condition_shape(kind), path, reading);
}

std::vector<NamedInCondition> names_in(const json& body) {
    std::vector<NamedInCondition> names;
    if (!body.is_object()) return names;
    if (const auto found = body.find("applies"); found != body.end() && found->is_object()) {
        add_names(*found, "claims", "claim", "applies", names);
        add_names(*found, "grounds", "ground", "applies", names);
        add_names(*found, "cells", "cell", "applies", names);
        add_names(*found, "materials", "material", "applies", names);
        add_names(*found, "plant", "plant", "applies", names);
    }
    for (const char* side : {"inside", "outside"}) {
        const auto found = body.find(side);
        if (found == body.end() || !found->is_object()) continue;
        add_names(*found, "ground", "ground", side, names);
        add_names(*found, "cell", "cell", side, names);
        add_names(*found, "exclusion", "cell", side, names);
    }
    add_names(body, "claim", "claim", "", names);
    add_names(body, "ground", "ground", "", names);
    add_names(body, "sites", "site", "", names);
    add_names(body, "control", "site", "", names);
    return names;
}

}  // namespace spoilbook
