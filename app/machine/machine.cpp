// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/machine/machine.h"

#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <stdexcept>

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

fs::path data_folder() {
    const char* xdg = std::getenv("XDG_DATA_HOME");
    if (xdg != nullptr && *xdg == '/') return fs::path(xdg) / "spoilbook";
    const char* home = std::getenv("HOME");
    return fs::path(home != nullptr && *home != '\0' ? home : "/root") / ".local/share/spoilbook";
}

std::string read_name(const fs::path& file) {
    std::ifstream in(file);
    std::string name;
    in >> name;
    return name;
}

}  // namespace

Instant now() {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return {std::chrono::duration_cast<std::chrono::milliseconds>(since).count()};
}

std::string device_name() {
    const fs::path file = data_folder() / "device";
    if (auto name = read_name(file); !name.empty()) return name;
    fs::create_directories(file.parent_path());
    std::random_device chance;
    const std::string name = fmt::format("d{:08x}{:08x}", chance(), chance());
    // Written beside and renamed, so that two programs started together agree on one name.
    const fs::path part = file.string() + "-" + name;
    std::ofstream(part) << name << "\n";
    std::error_code ignored;
    fs::create_hard_link(part, file, ignored);
    fs::remove(part);
    const auto kept = read_name(file);
    if (kept.empty()) throw std::runtime_error("the name of this machine cannot be kept in " + file.string());
    return kept;
}

}  // namespace spoilbook
