// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/lock_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/vfs.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

namespace spoilbook {

namespace {

std::string first_line(int descriptor) {
    std::array<char, 400> bytes{};
    const auto n = pread(descriptor, bytes.data(), bytes.size(), 0);
    std::string text(bytes.data(), n > 0 ? static_cast<std::size_t>(n) : 0);
    return text.substr(0, text.find('\n'));
}

Refusal cannot_lock(const std::string& path) {
    return {"cannot-lock", path,
            std::string("the lock file cannot be made or locked: ") + std::strerror(errno),
            "open the book for reading only, or mend the folder's permissions"};
}

/// The one before may have taken the file away between our opening and our locking it: then what we locked
/// is no longer what the next one will open.
bool still_has_its_name(int descriptor, const std::string& path) {
    struct stat held {};
    struct stat named {};
    return fstat(descriptor, &held) == 0 && stat(path.c_str(), &named) == 0 && held.st_ino == named.st_ino &&
           held.st_dev == named.st_dev;
}

}  // namespace

Checked<LockFile> LockFile::take(const std::string& book_path, const std::string& holder) {
    const std::string path = book_path + "-lock";
    for (;;) {
        const int descriptor = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
        if (descriptor < 0) return cannot_lock(path);
        LockFile lock(descriptor, "");
        if (flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
            if (errno != EWOULDBLOCK) return cannot_lock(path);
            return Refusal{"book-in-use", book_path,
                           "the book is open for writing: " + first_line(descriptor),
                           "close it there, or read it here without writing"};
        }
        if (!still_has_its_name(descriptor, path)) continue;
        lock.path_ = path;
        const std::string text = holder + "\n";
        // The text only helps people; the lock holds without it, so a full disk does not matter here.
        if (ftruncate(descriptor, 0) == 0) {
            [[maybe_unused]] const auto written = pwrite(descriptor, text.data(), text.size(), 0);
        }
        return lock;
    }
}

LockFile::LockFile(LockFile&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), path_(std::move(other.path_)) {}

LockFile& LockFile::operator=(LockFile&& other) noexcept {
    std::swap(descriptor_, other.descriptor_);
    std::swap(path_, other.path_);
    return *this;
}

LockFile::~LockFile() {
    if (descriptor_ < 0) return;
    if (!path_.empty()) unlink(path_.c_str());  // before letting go: nobody else holds this file
    close(descriptor_);
}

std::string why_not_on(long file_system_type) {
    // Numbers of statfs(2) and linux/magic.h: NFS, SMB, CIFS, SMB2, Coda, AFS twice, Ceph, NCP, 9P, and the
    // shared folders of VirtualBox.
    constexpr std::array<unsigned long, 11> shares{0x6969,     0x517B,     0xFF534D42, 0xFE534D42,
                                                   0x73757245, 0x5346414F, 0x6B414653, 0x00C36400,
                                                   0x564C,     0x01021997, 0x786F4256};
    for (const auto share : shares) {
        if ((static_cast<unsigned long>(file_system_type) & 0xFFFFFFFFUL) == share) {
            return "it lies on a network share, where two writers cannot be kept apart";
        }
    }
    return "";
}

std::string why_not_here(const std::string& folder) {
    struct statfs facts {};
    if (statfs(folder.c_str(), &facts) != 0)
        return std::string("its folder cannot be read: ") + std::strerror(errno);
    return why_not_on(static_cast<long>(facts.f_type));
}

}  // namespace spoilbook
