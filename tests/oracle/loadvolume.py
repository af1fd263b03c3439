# SPDX-License-Identifier: GPL-3.0-or-later
"""How much one load is, by every method that its readings allow (calculations.md section 1).

Each method gives a list of Amounts, one for each part of the load (a part is what one tally line brought):
hopper m³, in-situ m³, wet t, dry t, each an Estimate or None where something it needs is not recorded.
"""
import math
from dataclasses import dataclass
from typing import Optional

from bookfolder import number, numbers
from estimate import Estimate, lift, total

MEASURES = ("hopper_m3", "in_situ_m3", "wet_t", "dry_t")
ORDER = ("ullage", "draughts", "tally", "stated")


@dataclass
class Part:
    """What one tally line brought: heap = n·C·f in m³ (None where unknown), B, densities in t/m³."""
    claim: Optional[str]
    material: Optional[str]
    loose: Optional[float]      # n·C
    heap: Optional[Estimate]    # n·C·f
    bulking: Optional[Estimate]
    situ: Optional[float]
    grain: Optional[float]
    weight: Optional[Estimate] = None


@dataclass
class Amount:
    claim: Optional[str]
    hopper_m3: Optional[Estimate]
    in_situ_m3: Optional[Estimate]
    wet_t: Optional[Estimate]
    dry_t: Optional[Estimate]


def interpolate(table, x):
    """(y, slope) linear between rows, None outside the table."""
    rows = sorted(tuple(r) for r in table or [])
    for (x1, y1), (x2, y2) in zip(rows, rows[1:]):
        if x1 <= x <= x2:
            slope = (y2 - y1) / (x2 - x1)
            return y1 + slope * (x - x1), slope
    return None


def all_known(*values):
    return all(v is not None for v in values)


class LoadVolume:
    def __init__(self, folder, load):
        self.folder, self.row, self.load = folder, folder.loads[load], load
        self.at = folder.time(self.row.get("loading_end"))
        self.barge = folder.barges.get(self.row.get("barge"), {})
        self.left_before = number(self.row.get("left_before_m3")) or 0.0
        self.parts = self._parts()
        self.methods = {m: a for m in ORDER if (a := getattr(self, "_" + m)()) is not None}

    def _factor(self, name, material, bucket=None):
        found = self.folder.factor(name, material, self.at, bucket)
        return None if found is None else Estimate.of(found[0], found[1], found[2])

    def _part(self, claim, material, loose, heap):
        situ, grain = self._factor("situ_density", material), self._factor("grain_density", material)
        return Part(claim, material, loose, heap, self._factor("bulking", material),
                    situ and situ.value, grain and grain.value)

    def _parts(self):
        lines = []
        for row in self.folder.tallies.get(self.load, []):
            station = self.folder.stations.get(row.get("station"), {})
            claim = station.get("claim")
            of_claim = self.folder.claims.get(claim, {}).get("material")
            material = row.get("material") or self.row.get("material") or of_claim
            count = (number(row.get("count")) or 0.0) + (number(row.get("part_buckets")) or 0.0)
            capacity = number(self.folder.buckets.get(row.get("bucket"), {}).get("capacity_m3"))
            fill = self._factor("fill", material, row.get("bucket"))
            loose = None if capacity is None else count * capacity
            if count > 0:
                lines.append(self._part(claim, material, loose,
                                        fill * loose if all_known(loose, fill) else None))
        if not lines:
            lines = [self._part(None, self.row.get("material"), None, None)]
        # The share of each line: n·C·f; where some f is unknown n·C; where that is unknown, equal.
        heaps = [p.heap for p in lines]
        if not all_known(*heaps):
            heaps = [lift(p.loose) if p.loose is not None else None for p in lines]
        if not all_known(*heaps):
            heaps = [lift(1.0) for p in lines]
        for part, heap in zip(lines, heaps):
            part.weight = heap / total(heaps)
        return lines

    # -- methods ---------------------------------------------------------------------------------------------

    def _tally(self):
        if not self.folder.tallies.get(self.load) or not all_known(*[p.heap for p in self.parts]):
            return None
        return self._from_hopper(total([p.heap for p in self.parts]) + self.left_before)

    def _ullage(self):
        hopper = self._hopper_by_dips(numbers(self.row.get("dips_m")))
        return None if hopper is None else self._from_hopper(hopper)

    def _hopper_by_dips(self, dips, lower_by=0.0):
        """Mean dip through the ullage table; u² = (s²/n + ullage_u²)·slope², a random source of
        this load."""
        if not dips:
            return None
        mean = math.fsum(dips) / len(dips)
        found = interpolate(self.barge.get("ullage_table"), mean - lower_by)
        if found is None:
            return None
        scatter2 = 0.0
        if len(dips) > 1:
            scatter2 = math.fsum((d - mean) ** 2 for d in dips) / (len(dips) - 1) / len(dips)
        u = math.sqrt(scatter2 + (number(self.barge.get("ullage_u_m")) or 0.0) ** 2)
        return Estimate.of(found[0], found[1] * u, ("dips", self.load))

    def _water_on_top(self):
        """Volume of the water on the spoil by the ullage table, None where none is recorded."""
        dips, tops = numbers(self.row.get("dips_m")), numbers(self.row.get("top_dips_m"))
        lower_by = number(self.row.get("water_on_top_m")) or 0.0
        spoil = self._hopper_by_dips(dips)
        top = self._hopper_by_dips(tops) if tops else self._hopper_by_dips(dips, lower_by) if lower_by else None
        if not all_known(spoil, top) or top.value <= spoil.value:
            return None
        return lift(top.value - spoil.value)

    def _stated(self):
        hopper, situ = number(self.row.get("stated_hopper_m3")), number(self.row.get("stated_in_situ_m3"))
        if hopper is None and situ is None:
            return None
        over_b = self.in_situ_share()
        if situ is not None:
            in_hopper = None if hopper is None else lift(hopper)
            if hopper is None and over_b is not None:
                in_hopper = lift(situ) / over_b
            return self._from_both(in_hopper, lift(situ))
        return self._from_hopper(lift(hopper))

    def _draughts(self):
        """Common method of six marks. The hopper volume shown is the one by the dips."""
        light, full = numbers(self.row.get("light_draughts_m")), numbers(self.row.get("full_draughts_m"))
        if len(light) != 6 or len(full) != 6:
            return None
        of_table = number(self.barge.get("hydrostatic_density_t_m3")) or self.folder.water_density
        displacement = []
        for marks, column in ((light, "light_density_t_m3"), (full, "dock_density_t_m3")):
            fore, mid, aft = ((marks[i] + marks[i + 1]) / 2 for i in (0, 2, 4))
            divisor = self.barge.get("draught_mean", 8)
            mean = (fore + aft + (divisor - 2) * mid) / divisor     # (F+A+6M)/8 or (F+A+4M)/6
            found = interpolate(self.barge.get("hydrostatic_table"), mean)
            if found is None:
                return None
            displacement.append(found[0] * (number(self.row.get(column)) or of_table) / of_table)
        wet = lift(displacement[1] - displacement[0])
        dips, tops = numbers(self.row.get("dips_m")), numbers(self.row.get("top_dips_m"))
        water_on_top = number(self.row.get("water_on_top_m")) or 0.0
        hopper = self._hopper_by_dips(dips)
        top = self._hopper_by_dips(tops) if tops else self._hopper_by_dips(dips, water_on_top)
        situ = dry = None
        p, water = self.parts[0], self.folder.water_density
        if all_known(top, p.situ) and len({q.material for q in self.parts}) == 1:
            situ = (wet - top * water) / (p.situ - water)
            dry = (wet - top * water) * (p.grain / (p.grain - water)) if p.grain is not None else None

        def split(amount, weight):
            return None if amount is None else amount * weight
        return [Amount(q.claim, split(hopper, q.weight), split(situ, q.weight), split(wet, q.weight),
                       split(dry, q.weight)) for q in self.parts]

    # -- from a volume to its parts ------------------------------------------------------------------------

    def in_situ_share(self):
        """1/B of the load's whole: Σ w_i/B_i, None where a B is not recorded."""
        if not all_known(*[p.bulking for p in self.parts]):
            return None
        return total([p.weight / p.bulking for p in self.parts])

    def _from_hopper(self, hopper):
        share = self.in_situ_share()
        return self._from_both(hopper, None if share is None else hopper * share)

    def _from_both(self, hopper, situ):
        """Hopper ∝ n·C·f; in situ ∝ n·C·f/B, or ∝ n·C·f where no B is known (a stated in-situ volume)."""
        share = self.in_situ_share()
        amounts = []
        for p in self.parts:
            h = None if hopper is None else hopper * p.weight
            by_situ = p.weight if share is None else p.weight / p.bulking / share
            s = None if situ is None else situ * by_situ
            amounts.append(Amount(p.claim, h, s, *self._tonnes(p, h, s)))
        for measure in ("wet_t", "dry_t"):      # a load is known whole or not at all
            if not all_known(*[getattr(a, measure) for a in amounts]):
                for a in amounts:
                    setattr(a, measure, None)
        return amounts

    def _tonnes(self, part, hopper, situ):
        """wet = V_s(ρ_situ − ρ_w) + ρ_w·V_top, V_top = V_h + the water on it;
        dry = V_s·ρ_s(ρ_situ − ρ_w)/(ρ_s − ρ_w)."""
        water = self.folder.water_density
        if situ is None or part.situ is None:
            return None, None
        on_top = self._water_on_top()
        wet = None
        if hopper is not None:
            wet = situ * (part.situ - water) + hopper * water
            wet = wet if on_top is None else wet + on_top * (part.weight * water)
        if part.grain is None:
            return wet, None
        return wet, situ * (part.grain * (part.situ - water) / (part.grain - water))

    # -- what counts ---------------------------------------------------------------------------------------

    def counted_by(self, measure=None):
        """The first method in the order that gives a value (of the measure; without one: of any)."""
        for method, amounts in self.methods.items():
            if any(getattr(amounts[0], m) is not None for m in ([measure] if measure else MEASURES[:2])):
                return method
        return None

    def amounts(self, measure, method=None):
        """[(claim, Estimate)] of the load as it lay in the barge, or None where no method can value it."""
        method = method or self.counted_by(measure)
        amounts = self.methods.get(method)
        if amounts is None or not all_known(*[getattr(a, measure) for a in amounts]):
            return None
        return [(a.claim, getattr(a, measure)) for a in amounts]

    def dredged(self, measure, method=None):
        """The same less what was left in the hopper before: left_before_m3, in situ
        left_before_m3/B of the whole."""
        amounts = self.amounts(measure, method)
        if amounts is None or self.left_before == 0.0:
            return amounts
        share = self.in_situ_share()
        if measure != "hopper_m3" and share is None:
            return None
        left = self.left_before * (lift(1.0) if measure == "hopper_m3" else share)
        whole = total([e for _, e in amounts])
        return [(c, e - left * (e / whole)) for c, e in amounts]

    def claims(self):
        return {p.claim for p in self.parts}
