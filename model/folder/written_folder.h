// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "model/unit/checked.h"

namespace spoilbook {

/// A folder on its way: written beside its place under another name, and put there in one step, or gone.
class WrittenFolder {
 public:
    /// Refused where `to` is a file, a folder with anything in it, or cannot be made.
    static Checked<WrittenFolder> at(const std::string& to);
    WrittenFolder(WrittenFolder&& other) noexcept;
    WrittenFolder& operator=(WrittenFolder&&) = delete;
    /// Removes what was not put in its place.
    ~WrittenFolder();

    /// `name` may have one folder before it: tracks/T-0412.gpx.
    Checked<Done> write(const std::string& name, std::string_view bytes);
    Checked<Done> put_in_place();
    [[nodiscard]] std::size_t files() const { return files_; }

 private:
    WrittenFolder(std::string to, std::string on_the_way);

    std::string to_;
    std::string on_the_way_;
    std::size_t files_ = 0;
};

}  // namespace spoilbook
