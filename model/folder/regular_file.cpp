// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/regular_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

namespace spoilbook {

namespace {

class OpenFile {
 public:
    // Without O_NONBLOCK a pipe would hold us until someone writes to it.
    explicit OpenFile(const std::string& path)
        : number_(::open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)) {}
    ~OpenFile() {
        if (number_ >= 0) ::close(number_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    [[nodiscard]] int number() const { return number_; }

 private:
    int number_;
};

Refusal unreadable(const std::string& name, int why) {
    if (why == ELOOP) return {"not-a-file", name, "it is a link", "put the file itself here"};
    return {"unreadable", name, fmt::format("cannot be read: {}", std::strerror(why)),
            "make it readable, or leave it out"};
}

}  // namespace

Checked<std::string> read_regular_file(const std::string& path, const std::string& name, std::uint64_t most) {
    const OpenFile file(path);
    if (file.number() < 0) return unreadable(name, errno);
    struct stat state {};
    if (::fstat(file.number(), &state) != 0) return unreadable(name, errno);
    if (!S_ISREG(state.st_mode)) return Refusal{"not-a-file", name, "it is no file", "put a file here"};
    if (static_cast<std::uint64_t>(state.st_size) > most) {
        return Refusal{"too-large", name, fmt::format("{} bytes", state.st_size),
                       fmt::format("{} bytes are the most", most)};
    }
    std::string bytes(static_cast<std::size_t>(state.st_size), '\0');
    std::size_t have = 0;
    while (have < bytes.size()) {
        const ssize_t got = ::read(file.number(), bytes.data() + have, bytes.size() - have);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return unreadable(name, errno);
        if (got == 0) break;  // cut short while it was read
        have += static_cast<std::size_t>(got);
    }
    bytes.resize(have);
    return bytes;
}

bool is_plain_name(const std::string& name) {
    if (name.empty() || name.size() > 255 || name.front() == '.') return false;
    return std::none_of(name.begin(), name.end(), [](char c) {
        return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    });
}

}  // namespace spoilbook
