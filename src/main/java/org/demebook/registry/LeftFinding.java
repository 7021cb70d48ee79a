package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.problem.Finding;
import org.demebook.registry.FindingFacts.FindingLeft;
import org.jspecify.annotations.Nullable;

/** A finding that a keeper left as it is. */
@Entity
@Table(name = "left_finding")
@IdClass(LeftFinding.Key.class)
class LeftFinding extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    String subjectKind;
    UUID subjectId;
    String rule;
    String level;

    @Nullable
    String field;

    @Nullable
    String value;

    String message;
    String reason;
    UUID leftBy;
    Instant leftAt;

    protected LeftFinding() {}

    LeftFinding(Entry entry, FindingLeft left) {
        this.populationId = entry.populationId();
        this.id = left.findingId();
        this.subjectKind = left.subjectKind();
        this.subjectId = left.subjectId();
        this.rule = left.rule();
        this.level = left.level();
        this.field = left.field();
        this.value = left.value();
        this.message = left.message();
        this.reason = left.reason();
        this.leftBy = entry.actorId();
        this.leftAt = entry.recordedAt();
    }

    static List<LeftFinding> about(UUID populationId, Collection<UUID> subjectIds) {
        return subjectIds.isEmpty()
                ? List.of()
                : list("populationId = ?1 and subjectId in ?2 order by leftAt, id", populationId, subjectIds);
    }

    /** Whether it is this finding that was left: the same rule, and in the same field nothing else, where that is known. */
    boolean settles(Finding finding) {
        return finding.rule() != null
                && finding.rule().word().equals(rule)
                && (value == null || !Objects.equals(field, finding.field()) || Objects.equals(value, finding.value()));
    }
}
