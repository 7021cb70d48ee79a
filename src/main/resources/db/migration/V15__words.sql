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
grant select, insert, delete on journal_words to ${app_role}, ${register_role};
alter table journal_words enable row level security;
create policy register on journal_words to ${register_role} using ((select everything from asking)) with check ((select everything from asking));

-- The entry whose words a row shows, where its revision does not say so: when words are taken out, those of others stay. Null in
-- rows from before.
alter table identifier add column added_seq bigint;
alter table introduction add column notes_seq bigint;
alter table breeding_sign add column notes_seq bigint;
alter table care_record add column words_seq bigint;
alter table care_completion add column words_seq bigint;
