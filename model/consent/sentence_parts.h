// SPDX-License-Identifier: GPL-3.0-or-later
// What the sentences of all kinds are put together from.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

namespace spoilbook::sentence {

/// What stands for a member that is needed and not there.
inline constexpr const char* blank = "…";

/// The members of one JSON object. A member that is null or of another type counts as absent: whoever wants
/// to know why checks the object by its shape.
class Members {
 public:
    explicit Members(const nlohmann::json& object) : object_(object) {}

    [[nodiscard]] bool has(const char* name) const;
    /// The text of a member, of a number as numbered() has it; blank where it is absent.
    [[nodiscard]] std::string text(const char* name) const;
    [[nodiscard]] std::optional<double> number(const char* name) const;
    [[nodiscard]] std::string number_or_blank(const char* name, double times = 1) const;
    [[nodiscard]] bool is_true(const char* name) const;
    /// An empty object where it is absent or none.
    [[nodiscard]] const nlohmann::json& object(const char* name) const;
    /// One text, or a list of texts.
    [[nodiscard]] std::vector<std::string> texts(const char* name) const;
    /// The members that are there, in the order of their names.
    [[nodiscard]] std::vector<std::string> names() const;
    [[nodiscard]] const nlohmann::json& list(const char* name) const;

 private:
    const nlohmann::json& object_;
};

/// "215 000", "0.75", "−8.3".
std::string numbered(double value);
/// "R1", "R1 and R2", "R1, R2 and R3".
std::string listed_words(const std::vector<std::string>& words, const char* last = "and");
/// "m³ in situ" of in_situ_m3; a name that is none as it stands.
std::string measure_words(const std::string& measure);
/// "2 hours", "1 hour"; working_days as "working days".
std::string span_words(const Members& span);
/// An all-clear: "6 hours at the same site".
std::string clear_words(const nlohmann::json& clear);
/// Of `applies`: ", at Gannet Patch, from claim FB2"; empty where it says nothing but the activity.
std::string scope_words(const Members& body);
/// Of `applies`: dredge, release or both (also where it is left out).
std::string activity_of(const Members& body);

std::string of_quantity(const Members& body);
std::string of_place(const Members& body);
std::string of_time(const Members& body);
std::string of_series(const Members& body);
std::string of_surface(const Members& body);
std::string of_duty(const Members& body);
std::string of_watch(const Members& body);
std::string of_record(const Members& body);
/// By when a duty or a text is due: " within 10 working days", blank without.
std::string due_words(const Members& body);

}  // namespace spoilbook::sentence
