package org.demebook.leaving;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import org.demebook.breeding.BreedingSigns;
import org.demebook.breeding.Introductions;
import org.demebook.consent.Grants;
import org.demebook.diary.CareRecords;
import org.demebook.handover.HandoverSheets;
import org.demebook.incubation.Incubations;
import org.demebook.journal.Testimony;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterView;
import org.demebook.litter.Litters;
import org.demebook.photo.PhotoView;
import org.demebook.photo.Photos;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.sheet.Exports;
import org.demebook.transfer.Disputes;
import org.demebook.transfer.Transfers;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a keeper wrote in a population or holds there, as one zip of open files. It shows of others what the keeper may
 * see anyway: the numbers of parents, the other side of a transfer.
 */
@ApplicationScoped
public class MyArchive {
    private static final int PAGE = 200;

    private static final String README = """
        Your archive of %s
        ==================

        Everything that you wrote in this population, or hold in it, as of today. All texts are UTF-8. JSON as RFC 8259; the
        files that end in s hold one array each. Days are ISO 8601 or EDTF where they are rough, moments are UTC.

        keeper.json           you, and the collections that you act for
        animals.csv           the animals in your collections, in the columns of an import: it can be read into another register
        animals.json          the same with everything that is known of them: ids, marks, transponders, photographs, notes
        statements.json       every statement that you ever made here, in order, word for word, also those corrected since
        litters.json          litters that were born with you, or of dams that you hold
        introductions.json    who was put together with whom
        breeding-signs.json   what was seen of your females' cycles
        incubations.json      clutches in incubators
        care-records.json     the diary: meals, sheds, weights, moves, health, tests, quarantines
        transfers.json        what you gave and received
        disputes.json         disputes that concern you
        grants.json           whom you let see what
        handover-sheets.json  the hand-over sheets of your animals
        photos/               the pictures, named by the animal's number or the litter's id, and the photograph's id
        SHA256SUMS            digests of all other files; check them with: sha256sum -c SHA256SUMS

        Ids stand for the same thing in all files.
        """;

    @Inject
    ObjectMapper json;

    @Inject
    Testimony testimony;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Exports exports;

    @Inject
    Litters litters;

    @Inject
    Introductions introductions;

    @Inject
    BreedingSigns signs;

    @Inject
    Incubations incubations;

    @Inject
    CareRecords diary;

    @Inject
    Transfers transfers;

    @Inject
    Disputes disputes;

    @Inject
    Grants grants;

    @Inject
    HandoverSheets sheets;

    @Inject
    Photos photos;

    /**
     * The zip. It is finished before its first byte is given, so that it never breaks off, and deleted when the stream is closed;
     * memory grows with the number of the keeper's animals, not with what is known of them.
     */
    public InputStream of(Asker asker, Standing by) throws IOException {
        var file = Files.createTempFile("archive", ".zip");
        try {
            try (var out = Files.newOutputStream(file)) {
                write(asker, by, out);
            }
            return Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException | RuntimeException failed) {
            Files.deleteIfExists(file);
            throw failed;
        }
    }

    private void write(Asker asker, Standing by, OutputStream out) throws IOException {
        try (var zip = new ArchiveZip(out, json)) {
            zip.text("README.txt", README.formatted(by.populationCode()));
            zip.object(
                    "keeper.json",
                    Map.of(
                            "name", asker.name(),
                            "fullName", keepers.fullName(by.keeperId()).orElse(""),
                            "population", by.populationCode(),
                            "role", by.role(),
                            "collections", keepers.collections(by)));
            zip.copy("animals.csv", exports.export(by, Exports.Format.CSV, true));
            var numbers = new ArrayList<String>();
            var shown = new ArrayList<Shown>();
            zip.list(
                    "animals.json",
                    items -> animals.each(by, true, animal -> {
                        items.accept(animal);
                        numbers.add(animal.number());
                        shown.addAll(Shown.of(animal));
                    }));
            zip.list("statements.json", items -> testimony.each(by.populationId(), by.keeperId(), items::accept));
            zip.list(
                    "litters.json",
                    items -> pages(after -> litters.page(by, null, after, PAGE), litter -> {
                        items.accept(litter);
                        photos.ofLitter(by.populationId(), litter.id())
                                .forEach(photo -> shown.add(new Shown(litter, photo)));
                    }));
            zip.list(
                    "introductions.json",
                    items -> pages(after -> introductions.page(by, null, null, after, PAGE), items::accept));
            zip.list(
                    "breeding-signs.json",
                    items -> numbers.forEach(
                            number -> pages(after -> signs.page(by, number, after, PAGE), items::accept)));
            zip.list(
                    "incubations.json",
                    items ->
                            numbers.forEach(number -> incubations.of(by, number).forEach(items)));
            zip.list(
                    "care-records.json",
                    items -> numbers.forEach(
                            number -> pages(after -> diary.page(by, number, null, after, PAGE), items::accept)));
            zip.list("transfers.json", items -> pages(after -> transfers.page(by, null, after, PAGE), items::accept));
            zip.list("disputes.json", items -> pages(after -> disputes.page(by, null, after, PAGE), items::accept));
            zip.list("grants.json", items -> pages(after -> grants.page(by, null, null, after, PAGE), items::accept));
            zip.list(
                    "handover-sheets.json",
                    items -> numbers.forEach(number -> sheets.of(by, number).forEach(items)));
            for (var one : shown) {
                zip.file(
                        "photos/%s-%s.jpg".formatted(one.subject, one.photo.id()),
                        picture -> picture.write(photos.bytes(
                                by.populationId(), List.of(one.photo), one.photo.id(), one.subject, false)));
            }
        }
    }

    /** A photograph, and what the name of its file says that it is of. */
    private record Shown(String subject, PhotoView photo) {
        Shown(LitterView litter, PhotoView photo) {
            this("litter-" + litter.id(), photo);
        }

        static List<Shown> of(AnimalView animal) {
            var held = animal.held();
            return held == null
                    ? List.of()
                    : held.photos().stream()
                            .map(photo -> new Shown(animal.number(), photo))
                            .toList();
        }
    }

    /** Every item of a list that comes in pages. */
    private static <T> void pages(Function<@Nullable String, Page<T>> read, Consumer<? super T> reader) {
        String cursor = null;
        do {
            var page = read.apply(Page.after(cursor));
            page.items().forEach(reader);
            cursor = page.next();
        } while (cursor != null);
    }
}
