package org.demebook.paper;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/**
 * A QR code (ISO/IEC 18004) as one path, a unit of length for each module, its quiet zone of four modules included. Read
 * with up to 15 % of it spoiled (level M).
 *
 * @param sideModules width and height
 * @param path the dark modules in the words of SVG: each run of a row as {@code Mx yhwv1h-wz}
 */
public record QrCode(int sideModules, String path) {
    private static final Map<EncodeHintType, ?> HINTS = Map.of(
            EncodeHintType.ERROR_CORRECTION,
            ErrorCorrectionLevel.M,
            EncodeHintType.MARGIN,
            4,
            EncodeHintType.CHARACTER_SET,
            "UTF-8");

    /** @param text at most some 2 000 bytes in UTF-8; a short one makes coarse modules, which read better */
    public static QrCode of(String text) {
        try {
            var modules = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, HINTS);
            return new QrCode(modules.getWidth(), path(modules));
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static String path(BitMatrix modules) {
        var path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            int x = 0;
            while (x < modules.getWidth()) {
                int from = x;
                while (x < modules.getWidth() && modules.get(x, y)) {
                    x++;
                }
                if (x > from) {
                    path.append("M%d %dh%dv1h-%dz".formatted(from, y, x - from, x - from));
                }
                x++;
            }
        }
        return path.toString();
    }
}
