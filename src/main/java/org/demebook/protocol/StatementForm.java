package org.demebook.protocol;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.SireShare;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;

/** Statements as JSON objects, one form each. The object of every type stands in docs/federation/statements.md. */
final class StatementForm {
    private static final int MOST_NAME = 120;
    private static final int MOST_SEATS = 64;
    private static final int MOST_SIRES = 64;
    private static final int MOST_WITHDRAWN = 1_000;
    private static final int ALL = 1_000_000;
    private static final Pattern BORN = Pattern.compile("[0-9]{4}(/[0-9]{4})?");
    private static final Pattern CODE = Pattern.compile("[A-Z0-9]{1,6}");
    private static final Pattern DIGEST = Pattern.compile("[A-Za-z0-9_-]{43}");
    private static final Set<String> SEXES = Set.of("female", "male", "unknown");

    private static final Map<String, Function<Fields, Statement>> READERS = new HashMap<>();

    static {
        READERS.put(
                typeOf(Statement.JournalOpened.class),
                fields -> new Statement.JournalOpened(keys(fields.object("keys")), name(fields.text("name"))));
        READERS.put(
                typeOf(Statement.CharterStated.class),
                fields -> new Statement.CharterStated(charter(Fields.of(fields.object("charter")))));
        READERS.put(
                typeOf(Statement.KeysChanged.class), fields -> new Statement.KeysChanged(keys(fields.object("keys"))));
        READERS.put(
                typeOf(Statement.AnimalEntered.class), fields -> new Statement.AnimalEntered(fields.animal("animal")));
        READERS.put(
                typeOf(Statement.Offered.class),
                fields -> new Statement.Offered(
                        fields.uuid("transfer"),
                        fields.animal("animal"),
                        fields.nodeId("to"),
                        Entry.instant(fields.text("expires")),
                        matching(DIGEST, fields.text("record"))));
        READERS.put(typeOf(Statement.Withdrawn.class), fields -> new Statement.Withdrawn(fields.uuid("transfer")));
        READERS.put(
                typeOf(Statement.Accepted.class),
                fields -> new Statement.Accepted(fields.uuid("transfer"), carried(fields.object("offer"))));
        READERS.put(
                typeOf(Statement.Rejected.class),
                fields -> new Statement.Rejected(fields.uuid("transfer"), carried(fields.object("offer"))));
        READERS.put(
                typeOf(Statement.Released.class),
                fields -> new Statement.Released(fields.uuid("transfer"), carried(fields.object("acceptance"))));
        READERS.put(
                typeOf(Statement.Taken.class),
                fields -> new Statement.Taken(fields.uuid("transfer"), carried(fields.object("release"))));
        READERS.put(
                typeOf(Statement.Adopted.class),
                fields -> new Statement.Adopted(
                        fields.animal("animal"),
                        fields.nodeId("from"),
                        fields.optionalUuid("stint"),
                        carried(fields.object("charter")),
                        fields.list("words", MOST_SEATS, StatementForm::carried)));
        READERS.put(
                typeOf(Statement.GoneStated.class),
                fields -> new Statement.GoneStated(
                        fields.nodeId("gone"), fields.number("size", 0, Long.MAX_VALUE), fields.nodeId("heir")));
        READERS.put(typeOf(AncestryTold.class), StatementForm::ancestry);
        READERS.put(
                typeOf(Statement.HoldingTold.class),
                fields -> new Statement.HoldingTold(
                        fields.animal("animal"),
                        sex(fields.text("sex")),
                        fields.flag("alive"),
                        name(fields.text("custodian")),
                        fields.object("detail")));
        READERS.put(
                typeOf(Statement.RecordSent.class),
                fields -> new Statement.RecordSent(fields.uuid("transfer"), fields.object("record")));
        READERS.put(
                typeOf(Statement.TellingsWithdrawn.class),
                fields -> new Statement.TellingsWithdrawn(
                        ascending(fields.list("entries", MOST_WITHDRAWN, StatementForm::seq))));
        READERS.put(
                typeOf(Statement.Purged.class),
                fields -> new Statement.Purged(fields.nodeId("node"), fields.number("withdrawal", 1, Long.MAX_VALUE)));
        READERS.put(
                typeOf(Statement.SameAnimalClaimed.class),
                fields -> new Statement.SameAnimalClaimed(
                        fields.uuid("claim"), fields.animal("animal"), fields.animal("other")));
        READERS.put(
                typeOf(Statement.SameAnimalConfirmed.class),
                fields -> new Statement.SameAnimalConfirmed(fields.uuid("claim"), carried(fields.object("claimed"))));
        READERS.put(
                typeOf(Statement.SameAnimalReversed.class),
                fields -> new Statement.SameAnimalReversed(fields.uuid("claim")));
    }

    private StatementForm() {}

    static String typeOf(Statement says) {
        return typeOf(says.getClass());
    }

    private static String typeOf(Class<? extends Statement> says) {
        return says.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    }

    /** @throws BadStatement for any form but the accepted one */
    static Statement read(String type, ObjectNode says) {
        var reader = READERS.get(type);
        if (reader == null) {
            throw new BadStatement("is of the unknown type " + type);
        }
        try {
            var fields = Fields.of(says);
            var statement = reader.apply(fields);
            fields.end();
            return statement;
        } catch (Malformed e) {
            throw new BadStatement("carries what is malformed: " + e.fault());
        }
    }

    // ── parts ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private static Charter charter(Fields fields) {
        var seats = fields.list("seats", MOST_SEATS, item -> {
            var seat = Fields.of(item);
            var read = new Charter.Seat(seat.nodeId("node"), matching(CODE, seat.text("code")));
            seat.end();
            return read;
        });
        var charter = new Charter(matching(CODE, fields.text("code")), fields.object("description"), seats);
        fields.end();
        var sorted =
                seats.stream().sorted(Comparator.comparing(Charter.Seat::node)).toList();
        if (!sorted.equals(seats)
                || distinct(seats, Charter.Seat::node) < seats.size()
                || distinct(seats, Charter.Seat::code) < seats.size()) {
            throw new BadStatement("has seats out of order or twice");
        }
        return charter;
    }

    private static <T> int distinct(List<T> items, Function<T, String> by) {
        var seen = new HashSet<String>();
        items.forEach(item -> seen.add(by.apply(item)));
        return seen.size();
    }

    private static Statement ancestry(Fields fields) {
        var told = new AncestryTold(
                fields.animal("animal"),
                fields.optionalText("born").map(born -> matching(BORN, born)),
                fields.optionalAnimal("dam"),
                fields.list("sires", MOST_SIRES, item -> {
                    var share = Fields.of(item);
                    var read = new SireShare(share.animal("sire"), (int) share.number("share", 1, ALL));
                    share.end();
                    return read;
                }),
                fields.flag("founder"),
                fields.object("detail"));
        if (told.sires().stream().mapToInt(SireShare::share).sum() > ALL
                || distinct(told.sires(), share -> share.sire().toString())
                        < told.sires().size()) {
            throw new BadStatement("has sires twice, or more than one of them");
        }
        return told;
    }

    private static String name(String text) {
        if (text.isBlank() || text.length() > MOST_NAME) {
            throw new BadStatement("has a name that is empty or too long");
        }
        return text;
    }

    private static String sex(String text) {
        if (!SEXES.contains(text)) {
            throw new BadStatement("has no sex but " + text);
        }
        return text;
    }

    private static String matching(Pattern pattern, String text) {
        if (!pattern.matcher(text).matches()) {
            throw new BadStatement("has " + text + " where it must not stand");
        }
        return text;
    }

    private static long seq(JsonNode item) {
        if (!item.isIntegralNumber() || item.longValue() < 1) {
            throw new BadStatement("has no good sequence number");
        }
        return item.longValue();
    }

    private static List<Long> ascending(List<Long> seqs) {
        for (int i = 1; i < seqs.size(); i++) {
            if (seqs.get(i) <= seqs.get(i - 1)) {
                throw new BadStatement("has sequence numbers out of order");
            }
        }
        if (seqs.isEmpty()) {
            throw new BadStatement("withdraws nothing");
        }
        return List.copyOf(seqs);
    }

    static KeyChain keys(ObjectNode object) {
        return KeyChain.parse(object);
    }

    private static Signed signed(Fields fields, String name) {
        return Signed.parse(fields.text(name), Entry.MOST_CHARACTERS);
    }

    private static Carried carried(JsonNode object) {
        var fields = Fields.of(object);
        var carried = new Carried(signed(fields, "entry"), keys(fields.object("keys")));
        fields.end();
        return carried;
    }

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    static ObjectNode write(Statement says) {
        var out = JsonNodeFactory.instance.objectNode();
        if (says instanceof Statement.JournalOpened opened) {
            out.put("name", opened.name()).set("keys", opened.keys().toJson());
        } else if (says instanceof Statement.CharterStated stated) {
            out.set("charter", write(stated.charter()));
        } else if (says instanceof Statement.KeysChanged changed) {
            out.set("keys", changed.keys().toJson());
        } else if (says instanceof Statement.AnimalEntered entered) {
            out.put("animal", entered.animal().toString());
        } else if (says instanceof Statement.Offered offered) {
            out.put("transfer", offered.transfer().toString())
                    .put("animal", offered.animal().toString())
                    .put("to", offered.to())
                    .put("expires", offered.expiresAt().toString())
                    .put("record", offered.record());
        } else if (says instanceof Statement.Withdrawn withdrawn) {
            out.put("transfer", withdrawn.transfer().toString());
        } else if (says instanceof Statement.Accepted accepted) {
            out.put("transfer", accepted.transfer().toString()).set("offer", write(accepted.offer()));
        } else if (says instanceof Statement.Rejected rejected) {
            out.put("transfer", rejected.transfer().toString()).set("offer", write(rejected.offer()));
        } else if (says instanceof Statement.Released released) {
            out.put("transfer", released.transfer().toString()).set("acceptance", write(released.acceptance()));
        } else if (says instanceof Statement.Taken taken) {
            out.put("transfer", taken.transfer().toString()).set("release", write(taken.release()));
        } else if (says instanceof Statement.Adopted adopted) {
            out.put("animal", adopted.animal().toString()).put("from", adopted.from());
            adopted.stint().ifPresent(stint -> out.put("stint", stint.toString()));
            out.set("charter", write(adopted.charter()));
            var words = out.putArray("words");
            adopted.words().forEach(word -> words.add(write(word)));
        } else if (says instanceof Statement.GoneStated stated) {
            out.put("gone", stated.gone()).put("size", stated.size()).put("heir", stated.heir());
        } else if (says instanceof AncestryTold told) {
            write(told, out);
        } else if (says instanceof Statement.HoldingTold told) {
            out.put("animal", told.animal().toString())
                    .put("sex", told.sex())
                    .put("alive", told.alive())
                    .put("custodian", told.custodian())
                    .set("detail", told.detail());
        } else if (says instanceof Statement.RecordSent sent) {
            out.put("transfer", sent.transfer().toString()).set("record", sent.record());
        } else if (says instanceof Statement.TellingsWithdrawn withdrawn) {
            var entries = out.putArray("entries");
            withdrawn.entries().forEach(entries::add);
        } else if (says instanceof Statement.Purged purged) {
            out.put("node", purged.node()).put("withdrawal", purged.withdrawal());
        } else if (says instanceof Statement.SameAnimalClaimed claimed) {
            out.put("claim", claimed.claim().toString())
                    .put("animal", claimed.animal().toString())
                    .put("other", claimed.other().toString());
        } else if (says instanceof Statement.SameAnimalConfirmed confirmed) {
            out.put("claim", confirmed.claim().toString()).set("claimed", write(confirmed.claimed()));
        } else if (says instanceof Statement.SameAnimalReversed reversed) {
            out.put("claim", reversed.claim().toString());
        }
        return out;
    }

    private static void write(AncestryTold told, ObjectNode out) {
        out.put("animal", told.animal().toString());
        told.born().ifPresent(born -> out.put("born", born));
        told.dam().ifPresent(dam -> out.put("dam", dam.toString()));
        var sires = out.putArray("sires");
        told.sires()
                .forEach(share ->
                        sires.addObject().put("sire", share.sire().toString()).put("share", share.share()));
        out.put("founder", told.founder()).set("detail", told.detail());
    }

    private static ObjectNode write(Charter charter) {
        var out = JsonNodeFactory.instance.objectNode().put("code", charter.code());
        out.set("description", charter.description());
        var seats = out.putArray("seats");
        charter.seats()
                .forEach(seat -> seats.addObject().put("node", seat.node()).put("code", seat.code()));
        return out;
    }

    private static ObjectNode write(Carried carried) {
        var out = JsonNodeFactory.instance
                .objectNode()
                .put("entry", carried.entry().compact());
        out.set("keys", carried.keys().toJson());
        return out;
    }
}
