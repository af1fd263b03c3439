// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
QDateTime opened() {
    return QDateTime::currentDateTimeUtc();
}
}  // namespace spoilbook
