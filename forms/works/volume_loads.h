// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/works/figures_source.h"
#include "forms/works/load_ask.h"
#include "model/answer/volumes.h"

namespace spoilbook::form {

/// One release behind a volume, ready to be read.
struct VolumeLoad {
    QString at_text, at_copy, trip, load, barge;
    std::optional<Estimate> hopper_m3, in_situ_m3;
};

std::vector<VolumeLoad> volume_loads(const Figures& figures, GroupBy by,
                                     const std::optional<std::string>& key, const QLocale& locale);

/// A table of them; Enter or a double click asks for the load.
QWidget* volume_loads_page(std::vector<VolumeLoad> rows, const QLocale& locale, const OpensLoad& open_load,
                           QWidget* parent);

}  // namespace spoilbook::form
