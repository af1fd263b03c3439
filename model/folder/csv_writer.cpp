// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/csv_writer.h"

namespace spoilbook {

void append_csv_row(std::string& into, const std::vector<std::string>& fields) {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (i > 0) into += ',';
        const std::string& field = fields[i];
        if (field.find_first_of("\",\r\n") == std::string::npos) {
            into += field;
            continue;
        }
        into += '"';
        for (const char c : field) {
            if (c == '"') into += '"';
            into += c;
        }
        into += '"';
    }
    into += '\n';
}

}  // namespace spoilbook
