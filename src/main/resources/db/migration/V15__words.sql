-- What keepers wrote in words stands beside the journal, whose entries hold its salted digest: the journal is append-only, and
-- whoever leaves takes their words with them. It is no part of the state that a replay gives back; a replay reads it.
create table journal_words (
    population_id uuid   not null,
    -- SHA-256 of salt and words in base64url, as it stands in the entry
    digest        text   not null,
    seq           bigint not null,
    salt          bytea  not null,
    words         text   not null,
    primary key (population_id, digest)
);
create index journal_words_seq on journal_words (population_id, seq);
grant select, insert, delete on journal_words to ${app_role};
