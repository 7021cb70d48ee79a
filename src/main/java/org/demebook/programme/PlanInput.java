package org.demebook.programme;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.demebook.season.SeasonForm;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** What a plan was computed with, as JSON in which every figure is exact; its digest is the SHA-256 of that JSON. */
@Entity
@Immutable
@Table(name = "season_input")
@IdClass(PlanInput.Key.class)
class PlanInput extends PanacheEntityBase {
    record Key(UUID populationId, String digest) {}

    /**
     * @param females animals by the numbers of the season
     * @param males likewise
     * @param living the season with every living animal counted as one, where that is not {@code form} itself
     */
    record Input(
            List<UUID> females,
            List<UUID> males,
            SeasonForm form,
            @Nullable SeasonForm living) {}

    private static final ObjectMapper JSON =
            JsonMapper.builder().addModule(new ParameterNamesModule()).build();

    @Id
    UUID populationId;

    @Id
    String digest;

    byte[] form;

    protected PlanInput() {}

    private PlanInput(UUID populationId, String digest, byte[] form) {
        this.populationId = populationId;
        this.digest = digest;
        this.form = form;
    }

    static Optional<Input> of(UUID populationId, String digest) {
        return PlanInput.<PlanInput>findByIdOptional(new Key(populationId, digest))
                .map(PlanInput::read);
    }

    /** Keeps it, once. */
    static void keep(UUID populationId, Input input) {
        byte[] written = written(input);
        var digest = digest(written);
        if (findById(new Key(populationId, digest)) == null) {
            new PlanInput(populationId, digest, compressed(written)).persist();
        }
    }

    static String digest(Input input) {
        return digest(written(input));
    }

    private Input read() {
        try (var in = new GZIPInputStream(new ByteArrayInputStream(form))) {
            return JSON.readValue(in.readAllBytes(), Input.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] written(Input input) {
        try {
            return JSON.writeValueAsBytes(input);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] compressed(byte[] written) {
        var bytes = new ByteArrayOutputStream();
        try (var out = new GZIPOutputStream(bytes)) {
            out.write(written);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static String digest(byte[] written) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(written));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
