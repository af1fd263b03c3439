# SPDX-License-Identifier: GPL-3.0-or-later
"""Consent MHB-25-117 of the demo, and forty quantity conditions for a long season."""
from . import places

NOT_WORKING = {"weekends": True,
               "dates": ["2025-10-27", "2026-02-06", "2026-04-03", "2026-04-06", "2026-04-27", "2026-06-01"],
               "yearly": ["12-20..01-10"]}
AUTHORITY = "Marram Coast Council"
RELEASE = {"activity": "release", "grounds": [places.GROUND]}
WARN = [0.8, 0.95]


def _quantity(condition, text, value, window, measure="in_situ_m3", applies=None, **more):
    found = {"condition": condition, "text": text, "kind": "quantity", "applies": applies or RELEASE,
             "measure": measure, "op": "at_most"}
    if value is not None:
        found["value"] = value
    return {**found, "window": window, "warn_at": WARN, **more}


def _turbidity(tier, above, over_minutes, held_hours, action, within_hours):
    return {"condition": f"20.{tier}", "text": f"turbidity tier {tier}: median over {over_minutes // 60} h more than "
            f"{above} above the control for {held_hours} h", "kind": "series", "applies": {"activity": "dredge"},
            "variable": "turbidity", "sites": ["R1", "R2"], "control": "C1", "statistic": {"kind": "median"},
            "over_minutes": over_minutes, "min_complete": 0.75, "compare": {"above_control": above},
            "passes": {"held_hours": held_hours}, "tier": tier, "clear": {"sites": "same", "held_hours": 6},
            "responses": [{"tier": tier, "action": action, "within": {"n": within_hours, "unit": "hours"},
                           "to": AUTHORITY}]}


def _turbidity_alone():
    """Recorded whatever the control shows; 20.2 says by comparison whether the works are answerable for it."""
    found = _turbidity(2, 10, 360, 2, "tell", 12)
    found.pop("control")
    return {**found, "condition": "20.4", "compare": {"absolute": 30},
            "text": "turbidity tier 2 alone: median over 6 h above 30 for 2 h, whatever the control shows"}


def _limits():
    month = {"kind": "calendar", "unit": "month"}
    return [
        _quantity("3", "240 000 m3 in all", 240000, {"kind": "term"},
                  open_question="in-situ or hopper volume? The wording says m3 alone.",
                  settled={"by": AUTHORITY, "on": "2025-07-21", "letter": "MCC letter 412: in situ"}),
        _quantity("4", "no more than 215 000 m3 in any 12 months", 215000,
                  {"kind": "rolling", "n": 12, "unit": "months"}),
        _quantity("5", "26 000 m3 a month", 26000, month),
        _quantity("6", "20 000 m3 from FB2", 20000, {"kind": "term"},
                  applies={**RELEASE, "claims": ["FB2"]}),
        _quantity("7", "6 trips a day", 6, {"kind": "calendar", "unit": "day"}, measure="trips"),
        _quantity("8", "no cell over 15 % of the whole", None, {"kind": "term"}, share_of_total=0.15, of=240000,
                  each_of="cell"),
    ]


def _releases(wreck):
    lat, lon = wreck
    release = {"activity": "release"}
    return [
        {"condition": "9", "text": "no release at night in the spawning season", "kind": "time", "applies": release,
         "mode": "forbid", "dates": ["09-01..10-15"], "hours": ["20:00..06:00"]},
        {"condition": "10", "text": "no release above 1.8 m significant wave height", "kind": "series",
         "applies": release, "variable": "wave_height_m", "statistic": {"kind": "instant"},
         "compare": {"absolute": 1.8}, "passes": {"at_once": True}},
        {"condition": "11", "text": "whole release inside the ground by 20 m", "kind": "place", "applies": release,
         "inside": {"ground": places.GROUND}, "test": "whole_release", "inset_m": 20},
        {"condition": "12", "text": "200 m off the wreck", "kind": "place", "applies": release,
         "outside": {"circle": {"lat": round(lat, 6), "lon": round(lon, 6), "radius_m": 200}},
         "test": "release_start"},
    ]


def _bed():
    return [{"condition": "13", "text": "bed of the ground rises no more than 0.5 m over the survey before",
             "kind": "surface", "ground": places.GROUND, "no_rise_over_baseline_m": 0.5}]


def _duties():
    return [
        {"condition": "30", "text": "survey of the ground every 50 000 m3", "kind": "duty", "what": "survey",
         "when": {"every": {"measure": "in_situ_m3", "value": 50000}}, "due": {"n": 20, "unit": "working_days"}},
        {"condition": "31", "text": "monthly return within 10 working days, nil months too", "kind": "duty",
         "what": "return", "when": {"cycle": "month"}, "due": {"n": 10, "unit": "working_days"},
         "nil_required": True},
        {"condition": "32", "text": "records of each load and trip kept 5 years", "kind": "record",
         "required": {"trip": ["departed", "returned", "tug", "wave_height_m"],
                      "load": ["barge", "loading_start", "loading_end", "dips_m"],
                      "release": ["doors_open", "empty", "ground", "cell", "lat", "lon"]}, "retain_years": 5},
    ]


def marram(wreck):
    tiers = [_turbidity(1, 5, 60, 1, "check", 1), _turbidity(2, 10, 360, 2, "slow", 2),
             _turbidity(3, 20, 360, 2, "stop", 1), _turbidity_alone()]
    return {"consents": [{"consent": "MHB-25-117", "holder": "Marram Harbour Board", "authority": AUTHORITY,
                          "granted": "2025-06-16", "commences": "2025-08-01", "lapses": "2027-06-16",
                          "expires": "2030-08-01", "year_starts": "08-01", "not_working": NOT_WORKING,
                          "conditions": _limits() + _releases(wreck) + _bed() + tiers + _duties()}]}


def season(first, years, m3_a_year):
    """Forty quantity conditions of every window, scope and measure, sized so that some are met and some are not."""
    windows = [({"kind": "term"}, years), ({"kind": "consent_year"}, 1), ({"kind": "calendar", "unit": "year"}, 1),
               ({"kind": "calendar", "unit": "month"}, 1 / 11), ({"kind": "calendar", "unit": "week"}, 1 / 48),
               ({"kind": "calendar", "unit": "day"}, 1 / 280), ({"kind": "rolling", "n": 12, "unit": "months"}, 1),
               ({"kind": "rolling", "n": 30, "unit": "days"}, 1 / 11.5), ({"kind": "mean", "years": 3}, 1)]
    scopes = [({}, 1.0), ({"claims": ["FB2"]}, 1 / 11), ({"materials": ["shelly sand"]}, 0.4)]
    measures = [("in_situ_m3", 1.0), ("hopper_m3", 1.24), ("trips", 1 / 347)]
    found = []
    for i in range(36):
        (window, span), (scope, part), (measure, size) = windows[i % 9], scopes[i // 3 % 3], measures[i // 9 % 3]
        value = round(m3_a_year * span * part * size * (1.02 + 0.05 * (i % 7)))
        found.append(_quantity(str(i + 1), f"limit {i + 1}", max(value, 1), window, measure, {**RELEASE, **scope}))
    for each in ("cell", "claim", "material", "plant"):
        found.append(_quantity(str(len(found) + 1), f"a year for each {each}", round(m3_a_year / 3),
                               {"kind": "rolling", "n": 12, "unit": "months"}, each_of=each))
    return _long_consent(first, found)


def mixed_season(first, years, m3_a_year, wreck):
    """Ten of those limits, and five conditions each of the six other kinds that are judged without loggers."""
    limits = season(first, years, m3_a_year)["consents"][0]["conditions"]
    found = limits[:8] + limits[36:38]
    for i in range(5):
        found += [{"applies": {"activity": "release"}, **condition} for condition in _one_of_each_kind(i, wreck)]
    return _long_consent(first, [{**condition, "condition": str(n)} for n, condition in enumerate(found, 1)])


def _one_of_each_kind(i, wreck):
    circle = {"lat": round(wreck[0], 6), "lon": round(wreck[1], 6), "radius_m": 100 + 90 * i}
    place = {"outside": {"circle": circle}} if i % 2 else {"inside": {"ground": places.GROUND}, "inset_m": 60 * i}
    columns = {"trip": ["departed", "returned", "tug", "wave_height_m"][:1 + i % 4], "load": ["barge", "dips_m"]}
    return [{"kind": "place", "text": f"place {i + 1}", **place},
            {"kind": "time", "text": f"time {i + 1}", "mode": "forbid", "dates": [f"0{1 + i}-01..1{i % 3}-15"],
             "hours": [f"{20 + i % 3}:00..0{3 + i % 3}:00"]},
            {"kind": "series", "text": f"waves {i + 1}", "variable": "wave_height_m",
             "statistic": {"kind": "instant"}, "compare": {"absolute": round(1.2 + 0.2 * i, 1)},
             "passes": {"at_once": True}},
            {"kind": "duty", "text": f"survey {i + 1}", "what": "survey", "due": {"n": 20, "unit": "working_days"},
             "when": {"every": {"measure": "in_situ_m3", "value": 50000 * (1 + i)}}},
            {"kind": "watch", "text": f"watch {i + 1}", "before_minutes": 10 + 5 * i, "radius_m": 300, "log": True},
            {"kind": "record", "text": f"record {i + 1}", "required": columns}]


def _long_consent(first, conditions):
    return {"consents": [{"consent": "LONG-1", "holder": "Marram Harbour Board", "authority": AUTHORITY,
                          "granted": first.isoformat(), "commences": first.isoformat(), "year_starts": "07-01",
                          "not_working": {"weekends": True}, "conditions": conditions}]}
