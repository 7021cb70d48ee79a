package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;

import io.restassured.response.ValidatableResponse;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.demebook.Colony;
import org.demebook.crossing.Handed;
import org.demebook.federation.Gone;
import org.demebook.federation.Upland;
import org.demebook.notation.StudbookNumber;
import org.jspecify.annotations.Nullable;

/**
 * One of everything that has an id or a number, made for a keeper at a moment's notice. Dov shares nothing; pip grants
 * everything to everybody.
 */
final class Things {
    /** Grants every field group for every purpose and action, to members and to the public. */
    static final String PIP = "pip";

    /** Who founded another population, to which nobody else belongs. */
    static final String KESTREL = "kestrel";

    static final String MARK = "stripe";
    static final List<String> REGIONS = List.of("North", "South");

    private static int transponders;

    final Colony colony = Colony.foundPrivate();
    private int absent = 900_000;
    private int serials;
    private @Nullable Upland upland;
    private @Nullable Upland gone;
    private final List<String> adopted = new ArrayList<>();

    Things() {
        Colony.token(PIP);
        colony.post(WREN, "/members", Map.of("name", PIP, "role", "member")).statusCode(200);
        colony.post(PIP, "/collections", Map.of("label", "all to be seen")).statusCode(201);
        for (var recipient : List.of("members", "public")) {
            var grant = new HashMap<String, Object>();
            grant.put("recipient", Map.of("kind", recipient));
            grant.put("fieldGroups", words(List.of(FieldGroup.values())));
            grant.put("purposes", words(List.of(Purpose.values())));
            grant.put("actions", words(List.of(Action.values())));
            colony.post(PIP, "/grants", grant).statusCode(201);
        }
        fixRegions(colony);
        // every number from here on is as long as one that does not exist, and so is what is said of it
        colony.female(WREN);
        change(
                "update demebook.serial_counter set last_serial = 100000 where population_id ="
                        + " (select population_id from demebook.journal_head where code = ?)",
                colony.code);
    }

    static void fixRegions(Colony colony) {
        as(WREN).header("If-Match", as(WREN).get(colony.path("/regions")).header("ETag"))
                .body(Map.of("names", REGIONS))
                .put(colony.path("/regions"))
                .then()
                .statusCode(200);
    }

    static void stateRegion(Colony colony, String keeper) {
        String collection = colony.get(keeper, "/collections").extract().path("[0].id");
        as(keeper)
                .body(Map.of("region", REGIONS.get(0)))
                .put(colony.path("/collections/" + collection + "/region"))
                .then()
                .statusCode(200);
    }

    static List<String> words(List<? extends Enum<?>> values) {
        return values.stream()
                .map(value -> value.name().toLowerCase().replace('_', '-'))
                .toList();
    }

    /** A member who is neither of the two sides that a test is about. */
    static String third(String one) {
        return one.equals(INES) ? WREN : INES;
    }

    // ── nothing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** A well-formed number of no animal. */
    String absentNumber() {
        return new StudbookNumber(colony.code, "H", absent++).toString();
    }

    // ── animals ──────────────────────────────────────────────────────────────────────────────────────────────────────

    String female(String keeper) {
        return marked(keeper, "female");
    }

    String male(String keeper) {
        return marked(keeper, "male");
    }

    private String marked(String keeper, String sex) {
        var animal = animal(sex, "2020-06-01");
        animal.put("marks", List.of(MARK));
        return colony.register(keeper, animal);
    }

    String dead(String keeper) {
        var number = female(keeper);
        colony.put(keeper, number, "/death", Map.of("on", "2025-01-03")).statusCode(200);
        return number;
    }

    String onHold(String keeper) {
        var number = female(keeper);
        colony.put(keeper, number, "/breeding-hold", Map.of("reason", "thin after the move"))
                .statusCode(200);
        return number;
    }

    String photo(String keeper, String animal) {
        return upload(keeper, "/animals/" + animal + "/photos");
    }

    private String upload(String keeper, String below) {
        return as(keeper)
                .contentType("image/png")
                .body(picture())
                .post(colony.path(below))
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    static byte[] picture() {
        var bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(32, 24, BufferedImage.TYPE_INT_RGB), "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The other's record is said to be one snake with the claimant's: both were scanned. */
    String claim(String claimant, String holder) {
        var transponder = "98120%010d".formatted(++transponders);
        var older = animal("female", "2020-06-01");
        older.put("transponders", List.of(transponder));
        var number = colony.register(holder, older);
        var younger = animal("female", "2020-06-01");
        younger.put("transponders", List.of(transponder));
        younger.put("leave", List.of(Map.of("rule", "transponder-taken", "reason", "I bought it")));
        var again = colony.register(claimant, younger);
        return id(colony.post(claimant, "/animals/" + again + "/same-animal-claims", Map.of("other", number)), "id");
    }

    // ── what is written down ─────────────────────────────────────────────────────────────────────────────────────────

    String introduction(String keeper) {
        var days = Map.of("female", female(keeper), "male", male(keeper), "fromOn", "2024-01-05");
        return id(colony.post(keeper, "/introductions", days), "introduction.id");
    }

    String sign(String keeper) {
        var sign = Map.of("kind", "ovulation", "happenedOn", "2024-03-14");
        return id(colony.post(keeper, "/animals/" + female(keeper) + "/breeding-signs", sign), "sign.id");
    }

    String careRecord(String keeper) {
        var note = Map.of("kind", "health-note", "on", "2024-07-01", "text", "wheezes");
        return id(colony.post(keeper, "/animals/" + female(keeper) + "/care-records", note), "record.id");
    }

    String task(String keeper) {
        var due = LocalDate.now(ZoneOffset.UTC).plusDays(3).toString();
        return id(colony.post(keeper, "/care-tasks", Map.of("what", "order mice", "dueOn", due)), "key");
    }

    String silence(String keeper) {
        var before = silences(keeper);
        colony.post(keeper, "/care-tasks/" + task(keeper) + "/silence", Map.of("scope", "task"))
                .statusCode(200);
        var after = silences(keeper);
        after.removeAll(before);
        return after.iterator().next();
    }

    private Set<String> silences(String keeper) {
        return new HashSet<>(colony.get(keeper, "/care-silences").extract().<List<String>>path("id"));
    }

    String incubation(String keeper) {
        var eggs = Map.of("startedOn", "2024-04-01", "setPoint", Map.of("value", 31, "unit", "c"), "eggs", 6);
        return id(colony.post(keeper, "/animals/" + female(keeper) + "/incubations", eggs), "id");
    }

    /** Two young, not twins so far; their dam is the keeper's. */
    ValidatableResponse litter(String keeper) {
        return colony.post(
                        keeper,
                        "/litters",
                        Map.of(
                                "dam", female(keeper),
                                "born", "2024-06-29",
                                "liveBorn", 2,
                                "stillborn", 0,
                                "unfertilised", 0,
                                "ovaFound", 2))
                .statusCode(201);
    }

    String litterPhoto(String keeper, String litter) {
        return upload(keeper, "/litters/" + litter + "/photos?moment=after-separation");
    }

    /** An import at its end: another may begin. */
    String imported(String keeper) {
        String id = as(keeper)
                .contentType("text/csv")
                .body("sex,born\nfemale,2020-06-01\n")
                .post(colony.path("/imports"))
                .then()
                .statusCode(202)
                .extract()
                .path("id");
        while (colony.get(keeper, "/imports/" + id).extract().path("state").equals("running")) {
            Thread.onSpinWait();
        }
        return id;
    }

    // ── between two ──────────────────────────────────────────────────────────────────────────────────────────────────

    String offer(String giver, String receiver, String animal) {
        var sale = Map.of("animal", animal, "kind", "sale", "to", receiver);
        return id(colony.post(giver, "/transfers", sale), "transfer.id");
    }

    ValidatableResponse handOut(String giver, String animal) {
        return colony.post(giver, "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", true))
                .statusCode(201);
    }

    /** Another node of the population; from when it is first needed on. */
    Upland upland() {
        if (upland == null) {
            upland = Upland.besides(colony);
        }
        return upland;
    }

    /** An animal that is offered to somebody on another node. */
    String crossing(String giver) {
        var sale = Map.of("animal", female(giver), "kind", "sale", "node", upland().seat(), "to", "mara");
        return id(colony.post(giver, "/crossings", sale), "id");
    }

    /** One that is offered from there. */
    String offeredFromElsewhere(String receiver) {
        var animal = upland().animal();
        var record = Handed.json(receiver, colony.code, upland().seat(), ++serials, animal);
        var id = upland().offer(animal, record).toString();
        upland().give();
        return id;
    }

    /** An animal of the keeper's is said to be one of another node. */
    String claimElsewhere(String claimant) {
        return claimElsewhere(claimant, female(claimant));
    }

    private String claimElsewhere(String claimant, String animal) {
        var claim = Map.of("animal", animal, "other", upland().entered().toString());
        return id(colony.post(claimant, "/federation/same-animal-claims", claim), "id");
    }

    /** The other way round; it was named between nodes by a claim of the keeper's. */
    String claimFromElsewhere(String holder) {
        var animal = female(holder);
        claimElsewhere(holder, animal);
        var claim = upland().participant.claimSame(upland().animal(), upland().called(animal));
        upland().give();
        return claim.toString();
    }

    /** An animal of a node that is gone, which this one adopted; of a hundred. */
    String adopted() {
        if (gone == null) {
            upland();
            gone = Upland.besides(colony);
            for (int i = 0; i < 100; i++) {
                gone.animal();
            }
            gone.give();
            adopted.addAll(Gone.adopt(colony, gone, upland()));
        }
        return adopted.remove(0);
    }

    /** A fresh studbook number of that node. */
    String numberOfGone() {
        return new StudbookNumber(colony.code, gone == null ? Upland.CODE : gone.seat(), 1_000 + ++serials).toString();
    }

    /** An animal that the seller gave and the buyer has; nobody else's word is in it. */
    String sold(String seller, String buyer) {
        var animal = female(seller);
        colony.post(buyer, "/transfers/" + offer(seller, buyer, animal) + "/acceptance", Map.of())
                .statusCode(200);
        return animal;
    }

    /** The seller reports what they sold as being with them. */
    String dispute(String seller, String buyer) {
        var seen = Map.of("seenOn", LocalDate.now(ZoneOffset.UTC).toString());
        return id(colony.post(seller, "/animals/" + sold(seller, buyer) + "/disputes", seen), "id");
    }

    ValidatableResponse sheet(String keeper, String animal) {
        return colony.post(keeper, "/animals/" + animal + "/handover-sheets", Map.of("kind", "sale"))
                .statusCode(201);
    }

    // ── whose word it is ─────────────────────────────────────────────────────────────────────────────────────────────

    String collection(String keeper) {
        return colony.get(keeper, "/collections").statusCode(200).extract().path("[0].id");
    }

    String grant(String keeper) {
        return id(
                colony.post(
                        keeper,
                        "/grants",
                        Map.of(
                                "recipient",
                                Map.of("kind", "node", "node", "K"),
                                "fieldGroups",
                                List.of("identity"),
                                "purposes",
                                List.of("research"),
                                "actions",
                                List.of("relay"))),
                "id");
    }

    private static String id(ValidatableResponse answer, String path) {
        assertThat(answer.extract().statusCode())
                .as(answer.extract().asString())
                .isBetween(200, 299);
        return answer.extract().path(path).toString();
    }

    static String none() {
        return UUID.randomUUID().toString();
    }
}
