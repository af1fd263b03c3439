// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/watched_water.h"

namespace spoilbook {

template <>
const Definition<Site>& definition() {
    static const auto d =
        Definition<Site>("site", "turbidity/sites.csv", "where a logger measures, and its thresholds")
            .label("site", &Site::site, "its name")
            .choice("role", &Site::role, {"impact", "control"}, "impact or control")
            .number("easting_m", &Site::easting_m, "m", -1e7, 1e7, "easting")
            .number("northing_m", &Site::northing_m, "m", -2e7, 2e7, "northing")
            .choice("unit", &Site::unit, {"NTU", "FNU"}, "as the sensor reports (ISO 7027); never converted")
            .number("interval_min", &Site::interval_min, "min", 0.01, 100000, "nominal interval of readings")
            .number("range_low", &Site::range_low, "", -1e6, 1e6, "least sound reading")
            .number("range_high", &Site::range_high, "", -1e6, 1e6, "greatest sound reading")
            .number("spike", &Site::spike, "", 0, 1e6, "greatest sound spike")
            .number("rate_per_min", &Site::rate_per_min, "", 0, 1e6, "greatest sound change a minute")
            .number("flat_min", &Site::flat_min, "min", 0, 1e6, "longest sound time without change");
    return d;
}

template <>
const Definition<SiteCheck>& definition() {
    static const auto d =
        Definition<SiteCheck>("site_check", "turbidity/checks.csv", "thresholds of a site for a time")
            .since(2)
            .own_label("id", &SiteCheck::check)
            .ref("site", &SiteCheck::site, "site", "the site")
            .instant_or_day("from", &SiteCheck::from, "from then on; blank: always")
            .instant_or_day("to", &SiteCheck::to, "until just before")
            .number("range_low", &SiteCheck::range_low, "", -1e6, 1e6, "below it fails")
            .number("range_high", &SiteCheck::range_high, "", -1e6, 1e6, "above it fails")
            .number("suspect_low", &SiteCheck::suspect_low, "", -1e6, 1e6, "below it is suspect")
            .number("suspect_high", &SiteCheck::suspect_high, "", -1e6, 1e6, "above it is suspect")
            .number("spike", &SiteCheck::spike, "", 0, 1e6, "a higher spike is suspect")
            .number("spike_fail", &SiteCheck::spike_fail, "", 0, 1e6, "a higher spike fails")
            .number("rate_per_min", &SiteCheck::rate_per_min, "", 0, 1e6, "a faster change is suspect")
            .number("flat_min", &SiteCheck::flat_min, "min", 0, 1e6, "unchanged for longer is suspect")
            .number("flat_fail_min", &SiteCheck::flat_fail_min, "min", 0, 1e6, "unchanged for longer fails")
            .number("flat_tolerance", &SiteCheck::flat_tolerance, "", 0, 1e6, "nearer readings are unchanged")
            .ordered("from", "to");
    return d;
}

template <>
const Definition<Overrule>& definition() {
    static const auto d =
        Definition<Overrule>("overrule", "turbidity/overrules.csv", "a person's flag in place of the checks'")
            .since(2)
            .own_label("id", &Overrule::overrule)
            .ref("site", &Overrule::site, "site", "the site")
            .instant("from", &Overrule::from, "first reading")
            .instant("to", &Overrule::to, "last reading; blank: the first alone")
            .choice("flag", &Overrule::flag, {"1", "2", "3", "4"}, "pass, not evaluated, suspect, fail")
            .text("why", &Overrule::why, "the reason")
            .text("by", &Overrule::by, "who decided")
            .ordered("from", "to");
    return d;
}

template <>
const Definition<Service>& definition() {
    static const auto d = Definition<Service>("service", "turbidity/service.csv", "what was done to a logger")
                              .own_label("id", &Service::service)
                              .ref("site", &Service::site, "site", "the site")
                              .instant("time", &Service::time, "when")
                              .text("what", &Service::what, "what was done")
                              .text("before", &Service::before, "reading before")
                              .text("after", &Service::after, "reading after")
                              .text("serial", &Service::serial, "serial number");
    return d;
}

template <>
const Definition<LoggerFile>& definition() {
    static const auto d =
        Definition<LoggerFile>("logger_file", "turbidity", "a logger's file, kept as it came")
            .ref("site", &LoggerFile::site, "site", "the site")
            .text("file", &LoggerFile::file, "the file's name")
            .text("digest", &LoggerFile::digest, "SHA-256 of its bytes")
            .json("how", &LoggerFile::how, "how it is read, where it is not time, value")
            .added()
            .since(2)
            .also_label("file");
    return d;
}

template <>
const Definition<Survey>& definition() {
    static const auto d =
        Definition<Survey>("survey", "surveys.csv", "a surveyed grid, kept as the file that came")
            .label("survey", &Survey::survey, "its name")
            .text("file", &Survey::file, "the grid's file in surveys/")
            .day("surveyed_on", &Survey::surveyed_on, "day of the survey")
            .choice("kind", &Survey::kind, {"before", "progress", "after"}, "when in the works")
            .choice("positive", &Survey::positive, {"up", "down"}, "which way its numbers grow")
            .number("offset_m", &Survey::offset_m, "m", -200, 200,
                    "added to its levels to bring them to chart datum")
            .number("u_m", &Survey::u_m, "m", 0, 50, "standard uncertainty of a depth")
            .text("s44_order", &Survey::s44_order, "IHO S-44 order, where no u_m is given")
            .text("digest", &Survey::digest, "SHA-256 of the file's bytes")
            .added();
    return d;
}

}  // namespace spoilbook
