// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/print_session.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QGuiApplication>
#include <QStringList>
#include <array>
#include <clocale>
#include <stdexcept>
#include <string>

namespace spoilbook::print {
namespace {

// Qt ends the process where its platform plugin is missing, so look first where it will look. It knows where
// only while an application lives.
void require_offscreen_plugin() {
    std::string name = "spoilbook";
    std::array<char*, 2> argv{name.data(), nullptr};
    int argc = 1;
    const QCoreApplication probe(argc, argv.data());
    QStringList folders = qEnvironmentVariable("QT_QPA_PLATFORM_PLUGIN_PATH").split(u':', Qt::SkipEmptyParts);
    for (const QString& path : QCoreApplication::libraryPaths()) {
        folders << path + QStringLiteral("/platforms");
    }
    for (const QString& folder : folders) {
        if (QFileInfo::exists(folder + QStringLiteral("/libqoffscreen.so"))) {
            return;
        }
    }
    throw std::runtime_error(
        "printing needs Qt's offscreen platform plugin, libqoffscreen.so (Debian package " +
        std::string("libqt6gui6); it is not in ") + folders.join(u", ").toStdString());
}

// What Qt says while it starts (locale, runtime folder) is no concern of someone who prints.
void say_nothing(QtMsgType type, const QMessageLogContext& context, const QString& text) {
    if (type == QtFatalMsg) {
        qInstallMessageHandler(nullptr);
        qt_message_output(type, context, text);
    }
}

// QCoreApplication sets the locale of the environment; numbers in files must not change with it.
class QuietStart {
 public:
    QuietStart() : locale_(std::setlocale(LC_ALL, nullptr)), before_(qInstallMessageHandler(say_nothing)) {}
    ~QuietStart() {
        qInstallMessageHandler(before_);
        std::setlocale(LC_ALL, locale_.c_str());
    }
    QuietStart(const QuietStart&) = delete;
    QuietStart& operator=(const QuietStart&) = delete;

 private:
    std::string locale_;
    QtMessageHandler before_;
};

}  // namespace

// Qt keeps references to argc and argv as long as the application lives.
struct PrintSession::Own {
    std::array<std::string, 5> words{"spoilbook", "-platform", "offscreen", "-platformtheme", "none"};
    std::array<char*, 6> argv{words[0].data(), words[1].data(), words[2].data(),
                              words[3].data(), words[4].data(), nullptr};
    int argc = 5;
    QGuiApplication application{argc, argv.data()};
};

PrintSession::PrintSession() {
    if (QCoreApplication::instance() != nullptr) {
        if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) == nullptr) {
            throw std::runtime_error(
                "printing needs a QGuiApplication, and an application without Gui is running");
        }
        return;
    }
    const QuietStart quiet;
    require_offscreen_plugin();
    own_ = std::make_unique<Own>();
}

PrintSession::~PrintSession() = default;

}  // namespace spoilbook::print
