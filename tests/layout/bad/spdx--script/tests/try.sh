#!/usr/bin/env bash
set -e
# SPDX-License-Identifier: GPL-3.0-or-later
