package org.demebook.programme;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Entry;
import org.demebook.programme.ProgrammeFacts.SeasonLitterAnswered;
import org.jspecify.annotations.Nullable;

/** The last answer of one side to a litter, which keeps its id from plan to plan. */
@Entity
@Table(name = "season_answer")
@IdClass(LitterAnswer.Key.class)
class LitterAnswer extends PanacheEntityBase {
    record Key(UUID populationId, UUID litterId, String side) {}

    @Id
    UUID populationId;

    @Id
    UUID litterId;

    @Id
    String side;

    UUID planId;

    Answer answer;

    @Nullable
    AnswerReason reason;

    @Nullable
    String note;

    UUID @Nullable [] grantIds;

    UUID answeredBy;
    Instant answeredAt;
    long revision;

    protected LitterAnswer() {}

    static void say(Entry entry, SeasonLitterAnswered said) {
        var key = new Key(entry.populationId(), said.litterId(), said.side().word());
        LitterAnswer answer = findById(key);
        if (answer == null) {
            answer = new LitterAnswer();
            answer.populationId = key.populationId;
            answer.litterId = key.litterId;
            answer.side = key.side;
            answer.tell(entry, said);
            answer.persist();
        } else {
            answer.tell(entry, said);
        }
    }

    private void tell(Entry entry, SeasonLitterAnswered said) {
        planId = said.planId();
        answer = said.answer();
        reason = said.reason();
        note = said.note();
        grantIds = said.grantIds() == null ? null : said.grantIds().toArray(UUID[]::new);
        answeredBy = entry.actorId();
        answeredAt = entry.recordedAt();
        revision = entry.seq();
    }

    /** Only where it is still the last answer. */
    static void forgetNote(Entry entry, SeasonLitterAnswered said) {
        update(
                "note = null where populationId = ?1 and litterId = ?2 and side = ?3 and revision = ?4",
                entry.populationId(),
                said.litterId(),
                said.side().word(),
                entry.seq());
    }

    boolean says(NewAnswer sent) {
        return answer == sent.answer() && reason == sent.reason() && Objects.equals(note, sent.words());
    }

    Side side() {
        return Side.parse(side);
    }

    List<UUID> grants() {
        return grantIds == null ? List.of() : List.of(grantIds);
    }

    LocalDate answeredOn() {
        return LocalDate.ofInstant(answeredAt, ZoneOffset.UTC);
    }

    static Map<UUID, List<LitterAnswer>> byLitter(UUID populationId, Set<UUID> litterIds) {
        return LitterAnswer.<LitterAnswer>stream("populationId = ?1 and litterId in ?2", populationId, litterIds)
                .collect(Collectors.groupingBy(answer -> answer.litterId));
    }
}
