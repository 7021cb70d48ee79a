package org.demebook.sheet;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * The text of a file whose encoding nobody wrote down: UTF-8 or UTF-16 where a byte order mark says so; else UTF-8 if it
 * is that throughout; else Windows-1252, as spreadsheets in Western Europe save it.
 */
final class SheetText {
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    private SheetText() {}

    static String of(byte[] bytes) {
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            return decode(bytes, 3, StandardCharsets.UTF_8);
        }
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return decode(bytes, 2, StandardCharsets.UTF_16LE);
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return decode(bytes, 2, StandardCharsets.UTF_16BE);
        }
        int bad = firstNotDecodable(bytes, 0, StandardCharsets.UTF_8, CharBuffer.allocate(bytes.length + 1));
        var charset = bad < 0 || hasLettersOfUtf8(bytes) ? StandardCharsets.UTF_8 : WINDOWS_1252;
        return decode(bytes, 0, charset);
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        if (bytes.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    // ä, é, ø … in UTF-8: C3 and a byte from 80 to BF. In Windows-1252 that would be Ã before a sign; nobody writes it.
    private static boolean hasLettersOfUtf8(byte[] bytes) {
        for (int i = 0; i + 1 < bytes.length; i++) {
            if ((bytes[i] & 0xFF) == 0xC3 && (bytes[i + 1] & 0xC0) == 0x80) {
                return true;
            }
        }
        return false;
    }

    private static String decode(byte[] bytes, int from, Charset charset) {
        var text = CharBuffer.allocate(bytes.length + 1);
        int bad = firstNotDecodable(bytes, from, charset, text);
        if (bad < 0) {
            return text.flip().toString();
        }
        throw Sheet.unreadable(
                "Line %d has a sign that cannot be read as %s (byte %02X). Save the file as CSV UTF-8 and send it again."
                        .formatted(line(text.flip()), charset.name(), bytes[bad]));
    }

    /** Where decoding stops; -1 when it does not. What was read before stands in {@code text}. */
    private static int firstNotDecodable(byte[] bytes, int from, Charset charset, CharBuffer text) {
        var decoder = charset.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        var in = ByteBuffer.wrap(bytes, from, bytes.length - from);
        try {
            var result = decoder.decode(in, text, true);
            if (result.isError()) {
                result.throwException();
            }
            decoder.flush(text);
            return -1;
        } catch (CharacterCodingException undecodable) {
            return in.position();
        }
    }

    private static long line(CharBuffer before) {
        var text = before.toString();
        return 1
                + text.replace("\r\n", "\n")
                        .chars()
                        .filter(c -> c == '\n' || c == '\r')
                        .count();
    }
}
