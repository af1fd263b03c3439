// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/unit/checked.h"

namespace spoilbook {

/// A folder of its own beside a file that is on its way, under a name that nobody else has: what is written
/// there takes the file's name only when it is whole (take_the_name), and the folder is gone on every way
/// out. Nothing that lay beside the file before is touched.
class PartFolder {
 public:
    /// Refused where no folder can be made beside `path`.
    static Checked<PartFolder> beside(const std::string& path);
    PartFolder(PartFolder&& other) noexcept;
    PartFolder& operator=(PartFolder&&) = delete;
    ~PartFolder();

    /// Where the file is written until then.
    [[nodiscard]] std::string file() const;

 private:
    explicit PartFolder(std::string folder);
    std::string folder_;
};

}  // namespace spoilbook
