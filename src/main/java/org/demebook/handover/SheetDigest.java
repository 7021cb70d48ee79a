package org.demebook.handover;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;

/**
 * What a sheet says as bytes (canonical JSON of RFC 8785), their SHA-256, and the code by which paper is checked.
 *
 * <p>The code is the head of the digest, 80 bits in Crockford's base 32: no secret, and no lookup key that somebody could
 * point at another sheet, but a statement about the very words. It cannot be guessed, since every sheet holds its random id.
 */
final class SheetDigest {
    private static final int CHARACTERS = 16;
    private static final String SPOKEN = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .addModule(new ParameterNamesModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build()
            .setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

    private SheetDigest() {}

    static byte[] bytes(Record says) {
        try {
            return new JsonCanonicalizer(JSON.writeValueAsBytes(says)).getEncodedUTF8();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether two say the same in every word. */
    static boolean same(Record one, Record other) {
        return Arrays.equals(bytes(one), bytes(other));
    }

    static HandoverSheet read(byte[] bytes) {
        try {
            return JSON.readValue(bytes, HandoverSheet.class);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    static String of(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Four groups of four, from the first twenty hexadecimal digits. */
    static String code(String digest) {
        long high = Long.parseLong(digest.substring(0, 10), 16);
        long low = Long.parseLong(digest.substring(10, 20), 16);
        var code = new StringBuilder();
        for (int i = 0; i < CHARACTERS; i++) {
            long half = i < CHARACTERS / 2 ? high : low;
            int place = CHARACTERS / 2 - 1 - i % (CHARACTERS / 2);
            code.append(i > 0 && i % 4 == 0 ? "-" : "").append(SPOKEN.charAt((int) (half >> 5 * place & 31)));
        }
        return code.toString();
    }
}
