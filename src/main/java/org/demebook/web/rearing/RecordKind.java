package org.demebook.web.rearing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.demebook.diary.CareRecord;
import org.jspecify.annotations.Nullable;

/** The kinds of care records, as the words of the pages know them. */
public enum RecordKind {
    MEAL,
    SHED,
    MEASURES,
    MOVE,
    HEALTH_NOTE,
    TEST,
    QUARANTINE;

    private static final List<RecordKind> ALL = List.of(values());

    public static List<RecordKind> all() {
        return ALL;
    }

    /** As the API has it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<RecordKind> of(@Nullable String word) {
        return Arrays.stream(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }

    static RecordKind of(CareRecord record) {
        return of(record.kind()).orElseThrow();
    }

    /** Whether it goes on until somebody says that it is over. */
    public boolean ends() {
        return this == HEALTH_NOTE || this == QUARANTINE;
    }
}
