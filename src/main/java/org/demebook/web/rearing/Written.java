package org.demebook.web.rearing;

import java.util.List;
import org.demebook.diary.CareRecordView;
import org.demebook.diary.CareRecords.Recorded;
import org.demebook.problem.Finding;
import org.jspecify.annotations.Nullable;

/**
 * What was just written down, and can be taken back.
 *
 * @param from the first and the last entry of the journal
 * @param back the page to go on with
 */
public record Written(long from, long until, List<Recorded> records, String back) {
    /** The records written by one request, as their address names them. */
    record Entries(long from, long until) {
        private static final String FORM = "\\d{1,18}-\\d{1,18}";

        static Entries of(List<CareRecordView> records) {
            return new Entries(
                    records.get(0).revision(), records.get(records.size() - 1).revision());
        }

        /** Null when the address names none. */
        static @Nullable Entries parse(@Nullable String text) {
            if (text == null || !text.matches(FORM)) {
                return null;
            }
            var ends = text.split("-");
            return new Entries(Long.parseLong(ends[0]), Long.parseLong(ends[1]));
        }

        @Override
        public String toString() {
            return from + "-" + until;
        }
    }

    public String entries() {
        return new Entries(from, until).toString();
    }

    public CareRecordView first() {
        return records.get(0).record();
    }

    public RecordKind kind() {
        return RecordKind.of(first().kind()).orElseThrow();
    }

    public long count() {
        return records.size();
    }

    public boolean isOne() {
        return records.size() == 1;
    }

    /** What is worth a second look, with the number of its animal. */
    public List<Look> looks() {
        return records.stream()
                .flatMap(one -> one.warnings().stream()
                        .map(finding -> new Look(one.record().animal(), finding)))
                .toList();
    }

    /** A finding about a record of an animal. */
    public record Look(String animal, Finding finding) {}
}
