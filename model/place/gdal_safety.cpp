// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/gdal_safety.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <cpl_string.h>
#include <cpl_vsi_virtual.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_srs_api.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <array>
#include <mutex>

namespace spoilbook {
namespace {

constexpr std::array<std::string_view, 8> drivers{"GTiff", "AAIGrid", "BAG",     "XYZ",
                                                  "MEM",   "GPKG",    "GeoJSON", "Memory"};

CPLHTTPResult* refuse_fetch(const char*, CSLConstList, GDALProgressFunc, void*, CPLHTTPFetchWriteFunc, void*,
                            void*) {
    auto* result = static_cast<CPLHTTPResult*>(CPLCalloc(1, sizeof(CPLHTTPResult)));
    result->nStatus = -1;
    result->pszErrBuf = CPLStrdup("the network is off");
    return result;
}

/// Stands in for a GDAL file system that reaches outside plain files. Keeps the one that it replaces, which
/// GDAL still counts on elsewhere.
class RefusingFiles : public VSIFilesystemHandler {
 public:
    explicit RefusingFiles(VSIFilesystemHandler* replaced) : replaced_(replaced) {}

    VSIVirtualHandle* Open(const char*, const char*, bool, CSLConstList) override {
        errno = EACCES;
        return nullptr;
    }
    int Stat(const char*, VSIStatBufL*, int) override {
        errno = EACCES;
        return -1;
    }
    bool IsLocal(const char*) override { return false; }

 private:
    [[maybe_unused]] VSIFilesystemHandler* replaced_;
};

/// Network, archive, pipe and crypt file systems: of GDAL's own only the one in memory stays.
void refuse_file_systems() {
    char** prefixes = VSIFileManager::GetPrefixes();
    for (int i = 0; i < CSLCount(prefixes); ++i) {
        const std::string prefix = prefixes[i];
        if (prefix == "/vsimem/") continue;
        VSIFileManager::InstallHandler(prefix, new RefusingFiles(VSIFileManager::GetHandler(prefix.c_str())));
    }
    CSLDestroy(prefixes);
}

void keep_allowed_drivers() {
    GDALRegister_GTiff();
    GDALRegister_AAIGrid();
    GDALRegister_BAG();
    GDALRegister_XYZ();
    GDALRegister_MEM();
    RegisterOGRGeoPackage();
    RegisterOGRGeoJSON();
    RegisterOGRMEM();
    GDALDriverManager* manager = GetGDALDriverManager();
    for (int i = manager->GetDriverCount() - 1; i >= 0; --i) {
        GDALDriver* driver = manager->GetDriver(i);
        if (std::ranges::find(drivers, std::string_view(driver->GetDescription())) != drivers.end()) continue;
        manager->DeregisterDriver(driver);
        GDALDestroyDriver(driver);
    }
}

void make_safe_now() {
    CPLSetConfigOption("GDAL_PAM_ENABLED", "NO");
    CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "EMPTY_DIR");
    CPLSetConfigOption("GDAL_VRT_ENABLE_PYTHON", "NO");
    CPLSetConfigOption("OGR_SQLITE_LOAD_EXTENSIONS", "");
    CPLHTTPSetFetchCallback(refuse_fetch, nullptr);
    OSRSetPROJEnableNetwork(0);
    keep_allowed_drivers();
    refuse_file_systems();
}

}  // namespace

std::span<const std::string_view> allowed_gdal_drivers() {
    return drivers;
}

void make_gdal_safe() {
    static std::once_flag once;
    std::call_once(once, make_safe_now);
}

std::optional<std::string> why_not_openable(const std::filesystem::path& path) {
    const std::string name = path.string();
    if (!path.is_absolute()) return name + " is not an absolute path";
    if (name.starts_with("/vsi")) return name + " is not a plain file's path";
    std::error_code error;
    const auto status = std::filesystem::symlink_status(path, error);
    if (error || status.type() == std::filesystem::file_type::not_found) return name + " does not exist";
    if (status.type() == std::filesystem::file_type::symlink) return name + " is a link, not a file";
    if (status.type() != std::filesystem::file_type::regular) return name + " is not a regular file";
    return std::nullopt;
}

}  // namespace spoilbook
