// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace spoilbook {

/// The GDAL drivers that stay: a file in any other format is not opened, whatever its name.
std::span<const std::string_view> allowed_gdal_drivers();

/// Makes this process's GDAL fit for strangers' files: registers the allowed drivers and no other, reads
/// no side-car files and no neighbouring files, and answers every request for the network with a refusal
/// (HTTP, the network file systems, PROJ's grid download). Idempotent, cheap after the first call, safe
/// from several threads. To be called before GDALOpen; Crs::from_epsg calls it.
void make_gdal_safe();

/// Nothing where GDAL may be given this path; else a sentence. It has to be absolute, outside GDAL's own
/// /vsi names, and a regular file, not a link to one.
std::optional<std::string> why_not_openable(const std::filesystem::path& path);

}  // namespace spoilbook
