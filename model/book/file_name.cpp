// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/file_name.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

namespace spoilbook {

namespace fs = std::filesystem;

std::string folder_of(const std::string& path) {
    const auto parent = fs::absolute(path).parent_path();
    return parent.empty() ? "/" : parent.string();
}

std::string real_path(const std::string& path) {
    std::error_code none;
    const auto real = fs::canonical(path, none);
    return none ? path : real.string();
}

Checked<Done> take_the_name(const std::string& part, const std::string& path) {
    const int folder = open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    // link(2) refuses a name that is taken, where rename(2) would put the file in its place.
    const bool linked = folder >= 0 && link(part.c_str(), path.c_str()) == 0;
    const int why = errno;
    if (linked) fsync(folder);
    if (folder >= 0) close(folder);
    if (linked) return Done{};
    if (why == EEXIST)
        return Refusal{"already-there", path, "there is a file of this name", "choose another name"};
    return Refusal{"cannot-write", path,
                   std::string("the file cannot be put in its place: ") + std::strerror(why),
                   "choose another name"};
}

}  // namespace spoilbook
