# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads the demo folder with code of its own and holds it against the scenario; shares nothing with maker/."""
