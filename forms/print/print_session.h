// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

namespace spoilbook::print {

/// Holds what printing needs of Qt for as long as it lives: nothing where the desktop runs already, otherwise
/// an application of its own on Qt's offscreen platform, which needs no screen and reads no DISPLAY. The
/// process's C locale is left as it was. Make it in main(), once, before the first write_pdf. Throws
/// std::runtime_error, with the folders searched, where the offscreen platform plugin is missing, and where
/// an application without Gui exists already.
class PrintSession {
 public:
    PrintSession();
    ~PrintSession();
    PrintSession(const PrintSession&) = delete;
    PrintSession& operator=(const PrintSession&) = delete;

 private:
    struct Own;
    std::unique_ptr<Own> own_;
};

}  // namespace spoilbook::print
