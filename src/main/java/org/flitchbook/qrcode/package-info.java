/** Texts into QR codes, and QR codes out of pictures. */
@NullMarked
@Floor(
    name = "qrcode",
    floor = 1,
    mayImport = {"message"},
    door = "QrCode")
package org.flitchbook.qrcode;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;
