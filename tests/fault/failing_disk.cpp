// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fault/failing_disk.h"

#include <cstddef>

namespace spoilbook::tests {

namespace {

/// SQLite's layers are C: the state of the one disk stands here.
struct State {
    sqlite3_vfs* real = nullptr;
    Fault fault;
    int count = 0;
    bool failed = false;
} disk;

struct File {
    sqlite3_file base;
    sqlite3_file* real;  ///< in the same allocation, behind this
};

sqlite3_file* real(sqlite3_file* file) {
    return reinterpret_cast<File*>(file)->real;
}

bool strikes() {
    if (disk.fault.at == 0) return false;
    ++disk.count;
    const bool now = disk.count == disk.fault.at || (disk.fault.lasting && disk.count > disk.fault.at);
    disk.failed = disk.failed || now;
    return now;
}

int close(sqlite3_file* f) {
    return real(f)->pMethods != nullptr ? real(f)->pMethods->xClose(real(f)) : SQLITE_OK;
}
int read(sqlite3_file* f, void* to, int n, sqlite3_int64 at) {
    return real(f)->pMethods->xRead(real(f), to, n, at);
}
int write(sqlite3_file* f, const void* from, int n, sqlite3_int64 at) {
    using What = Fault::What;
    if (disk.fault.what == What::sync_error || !strikes())
        return real(f)->pMethods->xWrite(real(f), from, n, at);
    if (disk.fault.what == What::torn_write) real(f)->pMethods->xWrite(real(f), from, n / 2, at);
    return disk.fault.what == What::disk_full ? SQLITE_FULL : SQLITE_IOERR_WRITE;
}
int truncate(sqlite3_file* f, sqlite3_int64 size) {
    if (disk.fault.what != Fault::What::sync_error && strikes()) return SQLITE_IOERR_TRUNCATE;
    return real(f)->pMethods->xTruncate(real(f), size);
}
int sync(sqlite3_file*, int) {
    if (disk.fault.what != Fault::What::disk_full && strikes()) return SQLITE_IOERR_FSYNC;
    return SQLITE_OK;  // nobody pulls the plug here: waiting for the disk would prove nothing
}
int file_size(sqlite3_file* f, sqlite3_int64* size) {
    return real(f)->pMethods->xFileSize(real(f), size);
}
int lock(sqlite3_file* f, int how) {
    return real(f)->pMethods->xLock(real(f), how);
}
int unlock(sqlite3_file* f, int how) {
    return real(f)->pMethods->xUnlock(real(f), how);
}
int is_reserved(sqlite3_file* f, int* answer) {
    return real(f)->pMethods->xCheckReservedLock(real(f), answer);
}
int control(sqlite3_file* f, int what, void* with) {
    return real(f)->pMethods->xFileControl(real(f), what, with);
}
int sector_size(sqlite3_file* f) {
    return real(f)->pMethods->xSectorSize(real(f));
}
int traits(sqlite3_file* f) {
    return real(f)->pMethods->xDeviceCharacteristics(real(f));
}
int shm_map(sqlite3_file* f, int page, int size, int extend, void volatile** at) {
    return real(f)->pMethods->xShmMap(real(f), page, size, extend, at);
}
int shm_lock(sqlite3_file* f, int from, int n, int flags) {
    return real(f)->pMethods->xShmLock(real(f), from, n, flags);
}
void shm_barrier(sqlite3_file* f) {
    real(f)->pMethods->xShmBarrier(real(f));
}
int shm_unmap(sqlite3_file* f, int remove) {
    return real(f)->pMethods->xShmUnmap(real(f), remove);
}

const sqlite3_io_methods methods{2,        close,       read,        write,   truncate,    sync,   file_size,
                                 lock,     unlock,      is_reserved, control, sector_size, traits, shm_map,
                                 shm_lock, shm_barrier, shm_unmap,   nullptr, nullptr};

int open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out) {
    auto* f = reinterpret_cast<File*>(file);
    f->real = reinterpret_cast<sqlite3_file*>(f + 1);
    const int code = disk.real->xOpen(disk.real, name, f->real, flags, out);
    f->base.pMethods = f->real->pMethods != nullptr ? &methods : nullptr;
    return code;
}

}  // namespace

FailingDisk::FailingDisk() {
    disk = State{};
    disk.real = sqlite3_vfs_find(nullptr);
    layer_ = *disk.real;
    layer_.szOsFile = static_cast<int>(sizeof(File)) + disk.real->szOsFile;
    layer_.zName = "failing-disk";
    layer_.pNext = nullptr;
    layer_.xOpen = open;
    sqlite3_vfs_register(&layer_, 1);
}

FailingDisk::~FailingDisk() {
    sqlite3_vfs_unregister(&layer_);
    sqlite3_vfs_register(disk.real, 1);
}

void FailingDisk::fail(const Fault& fault) {
    disk.fault = fault;
    disk.count = 0;
    disk.failed = false;
}

void FailingDisk::mend() {
    disk.fault.at = 0;
}

bool FailingDisk::has_failed() const {
    return disk.failed;
}

}  // namespace spoilbook::tests
