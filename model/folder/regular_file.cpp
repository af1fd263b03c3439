// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/regular_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <optional>
#include <system_error>

namespace spoilbook {

namespace {

Refusal unreadable(const std::string& name, int why) {
    if (why == ELOOP) return {"not-a-file", name, "it is a link", "put the file itself here"};
    return {"unreadable", name, fmt::format("cannot be read: {}", std::strerror(why)),
            "make it readable, or leave it out"};
}

class FileBytes : public ByteSource {
 public:
    // Without O_NONBLOCK a pipe would hold us until someone writes to it.
    FileBytes(const std::string& path, std::string name)
        : name_(std::move(name)),
          number_(::open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC)) {}
    ~FileBytes() override {
        if (number_ >= 0) ::close(number_);
    }
    FileBytes(const FileBytes&) = delete;
    FileBytes& operator=(const FileBytes&) = delete;

    /// Nothing: it is a regular file and can be read.
    [[nodiscard]] std::optional<Refusal> look(std::uint64_t most) {
        struct stat state {};
        if (number_ < 0 || ::fstat(number_, &state) != 0) return unreadable(name_, errno);
        if (!S_ISREG(state.st_mode)) return Refusal{"not-a-file", name_, "it is no file", "put a file here"};
        size_ = static_cast<std::uint64_t>(state.st_size);
        if (size_ <= most) return std::nullopt;
        return Refusal{"too-large", name_, fmt::format("{} bytes", size_),
                       fmt::format("{} bytes are the most", most)};
    }

    [[nodiscard]] std::uint64_t size() const override { return size_; }

    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override {
        if (from >= size_) return {};
        std::string bytes(std::min<std::uint64_t>(most, size_ - from), '\0');
        std::size_t have = 0;
        while (have < bytes.size()) {
            const ssize_t got =
                ::pread(number_, bytes.data() + have, bytes.size() - have, static_cast<off_t>(from + have));
            if (got < 0 && errno == EINTR) continue;
            if (got < 0) throw std::system_error(errno, std::generic_category(), name_);
            if (got == 0) break;  // cut short while it was read
            have += static_cast<std::size_t>(got);
        }
        bytes.resize(have);
        return bytes;
    }

 private:
    std::string name_;
    int number_;
    std::uint64_t size_ = 0;
};

}  // namespace

Checked<std::unique_ptr<ByteSource>> open_regular_file(const std::string& path, const std::string& name,
                                                       std::uint64_t most) {
    auto file = std::make_unique<FileBytes>(path, name);
    if (auto refusal = file->look(most)) return *refusal;
    return std::unique_ptr<ByteSource>(std::move(file));
}

Checked<std::string> read_regular_file(const std::string& path, const std::string& name, std::uint64_t most) {
    FileBytes file(path, name);
    if (auto refusal = file.look(most)) return *refusal;
    try {
        return file.piece(0, file.size());
    } catch (const std::system_error& error) {
        return unreadable(name, error.code().value());
    }
}

bool is_plain_name(const std::string& name) {
    if (name.empty() || name.size() > 255 || name.front() == '.') return false;
    return std::none_of(name.begin(), name.end(), [](char c) {
        return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    });
}

}  // namespace spoilbook
