# SPDX-License-Identifier: GPL-3.0-or-later
"""Random numbers that are the same on every Python: SplitMix64 (Steele, Lea, Flood 2014)."""

MASK = (1 << 64) - 1


class Dice:
    def __init__(self, seed):
        self.state = seed & MASK

    def word(self):
        """The next 64 bits."""
        self.state = (self.state + 0x9E3779B97F4A7C15) & MASK
        z = self.state
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        return z ^ (z >> 31)

    def share(self):
        """Even in [0, 1)."""
        return (self.word() >> 11) / 9007199254740992.0

    def whole(self, low, high):
        """A whole number, both ends included."""
        return low + self.word() % (high - low + 1)

    def between(self, low, high):
        return low + (high - low) * self.share()

    def bell(self, sigma=1.0):
        """Near enough to normal, never beyond 2.4 sigma: four shares out of one word, no logarithm."""
        z = self.word()
        four = (z & 0xFFFF) + (z >> 16 & 0xFFFF) + (z >> 32 & 0xFFFF) + (z >> 48)
        return sigma * (four / 65536.0 - 2.0) * 1.7320508

    def of(self, things):
        return things[self.word() % len(things)]

    def weighted(self, pairs):
        """One thing of [(thing, weight), …]."""
        at = self.share() * sum(w for _, w in pairs)
        for thing, weight in pairs:
            at -= weight
            if at < 0:
                return thing
        return pairs[-1][0]

    def child(self, salt):
        """A new row of numbers that does not move when this one is used more."""
        return Dice(self.state ^ (salt * 0xD1B54A32D192ED03))
