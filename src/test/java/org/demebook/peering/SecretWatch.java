package org.demebook.peering;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.interfaces.ECPrivateKey;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.zip.ZipInputStream;
import org.demebook.start.TestServer;

/** Looks for a node's private keys, in every form in which bytes become text, where there may be none. */
public final class SecretWatch {
    private static final int TELLING = 20;
    private static Set<String> known = Set.of();
    private static long read;

    private SecretWatch() {}

    /** Nothing of the keys of the server under test stands in an answer, its headers, or the files of a zip. */
    public static void requireNone(String what, Response response) {
        var type = String.valueOf(response.contentType());
        if (type.startsWith("image/") || type.equals("application/pdf")) {
            return;
        }
        var text = response.headers() + "\n"
                + (type.endsWith("/zip") ? unzipped(response.asByteArray()) : response.asString());
        requireNone(what, text, ofTestServer());
    }

    static void requireNone(String what, String text, Set<String> secrets) {
        for (var secret : secrets) {
            assertThat(text.contains(secret))
                    .as("%s holds a private key, or a part of one", what)
                    .isFalse();
        }
    }

    private static synchronized Set<String> ofTestServer() {
        try {
            var folder = TestServer.federationFolder();
            var changed = Files.getLastModifiedTime(folder).toMillis();
            if (changed != read) {
                var all = new HashSet<>(known); // keys that were used before stay secret
                all.addAll(of(folder));
                known = Set.copyOf(all);
                read = changed;
            }
            return known;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What no text may hold of the keys in that folder. */
    static Set<String> of(Path folder) {
        var secrets = new HashSet<String>();
        try {
            for (var file : List.of("node.key", "recovery.key")) {
                if (Files.exists(folder.resolve(file))) {
                    var text = Files.readString(folder.resolve(file));
                    var seed = text.replaceAll("^\\{\"(?:recovery-)?key\":\"([A-Za-z0-9_-]{43})\".*$", "$1");
                    assertThat(seed).hasSize(43);
                    secrets.addAll(forms(Base64.getUrlDecoder().decode(seed)));
                }
            }
            var store = KeyStore.getInstance("PKCS12");
            store.load(
                    new ByteArrayInputStream(Files.readAllBytes(folder.resolve("tls.p12"))),
                    TlsKey.PASSWORD.toCharArray());
            var tls = (ECPrivateKey) store.getKey("tls", TlsKey.PASSWORD.toCharArray());
            secrets.addAll(forms(bytes(tls.getS())));
            return secrets;
        } catch (IOException | GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] bytes(BigInteger number) {
        var padded = new byte[32];
        var digits = number.toByteArray();
        int length = Math.min(32, digits.length);
        System.arraycopy(digits, digits.length - length, padded, 32 - length, length);
        return padded;
    }

    /** A part is enough to be told: hex in both cases, base64 in both alphabets, at each of the three offsets in a longer text. */
    static Set<String> forms(byte[] secret) {
        var forms = new ArrayList<String>();
        var hex = HexFormat.of().formatHex(secret);
        forms.add(hex.substring(0, TELLING));
        forms.add(hex.substring(0, TELLING).toUpperCase(Locale.ROOT));
        for (int offset = 0; offset < 3; offset++) {
            var shifted = new byte[secret.length + offset];
            System.arraycopy(secret, 0, shifted, offset, secret.length);
            var from = offset == 0 ? 0 : 4;
            var part = Base64.getEncoder().encodeToString(shifted).substring(from, from + TELLING);
            forms.add(part);
            forms.add(part.replace('+', '-').replace('/', '_'));
        }
        forms.add(new String(secret, StandardCharsets.ISO_8859_1));
        return Set.copyOf(forms);
    }

    private static String unzipped(byte[] archive) {
        var text = new StringBuilder();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                text.append(entry.getName()).append('\n');
                text.append(new String(zip.readAllBytes(), StandardCharsets.UTF_8))
                        .append('\n');
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
