// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/save_file.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QSaveFile>

namespace spoilbook::form {

void save_file(QWidget* parent, const QString& title, const QString& name, const QString& kinds,
               std::function<void(const QString& path)> write) {
    auto* dialog = new QFileDialog(parent, title, {}, kinds);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    dialog->setDefaultSuffix(name.section(u'.', -1));
    dialog->selectFile(name);
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(write));
    dialog->open();
}

void choose_file(QWidget* parent, const QString& title, const QString& kinds,
                 std::function<void(const QString& path)> take) {
    auto* dialog = new QFileDialog(parent, title, {}, kinds);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::ExistingFile);
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(take));
    dialog->open();
}

void choose_folder(QWidget* parent, const QString& title, std::function<void(const QString& path)> take) {
    auto* dialog = new QFileDialog(parent, title);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setFileMode(QFileDialog::Directory);
    dialog->setOption(QFileDialog::ShowDirsOnly);
    QObject::connect(dialog, &QFileDialog::fileSelected, parent, std::move(take));
    dialog->open();
}

QString folder_of_its_own(const QString& chosen, const QString& name) {
    const QDir folder(chosen);
    return folder.isEmpty(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot)
               ? chosen
               : folder.filePath(name);
}

QString write_file(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit()) return {};
    return QCoreApplication::translate("save_file", "%1 could not be written: %2. Nothing was changed there.")
        .arg(path, file.errorString());
}

}  // namespace spoilbook::form
