// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/gdal_safety.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <cpl_vsi.h>
#include <gdal_priv.h>
#include <unistd.h>

#include <fstream>
#include <set>

#include "model/place/ogr_shape.h"
#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

/// A folder of its own that goes with the test.
class Folder {
 public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "sb-place-XXXXXX").string();
        path_ = mkdtemp(name.data());
    }
    ~Folder() { std::filesystem::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::filesystem::path file(const std::string& name, const std::string& content) const {
        std::ofstream(path_ / name) << content;
        return path_ / name;
    }
    const std::filesystem::path& path() const { return path_; }

 private:
    std::filesystem::path path_;
};

const std::string ascii_grid = "ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2\n3 4\n";

bool opens(const std::string& name) {
    const HeardGdal heard;
    GDALDataset* data = GDALDataset::Open(name.c_str());
    if (data) GDALClose(data);
    return data != nullptr;
}

}  // namespace

TEST_CASE("no driver but the allowed ones is registered", "[place][safety]") {
    make_gdal_safe();
    std::set<std::string> present, allowed;
    for (int i = 0; i < GetGDALDriverManager()->GetDriverCount(); ++i) {
        present.insert(GetGDALDriverManager()->GetDriver(i)->GetDescription());
    }
    for (const std::string_view name : allowed_gdal_drivers())
        allowed.insert(std::string(name));
    CHECK(present == allowed);
}

TEST_CASE("a file that names other files is not opened, whatever it calls itself", "[place][safety]") {
    make_gdal_safe();
    const Folder folder;
    const auto grid = folder.file("grid.asc", ascii_grid);
    CHECK(opens(grid.string()));
    const std::string vrt =
        "<VRTDataset rasterXSize=\"2\" rasterYSize=\"2\"><VRTRasterBand dataType=\"Byte\" "
        "band=\"1\"><SimpleSource><SourceFilename>" +
        grid.string() + "</SourceFilename></SimpleSource></VRTRasterBand></VRTDataset>";
    CHECK_FALSE(opens(folder.file("survey.vrt", vrt).string()));
    CHECK_FALSE(opens(folder.file("survey.tif", vrt).string()));
}

TEST_CASE("a side-car file beside a survey is not read", "[place][safety]") {
    make_gdal_safe();
    const Folder folder;
    const auto grid = folder.file("grid.asc", ascii_grid);
    folder.file("grid.asc.aux.xml",
                "<PAMDataset><Metadata><MDI key=\"SMUGGLED\">yes</MDI></Metadata></PAMDataset>");
    const HeardGdal heard;
    GDALDataset* data = GDALDataset::Open(grid.c_str());
    REQUIRE(data);
    CHECK(data->GetMetadataItem("SMUGGLED") == nullptr);
    GDALClose(data);
}

TEST_CASE("the network is off, by every name it has", "[place][safety]") {
    make_gdal_safe();
    CPLHTTPResult* result = CPLHTTPFetch("http://127.0.0.1:9/", nullptr);
    REQUIRE(result);
    CHECK(result->nStatus != 0);
    CHECK(std::string(result->pszErrBuf) == "the network is off");
    CPLHTTPDestroyResult(result);
    for (const char* name : {"/vsicurl/http://127.0.0.1:9/a.tif",
                             "/vsicurl_streaming/http://127.0.0.1:9/a.tif", "/vsis3/bucket/a.tif",
                             "/vsigs/bucket/a.tif", "/vsiaz/bucket/a.tif", "http://127.0.0.1:9/a.geojson"}) {
        INFO(name);
        VSIStatBufL status;
        CHECK(VSIStatL(name, &status) != 0);
        CHECK_FALSE(opens(name));
    }
}

TEST_CASE("archives are not looked into", "[place][safety]") {
    make_gdal_safe();
    VSIStatBufL status;
    CHECK(VSIStatL("/vsizip//etc/hostname", &status) != 0);
    CHECK(VSIFOpenL("/vsisubfile/0_5,/etc/hostname", "rb") == nullptr);
    CHECK(VSIFOpenL("/vsistdin/", "rb") == nullptr);
    VSILFILE* memory = VSIFOpenL("/vsimem/a", "wb");
    CHECK(memory != nullptr);
    if (memory) VSIFCloseL(memory);
    VSIUnlink("/vsimem/a");
}

TEST_CASE("GDAL is given nothing but the absolute path of a regular file", "[place][safety]") {
    const Folder folder;
    const auto grid = folder.file("grid.asc", ascii_grid);
    CHECK_FALSE(why_not_openable(grid));
    std::filesystem::create_symlink(grid, folder.path() / "link.asc");
    const auto because = [](const std::filesystem::path& path) {
        return why_not_openable(path).value_or("");
    };
    CHECK_THAT(because("grid.asc"), Catch::EndsWith("is not an absolute path"));
    CHECK_THAT(because("/vsimem/grid.asc"), Catch::EndsWith("is not a plain file's path"));
    CHECK_THAT(because(folder.path() / "link.asc"), Catch::EndsWith("is a link, not a file"));
    CHECK_THAT(because(folder.path()), Catch::EndsWith("is not a regular file"));
    CHECK_THAT(because(folder.path() / "none.asc"), Catch::EndsWith("does not exist"));
    CHECK_THAT(because("GPKG:/tmp/a.gpkg:t"), Catch::EndsWith("is not an absolute path"));
}

}  // namespace spoilbook::test
