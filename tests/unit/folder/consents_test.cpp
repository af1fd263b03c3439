// SPDX-License-Identifier: GPL-3.0-or-later
// The fifteen invented consents of tests/consents use all that a condition may say.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "model/folder/condition_members.h"

using namespace spoilbook;
using nlohmann::json;

namespace {

/// Members and choices of shapes, each shape once, named by its address: `compare` holds itself.
class Said {
 public:
    /// All that a shape lets one say.
    void may_say(const ObjectShape& shape, const std::string& name) {
        if (!seen_.insert(name).second) return;
        for (const auto& member : shape.members) {
            words.insert(name + "." + member.name);
            for (const auto& choice : member.choices)
                words.insert(name + "." + member.name + "=" + choice);
            if (member.shape != nullptr) may_say(member.shape(), name_of(member));
        }
    }

    /// What an object of the shape does say.
    void says(const json& object, const ObjectShape& shape, const std::string& name) {
        for (const auto& member : shape.members) {
            const auto found = object.find(member.name);
            if (found == object.end()) continue;
            words.insert(name + "." + member.name);
            for (const auto& one : found->is_array() ? *found : json::array({*found})) {
                if (one.is_string()) words.insert(name + "." + member.name + "=" + one.get<std::string>());
                if (one.is_object() && member.shape != nullptr) says(one, member.shape(), name_of(member));
            }
        }
    }

    std::set<std::string> words;

 private:
    static std::string name_of(const ObjectMember& member) {
        std::ostringstream text;
        text << reinterpret_cast<const void*>(member.shape);
        return text.str();
    }
    std::set<std::string> seen_;
};

json consents() {
    std::ifstream file(SPOILBOOK_SOURCE_DIR "/tests/consents/consents.json");
    return json::parse(file).at("consents");
}

}  // namespace

TEST_CASE("fifteen consents use every member and choice of every kind of condition", "[folder]") {
    Said may;
    Said does;
    const auto all = consents();
    CHECK(all.size() == 15);
    std::size_t most = 0;
    for (const char* kind :
         {"quantity", "place", "time", "series", "surface", "duty", "watch", "record", "text"})
        may.may_say(condition_shape(kind), kind);
    for (const auto& consent : all) {
        most = std::max(most, consent.at("conditions").size());
        for (const auto& condition : consent.at("conditions")) {
            const std::string kind = condition.at("kind");
            does.says(condition, condition_shape(kind), kind);
        }
    }
    CHECK(most == 40);
    for (const auto& word : may.words) {
        // What every kind may carry is shown once, whatever the kind.
        const std::string member = word.substr(word.find('.'));
        static const std::set<std::string> common{".applies", ".warn_at",   ".responses", ".open_question",
                                                  ".settled", ".condition", ".text",      ".wording",
                                                  ".kind",    ".from",      ".to"};
        INFO("no consent says " << word);
        CHECK((does.words.contains(word) ||
               (common.contains(member) && does.words.contains("quantity" + member))));
    }
}
