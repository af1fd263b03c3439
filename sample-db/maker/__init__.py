# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes invented seasons as book folders. Nothing in here is a real place, vessel, company or person."""
