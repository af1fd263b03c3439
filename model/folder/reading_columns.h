// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "model/folder/complaints.h"
#include "model/folder/csv_reader.h"
#include "model/record/kind.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// Named columns of a plain file of readings, of which the first is their time. Refused: a column that is
/// missing, given twice, or (unless others are allowed) not known, a value that does not read, a blank time.
class ReadingColumns {
 public:
    ReadingColumns(std::vector<Field> fields, bool others_allowed, const Zone& zone, const std::string& file,
                   Complaints& complaints)
        : fields_(std::move(fields)),
          others_allowed_(others_allowed),
          zone_(zone),
          file_(file),
          complaints_(complaints) {}

    /// Calls `on_row` with the values of each row in the order of the fields; rows at fault are left out.
    void read(std::string_view bytes, const std::function<void(const std::vector<Value>&)>& on_row);

 private:
    void read_header(const CsvRow& row);
    bool read_row(const CsvRow& row);
    void refuse(Refusal refusal) { complaints_.refuse(file_, std::move(refusal)); }

    std::vector<Field> fields_;
    bool others_allowed_;
    const Zone& zone_;
    const std::string& file_;
    Complaints& complaints_;
    std::vector<std::size_t> places_;
    std::vector<Value> values_;
    bool whole_ = true;
};

}  // namespace spoilbook
