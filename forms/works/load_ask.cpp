// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/load_ask.h"

#include "forms/shared/sheet.h"
#include "forms/works/load_sheet.h"

namespace spoilbook::form {

OpensLoad opens_loads(BookSession& session, Sheet* sheet) {
    return [&session, sheet](const QString& load) {
        sheet->open(LoadSheet::tr("Load %1").arg(load), new LoadSheet(session, load.toStdString()),
                    load_sheet_width);
    };
}

}  // namespace spoilbook::form
